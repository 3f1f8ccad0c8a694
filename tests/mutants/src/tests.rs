//! Makes the copy of the tests ready: the driver can call them, and their plays can be kept.

use std::fmt::Write as _;
use std::path::Path;

use syn::spanned::Spanned;

use crate::Failure;

/// Texts of the tests that play a job, and what keeps the play, with `kept` for the module.
const KEPT: [(&str, &str); 7] = [
    ("play(&mut bench, &mut player, ", "kept::play_on!(bench, observer, play, &mut player, "),
    ("play(&mut bench, player, ", "kept::play_on!(bench, observer, play, player, "),
    (
        "run::play_again(&mut bench, done, ",
        "kept::play_on!(bench, observer, run::play_again, done, ",
    ),
    (
        "bench.aftermath(NIGHT_S, Stepping::Strides)",
        "kept::nth(|| bench.aftermath(NIGHT_S, Stepping::Strides))",
    ),
    (
        "Self::of(scenario.draw(seed), scenario.right_endings(seed))",
        "kept::once(&format!(\"{id} {seed}\"), || \
         Self::of(scenario.draw(seed), scenario.right_endings(seed)))",
    ),
    ("Bench::new(", "kept::bench("),
    ("&shared().unwrap()", "&kept::once(\"book\", || shared().unwrap())"),
];

/// Opens the tests below `tests/core` that one of the filters names, and writes the driver beside
/// them.
///
/// # Errors
/// When a file cannot be read, is not Rust or cannot be written.
pub fn open(tree: &Path, filters: &[&str]) -> Result<usize, Failure> {
    let core = tree.join("tests/core");
    let mut found = Vec::new();
    crate::files(&core, &mut found)?;
    let mut list = Vec::new();
    for path in found {
        let inner = path.strip_prefix(&core)?.with_extension("").display().to_string();
        let module = inner.trim_end_matches("/mod").replace('/', "::");
        let text = std::fs::read_to_string(&path)?;
        let mut names = Vec::new();
        let hash = hash(&text);
        let text = opened(&text, &module, filters, &mut names)?;
        list.extend(names.into_iter().map(|name| (name, hash)));
        std::fs::write(&path, kept(text))?;
    }
    // In the order of the filters: what speaks most of the marks stands first there.
    let rank = |name: &str| filters.iter().position(|filter| name.starts_with(filter));
    list.sort_by_key(|(name, _)| rank(name));
    let main = core.join("main.rs");
    let mut text = std::fs::read_to_string(&main)?;
    text.push_str("mod mutants_driver;\nmod mutants_kept;\n");
    std::fs::write(main, text)?;
    std::fs::write(core.join("mutants_kept.rs"), include_str!("kept.rs"))?;
    let mut driver = include_str!("driver.rs").to_owned();
    writeln!(driver, "\nconst TESTS: &[(&str, &str, fn())] = &[")?;
    for (name, hash) in &list {
        writeln!(driver, "    (\"{name}\", \"{hash:x}\", crate::{name}),")?;
    }
    driver.push_str("];\n");
    let lines = list.iter().map(|(name, hash)| format!("{name}\t{hash:x}\n"));
    std::fs::write(tree.join("tests.txt"), lines.collect::<String>())?;
    std::fs::write(core.join("mutants_driver.rs"), driver)?;
    Ok(list.len())
}

/// The text of a file as a number: what was found with another text counts no more.
pub fn hash(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// The text with what plays a job replaced.
fn kept(mut text: String) -> String {
    for (from, to) in KEPT {
        let lines = text.lines().map(|line| {
            let plays = line.contains("&mut observer)") || !to.contains("play_on!");
            if plays {
                line.replace(from, &to.replace("kept::", "crate::mutants_kept::"))
            } else {
                line.to_owned()
            }
        });
        text = lines.collect::<Vec<_>>().join("\n");
    }
    text.push('\n');
    text.replace("pub struct Good {", "#[derive(Clone)]\npub struct Good {")
}

/// The text with its modules and tests made public; the tests that a filter names go on the list.
fn opened(
    text: &str,
    module: &str,
    filters: &[&str],
    list: &mut Vec<String>,
) -> Result<String, Failure> {
    let file = syn::parse_file(text)?;
    let mut places = Vec::new();
    let has =
        |attrs: &[syn::Attribute], name: &str| attrs.iter().any(|it| it.path().is_ident(name));
    for item in &file.items {
        match item {
            syn::Item::Mod(it) if matches!(it.vis, syn::Visibility::Inherited) => {
                places.push(it.mod_token.span().byte_range().start);
            }
            syn::Item::Fn(it) if has(&it.attrs, "test") && !has(&it.attrs, "ignore") => {
                let name = format!("{module}::{}", it.sig.ident);
                let is_slow = it.sig.ident.to_string().starts_with("slow_");
                if !is_slow && filters.iter().any(|filter| name.starts_with(filter)) {
                    places.push(it.sig.span().byte_range().start);
                    list.push(name);
                }
            }
            _ => {}
        }
    }
    let mut out = text.to_owned();
    for place in places.into_iter().rev() {
        out.insert_str(place, "pub ");
    }
    Ok(out)
}

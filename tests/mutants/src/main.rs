//! Mutants of the rules and their evaluation: changes the code in one place at a time, and asks
//! whether a test sees it. `tests/mutants/run` builds a copy of the tree with all of them.
//!
//! `put TREE FOLDER... -- FILTER...` puts the mutants of these folders into the tree, each behind a
//! switch, writes `mutants.txt` there, and makes the tests that the filters name ready for them.
//! `tell TREE RESULTS [PAGE]` tells what was found, and fails where a mutant survived that is not
//! on the list `known.txt`.

mod instrument;
mod page;
mod tests;

use std::collections::BTreeMap;
use std::fmt::Write as _;
use std::path::{Path, PathBuf};
use std::process::ExitCode;

/// Whatever went wrong, in words.
pub type Failure = Box<dyn std::error::Error>;

const USAGE: &str = "put TREE FOLDER... -- FILTER... | tell TREE RESULTS [PAGE]";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let done = match args.iter().map(String::as_str).collect::<Vec<_>>().as_slice() {
        ["put", tree, rest @ ..] => match rest.iter().position(|it| *it == "--") {
            Some(at) => put_in(Path::new(tree), &rest[..at], &rest[at + 1..]),
            None => Err(USAGE.into()),
        },
        ["tell", tree, results] => page::told(Path::new(tree), Path::new(results), None),
        ["tell", tree, results, to] => {
            page::told(Path::new(tree), Path::new(results), Some(Path::new(to)))
        }
        _ => Err(USAGE.into()),
    };
    match done {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(why) => {
            eprintln!("{why}");
            ExitCode::from(2)
        }
    }
}

/// Adds the sources below a folder, in order.
///
/// # Errors
/// When a folder cannot be read.
pub fn files(folder: &Path, found: &mut Vec<PathBuf>) -> Result<(), Failure> {
    for entry in std::fs::read_dir(folder)? {
        let path = entry?.path();
        if path.is_dir() {
            files(&path, found)?;
        } else if path.extension().is_some_and(|it| it == "rs") {
            found.push(path);
        }
    }
    found.sort();
    Ok(())
}

/// Measurements of a bench, which hold no mutant: a file, what stands there, and what remembers it.
const REMEMBERED: [(&str, &str, &str); 3] = [
    (
        "src/measure/causes.rs",
        "get_or_init(|| to_be_named(setup))",
        "get_or_init(|| crate::mutant::remembered((\"named\", setup.clone()), || to_be_named(setup)))",
    ),
    (
        "src/measure/causes.rs",
        "get_or_init(|| is_cured_by_setting(setup))",
        "get_or_init(|| crate::mutant::remembered(setup.clone(), || is_cured_by_setting(setup)))",
    ),
    (
        "src/measure/felt.rs",
        "SoundBench::new(sound).shows(fault, severity)",
        "crate::mutant::remembered((sound.clone(), fault, severity.to_bits()), \
         || SoundBench::new(sound).shows(fault, severity))",
    ),
];

/// Has the copy remember what it measures.
fn remember(tree: &Path) -> Result<(), Failure> {
    for (file, from, to) in REMEMBERED {
        let path = tree.join(file);
        let text = std::fs::read_to_string(&path)?;
        if !text.contains(from) {
            return Err(format!("{file} does not hold `{from}`").into());
        }
        std::fs::write(path, text.replace(from, to))?;
    }
    Ok(())
}

fn put_in(tree: &Path, folders: &[&str], filters: &[&str]) -> Result<bool, Failure> {
    let mut found = Vec::new();
    for folder in folders {
        files(&tree.join(folder), &mut found)?;
    }
    let (mut next, mut list, mut times) = (1, String::new(), BTreeMap::new());
    for path in found {
        let file = path.strip_prefix(tree)?.display().to_string();
        let text = std::fs::read_to_string(&path)?;
        let hash = tests::hash(&text);
        let (text, mutants) =
            instrument::instrument(&text, &mut next).map_err(|why| format!("{file}: {why}"))?;
        std::fs::write(&path, text)?;
        for it in mutants {
            let mut name = format!("{file} {}: {}", it.function, it.change);
            let nth = times.entry(name.clone()).or_insert(0);
            *nth += 1;
            if *nth > 1 {
                write!(name, " ({nth})")?;
            }
            writeln!(list, "{}\t{name}\t{}\t{hash:x}", it.number, it.line)?;
        }
    }
    std::fs::write(tree.join("mutants.txt"), list)?;
    remember(tree)?;
    let lib = tree.join("src/lib.rs");
    let text = std::fs::read_to_string(&lib)?;
    let at = instrument::first_item(&text)?.ok_or("src/lib.rs names no module")?;
    let switches = "#![allow(warnings)]\n#[macro_use]\npub mod mutant;\n";
    std::fs::write(lib, format!("{}{switches}{}", &text[..at], &text[at..]))?;
    std::fs::write(tree.join("src/mutant.rs"), include_str!("switches.rs"))?;
    let manifest = tree.join("Cargo.toml");
    let text = std::fs::read_to_string(&manifest)?;
    std::fs::write(manifest, text.replace("unsafe_code = \"forbid\"", "unsafe_code = \"allow\""))?;
    println!("{} mutants, {} tests", next - 1, tests::open(tree, filters)?);
    Ok(true)
}

//! Tidiness is a test: layers, circles, lengths, words, and that nothing is forgotten.
//!
//! The rules read the syntax tree, so that no way of writing an import hides it. What stood against
//! a rule when the rule came is on the list `known.ron`, which only shrinks:
//! `TIDY=shrink cargo test --no-default-features --features cli --test core tidy` takes from it what
//! is mended, and `TIDY=write` writes it anew, for rooms that move; its growth shows in the diff.

mod arrows;
mod facts;
mod forgotten;
mod known;
mod offence;
mod parts;
mod patterns;
mod planted;
mod report;
mod rules;
mod tree;

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::LazyLock;

use arrows::Layers;
use known::Known;
use offence::{Offence, Rule};
use tree::Tree;

/// Modules from the bottom up. A module uses what stands in the rows before its own.
const LAYERS: Layers<'static> = Layers {
    rows: &[
        &["words"],
        &["units", "rng"],
        &["physics"],
        &["appliance", "site", "instrument"],
        &["parts"],
        &["setup"],
        &["model"],
        &["catalogue"],
        &["senses"],
        &["hands"],
        &["sound"],
        &["procedure"],
        &["bench"],
        &["measure"],
        &["rules"],
        &["scenario"],
        &["record"],
        &["marking"],
        &["technician"],
        &["chart"],
        &["fidelity"],
        &["panels"],
        &["app", "cli"],
    ],
    allowed: &[("cli", "app", "`quarterturn play` opens the window")],
};

const KNOWN: &str = "tests/core/tidy/known.ron";

fn files(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    let mut entries: Vec<_> = entries.filter_map(Result::ok).map(|entry| entry.path()).collect();
    entries.sort();
    for path in entries {
        if path.ends_with("target") {
            continue;
        }
        if path.is_dir() {
            files(&path, ending, found);
        } else if path.to_string_lossy().ends_with(ending) {
            found.push(path);
        }
    }
}

/// Names and texts of the files of Rust and of messages in `folders`, from the project's root.
fn texts(folders: &[&str]) -> BTreeMap<String, String> {
    let mut found = Vec::new();
    for folder in folders {
        for ending in [".rs", ".ftl"] {
            files(Path::new(folder), ending, &mut found);
        }
    }
    found
        .into_iter()
        .map(|path| {
            let text = fs::read_to_string(&path).unwrap();
            (path.to_string_lossy().replace('\\', "/"), text)
        })
        .collect()
}

/// All offences in `tree`.
fn offences(tree: &Tree, layers: &Layers<'_>) -> Vec<Offence> {
    let mut found = arrows::against_layers(tree, layers);
    found.extend(arrows::circles(tree));
    found.extend(rules::long_functions(tree));
    found.extend(rules::long_files(tree));
    found.extend(rules::words(tree));
    found.extend(rules::unfinished(tree));
    found.extend(rules::unused(tree));
    found.extend(rules::catch_alls(tree));
    found.extend(rules::debug_texts(tree));
    found.extend(rules::short_docs(tree));
    found.extend(rules::words_in_code(tree));
    found
}

/// The sources as they are today, read once.
static TODAY: LazyLock<Tree> =
    LazyLock::new(|| Tree::new(&texts(&["src", "tests", "assets/words"])));
static OFFENCES: LazyLock<Vec<Offence>> = LazyLock::new(|| offences(&TODAY, &LAYERS));

/// The list as it must stand, rewritten first where the environment asks for it.
static LIST: LazyLock<Result<Known, String>> = LazyLock::new(|| {
    let before = fs::read_to_string(KNOWN).map_err(|error| format!("{KNOWN}: {error}"));
    let after = match std::env::var("TIDY").as_deref() {
        Ok("write") => Known::of(&OFFENCES),
        Ok("shrink") => Known::read(&before?)?.shrunk_to(&OFFENCES),
        _ => return Known::read(&before?),
    };
    fs::write(KNOWN, after.written()).map_err(|error| format!("{KNOWN}: {error}"))?;
    Ok(after)
});

#[track_caller]
fn holds(rule: Rule) {
    let known = LIST.as_ref().unwrap();
    let wrong = known.differences(&OFFENCES, rule);
    assert!(wrong.is_empty(), "{rule:?}, {} in all:\n{}", wrong.len(), wrong.join("\n"));
}

/// A file that cannot be read as Rust would escape every rule.
#[test]
fn every_file_is_read() {
    assert!(TODAY.broken.is_empty(), "{:?}", TODAY.broken);
    assert!(TODAY.program().count() > 200, "the sources are not where they are looked for");
}

/// Dependencies point one way.
#[test]
fn modules_use_only_what_stands_before_them() {
    holds(Rule::Layers);
}

/// Within a module at top level no files use each other in a circle.
#[test]
fn files_stand_in_no_circle() {
    holds(Rule::Circle);
}

/// A function fits on a page.
#[test]
fn functions_are_short() {
    holds(Rule::LongFunction);
}

/// One thing a file.
#[test]
fn files_are_short() {
    holds(Rule::LongFile);
}

/// The engine and the panels' library stay in their rooms; the core has no clock, no file, no
/// thread and no order that changes from run to run.
#[test]
fn words_stay_in_their_rooms() {
    holds(Rule::Word);
}

/// No mark of unfinished work is left.
#[test]
fn nothing_is_unfinished() {
    holds(Rule::Unfinished);
}

/// A public item is named by another file.
#[test]
fn public_items_are_used() {
    holds(Rule::Unused);
}

/// A new variant of an enum of ours stops the compiler wherever it must be thought about.
#[test]
fn our_enums_have_no_catch_all() {
    holds(Rule::CatchAll);
}

/// `Debug` text is for programmers: nobody else reads it, and nothing compares it.
#[test]
fn debug_text_is_no_value() {
    holds(Rule::DebugText);
}

/// Words that a person reads stand in `assets/words`; code holds their ids.
#[test]
fn words_stand_in_their_files() {
    holds(Rule::WordsInCode);
}

/// Documentation says more than the name.
#[test]
fn documentation_says_something() {
    holds(Rule::ShortDocs);
}

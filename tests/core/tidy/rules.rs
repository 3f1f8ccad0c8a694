//! The rules that look at one file at a time, and the search for public items that nobody names.

use std::collections::{BTreeMap, BTreeSet};

use super::offence::{Offence, Rule};
use super::tree::{Source, Tree};

const FUNCTION_LINES: usize = 70;
const FILE_LINES: usize = 500;

pub fn long_functions(tree: &Tree) -> Vec<Offence> {
    let mut found = Vec::new();
    for source in &tree.sources {
        for function in source.facts.functions.iter().filter(|it| it.lines > FUNCTION_LINES) {
            let said = format!("`{}` has {} lines", function.name, function.lines);
            let (file, line) = (&source.name, function.line);
            let offence = Offence::new(Rule::LongFunction, file, line, &function.name, said);
            found.push(Offence { amount: function.lines, ..offence });
        }
    }
    found
}

pub fn long_files(tree: &Tree) -> Vec<Offence> {
    let lines = |source: &Source| source.text.lines().count();
    tree.sources
        .iter()
        .filter(|source| lines(source) > FILE_LINES)
        .map(|source| {
            let said = format!("{} lines", lines(source));
            let offence = Offence::new(Rule::LongFile, &source.name, FILE_LINES + 1, "", said);
            Offence { amount: lines(source), ..offence }
        })
        .collect()
}

/// The core has no clock, no file, no thread and no order that changes from run to run; the engine
/// and the panels' library stay in their rooms.
fn forbidden(name: &str) -> &'static [&'static str] {
    if name.starts_with("src/app") || name.starts_with("src/cli") {
        &[]
    } else if name.starts_with("src/panels") {
        &["std::time", "Instant", "HashMap", "std::fs", "std::thread", "bevy", "bevy_egui"]
    } else if name == "src/main.rs" || name == "src/lib.rs" {
        &["HashMap"]
    } else {
        &[
            "std::time",
            "Instant",
            "SystemTime",
            "HashMap",
            "HashSet",
            "std::fs",
            "std::thread",
            "std::env",
            "println",
            "eprintln",
            "print",
            "eprint",
            "egui",
            "bevy",
            "bevy_egui",
        ]
    }
}

pub fn words(tree: &Tree) -> Vec<Offence> {
    let mut found = Vec::new();
    for source in tree.program() {
        let facts = &source.facts;
        let imports =
            facts.imports.iter().map(|import| (import.at.path.join("::"), import.at.line));
        let paths = facts.paths.iter().map(|path| (path.path.join("::"), path.line));
        let macros = facts.macros.iter().map(|(name, line)| (format!("{name}!"), *line));
        let used: Vec<(String, usize)> = imports.chain(paths).chain(macros).collect();
        for word in forbidden(&source.name) {
            let is_macro = word.ends_with("print") || word.ends_with("println");
            let lines: BTreeSet<usize> = used
                .iter()
                .filter(|(path, _)| match (word.contains("::"), is_macro) {
                    (true, _) => path == word || path.starts_with(&format!("{word}::")),
                    (false, true) => *path == format!("{word}!"),
                    (false, false) => path.split("::").any(|part| part == *word),
                })
                .map(|(_, line)| *line)
                .collect();
            for line in lines {
                found.push(Offence::new(Rule::Word, &source.name, line, word, format!("`{word}`")));
            }
        }
    }
    found
}

/// The marks are put together here, so that this file does not carry them itself.
pub fn unfinished(tree: &Tree) -> Vec<Offence> {
    let marks =
        [["FIX", "ME"], ["XX", "X"], ["TO", "DO"], ["HA", "CK"]].map(|parts| parts.concat());
    let mut found = Vec::new();
    for source in &tree.sources {
        for (number, text) in source.text.lines().enumerate() {
            let mut words = text.split(|c: char| !c.is_alphanumeric() && c != '_');
            if let Some(mark) = words.find(|word| marks.iter().any(|mark| mark == word)) {
                let said = format!("marked {mark}");
                found.push(Offence::new(Rule::Unfinished, &source.name, number + 1, mark, said));
            }
        }
        for (name, line) in &source.facts.macros {
            if ["todo", "unimplemented", "dbg"].contains(&name.as_str()) {
                let said = format!("`{name}!`");
                found.push(Offence::new(Rule::Unfinished, &source.name, *line, name, said));
            }
        }
    }
    found
}

/// Public items that no other file of the program or of its tests names: by name, so an item with
/// a common name (`new`, `step`) passes. A type passes when a public signature in its file needs it.
pub fn unused(tree: &Tree) -> Vec<Offence> {
    let mut files_with: BTreeMap<&str, usize> = BTreeMap::new();
    for source in &tree.sources {
        for ident in &source.facts.idents {
            *files_with.entry(ident).or_default() += 1;
        }
    }
    let mut found = Vec::new();
    for source in tree.program() {
        for item in &source.facts.public {
            let short = item.name.rsplit("::").next().unwrap_or_default();
            let elsewhere = files_with.get(short).is_some_and(|files| *files > 1);
            if elsewhere || item.is_type && source.facts.signatures.contains(short) {
                continue;
            }
            let said = format!("no other file names the public `{}`", item.name);
            found.push(Offence::new(Rule::Unused, &source.name, item.line, &item.name, said));
        }
    }
    found
}

pub fn catch_alls(tree: &Tree) -> Vec<Offence> {
    let mut found = Vec::new();
    for source in tree.program() {
        for it in &source.facts.catch_alls {
            let own = it.enums.iter().find_map(|path| tree.resolve(path));
            if let Some(name) = own.and_then(|own| own.rest.last().cloned()) {
                let said = format!("a catch-all arm over `{name}`");
                found.push(Offence::new(Rule::CatchAll, &source.name, it.line, &name, said));
            }
        }
    }
    found
}

pub fn debug_texts(tree: &Tree) -> Vec<Offence> {
    let mut found = Vec::new();
    for source in tree.program() {
        for line in &source.facts.debug_texts {
            let said = "`Debug` text as a value".to_owned();
            found.push(Offence::new(Rule::DebugText, &source.name, *line, "", said));
        }
    }
    found
}

/// Words for a person, and words of ours that code looks for: those would have to follow every change
/// of a message. What is looked for in texts of others (a table, a library's error) is in no message
/// of ours. Counted by module at top level.
pub fn words_in_code(tree: &Tree) -> Vec<Offence> {
    let mut found = Vec::new();
    for source in tree.program() {
        let room = format!("src/{}", source.top().unwrap_or_default());
        for (line, text) in &source.facts.wordy_texts {
            let said = format!("{}:{line}: words in code: {text:?}", source.name);
            found.push(Offence::new(Rule::WordsInCode, &room, *line, "", said));
        }
        let ours = |text: &str| tree.messages.contains(text.trim());
        for (line, text) in source.facts.searched_texts.iter().filter(|(_, text)| ours(text)) {
            let said = format!("{}:{line}: looks for words of a message: {text:?}", source.name);
            found.push(Offence::new(Rule::WordsInCode, &room, *line, "", said));
        }
    }
    found
}

/// Counted by module at top level.
pub fn short_docs(tree: &Tree) -> Vec<Offence> {
    let mut found = Vec::new();
    for source in tree.program() {
        let room = format!("src/{}", source.top().unwrap_or_default());
        let mut block: Vec<&str> = Vec::new();
        for (number, line) in source.text.lines().enumerate() {
            if let Some(text) = line.trim_start().strip_prefix("///") {
                block.extend(text.split_whitespace());
                continue;
            }
            if (1..=3).contains(&block.len()) {
                let said = format!("{}:{number}: \"{}\"", source.name, block.join(" "));
                found.push(Offence::new(Rule::ShortDocs, &room, number, "", said));
            }
            block.clear();
        }
    }
    found
}

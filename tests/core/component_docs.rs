//! The component documents: every physical module says in one template what it does and how it was
//! checked, and `docs/components.md` collects these heads in reading order.
//!
//! `UPDATE_DOCS=1 cargo test --no-default-features --features cli --test core component_docs`
//! writes the page anew.

mod friction;
mod list;
mod page;

use std::collections::BTreeSet;
use std::fs;
use std::path::{Path, PathBuf};

use list::{CHAPTERS, Kind, Module};

/// The headings of a law, in their order.
const TEMPLATE: [&str; 7] =
    ["Equation", "Assumptions", "Valid range", "Regularisation", "Source", "Left out", "Checked"];
/// The headings of a module that only holds figures or a program.
const SHORT: [&str; 2] = ["Source", "Checked"];
/// Lines of a law's head.
const LENGTH: std::ops::RangeInclusive<usize> = 12..=45;

fn root() -> PathBuf {
    PathBuf::from(".")
}

fn read(path: &str) -> String {
    fs::read_to_string(root().join(path)).unwrap_or_default()
}

/// A module's head, cut at its bold headings.
struct Head {
    /// What stands before the first heading.
    intro: Vec<String>,
    /// Heading and text, the heading's line first.
    sections: Vec<(String, Vec<String>)>,
    lines: usize,
}

impl Head {
    fn of(module: &Module) -> Self {
        let text = read(module.path);
        let mut head = Self { intro: Vec::new(), sections: Vec::new(), lines: 0 };
        for line in text.lines().map_while(|line| line.strip_prefix("//!")) {
            head.lines += 1;
            let line = line.strip_prefix(' ').unwrap_or(line);
            if let Some((heading, rest)) =
                line.strip_prefix("**").and_then(|bold| bold.split_once(".**"))
            {
                head.sections.push((heading.to_owned(), vec![rest.trim().to_owned()]));
            } else if let Some((_, lines)) = head.sections.last_mut() {
                lines.push(line.to_owned());
            } else {
                head.intro.push(line.to_owned());
            }
        }
        head
    }

    fn section(&self, wanted: &str) -> String {
        self.sections
            .iter()
            .filter(|(heading, _)| heading == wanted)
            .map(|(_, lines)| lines.join(" "))
            .collect()
    }
}

fn modules() -> impl Iterator<Item = &'static Module> {
    CHAPTERS.iter().flat_map(|chapter| chapter.modules)
}

fn rust_files(folder: &Path, found: &mut BTreeSet<String>) {
    for entry in fs::read_dir(folder).into_iter().flatten().filter_map(Result::ok) {
        let path = entry.path();
        if path.is_dir() {
            rust_files(&path, found);
        } else if path.extension().is_some_and(|ending| ending == "rs") {
            let name = path.strip_prefix(root()).unwrap_or(&path);
            found.insert(name.to_string_lossy().replace('\\', "/"));
        }
    }
}

/// No module of the model is missing from the page, and none is there that is gone.
#[test]
fn every_module_has_its_place() {
    let mut found = BTreeSet::new();
    for folder in ["physics", "appliance", "site", "instrument"] {
        rust_files(&root().join("src").join(folder), &mut found);
    }
    let listed: BTreeSet<String> = modules().map(|module| module.path.to_owned()).collect();
    assert_eq!(modules().count(), listed.len(), "a module is listed twice");
    let missing: Vec<_> = found.difference(&listed).collect();
    let gone: Vec<_> = listed.difference(&found).collect();
    assert!(
        missing.is_empty() && gone.is_empty(),
        "tests/core/component_docs/list.rs: not listed {missing:?}, not there {gone:?}"
    );
}

/// Every law has all headings in order and says something under each; figures have their source.
#[test]
fn heads_follow_the_template() {
    let mut wrong = Vec::new();
    for module in modules() {
        let head = Head::of(module);
        let headings: Vec<&str> = head.sections.iter().map(|(heading, _)| &**heading).collect();
        let wanted: &[&str] = match module.kind {
            Kind::Law => &TEMPLATE,
            Kind::Figures => &SHORT,
            Kind::Folder => &[],
        };
        if headings != wanted {
            wrong.push(format!("{}: has {headings:?}, should have {wanted:?}", module.path));
        }
        if head.intro.iter().all(|line| line.is_empty()) {
            wrong.push(format!("{}: no first sentence", module.path));
        }
        for (heading, lines) in &head.sections {
            if lines.join("").trim().is_empty() {
                wrong.push(format!("{}: nothing under {heading}", module.path));
            }
        }
        if module.kind == Kind::Law && !LENGTH.contains(&head.lines) {
            wrong.push(format!("{}: {} lines, wanted {LENGTH:?}", module.path, head.lines));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// What stands between backticks in a text.
fn quoted(text: &str) -> impl Iterator<Item = &str> {
    text.split('`').skip(1).step_by(2)
}

/// Every file named under "Checked" is there, and every test named there stands in one of them.
#[test]
fn what_is_said_to_be_checked_is_checked() {
    let mut wrong = Vec::new();
    for module in modules().filter(|module| module.kind != Kind::Folder) {
        let checked = Head::of(module).section("Checked");
        let is_file = |word: &&str| word.starts_with("tests/") || word.starts_with("src/");
        let files: Vec<&str> = quoted(&checked).filter(is_file).collect();
        for file in files.iter().filter(|file| !root().join(file).is_file()) {
            wrong.push(format!("{}: no file {file}", module.path));
        }
        if files.is_empty() {
            wrong.push(format!("{}: names no file", module.path));
        }
        let tests: String = files.iter().map(|file| read(file)).collect();
        for name in quoted(&checked).filter_map(|word| word.strip_suffix("()")) {
            if !tests.contains(&format!("#[test]\nfn {name}()"))
                && !tests.contains(&format!("#[test]\n    fn {name}()"))
            {
                wrong.push(format!("{}: no test {name} in {files:?}", module.path));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The page holds what the modules say now.
#[test]
fn the_page_is_fresh() {
    let fresh = page::write();
    let path = root().join("docs/components.md");
    if std::env::var_os("UPDATE_DOCS").is_some_and(|value| value == "1") {
        fs::write(&path, &fresh).expect("docs/components.md can be written");
    }
    let stored = fs::read_to_string(&path).unwrap_or_default();
    let differs = fresh.lines().zip(stored.lines()).position(|(fresh, stored)| fresh != stored);
    assert!(
        fresh == stored,
        "docs/components.md is stale from line {}; run with UPDATE_DOCS=1",
        differs.unwrap_or_else(|| fresh.lines().count().min(stored.lines().count())) + 1
    );
}

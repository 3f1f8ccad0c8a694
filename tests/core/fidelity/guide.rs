//! The guide as it is committed.

use std::fs;
use std::path::Path;
use std::sync::LazyLock;

use quarterturn::fidelity::left_out::left_out;
use quarterturn::fidelity::{Check, Verdict, all, guide, tables};

/// Run once for all tests of this file.
static ALL: LazyLock<Vec<Check>> = LazyLock::new(all);

fn root() -> &'static Path {
    Path::new(".")
}

/// Every check passes, or misses for a reason that is told; each has a source, a reason and rows.
#[test]
fn every_check_holds_and_says_why() {
    let checks = &*ALL;
    assert!(checks.len() > 100, "{}", checks.len());
    for (k, check) in checks.iter().enumerate() {
        assert_ne!(check.verdict(), Verdict::Fail, "{}", check.id);
        for text in [&check.id, &check.claim, &check.source, &check.condition, &check.reason] {
            assert!(text.trim().len() > 2, "{}: {text:?}", check.id);
        }
        assert!(!check.unit.is_empty() && !check.rows.is_empty(), "{}", check.id);
        assert!(checks.iter().take(k).all(|other| other.id != check.id), "{} twice", check.id);
        if let Some(why) = &check.known_miss {
            assert!(why.len() > 40, "{}: {why}", check.id);
            // A bound beside it, or the same course with finer steps.
            let stem = format!("{}.", check.id);
            let fine = fine_steps(&check.id);
            let bound = checks.iter().any(|c| {
                (c.id.starts_with(&stem) || Some(&c.id) == fine.as_ref()) && c.known_miss.is_none()
            });
            let alone = ALONE.contains(&check.id.as_str());
            assert!(
                bound != alone,
                "{}: nothing holds beside the miss, or it is on the list",
                check.id
            );
        }
    }
}

/// Misses that stand alone: another program's law or property is another one as a whole, and the
/// text says by how much.
const ALONE: [&str; 5] = [
    "lines.friction-transition",
    "lines.friction-turbulent",
    "properties.propane-density",
    "properties.natural-viscosity",
    "properties.propane-vapour-pure",
];

/// The id of the same transient with finer steps.
fn fine_steps(id: &str) -> Option<String> {
    let mut parts = id.strip_prefix("transients.")?.splitn(2, '.');
    let (group, case) = (parts.next()?, parts.next()?);
    Some(format!("transients.{group}-fine.{case}-fine"))
}

/// The committed pages are those of a fresh run; written by
/// `cargo run --no-default-features --features cli -- fidelity --write docs`.
#[test]
fn the_committed_guide_is_fresh() {
    let set_aside = tables::own().unwrap().set_aside;
    let pages = guide::pages(&ALL, &set_aside);
    for page in &pages {
        let path = root().join("docs").join(&page.name);
        let committed = fs::read_to_string(&path).unwrap_or_default();
        assert!(committed == page.text, "{} is stale", page.name);
        assert!(!page.text.contains("NaN"), "{}", page.name);
    }
    let figures = fs::read_dir(root().join("docs/fidelity")).unwrap().count();
    assert_eq!(figures, pages.len() - 1, "a figure that is not drawn any more");
    assert_eq!(figures, guide::FIGURES.len(), "a figure without rows");
}

/// Every module that says what it leaves out stands in the guide.
#[test]
fn nothing_left_out_is_left_out() {
    let parts = left_out();
    let mut folders = vec![root().join("src")];
    let mut found = 0;
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(folder).unwrap() {
            let path = entry.unwrap().path();
            if path.is_dir() {
                folders.push(path);
                continue;
            }
            if !fs::read_to_string(&path).unwrap().contains("//! **Left out.**") {
                continue;
            }
            let name =
                path.strip_prefix(root().join("src")).unwrap().to_string_lossy().into_owned();
            let part = parts.iter().find(|part| part.module == name);
            let part = part.unwrap_or_else(|| panic!("{name} is not in the guide"));
            assert!(part.text.ends_with('.') && part.what.len() > 10, "{part:?}");
            found += 1;
        }
    }
    assert_eq!(found, parts.len());
}

/// Every table that is kept with the program is read and used.
#[test]
fn every_reference_is_used() {
    for (name, text) in tables::TABLES.iter() {
        match tables::read(name, text.as_bytes()).unwrap() {
            tables::Found::Table(outcome) => assert!(!outcome.checks.is_empty(), "{name}"),
            tables::Found::NotUsed(_) | tables::Found::Unknown => panic!("{name} is not used"),
        }
    }
}

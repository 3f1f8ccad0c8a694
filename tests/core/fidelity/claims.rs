//! The rows of claims.ron and tables.ron: each is used, and no check goes without one.

use std::collections::BTreeSet;
use std::fs;

use quarterturn::fidelity::claims::{self, Bound, Claims};
use quarterturn::fidelity::{Check, Tolerance, all, cases, tables};

fn rows() -> Claims {
    claims::read(claims::TEXT).unwrap()
}

/// Pairs of manifold pressures as an appliance's table prints them (figures of our own); no such
/// table is kept with the program, and its claims have to be asked for.
const PAIRS: &str = "drill,high_inwc,low_inwc,source,confidence\n#43,3.6,1.6,our own,computed\n";

/// Checks that the program's own references do not call for.
fn others() -> Vec<Check> {
    let mut checks = match tables::read("orifice_two_stage_manifold_pairs.csv", PAIRS.as_bytes()) {
        Ok(tables::Found::Table(outcome)) => outcome.checks,
        other => panic!("{other:?}"),
    };
    checks.extend(
        cases::run(
            "{\"format\": \"quarterturn-reference-cases\", \"version\": 1, \"cases\": [
            {\"id\": \"a\", \"kind\": \"property\", \"quantity\": \"gamma\", \"expect\": 1.3}]}",
        )
        .unwrap(),
    );
    checks
}

/// Every check stands on a row, and every row bears a check.
#[test]
fn every_check_has_a_row_and_every_row_a_check() {
    let checks = [all(), others()].concat();
    let without: Vec<&str> =
        checks.iter().filter(|check| check.row.is_empty()).map(|check| check.id.as_str()).collect();
    assert!(without.is_empty(), "no row in claims.ron: {without:?}");
    let used: BTreeSet<&str> = checks.iter().map(|check| check.row).collect();
    // A kept file of cases that cannot be read: it always can.
    let idle = ["cases.unread"];
    let rows = rows();
    let unused: Vec<&str> = rows
        .claims
        .iter()
        .map(|claim| claim.id.as_str())
        .filter(|id| !used.contains(id) && !idle.contains(id))
        .collect();
    assert!(unused.is_empty(), "rows of claims.ron that no check uses: {unused:?}");
    for miss in &rows.misses {
        let told = checks.iter().any(|check| check.known_miss.as_ref() == Some(&miss.why));
        assert!(told, "{}: no table misses for this reason", miss.id);
    }
}

/// No name stands twice, no text is empty, and no check leaves a word in braces.
#[test]
fn rows_are_whole() {
    let rows = rows();
    let ids: Vec<&str> = rows
        .claims
        .iter()
        .map(|claim| &claim.id)
        .chain(rows.misses.iter().map(|miss| &miss.id))
        .map(String::as_str)
        .collect();
    assert_eq!(ids.iter().collect::<BTreeSet<_>>().len(), ids.len());
    for claim in &rows.claims {
        let texts = [&claim.id, &claim.chapter, &claim.claim, &claim.reason];
        assert!(texts.iter().all(|text| !text.trim().is_empty()), "{claim:?}");
        assert_eq!(claim.truth.is_some(), !claim.source.is_empty(), "{}", claim.id);
    }
    for check in [all(), others()].concat() {
        assert!(!check.unit.is_empty(), "{} has no unit", check.id);
        for text in [&check.claim, &check.condition] {
            assert!(!text.contains(['{', '}']), "{}: {text}", check.id);
        }
    }
}

/// A row that is misspelt, or has a field nobody knows, is refused.
#[test]
fn a_broken_row_is_refused() {
    for (from, to) in [
        ("chapter:", "chapters:"),
        ("AtMost", "Atmost"),
        ("Absolute(0.0005)", "Absolute(wide)"),
        ("unit:", "unity: 3, unit:"),
        ("TableOff(-0.0263, 0.0241)", "TableOff(-0.0263)"),
    ] {
        assert!(claims::TEXT.contains(from), "{from}");
        claims::read(&claims::TEXT.replacen(from, to, 1)).expect_err(to);
    }
}

/// Beside a table that stands 10 to 4 % under the code's equation the model's band of −0.5 to +0.8 %
/// about that equation is one of +3.6 to +12 % about the table.
#[test]
fn a_band_about_the_equation_is_moved_to_the_table() {
    let own = Tolerance::Relative(-0.005, 0.008);
    let Tolerance::Relative(below, above) = Bound::TableOff(-0.1, -0.04).beside(own) else {
        panic!("another kind of band");
    };
    assert!((below - (0.995 / 0.96 - 1.0)).abs() < 1e-12, "{below}");
    assert!((above - (1.008 / 0.9 - 1.0)).abs() < 1e-12, "{above}");
    assert_eq!(Bound::Own.beside(own), own);
}

/// Every table of the list is there, each once, and every table that is there stands on the list.
#[test]
fn every_table_stands_on_the_list() {
    let list = tables::read_list().unwrap();
    let named: Vec<&str> = list.kept.iter().map(|row| row.name.as_str()).collect();
    let read: Vec<&str> = tables::TABLES.iter().map(|(name, _)| *name).collect();
    assert_eq!(named, read, "a table of the list is not in the folder");
    let mut files: Vec<String> = fs::read_dir("assets/reference")
        .unwrap()
        .map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned())
        .filter(|name| !name.ends_with(".ron"))
        .collect();
    files.sort();
    let mut named = named;
    named.sort_unstable();
    assert_eq!(files, named);
    for (name, why) in &list.not_used {
        assert!(!named.contains(&name.as_str()) && why.len() > 20, "{name}: {why}");
    }
}

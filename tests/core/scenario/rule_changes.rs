//! A scenario may change rules of the shared set.

use quarterturn::rules::{Grade, Severity, shared};
use quarterturn::scenario::{Code, check, load};

use super::{natural, spoiled};

fn with_rules(rules: &str) -> String {
    spoiled(&natural(), "marking: (", &format!("marking: (rules: [{rules}], "))
}

/// Without changes the shared set applies as it is; weight, severity and absence are taken over.
#[test]
fn changes_reach_the_rule_book() {
    let plain = load(&natural()).unwrap().marking.rule_book().unwrap();
    assert_eq!(plain, shared().unwrap());
    let text = with_rules(
        "(id: \"head-height-only\", weight: 2, severity: Minor), (id: \"ignition\", applies: false)",
    );
    let book = load(&text).unwrap().marking.rule_book().unwrap();
    assert_eq!(book.rules.len() + 1, plain.rules.len());
    assert!(book.rule("ignition").is_none());
    assert!(book.rules.iter().all(|rule| !rule.follows_from.iter().any(|id| id == "ignition")));
    let changed = book.rule("head-height-only").unwrap();
    let charge = book.charge(changed, Grade::Usual);
    assert_eq!((charge.severity, charge.gates), (Severity::Minor, false));
    assert!((charge.points - 2.0).abs() < 1e-12);
}

/// A weight of the job's own is not hidden by the cap of its family; a rule made minor fails no job.
#[test]
fn what_a_job_asks_for_counts() {
    let text =
        with_rules("(id: \"drill-not-told\", weight: 15), (id: \"jumper-left\", severity: Minor)");
    let book = load(&text).unwrap().marking.rule_book().unwrap();
    let unsaid = book.rule("drill-not-told").unwrap();
    assert!((book.charge(unsaid, Grade::Usual).points - 15.0).abs() < 1e-12);
    assert!((book.scoring.cap(unsaid.family) - 15.0).abs() < 1e-12);
    assert!(shared().unwrap().scoring.cap(unsaid.family) < 15.0);
    let jumper = book.rule("jumper-left").unwrap();
    assert!(!book.charge(jumper, Grade::Usual).gates && jumper.essential.is_some());
}

/// Rules that do not exist, stand twice or weigh differently by seed are refused.
#[test]
fn bad_changes_are_refused() {
    let found = check("job.ron", &with_rules("(id: \"head-heigth-only\")"));
    assert_eq!((found.len(), found[0].code), (1, Code::UnknownName), "{found:#?}");
    assert_eq!(found[0].nearest.as_deref(), Some("head-height-only"));
    let found = check("job.ron", &with_rules("(id: \"ignition\"), (id: \"ignition\")"));
    assert_eq!(found[0].path, "marking.rules[1].id");
    let found = check("job.ron", &with_rules("(id: \"ignition\", weight: Between(1, 2))"));
    assert_eq!(found[0].path, "marking.rules[0].weight");
    let found = check("job.ron", &with_rules("(id: \"ignition\", weight: 400)"));
    assert_eq!(found[0].code, Code::OutOfRange);
    let critical = "(id: \"drill-not-told\", severity: Critical)";
    let found = check("job.ron", &with_rules(critical));
    assert_eq!(found[0].path, "marking.rules[0].severity");
    assert!(found[0].message.contains("decides no essential"), "{found:?}");
    assert!(check("job.ron", &with_rules("(id: \"door-off\", severity: Critical)")).is_empty());
}

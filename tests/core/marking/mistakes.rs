//! The mistakes of the trade: each there once, with rules that there are, or with a reason.

use quarterturn::rules::mistake::{all, read};
use quarterturn::rules::shared;
use quarterturn::scenario::{Topic, explain, topics};

const TEXT: &str = include_str!("../../../assets/rules/mistakes.ron");

/// Seventy-seven, each by its number once; the names differ.
#[test]
fn each_mistake_is_there_once() {
    let mistakes = all().unwrap();
    let numbers: Vec<&str> = mistakes.iter().map(|it| it.number.as_str()).collect();
    let due: Vec<String> = (1..=77).map(|number| format!("M{number:02}")).collect();
    assert_eq!(numbers, due);
    let mut names: Vec<&str> = mistakes.iter().map(|it| it.name.as_str()).collect();
    names.sort_unstable();
    names.dedup();
    assert_eq!(names.len(), mistakes.len());
}

/// Every rule speaks for a mistake or for a competency.
#[test]
fn every_rule_speaks_for_something() {
    let mistakes = all().unwrap();
    for rule in shared().unwrap().rules {
        let speaks = mistakes.iter().any(|it| it.rules.contains(&rule.id));
        assert!(speaks || !rule.claims.is_empty(), "{}", rule.id);
    }
}

/// What contradicts the rules is refused, with the line of the mistake.
#[test]
fn a_list_that_contradicts_the_rules_is_refused() {
    let book = shared().unwrap();
    for (from, to, words) in [
        ("rules: [\"cap-off\"],", "rules: [\"cap-of\"],", "there is none"),
        ("rules: [\"cap-off\"],", "rules: [],", "neither rules nor a reason"),
        ("number: \"M40\"", "number: \"M39\"", "where M40 is due"),
        ("number: \"M40\"", "numbr: \"M40\"", "numbr"),
    ] {
        assert_eq!(TEXT.matches(from).count(), 1, "{from}");
        let error = read(&TEXT.replace(from, to), &book).unwrap_err();
        assert!(error.message.contains(words), "{to}: {error}");
        let before = TEXT.lines().take_while(|line| !line.contains(from)).count();
        let is_number = |line: &&str| line.trim_start().starts_with("number:");
        let back = TEXT.lines().take(before + 1).collect::<Vec<_>>().into_iter().rev();
        let place = before + 1 - back.take_while(|line| !is_number(line)).count();
        assert_eq!(error.line, place, "{to}: {error}");
        assert!(error.column > 1, "{to}: {error}");
    }
}

/// `explain` tells of one and of all.
#[test]
fn mistakes_are_told() {
    let told = explain("M39").unwrap();
    assert!(told.starts_with("M39\n") && told.contains("left-outside-band"), "{told}");
    assert!(explain("m03").unwrap().contains("Not modelled"), "a small letter will do");
    let told = explain("mistakes").unwrap();
    assert!(told.contains("M01 ") && told.contains("M77 "), "{told}");
    let all = topics("mistakes").unwrap();
    assert!(all.len() == 77 && all.iter().all(|it| matches!(it, Topic::Mistake(_))));
    assert!(explain("M78").is_err());
}

//! What makes a check pass, miss or fail.

use quarterturn::fidelity::{Check, Row, Tolerance, Truth, Verdict};

fn check(tolerance: Tolerance, rows: Vec<Row>) -> Check {
    Check {
        id: "a.b".to_owned(),
        row: "",
        chapter: "A",
        claim: "It holds.".to_owned(),
        truth: Truth::Published,
        source: "a table".to_owned(),
        condition: "always".to_owned(),
        tolerance,
        reason: "it is printed so".to_owned(),
        unit: "Pa",
        rows,
        known_miss: None,
    }
}

/// Rounding of the reference is taken off before judging, and no more than that.
#[test]
fn rounding_is_taken_off_once() {
    let row = |result: f64| Row::new("x", 100.0, result).rounded(0.5);
    assert!((row(100.4).judged() - 100.0).abs() < 1e-12);
    assert!((row(101.5).judged() - 101.0).abs() < 1e-12);
    assert!((row(98.5).judged() - 99.0).abs() < 1e-12);
    let band = Tolerance::Relative(-0.01, 0.01);
    assert_eq!(check(band, vec![row(101.5)]).verdict(), Verdict::Pass);
    assert_eq!(check(band, vec![row(101.6)]).verdict(), Verdict::Fail);
}

/// No row, no pass; a result that is no number fails and is the worst; a miss with a reason is a
/// known one.
#[test]
fn nothing_and_no_number_do_not_pass() {
    let band = Tolerance::Absolute(1.0);
    assert_eq!(check(band, Vec::new()).verdict(), Verdict::Fail);
    let rows = vec![Row::new("good", 1.0, 1.0), Row::new("none", 1.0, f64::NAN)];
    let mut with = check(band, rows);
    assert_eq!(with.verdict(), Verdict::Fail);
    assert_eq!(with.worst().unwrap().label, "none");
    with.known_miss = Some("because".to_owned());
    assert_eq!(with.verdict(), Verdict::KnownMiss);
    let infinite = check(band, vec![Row::new("far", 1.0, f64::INFINITY).rounded(0.5)]);
    assert_eq!(infinite.verdict(), Verdict::Fail);
}

/// The worst row of a one-sided band is the one nearest its edge or beyond, not the largest number.
#[test]
fn the_worst_row_is_seen_from_the_middle_of_the_band() {
    let rows = vec![Row::new("low", 100.0, 99.6), Row::new("high", 100.0, 100.5)];
    let worst = check(Tolerance::Relative(-0.005, 0.015), rows);
    assert_eq!(worst.worst().unwrap().label, "low");
}

//! Numbers struck out: what a slip costs that is put right, and what guessing costs.

use quarterturn::parts::{Level, Port, Screw, Stage};
use quarterturn::rules::{Essential, Severity};
use quarterturn::senses::meter_history::Spell;
use quarterturn::units::PA_PER_INWC;

use super::sheet::{FULL_LOAD, HIGH, LOW, NONE, REST, Sheet, draw, spell};

/// A job on which the inlet and the manifold stood at these numbers.
fn read() -> Sheet {
    let mut sheet = Sheet::new();
    sheet.stood(Port::Inlet, REST, 7.5).stood(Port::Inlet, LOW, 6.9);
    sheet.stood(Port::Inlet, HIGH, 6.66).stood(Port::Inlet, FULL_LOAD, 6.2);
    sheet.stood(Port::Manifold, LOW, 1.7).stood(Port::Manifold, HIGH, 3.5);
    sheet
}

/// A slip that is struck out and put right costs nothing, whatever slip it was and however long it
/// took, as long as no screw was turned meanwhile; left standing it is charged. The first two of a
/// job that stand for a while are free, a third costs a little.
#[test]
fn a_slip_struck_out_costs_nothing() {
    for wrong in [66.6, 6.9, 1.7, 4.0, 5.0] {
        let mut sheet = read();
        sheet.write(Port::Inlet, HIGH, wrong).later();
        assert_eq!(sheet.slips().len(), 1, "{wrong}");
        let mut turned = read();
        turned.write(Port::Inlet, HIGH, wrong);
        turned.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.5);
        turned.stood(Port::Inlet, HIGH, 6.66).write(Port::Inlet, HIGH, 6.66);
        assert_eq!(turned.slips().len(), 1, "{wrong}");
        for _ in 0..60 {
            sheet.later();
        }
        sheet.write(Port::Inlet, HIGH, 6.66);
        assert_eq!(sheet.slips(), NONE, "{wrong}");
    }
    let mut sheet = read();
    for (stage, wrong, right) in [(REST, 75.0, 7.5), (LOW, 69.0, 6.9), (HIGH, 66.6, 6.66)] {
        assert_eq!(sheet.slips(), NONE);
        sheet.write(Port::Inlet, stage, wrong).later().later().later().later();
        sheet.write(Port::Inlet, stage, right);
    }
    assert_eq!(sheet.severity("invented"), Some(Severity::Minor));
    assert!(sheet.gates(Essential::MeterTrue).is_empty());
}

/// Slips of the pencil that are struck out at once cost nothing, on every line and again on one
/// line; something else written between, or a minute gone by, and they count as slips that stood.
#[test]
fn slips_struck_out_at_once_cost_nothing() {
    const LINES: [(Stage, f64); 4] = [(REST, 7.5), (LOW, 6.9), (HIGH, 6.66), (FULL_LOAD, 6.2)];
    let mut sheet = read();
    for (stage, right) in LINES.into_iter().chain(LINES).chain(LINES) {
        sheet.write(Port::Inlet, stage, 10.0 * right).later().write(Port::Inlet, stage, right);
        sheet.later();
    }
    assert_eq!(sheet.slips(), NONE);
    let mut between = read();
    for (stage, right) in LINES {
        between.write(Port::Inlet, stage, 10.0 * right).write(Port::Manifold, LOW, 1.7);
        between.write(Port::Inlet, stage, right);
    }
    assert_eq!(between.slips(), [("invented".to_owned(), 2)]);
    assert_eq!(between.severity("invented"), Some(Severity::Minor));
}

/// Three wrong numbers before the right one are guesses, the last of them struck out at once or
/// not; the same line read and slipped on three times is not.
#[test]
fn guesses_are_counted_up_to_the_right_number() {
    let mut guessed = read();
    for number in [5.4, 6.3, 6.4, 6.66] {
        guessed.write(Port::Inlet, HIGH, number).later();
    }
    assert_eq!(guessed.slips(), [("invented".to_owned(), 3)]);
    assert_eq!(guessed.gates(Essential::MeterTrue), ["invented"]);
    let mut again = read();
    for number in [66.6, 6.66, 66.6, 6.66, 66.6, 6.66] {
        again.write(Port::Inlet, HIGH, number).later();
    }
    assert_eq!(again.slips(), NONE);
}

/// A wrong number after the right one is not struck out.
#[test]
fn a_wrong_number_after_the_right_one_stands() {
    let mut sheet = read();
    sheet.write(Port::Inlet, HIGH, 6.66).write(Port::Inlet, HIGH, 3.0);
    assert_eq!(sheet.severity("invented"), Some(Severity::Major));
}

/// Three false numbers on one line and more are guesses, the right one at last or not.
#[test]
fn guesses_gate() {
    for (guesses, gated) in [(2, false), (3, true), (10, true)] {
        let mut sheet = read();
        for guess in 0..guesses {
            sheet.write(Port::Inlet, HIGH, 8.0 + f64::from(guess));
        }
        sheet.write(Port::Inlet, HIGH, 6.66);
        assert_eq!(sheet.gates(Essential::MeterTrue) == ["invented"], gated, "{guesses}");
    }
}

/// At once is within thirty seconds (common practice), and a screw turned once it is put right changes
/// nothing of that.
#[test]
fn at_once_is_within_thirty_seconds() {
    let slips = |ticks: u64| {
        let mut sheet = read();
        for (stage, right) in [(REST, 7.5), (LOW, 6.9), (HIGH, 6.66)] {
            sheet.write(Port::Inlet, stage, 10.0 * right).pass(ticks);
            sheet.write(Port::Inlet, stage, right).later();
        }
        sheet.turn(Screw::High, 1, Some(Level::High), Some(Port::Manifold), 3.5);
        sheet.slips()
    };
    assert_eq!(slips(1_500), NONE);
    assert_eq!(slips(1_501), [("invented".to_owned(), 1)]);
}

/// A number of a meter that is off was caught in time where a later one on its line is true, whatever
/// was written between.
#[test]
fn a_meter_that_was_off_is_caught_by_a_true_number() {
    let severity = |errors: &[f64]| {
        let mut sheet = Sheet::new();
        for &error in errors {
            let error_pa = error * PA_PER_INWC;
            let off = Spell { error_pa, ..spell(Port::Inlet, draw(HIGH), 6.66, 6.66) };
            sheet.showed(off, Some((6.66, 6.66))).write(Port::Inlet, HIGH, 6.66).later();
        }
        sheet.severity("meter-off")
    };
    let left = severity(&[0.1, 0.1]);
    assert_eq!(severity(&[0.0]), None);
    assert!(severity(&[0.1, 0.1, 0.0]) < left && left.is_some(), "{left:?}");
}

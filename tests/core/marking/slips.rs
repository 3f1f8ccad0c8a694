//! Numbers struck out: what a slip costs that is put right, and what guessing costs.

use quarterturn::parts::{Level, Port, Screw};
use quarterturn::rules::{Essential, Severity};

use super::sheet::{FULL_LOAD, HIGH, LOW, NONE, REST, Sheet};

/// A job on which the inlet and the manifold stood at these numbers.
fn read() -> Sheet {
    let mut sheet = Sheet::new();
    sheet.stood(Port::Inlet, REST, 7.5).stood(Port::Inlet, LOW, 6.9);
    sheet.stood(Port::Inlet, HIGH, 6.66).stood(Port::Inlet, FULL_LOAD, 6.2);
    sheet.stood(Port::Manifold, LOW, 1.7).stood(Port::Manifold, HIGH, 3.5);
    sheet
}

/// A slip that is struck out and put right costs nothing, whatever slip it was and however long it took,
/// as long as no screw was turned meanwhile; left standing it is charged. The first two of a job are
/// free, a third costs a little.
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
        sheet.write(Port::Inlet, stage, wrong).write(Port::Inlet, stage, right);
    }
    assert_eq!(sheet.severity("invented"), Some(Severity::Minor));
    assert!(sheet.gates(Essential::MeterTrue).is_empty());
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

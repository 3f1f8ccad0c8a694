//! Writing readings: exactly what is typed, or words about why not.

use egui_kittest::kittest::Queryable;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::panels::entry::{thousandths, written};
use quarterturn::parts::{Level, Phase, Place, Port, Reading, Stage};
use quarterturn::units::PressureUnit;

use crate::fixture::{App, Which, seen, window};

fn type_into(cell: &str, text: &str, press_unit: usize) -> (Vec<Command>, bool) {
    let mut harness = window(App::new(Which::Job, seen(Place::Hall)), 1280.0, 720.0);
    harness.get_by_label(cell).click();
    harness.run();
    let unit = PressureUnit::ALL;
    for at in 0..press_unit {
        let label = format!("Unit {}, press for the next", unit[at % 3].label());
        harness.get_by_label(&label).click();
        harness.run();
    }
    let name = cell.split(':').next().unwrap();
    let field = harness.get_by_role_and_label(egui::accesskit::Role::TextInput, name);
    field.focus();
    field.type_text(text);
    harness.run();
    harness.get_by_label("Write").click();
    harness.run();
    let refused = harness.query_by_label_contains("✗").is_some();
    (harness.state().commands.clone(), refused)
}

/// A number in the chosen unit becomes exactly that reading.
#[test]
fn a_typed_number_is_written_with_its_unit() {
    let (commands, refused) = type_into("Manifold, low fire, found: not written", "4.87", 0);
    let reading = Reading {
        port: Port::Manifold,
        stage: Stage::Firing(Level::Low),
        phase: Phase::Found,
        thousandths: 4870,
        unit: PressureUnit::InWc,
    };
    assert_eq!(commands, [Command::Act(Action::Write(reading))]);
    assert!(!refused);

    let (commands, _) = type_into("Inlet, full connected load, left: not written", "−0,25", 1);
    let reading = Reading {
        port: Port::Inlet,
        stage: Stage::FullLoad,
        phase: Phase::Left,
        thousandths: -250,
        unit: PressureUnit::KPa,
    };
    assert_eq!(commands, [Command::Act(Action::Write(reading))]);
}

/// What is no number is refused in words, and nothing is written.
#[test]
fn what_is_no_number_is_refused_in_words() {
    for bad in ["", "4.9 in", "four", "4.9.1", "1.2345", "99999999", "-", "."] {
        let (commands, refused) = type_into("Inlet, lock-up, found: not written", bad, 0);
        assert_eq!(commands, [], "{bad:?}");
        assert!(refused, "{bad:?} went unremarked");
    }
}

/// Reading and writing of thousandths.
#[test]
fn numbers_read_as_typed() {
    for (typed, wanted) in [
        ("4.9", 4_900),
        (" 13 ", 13_000),
        (".5", 500),
        ("4.", 4_000),
        ("0,001", 1),
        ("+1.70", 1_700),
    ] {
        assert_eq!(thousandths(typed), Ok(wanted), "{typed}");
    }
    for (value, wanted) in
        [(4_900, "4.9"), (4_870, "4.87"), (0, "0.0"), (-250, "−0.25"), (1, "0.001")]
    {
        assert_eq!(written(value), wanted);
        assert_eq!(thousandths(wanted), Ok(value));
    }
}

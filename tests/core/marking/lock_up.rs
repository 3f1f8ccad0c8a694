//! The lock-up after flow: the inlet at rest once more, the meter on it since the burners stopped. It is
//! watched for a minute at least (common practice: one to three); the card of the rig asks for a hold of
//! 180 s at rest.

use quarterturn::hands::action::Action;
use quarterturn::parts::{Ending, Phase, Port, Push, Screw, Stage};
use quarterturn::rules::Severity;
use quarterturn::setup::SupplyRight;
use quarterturn::units::PressureUnit;

use super::sheet::{FULL_LOAD, HIGH, LOW, NONE, REST, Sheet};

const AGAIN: Stage = Stage::RestAgain;
const BEFORE: [(Stage, f64); 4] = [(REST, 7.5), (LOW, 6.9), (HIGH, 6.66), (FULL_LOAD, 6.2)];

/// The inlet read in these states, on this bench.
fn read(mut sheet: Sheet, states: &[(Stage, f64)]) -> Sheet {
    for &(stage, number) in states {
        sheet.read(Port::Inlet, stage, number);
    }
    sheet
}

fn in_every_state() -> Sheet {
    read(Sheet::new(), &BEFORE)
}

/// At rest for so many times ten seconds, with this number.
fn rests(sheet: &mut Sheet, spells: usize, number: f64) -> &mut Sheet {
    for _ in 0..spells {
        sheet.stood(Port::Inlet, AGAIN, number);
    }
    sheet
}

fn unread(sheet: &mut Sheet) -> usize {
    sheet.handed_over(Ending::InService);
    sheet.times("lock-up-unread")
}

/// Never read after flow, it is missing; read after a minute it is not, after less it is read too soon. A
/// card that asks for a shorter hold asks for no longer one here.
#[test]
fn the_lock_up_is_watched_for_a_minute() {
    assert_eq!(unread(&mut in_every_state()), 1);
    for (spells, hold_s, counts) in [(6, 180.0, 0), (5, 180.0, 1), (3, 30.0, 0), (2, 30.0, 1)] {
        let mut sheet = in_every_state();
        sheet.setup.card.hold_s = hold_s;
        rests(&mut sheet, spells, 7.6).write(Port::Inlet, AGAIN, 7.6);
        assert_eq!(unread(&mut sheet), counts, "{spells} spells, {hold_s} s");
        assert_eq!(sheet.slips(), NONE);
    }
    let mut sheet = in_every_state();
    rests(&mut sheet, 5, 7.6).write(Port::Inlet, AGAIN, 7.6);
    sheet.handed_over(Ending::InService);
    assert_eq!(sheet.severity("lock-up-unread"), Some(Severity::Major));
    let seen = sheet.finding("lock-up-unread").unwrap().seen;
    assert!(seen.ends_with("watched for 50 s"), "{seen}");
}

/// Written early, it counts where the number then stood for the minute.
#[test]
fn a_number_written_early_is_watched_on() {
    let mut sheet = in_every_state();
    rests(&mut sheet, 1, 7.6).write(Port::Inlet, AGAIN, 7.6);
    rests(&mut sheet, 5, 7.6).write(Port::Inlet, AGAIN, 7.6);
    assert_eq!(unread(&mut sheet), 0);
}

/// A number from before flow is another state's, whether it stood there again or not; the line that
/// carries it is not charged as empty too. With another number after flow it is wrong all the same.
#[test]
fn a_number_from_before_flow_is_another_states() {
    let mut before = Sheet::new();
    before.read(Port::Inlet, REST, 7.5).write(Port::Inlet, AGAIN, 7.5);
    let mut before = read(before, &BEFORE[1..]);
    assert_eq!(unread(&mut before), 0);
    assert_eq!(before.slips(), [("wrong-stage".to_owned(), 1)]);
    let mut late = in_every_state();
    rests(&mut late, 6, 9.6).write(Port::Inlet, AGAIN, 7.5);
    assert_eq!(unread(&mut late), 0);
    assert_eq!(late.slips(), [("wrong-stage".to_owned(), 1)]);
}

/// The meter stays on: with the hose off and on again the number says nothing of the lock-up after flow.
/// At rest it says what it said.
#[test]
fn the_meter_stays_on() {
    let mut sheet = in_every_state();
    sheet.did(Action::HoseOff).later();
    sheet.did(Action::HoseOn { port: Port::Inlet, push: Push::Fully }).later();
    rests(&mut sheet, 6, 7.6).write(Port::Inlet, AGAIN, 7.6).write(Port::Inlet, REST, 7.6);
    assert_eq!(unread(&mut sheet), 0);
    assert_eq!(sheet.slips(), [("wrong-stage".to_owned(), 1)]);
}

/// Where nothing was read at the inlet while firing, that is what is charged. A made-up number leaves the
/// line empty.
#[test]
fn the_lock_up_follows_from_flow() {
    let mut never = read(Sheet::new(), &BEFORE[..1]);
    assert_eq!(unread(&mut never), 0);
    assert_eq!(never.times("never-read-running"), 1);
    let mut made_up = in_every_state();
    rests(&mut made_up, 6, 7.6).write(Port::Inlet, AGAIN, 5.2);
    assert_eq!(unread(&mut made_up), 1);
    assert_eq!(made_up.times("invented"), 1);
    // The states have rules of their own: this one is not charged as one of them.
    let mut empty = in_every_state();
    empty.handed_over(Ending::InService);
    assert_eq!(empty.times("inlet-state-unread"), 0);
}

/// After the supply was set, the lock-up after flow is a reading at rest.
#[test]
fn after_setting_the_supply_either_rest_will_do() {
    for (stage, counts) in [(REST, 0), (AGAIN, 0), (LOW, 1)] {
        let mut setup = Sheet::new().setup;
        setup.card.supply = SupplyRight::Trainee;
        let mut sheet = read(Sheet::of(setup), &BEFORE);
        sheet.read(Port::Manifold, LOW, 1.7);
        sheet.turn(Screw::Supply, 2, None, Some(Port::Inlet), 7.0);
        for (port, stage, number) in
            [(Port::Inlet, FULL_LOAD, 6.3), (Port::Inlet, stage, 7.7), (Port::Manifold, HIGH, 3.5)]
        {
            sheet.stood(port, stage, number);
            sheet.write_in(port, stage, Phase::Left, (number, PressureUnit::InWc));
        }
        sheet.handed_over(Ending::InService);
        assert_eq!(sheet.times("supply-not-rechecked"), counts, "{stage:?}");
    }
}

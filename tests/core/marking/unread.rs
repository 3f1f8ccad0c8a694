//! What was never read: the inlet in each state, a level at the manifold, the hold, as found, after a
//! repair. The card of the rig asks for a hold of 180 s.

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::parts::{Ending, Fitted, Phase, Port, Push, Screw, Stage};
use quarterturn::physics::valve::HandleAngle;
use quarterturn::rules::{Essential, Severity};
use quarterturn::senses::meter_history::GasDemand;
use quarterturn::setup::SupplyRight;
use quarterturn::units::PressureUnit;

use super::all_worth;
use super::sheet::{FULL_LOAD, HIGH, LOW, REST, Sheet, draw, spell};

const STATES: [(Stage, f64); 4] = [(REST, 7.5), (LOW, 6.9), (HIGH, 6.66), (FULL_LOAD, 6.2)];

/// The inlet read in these states.
fn inlet(states: &[Stage]) -> Sheet {
    let mut sheet = Sheet::new();
    for (stage, number) in STATES {
        if states.contains(&stage) {
            sheet.read(Port::Inlet, stage, number);
        }
    }
    sheet
}

fn missing(sheet: &Sheet) -> [usize; 3] {
    ["inlet-state-unread", "never-read-with-others", "never-read-running"].map(|it| sheet.times(it))
}

/// Four inlet readings are four: each that is missing is told and counts as a repeat of one finding;
/// full load is the essential, and with nothing read while firing that is the finding.
#[test]
fn four_inlet_readings_are_four() {
    for (states, counts, gated) in [
        (&[REST, LOW, HIGH, FULL_LOAD][..], [0, 0, 0], false),
        (&[LOW, HIGH, FULL_LOAD], [1, 0, 0], false),
        (&[REST, HIGH, FULL_LOAD], [1, 0, 0], false),
        (&[REST, LOW, FULL_LOAD], [1, 0, 0], false),
        (&[FULL_LOAD], [3, 0, 0], false),
        (&[REST, LOW, HIGH], [0, 1, 0], true),
        (&[REST], [0, 0, 1], true),
        (&[], [0, 0, 1], true),
    ] {
        let sheet = inlet(states);
        assert_eq!(missing(&sheet), counts, "{states:?}");
        assert_eq!(!sheet.gates(Essential::InletWithOthers).is_empty(), gated, "{states:?}");
    }
    let three = inlet(&[FULL_LOAD]);
    let finding = three.finding("inlet-state-unread").unwrap();
    assert_eq!(finding.times, 3, "{finding:?}");
    assert_eq!(finding.seen, "the sheet has no right number for the inlet: at rest");
}

/// A made-up number costs more than its empty line, on one line and on all of them.
#[test]
fn a_made_up_number_costs_more_than_an_empty_line() {
    let lost = |sheet: &Sheet| all_worth(&sheet.marks());
    for states in [&[LOW][..], &[FULL_LOAD], &[REST, LOW, HIGH, FULL_LOAD]] {
        let kept: Vec<Stage> =
            STATES.iter().map(|it| it.0).filter(|it| !states.contains(it)).collect();
        let empty = inlet(&kept);
        let mut made_up = inlet(&kept);
        for stage in states {
            made_up.write(Port::Inlet, *stage, 9.2);
        }
        assert!(lost(&made_up) > lost(&empty) + 5.0, "{states:?}");
        assert_eq!(missing(&made_up), missing(&empty));
        assert_eq!(made_up.gates(Essential::MeterTrue), ["invented"]);
    }
}

/// A line that carries a number from the wrong state is not charged as empty too; what the essential
/// asks for is missing all the same. Another line that is empty is.
#[test]
fn a_slip_is_not_charged_as_an_empty_line() {
    let mut sheet = inlet(&[REST, LOW, FULL_LOAD]);
    sheet.write(Port::Inlet, HIGH, 6.2);
    assert_eq!((sheet.times("wrong-stage"), missing(&sheet)), (1, [0, 0, 0]));
    let mut sheet = inlet(&[LOW, FULL_LOAD]);
    sheet.write(Port::Inlet, HIGH, 6.2);
    assert_eq!((sheet.times("wrong-stage"), missing(&sheet)), (1, [1, 0, 0]));

    let mut sheet = Sheet::new();
    sheet.read(Port::Manifold, HIGH, 3.5).write(Port::Manifold, LOW, 3.5);
    assert_eq!((sheet.times("wrong-stage"), sheet.times("stage-never-read")), (1, 0));
    assert_eq!(sheet.gates(Essential::BothStagesRead), ["stage-never-read"]);
    let mut sheet = Sheet::new();
    sheet.read(Port::Manifold, HIGH, 3.5);
    assert_eq!(sheet.times("stage-never-read"), 1);
}

/// At rest with another appliance burning is one slip, not a short hold too; a short hold by itself is
/// one. The hold begins a tick after the hand's, and is as long as it was held.
#[test]
fn a_hold_is_as_long_as_it_was_held() {
    let held = |seconds: f64| {
        let mut sheet = inlet(&[REST, LOW, HIGH, FULL_LOAD]);
        sheet.push(EventKind::Held { seconds, rise_pa: 0.0 });
        sheet.times("hold-too-short")
    };
    assert_eq!([180.0, 179.98, 179.9, 170.0].map(held), [0, 0, 1, 1]);
    let mut sheet = Sheet::new();
    let with_range = GasDemand { burning: 1, any_flow: true, ..draw(REST) };
    sheet.showed(spell(Port::Inlet, with_range, 6.87, 6.87), Some((6.87, 6.87)));
    sheet.write(Port::Inlet, REST, 6.87);
    assert_eq!((sheet.times("wrong-stage"), sheet.times("hold-too-short")), (1, 0));
}

/// Numbers as left alone say nothing of how it was found; one as found is enough, and an empty sheet is
/// charged by what is missing.
#[test]
fn something_is_written_as_found() {
    let left = |also_found: bool| {
        let mut sheet = Sheet::new();
        for (stage, number) in STATES {
            sheet.stood(Port::Inlet, stage, number).write_left(Port::Inlet, stage, number);
        }
        if also_found {
            sheet.write(Port::Inlet, FULL_LOAD, 6.2);
        }
        sheet
    };
    assert_eq!(left(false).severity("nothing-as-found"), Some(Severity::Minor));
    assert_eq!(left(true).times("nothing-as-found"), 0);
    assert_eq!(Sheet::new().times("nothing-as-found"), 0);
}

/// Found unfit at the inlet and left shut off, a level need not be fired; left in use it must be. With
/// nothing read at the inlet while firing it must be either way.
#[test]
fn shut_off_early_it_need_not_be_fired() {
    use quarterturn::parts::Fitted;
    use quarterturn::physics::valve::HandleAngle;
    for (states, shut, counts) in
        [(&[REST, LOW][..], true, 0), (&[REST, LOW], false, 1), (&[REST], true, 1)]
    {
        let mut sheet = inlet(states);
        if shut {
            sheet.truth.manual_valve = HandleAngle::SHUT;
            sheet.truth.tag = Fitted::On;
        }
        sheet.handed_over(if shut { Ending::ShutOff } else { Ending::InService });
        assert_eq!(sheet.times("stage-never-read"), counts, "{states:?} {shut}");
    }
}

fn mend(sheet: &mut Sheet, repair: Repair, outcome: Outcome) {
    sheet.push(EventKind::Mended { repair, outcome, plate: None }).later();
}

/// What was read on the old gas valve says nothing of the new one.
#[test]
fn a_new_gas_valve_is_read_again() {
    let mut sheet = Sheet::new();
    sheet.read(Port::Manifold, LOW, 1.7).read(Port::Manifold, HIGH, 3.5);
    assert_eq!(sheet.times("stage-never-read"), 0);
    mend(&mut sheet, Repair::ReplaceGasValve, Outcome::Nothing);
    sheet.read(Port::Manifold, LOW, 1.7);
    // Written now, stood before the repair: the old valve's number.
    sheet.write(Port::Manifold, HIGH, 3.5);
    let seen = sheet.finding("stage-never-read").unwrap().seen;
    assert!(seen.contains("on high fire after"), "{seen}");
    sheet.read(Port::Manifold, HIGH, 3.5);
    assert_eq!(sheet.times("stage-never-read"), 0);
}

/// A repair that moves the inlet is followed by readings there; cleaning that moved nothing is
/// not, nor a repair that cannot move it.
#[test]
fn what_a_repair_moves_is_read_again() {
    for (repair, outcome, again) in [
        (Repair::EmptyDripLeg, Outcome::Changed, true),
        (Repair::EmptyDripLeg, Outcome::Nothing, false),
        (Repair::CleanFlameRod, Outcome::Changed, false),
    ] {
        let mut sheet = inlet(&[REST, LOW, HIGH, FULL_LOAD]);
        mend(&mut sheet, repair, outcome);
        assert_eq!(sheet.times("never-read-running"), usize::from(again), "{repair:?}");
    }
}

/// After the supply was set, the inlet is read at rest and under full load and the manifold at the full
/// rate: read anew, and not written anew from before. A full rate that was never read at all is
/// told by its own rule alone.
#[test]
fn a_supply_that_was_set_is_read_again() {
    let set = |manifold_before: bool, after: &[(Port, Stage, f64)], anew: bool| {
        let mut setup = Sheet::new().setup;
        setup.card.supply = SupplyRight::Trainee;
        let mut sheet = Sheet::of(setup);
        for (stage, number) in STATES {
            sheet.read(Port::Inlet, stage, number);
        }
        if manifold_before {
            sheet.read(Port::Manifold, HIGH, 3.5);
        }
        sheet.read(Port::Manifold, LOW, 1.7);
        sheet.turn(Screw::Supply, 2, None, Some(Port::Inlet), 7.0);
        for &(port, stage, number) in after {
            if anew {
                sheet.stood(port, stage, number);
            }
            sheet.write_in(port, stage, Phase::Found, (number, PressureUnit::InWc));
        }
        sheet.handed_over(Ending::InService);
        [sheet.times("supply-not-rechecked"), sheet.times("stage-never-read")]
    };
    let all =
        [(Port::Inlet, REST, 7.5), (Port::Inlet, FULL_LOAD, 6.2), (Port::Manifold, HIGH, 3.5)];
    assert_eq!(set(true, &all, true), [0, 0]);
    for drop in 0..3 {
        let mut some = all.to_vec();
        some.remove(drop);
        assert_eq!(set(true, &some, true), [1, 0], "{drop}");
    }
    assert_eq!(set(true, &all, false), [1, 0]);
    assert_eq!(set(false, &all[..2], true), [0, 1]);
}

/// Full load that was never read at the inlet, before the supply was set or after it, is one slip; read
/// before it only, it is the reading after it that is missing.
#[test]
fn a_full_load_never_read_is_one_slip() {
    for (before, times) in [(false, [0, 1]), (true, [1, 0])] {
        let mut setup = Sheet::new().setup;
        setup.card.supply = SupplyRight::Trainee;
        let mut sheet = Sheet::of(setup);
        for (stage, number) in STATES {
            if before || stage != FULL_LOAD {
                sheet.read(Port::Inlet, stage, number);
            }
        }
        sheet.read(Port::Manifold, LOW, 1.7);
        sheet.turn(Screw::Supply, 2, None, Some(Port::Inlet), 7.0);
        sheet.read(Port::Inlet, REST, 7.5).read(Port::Manifold, HIGH, 3.5);
        sheet.handed_over(Ending::InService);
        let found = ["supply-not-rechecked", "never-read-with-others"].map(|it| sheet.times(it));
        assert_eq!(found, times, "{before}");
    }
}

/// A supply that was turned is read anew: at rest, and loaded where the furnace is left to burn. A
/// number that stood before the turn is none of it, whenever it is written.
#[test]
fn a_supply_that_was_turned_is_read_anew() {
    let told = |rests: bool, ending: Ending| {
        let mut setup = Sheet::new().setup;
        setup.card.supply = SupplyRight::Trainee;
        let mut sheet = Sheet::of(setup);
        sheet.read(Port::Inlet, FULL_LOAD, 6.2).read(Port::Manifold, HIGH, 3.5);
        sheet.stood(Port::Inlet, REST, 7.5).later();
        sheet.turn(Screw::Supply, 1, None, Some(Port::Inlet), 7.0);
        if rests {
            sheet.stood(Port::Inlet, REST, 7.5);
        }
        sheet.write(Port::Inlet, REST, 7.5).later();
        if ending == Ending::InService {
            sheet.read(Port::Inlet, FULL_LOAD, 6.2).read(Port::Manifold, HIGH, 3.5);
        } else {
            (sheet.truth.manual_valve, sheet.truth.tag) = (HandleAngle::SHUT, Fitted::On);
        }
        sheet.handed_over(ending).times("supply-not-rechecked")
    };
    for ending in [Ending::InService, Ending::ShutOff] {
        assert_eq!(told(true, ending), 0, "{ending:?}");
        assert_eq!(told(false, ending), 1, "{ending:?}");
    }
}

/// A hose that was put on before the furnace fired, and stayed on, shows the inlet at rest after flow;
/// moved in between, it does not.
#[test]
fn rest_after_flow_is_seen_through_a_hose_that_stays() {
    for (moves, slips) in [(false, 0), (true, 1)] {
        let hose = Action::HoseOn { port: Port::Inlet, push: Push::Fully };
        let mut sheet = Sheet::new();
        sheet.did(hose.clone()).later().read(Port::Inlet, HIGH, 6.66);
        if moves {
            sheet.did(hose).later();
        }
        sheet.stood(Port::Inlet, REST, 7.5).write(Port::Inlet, Stage::RestAgain, 7.5);
        assert_eq!(sheet.slips().len(), slips, "{moves}");
    }
}

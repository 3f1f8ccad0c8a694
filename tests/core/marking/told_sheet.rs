//! The sheet of a debrief: each number beside the pressure that was really there, joints, and what
//! strikes whoever reads it. A joint leaks from 1e-7 m³/s on, which leak fluid shows (from memory).

use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::event::EventKind;
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::marking::debrief::Sheet as Told;
use quarterturn::parts::{
    Answer, Cause, Duty, Ending, Joint, JointVerdict, Level, LowSide, OnOff, Port, Screw, Spot,
    WrittenFinding,
};
use quarterturn::senses::meter_history::Span;
use quarterturn::senses::seen::WrittenMeasured;
use quarterturn::units::PA_PER_INWC;

use super::sheet::{HIGH, LOW, REST, Sheet, draw, spell};
use super::told::told;

const RIGHT: &[Ending] = &[Ending::InService];

fn of(sheet: &Sheet) -> Told {
    told(sheet, RIGHT, "healthy-natural", None).account.sheet
}

/// The truth beside a number of 6.5 that stood from tick 1500 to 2000, on a meter that reads 0.4 too
/// high, with hands laid on at these ticks while these pressures stood at the inlet; the last of them
/// after the number was written, where that is said. All in inches of water.
fn truth(hands: &[(u64, f64)], last_is_after: bool) -> f64 {
    let mut sheet = Sheet::new();
    let mut one = spell(Port::Inlet, draw(REST), 6.0, 7.0);
    (one.shown.since, one.shown.until, one.error_pa) = (1_200, 2_000, 0.4 * PA_PER_INWC);
    let (least_pa, most_pa) = (6.4 * PA_PER_INWC, 6.6 * PA_PER_INWC);
    one.stood = Some(Span { least_pa, most_pa, since: 1_500, until: 2_000 });
    sheet.push(EventKind::Showed(one));
    let (before, after) = hands.split_at(hands.len() - usize::from(last_is_after));
    let mut now = 1_000;
    let mut hand = |sheet: &mut Sheet, &(tick, pa): &(u64, f64)| {
        sheet.pass(tick - now);
        now = tick;
        sheet.truth.inlet_pa = pa * PA_PER_INWC;
        sheet.did(Action::PutDown);
    };
    before.iter().for_each(|it| hand(&mut sheet, it));
    sheet.write(Port::Inlet, REST, 6.5);
    after.iter().for_each(|it| hand(&mut sheet, it));
    of(&sheet).lines[0].found.as_ref().unwrap().truth.unwrap()
}

/// What was true of a number that was read is the pressure before the hand that ended its stand, or
/// else before the last hand meanwhile; without a hand it is what the meter showed, less its error.
#[test]
fn the_truth_is_that_of_the_moment_of_reading() {
    let shown = 6.1;
    for (hands, is) in [
        (&[][..], shown),
        (&[(2_001, 5.0)], 5.0),
        (&[(2_000, 5.0)], 5.0),
        (&[(2_002, 5.0)], shown),
        (&[(1_500, 5.0)], shown),
        (&[(1_501, 5.0)], 5.0),
        (&[(1_600, 5.0), (1_700, 5.5)], 5.5),
        (&[(1_700, 5.0), (2_001, 5.5)], 5.5),
        (&[(1_700, 5.0), (2_002, 5.5)], 5.0),
    ] {
        let told = truth(hands, false);
        assert!((told - is).abs() < 1e-9, "{hands:?}: {told}");
    }
    // A hand after the pencil ended nothing that was read.
    assert!((truth(&[(1_700, 5.0), (2_001, 5.5)], true) - 5.0).abs() < 1e-9);
}

/// What was true of a number that never stood anywhere is the pressure when it was written. A meter
/// whose low side feels the burner box shows that much less.
#[test]
fn a_number_that_never_stood_has_the_truth_of_its_moment() {
    for (low_side, is) in [(LowSide::Air, 6.3), (LowSide::BurnerBox, 6.5)] {
        let mut sheet = Sheet::new();
        sheet.truth.inlet_pa = 9.0 * PA_PER_INWC;
        sheet.did(Action::PutDown).later();
        sheet.truth.inlet_pa = 6.3 * PA_PER_INWC;
        (sheet.truth.low_side, sheet.truth.box_pa) = (low_side, -0.2 * PA_PER_INWC);
        sheet.did(Action::PutDown).write(Port::Inlet, REST, 4.4);
        let told = of(&sheet).lines[0].found.as_ref().unwrap().truth.unwrap();
        assert!((told - is).abs() < 1e-9, "{low_side:?}: {told}");
    }
}

/// A line stands there if anything was written on it, as found or as left, and no other does.
#[test]
fn only_lines_that_were_written_are_told() {
    let mut sheet = Sheet::new();
    sheet.read(Port::Inlet, REST, 6.6).stood(Port::Manifold, HIGH, 3.5);
    sheet.write_left(Port::Manifold, HIGH, 3.5);
    let lines = of(&sheet).lines;
    let is: Vec<_> =
        lines.iter().map(|it| (it.port, it.stage, it.found.is_some(), it.left.is_some())).collect();
    assert_eq!(is, [(Port::Inlet, REST, true, false), (Port::Manifold, HIGH, false, true)]);
}

/// A joint is told with the last verdict on it, beside what it did when that was written; one whose leak
/// has no number of its own, without.
#[test]
fn a_joint_is_told_beside_what_it_did() {
    use JointVerdict::{Leaking, Tight};
    let mut sheet = Sheet::new();
    let write = |joint, verdict| Action::WriteJoint { joint, verdict };
    sheet.did(write(Joint::InletPort, Leaking)).later().did(write(Joint::Union, Tight));
    sheet.truth.leak_m3_s.ports[Port::Inlet] = 1.05e-7;
    sheet.truth.leak_m3_s.ports[Port::Manifold] = 0.95e-7;
    sheet.did(write(Joint::InletPort, Tight)).did(write(Joint::ManifoldPort, Tight)).later();
    sheet.did(write(Joint::Connector, Leaking));
    let told = of(&sheet);
    let is: Vec<_> = told.joints.iter().map(|it| (it.joint, it.verdict, it.truth)).collect();
    for one in [
        (Joint::InletPort, Tight, Some(Leaking)),
        (Joint::ManifoldPort, Tight, Some(Tight)),
        (Joint::Connector, Leaking, Some(Tight)),
        (Joint::Union, Tight, None),
    ] {
        assert!(is.contains(&one), "{one:?}: {is:?}");
    }
    assert_eq!(is.len(), 4);
    assert_eq!(told.notes().iter().filter(|it| it.contains("(true: tight)")).count(), 2);
}

/// Beside pressures the sheet tells what was measured, what was wrong, what was not done and how it
/// ended; work that was not named as left out is not told as that.
#[test]
fn notes_tell_everything_beside_pressures() {
    let notes = |not_done: &[Duty]| {
        let mut sheet = Sheet::new();
        let figures = vec![Figure::new(Quantity::ExcessAir, 42.0)];
        let written = WrittenMeasured { spot: Spot::Flue, tick: 0, figures };
        sheet.push(EventKind::WroteMeasured { written, firing: Some(Level::High) });
        let (cause, answer) = (Cause::FilterBlocked, Answer::Mended);
        let finding = WrittenFinding { cause, answer, evidence: Vec::new() };
        sheet.did(Action::WriteFinding(finding)).did(Action::WritePiping(JointVerdict::Tight));
        let said = HandOver { ending: Ending::InService, not_done: not_done.to_vec() };
        let left = Box::new(sheet.truth.clone());
        sheet.push(EventKind::Ended { hand_over: Some(said), left });
        of(&sheet).notes()
    };
    let all = notes(&[Duty::Combustion, Duty::GasRate]);
    assert_eq!(all.len(), 6, "{all:?}");
    assert!(all[0].contains("tight") && all[1].contains("42"), "{all:?}");
    assert!(all[2].contains(Answer::Mended.label()), "{all:?}");
    let not_done = [Duty::Combustion.label(), Duty::GasRate.label()].join(", ");
    assert!(all[3].ends_with(&not_done), "{all:?}");
    let named = notes(&[]);
    assert_eq!(named.len(), 5);
    assert!(!named.iter().any(|it| it.contains("not done:")), "{named:?}");
}

/// An empty sheet is told as empty; one with anything on it but a pressure lacks the pressures alone.
#[test]
fn a_sheet_without_pressures_is_told() {
    let remark = |write: &dyn Fn(&mut Sheet)| {
        let mut sheet = Sheet::new();
        write(&mut sheet);
        sheet.handed_over(Ending::InService);
        of(&sheet).remarks
    };
    assert!(remark(&|_| ())[0].starts_with("The sheet is empty"));
    let finding = || {
        let (cause, answer) = (Cause::FilterBlocked, Answer::Mended);
        Action::WriteFinding(WrittenFinding { cause, answer, evidence: Vec::new() })
    };
    let (joint, verdict) = (Joint::InletPort, JointVerdict::Tight);
    let flue = || {
        let written = WrittenMeasured { spot: Spot::Flue, tick: 0, figures: Vec::new() };
        EventKind::WroteMeasured { written, firing: None }
    };
    let writes: [&dyn Fn(&mut Sheet); 4] = [
        &|sheet| {
            sheet.did(Action::WriteJoint { joint, verdict });
        },
        &|sheet| {
            sheet.did(Action::WritePiping(verdict));
        },
        &|sheet| {
            sheet.did(finding());
        },
        &|sheet| {
            sheet.push(flue());
        },
    ];
    for (i, write) in writes.into_iter().enumerate() {
        let remarks = remark(write);
        assert!(remarks[0].contains("no pressure on it"), "{i}: {remarks:?}");
    }
    assert!(
        remark(&|sheet| {
            sheet.read(Port::Inlet, REST, 6.6);
        })
        .is_empty()
    );
}

/// Four numbers for one line strike whoever reads the sheet, three do not; of found and left it is the
/// one with more.
#[test]
fn a_line_that_was_written_again_and_again_is_told() {
    let again = |found: usize, left: usize| {
        let mut sheet = Sheet::new();
        sheet.stood(Port::Manifold, LOW, 1.7);
        (0..found).for_each(|_| {
            sheet.write(Port::Manifold, LOW, 1.7);
        });
        (0..left).for_each(|_| {
            sheet.write_left(Port::Manifold, LOW, 1.7);
        });
        let remarks = of(&sheet).remarks;
        remarks.into_iter().find(|it| it.contains("for one line"))
    };
    assert_eq!(again(3, 3), None);
    assert!(again(4, 1).is_some_and(|it| it.starts_with("4 numbers")));
    assert!(again(1, 5).is_some_and(|it| it.starts_with("5 numbers")));
}

/// For a terminal: that nothing was wrong where nothing was, and competencies only where there was
/// occasion for one.
#[test]
fn a_terminal_tells_what_there_is() {
    const SOUND: &str = "Nothing was wrong with this furnace";
    const SHOWN: &str = "Competencies that this job gave occasion for";
    let text = |sheet: &mut Sheet, is_shown: bool| {
        let mut all = told(sheet.handed_over(Ending::InService), RIGHT, "healthy-natural", None);
        if !is_shown {
            all.marks.competencies.clear();
        }
        all.text()
    };
    let sound = text(&mut Sheet::new(), true);
    assert!(sound.contains(SOUND) && sound.contains(SHOWN), "{sound}");
    let none = text(&mut Sheet::new(), false);
    assert!(none.contains(SOUND) && !none.contains(SHOWN), "{none}");
    let mut off = Sheet::new().setup;
    off.found.valve_switch = OnOff::Off;
    let off = text(&mut Sheet::of(off), true);
    assert!(!off.contains(SOUND), "{off}");
}

/// A screw turned in went clockwise, turned out counterclockwise.
#[test]
fn a_turn_is_told_with_its_way() {
    let done = |eighths: i16| {
        let mut sheet = Sheet::new();
        sheet.did(Action::Turn { screw: Screw::High, eighths });
        told(&sheet, RIGHT, "healthy-natural", None).account.done.remove(0).what
    };
    assert!(done(2).ends_with("a quarter turn clockwise"), "{}", done(2));
    assert!(done(-2).ends_with("a quarter turn counterclockwise"), "{}", done(-2));
}

/// A finding that goes with another ending is told by its answer; that nothing was found, by that.
#[test]
fn a_finding_against_the_ending_is_told() {
    let remark = |cause: Cause, answer: Answer, ending: Ending| {
        let finding = WrittenFinding { cause, answer, evidence: Vec::new() };
        let mut sheet = Sheet::new();
        sheet.read(Port::Inlet, REST, 7.5).did(Action::WriteFinding(finding)).handed_over(ending);
        of(&sheet).remarks.pop().unwrap_or_default()
    };
    let holed = remark(Cause::ExchangerHoled, Answer::ShutOff, Ending::InService);
    assert!(holed.starts_with("The sheet says “"), "{holed}");
    let nothing = remark(Cause::NothingFound, Answer::LeftAsItIs, Ending::ShutOff);
    assert!(nothing.starts_with("The sheet says that nothing was wrong"), "{nothing}");
}

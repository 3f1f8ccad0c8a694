//! A temperature rise off the plate is answered: the cause found, mended or named, somebody called, or
//! the furnace shut off. The rig's plate allows 40 to 70 °F.

use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::parts::{Answer, Cause, Door, Ending, Fitted, Level, Spot, WrittenFinding};
use quarterturn::senses::seen::WrittenMeasured;

use super::sheet::Sheet;

const RULE: &str = "rise-left-off";

/// The rig, lit on low.
fn lit() -> Sheet {
    let mut sheet = Sheet::new();
    sheet.push(EventKind::Fired { from: None, to: Some(Level::Low) });
    sheet
}

/// So many seconds later both temperatures are written, the return at 68 °F.
fn rise(sheet: &mut Sheet, after_s: u32, rise_f: f64) -> &mut Sheet {
    for _ in 0..after_s / 10 {
        sheet.later();
    }
    for (spot, f) in [(Spot::SupplyAir, 68.0 + rise_f), (Spot::ReturnAir, 68.0)] {
        let figures = vec![Figure::new(Quantity::Temperature, f)];
        sheet.did(Action::WriteMeasured(spot));
        let written = WrittenMeasured { spot, tick: 0, figures };
        sheet.push(EventKind::WroteMeasured { written, firing: Some(Level::Low) });
    }
    sheet
}

fn found(sheet: &mut Sheet, cause: Cause) -> &mut Sheet {
    let (answer, evidence) = (Answer::LeftAsItIs, Vec::new());
    sheet.did(Action::WriteFinding(WrittenFinding { cause, answer, evidence }))
}

/// Outside the band by more than the beads tell, and left at that: charged. Inside it, or not read while it
/// was steady, it is not.
#[test]
fn a_written_rise_is_held_against_the_plate() {
    for (rise_f, after_s, counts) in [
        (55.0, 400, 0),
        (40.0, 400, 0),
        (39.1, 400, 0),
        (38.9, 400, 1),
        (70.9, 400, 0),
        (71.1, 400, 1),
        (90.0, 300, 1),
        (90.0, 400, 1),
        (30.0, 120, 0),
    ] {
        let mut sheet = lit();
        rise(&mut sheet, after_s, rise_f);
        assert_eq!(sheet.times(RULE), counts, "{rise_f} {after_s}");
        if counts > 0 {
            let found = sheet.finding(RULE).unwrap();
            assert!(found.seen.contains(&format!("{rise_f:.0} °F written")), "{}", found.seen);
            assert!(found.truth.contains("40 to 70 °F"), "{}", found.truth);
        }
    }
    let mut open = lit();
    open.truth.doors[Door::Burner] = Fitted::Off;
    rise(&mut open, 400, 90.0);
    open.truth.doors[Door::Burner] = Fitted::On;
    open.did(Action::PutDown);
    assert_eq!(open.times(RULE), 0);
    // An early one before it takes nothing from a steady one.
    let mut later = lit();
    rise(&mut later, 120, 55.0);
    assert_eq!(rise(&mut later, 280, 90.0).times(RULE), 1);
}

/// A rise is that of two temperatures: a repair between them leaves none, and it stands on the sheet
/// from the later one on.
#[test]
fn a_rise_is_of_two_temperatures() {
    let figure = |sheet: &mut Sheet, spot: Spot, f: f64| {
        let figures = vec![Figure::new(Quantity::Temperature, f)];
        let written = WrittenMeasured { spot, tick: 0, figures };
        sheet.did(Action::WriteMeasured(spot));
        sheet.push(EventKind::WroteMeasured { written, firing: Some(Level::Low) });
    };
    for (mends, counts) in [(false, 1), (true, 0)] {
        let mut sheet = lit();
        sheet.pass(20_000);
        figure(&mut sheet, Spot::SupplyAir, 158.0);
        if mends {
            let (repair, outcome) = (Repair::ReplaceFilter, Outcome::Changed);
            sheet.push(EventKind::Mended { repair, outcome, plate: None });
        }
        sheet.later();
        figure(&mut sheet, Spot::ReturnAir, 68.0);
        assert_eq!(sheet.times(RULE), counts);
        assert!(sheet.finding(RULE).is_none_or(|it| it.tick == 21_500));
    }
}

/// A finding, a call, a furnace shut off, a rise back in its band answer it; that nothing was found does
/// not, nor does a word on the manometer.
#[test]
fn a_rise_off_the_plate_is_answered() {
    let off = || {
        let mut sheet = lit();
        rise(&mut sheet, 400, 90.0);
        sheet
    };
    for (cause, counts) in [
        (Cause::NothingFound, 1),
        (Cause::MeterZeroOff, 1),
        (Cause::FilterBlocked, 0),
        (Cause::RegistersClosed, 0),
    ] {
        assert_eq!(found(&mut off(), cause).times(RULE), counts, "{cause:?}");
    }
    for (ending, counts) in
        [(Ending::InService, 1), (Ending::SupplyOwnerCalled, 0), (Ending::ShutOff, 0)]
    {
        assert_eq!(off().handed_over(ending).times(RULE), counts, "{ending:?}");
    }
    let mut back = off();
    rise(&mut back, 100, 55.0);
    assert_eq!(back.times(RULE), 0);
    // Written before the filter was changed, it says nothing of the furnace as it is left.
    for (outcome, counts) in [(Outcome::Changed, 0), (Outcome::Nothing, 1)] {
        let mut mended = off();
        let repair = Repair::ReplaceFilter;
        mended.did(Action::Mend(repair)).push(EventKind::Mended { repair, outcome, plate: None });
        assert_eq!(mended.times(RULE), counts, "{outcome:?}");
    }
}

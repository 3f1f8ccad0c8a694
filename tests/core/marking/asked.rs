//! Work that a card asks for beyond the pressures, and the temperatures of a rise: what makes it done.

use quarterturn::hands::action::{Action, HandOver};
use quarterturn::hands::event::EventKind;
use quarterturn::instrument::figure::{Figure, Quantity};
use quarterturn::marking::Shown::{NoOccasion, NotShown, Shown as Done};
use quarterturn::parts::{Duty, Ending, Level, Port, Spot};
use quarterturn::rules::Severity;
use quarterturn::senses::seen::WrittenMeasured;

use super::sheet::{HIGH, Sheet};
use super::work::{RIGHT, read, shut_off, told, told_as};

/// A temperature written at a level.
fn wrote(sheet: &mut Sheet, spot: Spot, level: Level) {
    let figures = vec![Figure::new(Quantity::Temperature, 100.0)];
    let written = WrittenMeasured { spot, tick: 0, figures };
    sheet.did(Action::WriteMeasured(spot));
    sheet.push(EventKind::WroteMeasured { written, firing: Some(level) });
}

/// A temperature rise is taken where both temperatures were written at every level.
#[test]
fn a_rise_takes_both_temperatures_at_every_level() {
    use Level::{High, Low};
    use Spot::{ReturnAir, SupplyAir};
    for (written, is_done) in [
        (&[(SupplyAir, Low), (SupplyAir, High)][..], false),
        (&[(ReturnAir, Low), (ReturnAir, High)], false),
        (&[(SupplyAir, Low), (ReturnAir, Low)], false),
        (&[(SupplyAir, Low), (ReturnAir, Low), (SupplyAir, High), (ReturnAir, High)], true),
    ] {
        let mut sheet = read();
        sheet.setup.card.required = vec![Duty::TemperatureRise];
        written.iter().for_each(|&(spot, level)| wrote(&mut sheet, spot, level));
        assert_eq!(sheet.times("rise-not-taken") == 0, is_done, "{written:?}");
        let shown = told("rise-not-taken", &sheet, RIGHT);
        assert_eq!(shown, if is_done { Done } else { NotShown }, "{written:?}");
    }
    assert_eq!(told("rise-not-taken", &read(), RIGHT), NoOccasion);
    // Where it costs little, named as not done, it was not done all the same.
    let mut said = read();
    said.setup.card.required = vec![Duty::TemperatureRise];
    let not_done = said.setup.card.required.clone();
    let hand_over = Some(HandOver { ending: Ending::InService, not_done });
    let left = Box::new(said.truth.clone());
    said.push(EventKind::Ended { hand_over, left });
    assert_eq!(told_as("rise-not-taken", &said, RIGHT, Some(Severity::Minor)), NotShown);
}

/// A rise gives occasion to answer it where both temperatures stand on the sheet of a furnace that is
/// left to burn.
#[test]
fn a_rise_is_answered_where_it_was_taken() {
    let with = |spots: &[Spot]| {
        let mut sheet = read();
        spots.iter().for_each(|&spot| wrote(&mut sheet, spot, Level::High));
        sheet
    };
    let both = [Spot::SupplyAir, Spot::ReturnAir];
    assert_eq!(told("rise-left-off", &with(&both), RIGHT), Done);
    for one in both {
        assert_eq!(told("rise-left-off", &with(&[one]), RIGHT), NoOccasion, "{one:?}");
    }
    assert_eq!(told("rise-left-off", &shut_off(with(&both)), RIGHT), NoOccasion);
}

/// Who read the manifold alone has not read the inlet.
#[test]
fn a_number_at_the_manifold_shows_nothing_of_the_inlet() {
    let mut sheet = Sheet::new();
    sheet.read(Port::Manifold, HIGH, 3.5);
    for rule in ["hold-too-short", "lock-up-unread"] {
        assert_eq!(told_as(rule, &sheet, RIGHT, Some(Severity::Minor)), NotShown, "{rule}");
    }
}

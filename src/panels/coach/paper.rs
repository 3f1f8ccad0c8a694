//! What the papers say: the fuel, the figures that govern, and the next paper to be looked at.

use super::hint::{CardAsks, Hint};
use super::lead;
use super::memory::Remembered;
use crate::appliance::plate::{Fuel, GasFigures};
use crate::parts::{ARRIVAL_LOOKS, Duty, Place, Subject};
use crate::procedure::Goal;
use crate::senses::seen::Seen;

/// The fuel in the pipes, as far as a person here can know it: by what stands in the yard, else by
/// label or plate.
pub(super) fn fuel(seen: &Seen, remembered: &Remembered) -> Option<Fuel> {
    supply(seen, remembered).or_else(|| figures(seen).map(|figures| figures.fuel))
}

/// The fuel that the yard speaks for: a tank is propane, a meter natural gas.
pub(super) fn supply(seen: &Seen, remembered: &Remembered) -> Option<Fuel> {
    let noted = |subject| seen.sheet.note(subject).is_some();
    remembered
        .job
        .supply
        .or_else(|| noted(Subject::TankGauge).then_some(Fuel::Propane))
        .or_else(|| noted(Subject::MeterDial).then_some(Fuel::Natural))
}

/// The figures that everything is held against.
pub(super) fn paper(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    if supply(seen, remembered).is_none() {
        return Some(Hint::go(t!("coach-see-supply"), Place::Yard));
    }
    let papers = [
        (Subject::Plate, t!("coach-read-plate")),
        (Subject::ConversionLabel, t!("coach-read-label")),
    ];
    papers
        .into_iter()
        .find(|(subject, _)| seen.sheet.note(*subject).is_none())
        .and_then(|(subject, text)| lead::saying(text, Goal::Looked(subject), seen, remembered))
}

/// Whether a look on arrival is asked for and still to be taken.
fn is_to_look(subject: Subject, seen: &Seen, asks: CardAsks<'_>) -> bool {
    asks.required.contains(&Duty::ArrivalLooks) && seen.sheet.note(subject).is_none()
}

/// The next look on arrival that needs no door off. Whoever stands at the thermostat for the first
/// one switches heat off there too, so that it purges and cools meanwhile.
pub(super) fn look_round(seen: &Seen, remembered: &Remembered, asks: CardAsks<'_>) -> Option<Hint> {
    let open = ARRIVAL_LOOKS.into_iter().filter(|subject| *subject != Subject::Filter);
    let next = open.into_iter().find(|&subject| is_to_look(subject, seen, asks))?;
    let here = seen.place == Place::Hall && next != Subject::CoAlarm;
    let off = here.then(|| lead::towards(Goal::Stopped, seen, remembered)).flatten();
    off.or_else(|| lead::towards(Goal::Looked(next), seen, remembered))
}

/// The filter, behind the blower door: with the furnace isolated.
pub(super) fn look_at_filter(
    seen: &Seen,
    remembered: &Remembered,
    asks: CardAsks<'_>,
) -> Option<Hint> {
    if !is_to_look(Subject::Filter, seen, asks) {
        return None;
    }
    lead::first(&[Goal::Isolated, Goal::Looked(Subject::Filter)], seen, remembered)
}

/// The next look behind the door, or nothing once all are taken.
pub(super) fn look_inside(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let propane = supply(seen, remembered) == Some(Fuel::Propane);
    let looks = [
        (Subject::Orifices, t!("coach-orifices")),
        (Subject::SpringMark, t!("coach-springs")),
        (Subject::LowGasSwitch, t!("coach-low-gas-switch")),
    ];
    looks
        .into_iter()
        .filter(|(subject, _)| propane || *subject != Subject::LowGasSwitch)
        .find(|(subject, _)| seen.sheet.note(*subject).is_none())
        .and_then(|(subject, text)| lead::saying(text, Goal::Looked(subject), seen, remembered))
}

/// The figures that govern: the label's, else the plate's.
pub(super) fn figures(seen: &Seen) -> Option<&GasFigures> {
    let on = |subject| seen.sheet.note(subject).and_then(|note| note.finding.figures());
    on(Subject::ConversionLabel).or_else(|| on(Subject::Plate))
}

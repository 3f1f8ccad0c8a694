//! What the papers say: the fuel, the figures that govern, and the next paper to be looked at.

use super::hint::Hint;
use super::lead;
use super::memory::Remembered;
use crate::appliance::plate::{Fuel, GasFigures};
use crate::parts::{Place, Subject};
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

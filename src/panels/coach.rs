//! Coached help: the next step, worked out from what the trainee sees and from nothing else.
//!
//! It leads by doing: from arrival to the first true reading within about five minutes, then from
//! reading to reading until the found column is full. What the readings mean is left to the
//! trainee. The order is common practice: air first, paper, isolation, port, gas, fire, wait, read.

mod air;
mod cycle;
mod elsewhere;
mod end;
mod lead;
mod memory;
mod reading;

use crate::appliance::plate::Fuel;
use crate::appliance::test_point::{Port, Stage};
use crate::hands::action::Action;
use crate::panels::sheet::Cell;
use crate::parts::{Phase, Place, Subject};
use crate::procedure::Goal;
use crate::senses::seen::Seen;

/// The next step.
#[derive(Debug, Clone, PartialEq)]
pub struct Hint {
    /// What to do and why, in a sentence or two.
    pub text: String,
    /// The part it is about, to be marked in the drawing.
    pub part: Option<&'static str>,
    /// The action meant, where it is a single one; none where waiting or writing is meant.
    pub action: Option<Action>,
    /// The cell of the sheet to write in, where writing is meant.
    pub cell: Option<Cell>,
    /// Seconds to let pass before it is done.
    pub patience_s: u32,
}

impl Hint {
    fn act(text: impl Into<String>, part: &'static str, action: Action) -> Self {
        Self {
            text: text.into(),
            part: Some(part),
            action: Some(action),
            cell: None,
            patience_s: 0,
        }
    }

    fn go(text: impl Into<String>, place: Place) -> Self {
        Self {
            text: text.into(),
            part: None,
            action: Some(Action::Go(place)),
            cell: None,
            patience_s: 0,
        }
    }

    fn wait(text: impl Into<String>, part: &'static str) -> Self {
        Self { text: text.into(), part: Some(part), action: None, cell: None, patience_s: 0 }
    }

    fn write(text: impl Into<String>, cell: Cell, patience_s: u32) -> Self {
        Self { text: text.into(), part: Some("meter"), action: None, cell: Some(cell), patience_s }
    }

    fn say(text: impl Into<String>) -> Self {
        Self { text: text.into(), part: None, action: None, cell: None, patience_s: 0 }
    }
}

pub use memory::Remembered;

/// The times that the job card asks for, in seconds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// How long a hold without flow must last.
    pub hold_s: f64,
    /// How long after a change a reading counts.
    pub settle_s: f64,
}

/// Readings in the order in which the coach leads to them: the hose goes to the manifold port
/// first, the inlet is read whole before any screw is touched.
const ORDER: [(Port, Stage); 6] = [
    (Port::Manifold, Stage::Low),
    (Port::Manifold, Stage::High),
    (Port::Inlet, Stage::Rest),
    (Port::Inlet, Stage::Low),
    (Port::Inlet, Stage::High),
    (Port::Inlet, Stage::HighWithOthers),
];

/// The next step, or nothing once the job is over.
#[must_use]
pub fn coach(seen: &Seen, remembered: &Remembered, asked: Asked) -> Option<Hint> {
    if seen.over.is_some() {
        return None;
    }
    air::danger(seen)
        .or_else(|| air::leak(seen))
        .or_else(|| air::arrive(seen, remembered))
        .or_else(|| paper(seen, remembered))
        .or_else(|| end::unfit(seen, remembered))
        .or_else(|| {
            let wanted = ORDER
                .iter()
                .find(|&&(port, stage)| seen.sheet.reading(port, stage, Phase::Found).is_none());
            let &(port, stage) = wanted?;
            reading::lead(seen, remembered, asked, Cell { port, stage, phase: Phase::Found })
        })
        .or_else(|| {
            let (port, stage) = remembered.next_again()?;
            reading::lead(seen, remembered, asked, Cell { port, stage, phase: Phase::Left })
        })
        .or_else(|| Some(end::judge(seen, remembered)))
}

/// The fuel in the pipes, as far as a person here can know it: by what stands in the yard, else by
/// label or plate.
fn fuel(seen: &Seen, remembered: &Remembered) -> Option<Fuel> {
    supply(seen, remembered).or_else(|| end::figures(seen).map(|figures| figures.fuel))
}

/// The fuel that the yard speaks for: a tank is propane, a meter natural gas.
fn supply(seen: &Seen, remembered: &Remembered) -> Option<Fuel> {
    let noted = |subject| seen.sheet.note(subject).is_some();
    remembered
        .job
        .supply
        .or_else(|| noted(Subject::TankGauge).then_some(Fuel::Propane))
        .or_else(|| noted(Subject::MeterDial).then_some(Fuel::Natural))
}

/// The figures that everything is held against.
fn paper(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
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

//! Coached help: the next step, worked out from what the trainee sees and from nothing else.
//!
//! It leads by doing: from arrival to the first true reading within about five minutes, then from
//! reading to reading until the found column is full. What the readings mean is left to the
//! trainee. The order is common practice: air first, paper, isolation, port, gas, fire, wait, read.

mod air;
mod fire;
mod port;

use crate::appliance::plate::Fuel;
use crate::bench::action::{Action, Phase, Stage};
use crate::bench::part::{Place, Port, Subject};
use crate::bench::seen::{Burning, Finding, Seen};
use crate::panels::sheet::Cell;

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

/// What was seen where one no longer stands, as far as the next step needs it. Empty after an
/// attempt was resumed: the coach then sends one to look again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Remembered {
    /// How the kitchen range was seen last.
    pub range: Option<Burning>,
    /// What the supply in the yard gives: a tank was seen there, or a meter.
    pub supply: Option<Fuel>,
}

/// The times that the job card asks for, in seconds.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Asked {
    /// How long a hold without flow must last.
    pub hold_s: f64,
    /// How long after a change a reading counts.
    pub settle_s: f64,
}

impl Remembered {
    /// Takes in what is seen now.
    pub fn notice(&mut self, seen: &Seen) {
        if let Some(hall) = &seen.hall {
            self.range = Some(hall.range.1);
        }
        if let Some(yard) = &seen.yard {
            let tank = yard.tank_percent.map(|_| Fuel::Propane);
            self.supply = tank.or(yard.dial_turns.map(|_| Fuel::Natural)).or(self.supply);
        }
    }
}

/// Share of full speed or glow below which a wheel stands and an igniter is dark.
const STILL: f64 = 0.02;

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
        .or_else(|| paper(seen))
        .or_else(|| {
            let wanted = ORDER
                .iter()
                .find(|&&(port, stage)| seen.sheet.reading(port, stage, Phase::Found).is_none());
            wanted.and_then(|&(port, stage)| read(seen, remembered, asked, port, stage))
        })
        .or_else(|| Some(judge(seen)))
}

/// The fuel in the pipes, as far as a person here can know it: by what stands in the yard, else by
/// label or plate.
fn fuel(seen: &Seen, remembered: &Remembered) -> Option<Fuel> {
    let figures = |subject| match seen.sheet.note(subject).map(|note| &note.finding) {
        Some(Finding::Figures(figures)) => Some(figures.fuel),
        _ => None,
    };
    supply(seen, remembered)
        .or_else(|| figures(Subject::ConversionLabel))
        .or_else(|| figures(Subject::Plate))
}

/// The fuel that the yard speaks for: a tank is propane, a meter natural gas.
fn supply(seen: &Seen, remembered: &Remembered) -> Option<Fuel> {
    let noted = |subject| seen.sheet.note(subject).is_some();
    remembered
        .supply
        .or_else(|| noted(Subject::TankGauge).then_some(Fuel::Propane))
        .or_else(|| noted(Subject::MeterDial).then_some(Fuel::Natural))
}

/// The figures that everything is held against.
fn paper(seen: &Seen) -> Option<Hint> {
    let subjects = [
        (
            Subject::Plate,
            "plate",
            "Read the rating plate: it says which pressures this furnace wants.",
        ),
        (
            Subject::ConversionLabel,
            "conversion-label",
            "Look for a conversion label. Where there is one, its gas figures replace the plate's.",
        ),
    ];
    let (subject, part, text) =
        subjects.into_iter().find(|(subject, _, _)| seen.sheet.note(*subject).is_none())?;
    Some(match seen.place {
        Place::PlantRoom | Place::GasValve => Hint::act(text, part, Action::Look(subject)),
        Place::Yard | Place::Hall | Place::Away => to_plant_room(text),
    })
}

fn to_plant_room(text: &str) -> Hint {
    Hint::go(format!("{text} It is in the plant room."), Place::PlantRoom)
}

/// To one reading: the hose on its port, the furnace in its state, the number at rest.
fn read(
    seen: &Seen,
    remembered: &Remembered,
    asked: Asked,
    port: Port,
    stage: Stage,
) -> Option<Hint> {
    match seen.meter.hose {
        Some((on, push)) if on == port => port::push_fully(port, push)
            .or_else(|| fire::to_stage(seen, remembered, asked, port, stage)),
        Some(_) | None => port::connect(seen, port),
    }
}

/// With the found column full, the rest is the trainee's judgement.
fn judge(seen: &Seen) -> Hint {
    let left = |stage| seen.sheet.reading(Port::Manifold, stage, Phase::Left).is_some();
    if left(Stage::Low) && left(Stage::High) {
        return Hint::say(
            "Close up: gas off, adapter out, plug started by hand and snug. Check each joint you \
             disturbed at its own pressure: the inlet plug with the valve open, the manifold plug \
             while the burners run on high. Doors, switches and thermostat as they belong; then \
             hand over.",
        );
    }
    Hint::say(
        "Compare what you wrote with the plate or the label. Inlet wrong: find out why before any \
         screw. Manifold out of its band: cap off, turn a little, wait, read again, cap on. Then \
         write the left column.",
    )
}

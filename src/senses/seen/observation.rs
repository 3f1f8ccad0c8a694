//! Notes from looking closely: what was found, as data, and its words for people.

use super::Water;
use crate::appliance::ignition::ControlStatus;
use crate::appliance::plate::{Fuel, GasFigures};
use crate::appliance::safety::Hose;
use crate::parts::{Levels, Subject};
use crate::units::{F_PER_K, M_PER_IN, PA_PER_INWC, W_PER_BTU_H};
use crate::words::decimal;
use serde::Serialize;

/// What looking closely gave.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Note {
    /// What was looked at.
    pub subject: Subject,
    /// Moment of the look, in ticks.
    pub tick: u64,
    /// Observation that the look gave.
    pub finding: Observation,
}

/// Observation of a close look, for people and programs alike: its words are made from it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub enum Observation {
    /// Figures of the furnace's rating plate.
    Plate(RatingPlate),
    /// The figures of a conversion label.
    Label(GasFigures),
    /// No such thing is there.
    Absent,
    /// A fuel mark on the springs.
    SpringsFor(Fuel),
    /// Orifices on the manifold.
    Orifices {
        /// The size stamped on them.
        stamp: String,
        /// Whether they are free.
        holes: Holes,
    },
    /// Something in order, or plainly not.
    Condition(Condition),
    /// The connector behind the furnace.
    Connector(ConnectorLook),
    /// The hose between inducer and pressure switches, with its trap.
    DraftLine {
        /// State of the hose.
        hose: Hose,
        /// Water that stands in the hose.
        water: Water,
        /// The trap: good while it holds water.
        trap: Condition,
    },
    /// Flames of all burners together.
    Flames(FlamesLook),
    /// A supply regulator's nameplate.
    Delivery(Delivery),
    /// The tank's gauge, in per cent.
    TankPercent(f64),
    /// The gas meter's test dial.
    Dial {
        /// Gas of one turn, in cubic feet.
        turn_ft3: f64,
        /// Turns since it was fitted, with the fraction.
        turns: f64,
    },
    /// What the control says.
    Status(ControlStatus),
}

/// A judgement by eye.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum Condition {
    /// In order, as far as the eye tells.
    Good,
    /// Plainly not in order.
    Bad,
}

/// How the orifices look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum Holes {
    /// All of them are free.
    Free,
    /// Something sits in one of them.
    OnePlugged,
}

/// How the connector looks.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum ConnectorLook {
    /// Whole and without a kink.
    Whole,
    /// Kinked, so that it throttles.
    Kinked,
    /// Bent straight again, and creased there.
    Creased,
}

/// How the burners look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum FlamesLook {
    /// None of them is lit.
    Out,
    /// Some are lit, some are not.
    SomeLit {
        /// Burners that are lit.
        lit: usize,
        /// Number of burners on the manifold.
        of: usize,
    },
    /// All of them are lit.
    AllLit {
        /// Number of burners on the manifold.
        of: usize,
        /// Good while every flame is blue.
        color: Condition,
    },
}

/// What a rating plate says.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RatingPlate {
    /// Model name of the furnace.
    pub model: String,
    /// Gas figures as made.
    pub figures: GasFigures,
    /// Input at each firing level, in watts.
    pub input_w: Levels<f64>,
    /// Highest pressure that the gas valve may see, in pascals.
    pub valve_max_pa: f64,
    /// Least and greatest temperature rise of the house air, in kelvins.
    // The furnace's plate stands in the setup, and there in the digest.
    #[serde(skip)]
    pub rise_k: (f64, f64),
}

/// Delivery limits on a regulator's nameplate, in pascals.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Delivery {
    /// Lowest while gas flows.
    pub least_pa: f64,
    /// Highest while gas flows.
    pub most_pa: f64,
    /// Highest at rest, with no flow.
    pub rest_pa: f64,
}

impl Note {
    /// Whether it is about something plainly not in order.
    #[must_use]
    pub fn is_bad(&self) -> bool {
        self.finding.condition() == Some(Condition::Bad)
    }

    /// What it says, in words.
    #[must_use]
    pub fn words(&self) -> String {
        match &self.finding {
            Observation::Plate(plate) => plate.words(),
            Observation::Label(label) => t!("found-label", figures = figures(label)),
            Observation::Absent => {
                let name = self.subject.label().to_lowercase();
                if self.subject == Subject::LowGasSwitch {
                    t!("found-absent-here", thing = name)
                } else {
                    t!("found-absent", thing = name)
                }
            }
            Observation::SpringsFor(fuel) => t!("found-springs", fuel = fuel.label()),
            Observation::Orifices { stamp, holes: Holes::Free } => {
                t!("found-orifices", stamp = stamp)
            }
            Observation::Orifices { stamp, holes: Holes::OnePlugged } => {
                t!("found-orifices-plugged", stamp = stamp)
            }
            Observation::Condition(condition) => by_eye(self.subject, *condition).into(),
            Observation::Connector(look) => match look {
                ConnectorLook::Whole => t!("found-connector-whole"),
                ConnectorLook::Kinked => t!("found-connector-kinked"),
                ConnectorLook::Creased => {
                    t!("found-connector-creased")
                }
            }
            .into(),
            Observation::DraftLine { hose, water, trap } => draft_line(*hose, *water, *trap),
            Observation::Flames(look) => flames(*look),
            Observation::Delivery(it) => t!(
                "found-delivery",
                least = inches(it.least_pa, 1),
                most = inches(it.most_pa, 1),
                rest = inches(it.rest_pa, 1),
            ),
            Observation::TankPercent(level) => t!("found-tank-gauge", percent = decimal(*level, 0)),
            Observation::Dial { turn_ft3, turns } => {
                t!("found-dial", turn = turn_ft3.to_string(), stands = decimal(turns % 1.0, 2))
            }
            Observation::Status(ControlStatus::NoPower) => t!("found-no-power").into(),
            Observation::Status(status) => t!("found-status", status = status.words()),
        }
    }
}

impl Observation {
    /// The judgement by eye; none where the finding is read rather than judged, or where flames are
    /// asked for and nothing burns.
    #[must_use]
    pub fn condition(&self) -> Option<Condition> {
        let bad_if = |bad: bool| Some(if bad { Condition::Bad } else { Condition::Good });
        match self {
            Self::Condition(condition) => Some(*condition),
            Self::Connector(look) => bad_if(*look != ConnectorLook::Whole),
            Self::DraftLine { hose, water, trap } => {
                bad_if(*hose != Hose::Sound || *water != Water::None || *trap == Condition::Bad)
            }
            Self::Flames(FlamesLook::Out) => None,
            Self::Flames(FlamesLook::SomeLit { .. }) => Some(Condition::Bad),
            Self::Flames(FlamesLook::AllLit { color, .. }) => Some(*color),
            Self::Status(status) => bad_if(status.is_stopped()),
            Self::Plate(_)
            | Self::Label(_)
            | Self::Absent
            | Self::SpringsFor(_)
            | Self::Orifices { .. }
            | Self::Delivery(_)
            | Self::TankPercent(_)
            | Self::Dial { .. } => None,
        }
    }

    /// The gas figures of a plate or label.
    #[must_use]
    pub fn figures(&self) -> Option<&GasFigures> {
        match self {
            Self::Plate(plate) => Some(&plate.figures),
            Self::Label(figures) => Some(figures),
            Self::Absent
            | Self::SpringsFor(_)
            | Self::Orifices { .. }
            | Self::Condition(_)
            | Self::Connector(_)
            | Self::DraftLine { .. }
            | Self::Flames(_)
            | Self::Delivery(_)
            | Self::TankPercent(_)
            | Self::Dial { .. }
            | Self::Status(_) => None,
        }
    }
}

impl RatingPlate {
    fn words(&self) -> String {
        let levels = self.input_w.iter().rev();
        let inputs: Vec<String> = levels.map(|(_, w)| decimal(w / W_PER_BTU_H, 0)).collect();
        t!(
            "found-plate",
            model = &self.model,
            figures = figures(&self.figures),
            input = inputs.join(" / "),
            most = inches(self.valve_max_pa, 1),
            rise_least = decimal(self.rise_k.0 * F_PER_K, 0),
            rise_most = decimal(self.rise_k.1 * F_PER_K, 0),
        )
    }
}

/// What a look at something tells that is in order or not.
fn by_eye(subject: Subject, condition: Condition) -> &'static str {
    let (good, bad) = match subject {
        Subject::SupplyVent => (t!("found-supply-vent-good"), t!("found-supply-vent-bad")),
        Subject::Vent => (t!("found-vent-good"), t!("found-vent-bad")),
        Subject::AirOpening => (t!("found-air-opening-good"), t!("found-air-opening-bad")),
        Subject::DripLeg => (t!("found-drip-leg-good"), t!("found-drip-leg-bad")),
        Subject::Filter => (t!("found-filter-good"), t!("found-filter-bad")),
        Subject::FlameRod => (t!("found-flame-rod-good"), t!("found-flame-rod-bad")),
        Subject::Registers => (t!("found-registers-good"), t!("found-registers-bad")),
        Subject::BoxHose => (t!("found-box-hose-good"), t!("found-box-hose-bad")),
        Subject::LowGasSwitch => (t!("found-low-gas-switch-good"), t!("found-low-gas-switch-bad")),
        Subject::CoAlarm => (t!("found-co-alarm-good"), t!("found-co-alarm-bad")),
        Subject::Plate
        | Subject::ConversionLabel
        | Subject::Orifices
        | Subject::SpringMark
        | Subject::Connector
        | Subject::DraftHose
        | Subject::Flames
        | Subject::TankGauge
        | Subject::MeterDial
        | Subject::StatusLamp
        | Subject::SupplyRegulator => (t!("found-good"), t!("found-bad")),
    };
    match condition {
        Condition::Good => good,
        Condition::Bad => bad,
    }
}

fn draft_line(hose: Hose, water: Water, trap: Condition) -> String {
    let hose = match hose {
        Hose::Sound => None,
        Hose::Split => Some(t!("found-draft-hose-split")),
        Hose::Off => Some(t!("found-draft-hose-off")),
    };
    let water = match water {
        Water::None => None,
        Water::Stands => Some(t!("found-draft-hose-water")),
    };
    let trap = match trap {
        Condition::Good => None,
        Condition::Bad => Some(t!("found-trap-dry")),
    };
    let wrong: Vec<&str> = [hose, water, trap].into_iter().flatten().collect();
    if wrong.is_empty() {
        return t!("found-draft-line-good").into();
    }
    wrong.join(" ")
}

fn flames(look: FlamesLook) -> String {
    match look {
        FlamesLook::Out => t!("found-no-flame").into(),
        FlamesLook::SomeLit { lit, of } => t!("found-some-flames", lit = lit, of = of),
        FlamesLook::AllLit { of, color: Condition::Good } => t!("found-blue-flames", of = of),
        FlamesLook::AllLit { of, color: Condition::Bad } => t!("found-yellow-flames", of = of),
    }
}

/// A pressure in inches of water column, with so many decimals.
fn inches(pa: f64, places: usize) -> String {
    decimal(pa / PA_PER_INWC, places)
}

fn figures(figures: &GasFigures) -> String {
    let d = usize::from(figures.decimals);
    let levels = figures.manifold.iter().map(|(level, target)| {
        t!(
            "found-target",
            level = level.id(),
            pressure = inches(target.pa, d),
            tolerance = inches(target.tolerance_pa, d),
        )
    });
    let levels: Vec<String> = levels.collect();
    t!(
        "found-figures",
        fuel = figures.fuel.label(),
        least = inches(figures.inlet_min_pa, 1),
        most = inches(figures.inlet_max_pa, 1),
        manifold = levels.join(", "),
        orifice = &figures.orifice_stamp,
        bore = decimal(figures.orifice_m / M_PER_IN, 4),
    )
}

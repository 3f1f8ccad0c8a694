//! Notes from looking closely: what was found, as data, and its words for people.

use super::Water;
use crate::appliance::ignition::ControlStatus;
use crate::appliance::plate::{Fuel, GasFigures};
use crate::appliance::safety::Hose;
use crate::parts::Subject;
use crate::units::{M_PER_IN, PA_PER_INWC, W_PER_BTU_H};
use serde::Serialize;

/// What looking closely gave.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Note {
    /// What was looked at.
    pub subject: Subject,
    /// When, in ticks.
    pub tick: u64,
    /// What was found.
    pub finding: Finding,
}

/// What was found, for people and programs alike: its words are made from it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub enum Finding {
    /// The rating plate.
    Plate(RatingPlate),
    /// The figures of a conversion label.
    Label(GasFigures),
    /// No such thing is there.
    Absent,
    /// A fuel mark on the springs.
    SpringsFor(Fuel),
    /// The orifices.
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
        /// The hose.
        hose: Hose,
        /// Water in it.
        water: Water,
        /// The trap: good while it holds water.
        trap: Condition,
    },
    /// The burners' flames.
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
    /// In order.
    Good,
    /// Plainly not.
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
    /// Kinked.
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
        /// Burners there are.
        of: usize,
    },
    /// All of them are lit.
    AllLit {
        /// Burners there are.
        of: usize,
        /// Good while every flame is blue.
        color: Condition,
    },
}

/// What a rating plate says.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct RatingPlate {
    /// Model name.
    pub model: String,
    /// Gas figures as made.
    pub figures: GasFigures,
    /// Input on high, in watts.
    pub input_high_w: f64,
    /// Input on low, in watts.
    pub input_low_w: f64,
    /// Highest pressure that the gas valve may see, in pascals.
    pub valve_max_pa: f64,
}

/// Delivery limits on a regulator's nameplate, in pascals.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Delivery {
    /// Lowest while gas flows.
    pub low_pa: f64,
    /// Highest while gas flows.
    pub high_pa: f64,
    /// Highest at rest.
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
            Finding::Plate(plate) => plate.words(),
            Finding::Label(label) => format!("This furnace has been converted. {}", figures(label)),
            Finding::Absent => {
                let name = self.subject.label().to_lowercase();
                match self.subject {
                    Subject::LowGasSwitch => format!("No {name} here."),
                    _ => format!("There is no {name}."),
                }
            }
            Finding::SpringsFor(fuel) => format!("Springs marked for {}.", fuel.label()),
            Finding::Orifices { stamp, holes } => {
                let plugged = match holes {
                    Holes::Free => "",
                    Holes::OnePlugged => " Something sits in one of them.",
                };
                format!("Orifices stamped {stamp}.{plugged}")
            }
            Finding::Condition(condition) => by_eye(self.subject, *condition).into(),
            Finding::Connector(look) => match look {
                ConnectorLook::Whole => "The connector is whole, not kinked, outside the cabinet.",
                ConnectorLook::Kinked => "The connector has a kink behind the furnace.",
                ConnectorLook::Creased => {
                    "The connector has been bent straight; the tube is creased there."
                }
            }
            .into(),
            Finding::DraftLine { hose, water, trap } => draft_line(*hose, *water, *trap),
            Finding::Flames(look) => flames(*look),
            Finding::Delivery(it) => format!(
                "Delivers {:.1} to {:.1} in. w.c.; at rest at most {:.1}.",
                inches(it.low_pa),
                inches(it.high_pa),
                inches(it.rest_pa),
            ),
            Finding::TankPercent(level) => format!("The tank gauge stands at {level:.0} %."),
            Finding::Dial { turn_ft3, turns } => {
                format!("Test dial of {turn_ft3} ft³ a turn; it stands at {:.2}.", turns % 1.0)
            }
            Finding::Status(status) => match status {
                ControlStatus::NoPower => "The status lamp is dark: no power.".into(),
                said => format!("The control says: {}.", said.words()),
            },
        }
    }
}

impl Finding {
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
        let kbtu = |w: f64| w / W_PER_BTU_H;
        format!(
            "Model {}. {} Input {:.0} / {:.0} Btu/h. Gas valve: at most {:.1} in. w.c.",
            self.model,
            figures(&self.figures),
            kbtu(self.input_high_w),
            kbtu(self.input_low_w),
            inches(self.valve_max_pa),
        )
    }
}

/// What a look at something tells that is in order or not.
fn by_eye(subject: Subject, condition: Condition) -> &'static str {
    let (good, bad) = match subject {
        Subject::SupplyVent => (
            "The regulator's vent is open and points down.",
            "The regulator's vent is closed up: ice, mud or paint sits in it.",
        ),
        Subject::Vent => (
            "The flue runs outside by itself, joints closed.",
            "Something sits in the end of the flue.",
        ),
        Subject::AirOpening => ("The air opening is free.", "The air opening is partly covered."),
        Subject::DripLeg => (
            "The drip leg hangs below the tee, capped.",
            "There is no drip leg, and the branch sags.",
        ),
        Subject::Filter => {
            ("The filter is clean and in place.", "The filter is grey and matted with dust.")
        }
        Subject::FlameRod => (
            "The flame rod is clean, and its tip reaches into the flame's place.",
            "The flame rod has a pale film on it.",
        ),
        Subject::Registers => ("The registers stand open.", "Many of the registers are closed."),
        Subject::BoxHose => (
            "The hose from the burner box to the gas valve is on and whole.",
            "The hose from the burner box to the gas valve is off.",
        ),
        Subject::LowGasSwitch => {
            ("Low gas switch of the propane kit, wired in.", "The low gas switch is not in order.")
        }
        Subject::CoAlarm => ("The CO alarm shows 0 ppm.", "The CO alarm calls."),
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
        | Subject::SupplyRegulator => ("In order.", "Not in order."),
    };
    match condition {
        Condition::Good => good,
        Condition::Bad => bad,
    }
}

fn draft_line(hose: Hose, water: Water, trap: Condition) -> String {
    let hose = match hose {
        Hose::Sound => None,
        Hose::Split => Some("The draft hose is split near its end."),
        Hose::Off => Some("The draft hose has come off and hangs down."),
    };
    let water = match water {
        Water::None => None,
        Water::Stands => Some("Water stands in the inducer's housing and in the hose."),
    };
    let trap = match trap {
        Condition::Good => None,
        Condition::Bad => Some("The condensate trap is dry."),
    };
    let wrong: Vec<&str> = [hose, water, trap].into_iter().flatten().collect();
    if wrong.is_empty() {
        return "The draft hose is on at both ends, and the trap holds water.".into();
    }
    wrong.join(" ")
}

/// Numbers of burners in words.
const COUNTS: [&str; 10] =
    ["no", "one", "two", "three", "four", "five", "six", "seven", "eight", "many"];

fn flames(look: FlamesLook) -> String {
    let count = |of: usize| COUNTS[of.min(COUNTS.len() - 1)];
    match look {
        FlamesLook::Out => "No burner is lit.".into(),
        FlamesLook::SomeLit { lit, of } => format!("{lit} of {} burners lit.", count(of)),
        FlamesLook::AllLit { of, color } => {
            let count = capital(count(of));
            let flames = if of == 1 { "flame" } else { "flames" };
            match color {
                Condition::Good => format!("{count} blue {flames}, steady, into the tubes."),
                Condition::Bad => format!("{count} {flames} with long yellow tips."),
            }
        }
    }
}

fn capital(word: &str) -> String {
    let mut letters = word.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

fn inches(pa: f64) -> f64 {
    pa / PA_PER_INWC
}

fn figures(figures: &GasFigures) -> String {
    let d = usize::from(figures.decimals);
    format!(
        "For {}: inlet {:.1} to {:.1}, manifold low {:.d$} ± {:.d$}, high {:.d$} ± {:.d$} in. w.c., \
         orifice {} ({:.4} in.).",
        figures.fuel.label(),
        inches(figures.inlet_min_pa),
        inches(figures.inlet_max_pa),
        inches(figures.low.pa),
        inches(figures.low.tolerance_pa),
        inches(figures.high.pa),
        inches(figures.high.tolerance_pa),
        figures.orifice_stamp,
        figures.orifice_m / M_PER_IN,
    )
}

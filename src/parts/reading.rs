//! A reading on the job sheet: of which port, in which state of the furnace, what number.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

use super::names::Port;
use crate::units::PressureUnit;

/// A running state of the furnace at which a pressure is read.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// No gas flows anywhere in the house.
    Rest,
    /// The furnace fires on low.
    Low,
    /// The furnace fires on high.
    High,
    /// The furnace fires on high and every other gas appliance burns.
    HighWithOthers,
}

impl Stage {
    /// All, in the order of the job sheet.
    pub const ALL: [Self; 4] = [Self::Rest, Self::Low, Self::High, Self::HighWithOthers];

    /// As the job sheet writes it.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Rest => "at rest",
            Self::Low => "low",
            Self::High => "high",
            Self::HighWithOthers => "high, all others on",
        }
    }
}

/// Whether a reading was taken before or after work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Phase {
    /// As found.
    Found,
    /// As left.
    Left,
}

/// A number written on the job sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Reading {
    /// Whose port.
    pub port: Port,
    /// In which state.
    pub stage: Stage,
    /// Before or after work.
    pub phase: Phase,
    /// The number, in thousandths of the unit.
    pub thousandths: i32,
    /// The unit that is written.
    pub unit: PressureUnit,
}

/// What a leak check showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum JointVerdict {
    /// No growing bubbles.
    Tight,
    /// Bubbles grew.
    Leaking,
}

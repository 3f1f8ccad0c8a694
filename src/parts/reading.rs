//! A reading on the job sheet: of which port, in which state of the furnace, what number.

use serde::{Deserialize, Serialize};

use crate::appliance::test_point::{Port, Stage};
use crate::units::PressureUnit;

/// Whether a reading was taken before or after work.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Phase {
    /// As it was found, before anything was set.
    Found,
    /// As it was left, after the work.
    Left,
}

/// A number written on the job sheet.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case", deny_unknown_fields)]
pub struct Reading {
    /// Port that was read.
    pub port: Port,
    /// State of the furnace while it was read.
    pub stage: Stage,
    /// Before or after work.
    pub phase: Phase,
    /// The number, in thousandths of the unit.
    pub thousandths: i32,
    /// The unit that is written.
    pub unit: PressureUnit,
}

impl Reading {
    /// The number in the unit that is written.
    #[must_use]
    pub fn value(&self) -> f64 {
        f64::from(self.thousandths) / 1000.0
    }

    /// The number in pascals.
    #[must_use]
    pub fn pa(&self) -> f64 {
        self.value() * self.unit.pa()
    }
}

/// What a leak check showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum JointVerdict {
    /// Leak fluid stood without growing bubbles.
    Tight,
    /// Bubbles grew in the leak fluid.
    Leaking,
}

//! The rating plate, and the label that a fuel conversion leaves behind.
//!
//! **Source.** No figures of its own: the scenario gives them. Which figures a plate carries, and
//! that a conversion label replaces them: installation manuals of two-stage furnaces (makers
//! withheld).
//! **Checked.** A plate's figures against readings: `tests/core/bench/calibrated.rs`.

use crate::units::{HeatRate, Pressure, TemperatureStep};
use serde::Serialize;

/// Which fuel something is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
pub enum Fuel {
    /// Piped natural gas.
    Natural,
    /// Propane vapour.
    Propane,
}

impl Fuel {
    /// The word on the paper.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Natural => "natural gas",
            Self::Propane => "propane",
        }
    }
}

/// A pressure with the band the maker allows around it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Target {
    /// The wanted pressure, in pascals.
    pub pa: f64,
    /// Allowed either way, in pascals.
    pub tolerance_pa: f64,
}

impl Target {
    /// Whether `pa` lies in the band.
    #[must_use]
    pub fn holds(self, pa: f64) -> bool {
        (pa - self.pa).abs() <= self.tolerance_pa
    }
}

/// The gas figures of a plate or of a conversion label. After a conversion the label's replace
/// the plate's.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct GasFigures {
    /// The fuel they are for.
    pub fuel: Fuel,
    /// Lowest inlet pressure while firing, all other appliances on, in pascals.
    pub inlet_min_pa: f64,
    /// Highest inlet pressure, in pascals.
    pub inlet_max_pa: f64,
    /// Manifold pressure on low.
    pub low: Target,
    /// Manifold pressure on high.
    pub high: Target,
    /// Orifice diameter, in metres.
    pub orifice_m: f64,
    /// The orifice size as stamped.
    pub orifice_stamp: String,
    /// Decimals (of inches of water) that the figures carry.
    pub decimals: u8,
}

/// A rating plate.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plate {
    /// Model name, of our own world.
    pub model: String,
    /// Gas figures as made.
    pub made_for: GasFigures,
    /// Gas figures of the conversion label, when the furnace was converted.
    pub converted_to: Option<GasFigures>,
    /// Input on high, in watts.
    pub input_high: HeatRate,
    /// Input on low, in watts.
    pub input_low: HeatRate,
    /// Allowed temperature rise.
    pub rise: (TemperatureStep, TemperatureStep),
    /// Highest pressure that the gas valve may see, in pascals.
    pub valve_max: Pressure,
}

impl Plate {
    /// The figures that govern: the conversion label's where there is one.
    #[must_use]
    pub fn figures(&self) -> &GasFigures {
        self.converted_to.as_ref().unwrap_or(&self.made_for)
    }
}

//! The rating plate, and the label that a fuel conversion leaves behind.
//!
//! **Source.** No figures of its own: the scenario gives them. Which figures a plate carries, and
//! that a conversion label replaces them: installation manuals of two-stage furnaces (makers
//! withheld).
//!
//! **What is allowed where** ([`GasFigures::allows`]). The plate governs, and the nameplate of the
//! supply regulator where it is stricter at rest.
//!
//! | port | at rest | firing at a level | full connected load |
//! |---|---|---|---|
//! | inlet | inlet minimum to inlet maximum, at most the nameplate's lock-up limit | inlet minimum to maximum | inlet minimum to maximum |
//! | manifold | zero, as an ordinary gauge tells it | the level's ± its tolerance | the full rate's ± its tolerance |
//!
//! At rest again after flow the same is allowed as at rest.
//!
//! The plate gives its inlet minimum for a firing furnace. At rest it holds all the more: a flow can
//! only take pressure away, so an inlet below the minimum at rest is below it at every load.
//! At rest the manifold is open to the burners through the orifices behind shut seats: it stands at
//! the air's pressure, and the tolerance of a firing stage says nothing there. More than zero is gas
//! that the seats let by (common practice).
//! **Checked.** A plate's figures against readings: `tests/core/bench/calibrated.rs`; the table
//! above: `tests/core/appliance/plate.rs`.

use super::level::Levels;
use super::test_point::{Port, Stage};
use crate::units::{HeatRate, Pressure, TemperatureStep};
use serde::Serialize;

/// A manifold at rest reads zero up to here, in pascals: what a gauge with a resolution of
/// 0.1 in. w.c. shows as 0.0 (the resolution that installation manuals ask for; makers withheld).
const READS_ZERO_PA: f64 = 0.05 * crate::units::PA_PER_INWC;

/// What the arithmetic may lose, in pascals: a number read off a display as an end of the band is in
/// the band.
const ROUNDING_PA: f64 = 1e-6;

/// Pressures from a least to a most, both allowed, in pascals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Band {
    /// The lowest that is allowed.
    pub least_pa: f64,
    /// The highest that is allowed.
    pub most_pa: f64,
}

impl Band {
    /// Whether `pa` lies in the band, its ends included.
    #[must_use]
    pub fn contains(self, pa: f64) -> bool {
        pa.is_finite() && !self.is_below(pa) && !self.is_above(pa)
    }

    /// Whether `pa` lies below the band.
    #[must_use]
    pub fn is_below(self, pa: f64) -> bool {
        pa < self.least_pa - ROUNDING_PA
    }

    /// Whether `pa` lies above the band.
    #[must_use]
    pub fn is_above(self, pa: f64) -> bool {
        pa > self.most_pa + ROUNDING_PA
    }

    /// How far `pa` lies outside, in pascals: negative below the band, positive above, zero in it.
    #[must_use]
    pub fn beyond_pa(self, pa: f64) -> f64 {
        if pa < self.least_pa { pa - self.least_pa } else { (pa - self.most_pa).max(0.0) }
    }

    /// How far `pa` lies outside, in pascals, negative by its distance to the nearer end when it
    /// lies inside.
    #[must_use]
    pub fn out_by_pa(self, pa: f64) -> f64 {
        (self.least_pa - pa).max(pa - self.most_pa)
    }
}

/// Which fuel something is made for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, serde::Serialize, serde::Deserialize)]
pub enum Fuel {
    /// Natural gas, piped by a utility.
    Natural,
    /// Propane vapor from a tank.
    Propane,
}

impl Fuel {
    /// The word on the paper.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Natural => t!("fuel-natural"),
            Self::Propane => t!("fuel-propane"),
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
    /// What is allowed around it.
    #[must_use]
    pub fn band(self) -> Band {
        Band { least_pa: self.pa - self.tolerance_pa, most_pa: self.pa + self.tolerance_pa }
    }

    /// A share of the tolerance, in pascals: 1 is the whole of it.
    #[must_use]
    pub fn share_pa(self, share: f64) -> f64 {
        share * self.tolerance_pa
    }
}

impl GasFigures {
    /// What plate or label allows at a port in a test state. `lockup_most_pa` is the highest
    /// pressure at rest on the supply regulator's nameplate, in pascals, where it is known.
    #[must_use]
    pub fn allows(&self, port: Port, stage: Stage, lockup_most_pa: Option<f64>) -> Band {
        let inlet = Band { least_pa: self.inlet_min_pa, most_pa: self.inlet_max_pa };
        match (port, stage) {
            (Port::Inlet, Stage::Rest | Stage::RestAgain) => Band {
                most_pa: lockup_most_pa.map_or(inlet.most_pa, |most| most.min(inlet.most_pa)),
                ..inlet
            },
            (Port::Inlet, Stage::Firing(_) | Stage::FullLoad) => inlet,
            (Port::Manifold, Stage::Rest | Stage::RestAgain) => {
                Band { least_pa: -READS_ZERO_PA, most_pa: READS_ZERO_PA }
            }
            (Port::Manifold, Stage::Firing(level)) => self.manifold[level].band(),
            (Port::Manifold, Stage::FullLoad) => self.manifold.top().band(),
        }
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
    /// Manifold pressure at each firing level.
    pub manifold: Levels<Target>,
    /// Orifice diameter, in metres.
    pub orifice_m: f64,
    /// The orifice size as stamped.
    pub orifice_stamp: String,
    /// Decimals (of inches of water) that the figures carry.
    pub decimals: u8,
}

/// The rating plate of a furnace with its conversion label.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Plate {
    /// Model name, of our own world.
    pub model: String,
    /// Gas figures as made.
    pub made_for: GasFigures,
    /// Gas figures of the conversion label, when the furnace was converted.
    pub converted_to: Option<GasFigures>,
    /// Input at each firing level, in watts.
    pub input: Levels<HeatRate>,
    /// Least and greatest temperature rise allowed between return and supply air.
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

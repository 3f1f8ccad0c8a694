//! Units a person may choose to see pressures in.

use serde::{Deserialize, Serialize};

use super::PA_PER_INWC;
use crate::words::fixed;

/// A unit on an instrument or on paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum PressureUnit {
    /// Inches of water column.
    InWc,
    /// Kilopascals, shown to 0.001 kPa.
    KPa,
    /// Millibars, shown to 0.01 mbar.
    Mbar,
}

impl PressureUnit {
    /// Every unit, in the order an instrument steps through them.
    pub const ALL: [Self; 3] = [Self::InWc, Self::KPa, Self::Mbar];

    /// The unit as it is written.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::InWc => t!("unit-inwc"),
            Self::KPa => "kPa",
            Self::Mbar => "mbar",
        }
    }

    /// Pascals in one of this unit.
    #[must_use]
    pub fn pa(self) -> f64 {
        match self {
            Self::InWc => PA_PER_INWC,
            Self::KPa => 1_000.0,
            Self::Mbar => 100.0,
        }
    }

    /// Decimals that give about the resolution of a hundredth of an inch of water.
    #[must_use]
    pub fn decimals(self) -> usize {
        match self {
            Self::InWc | Self::Mbar => 2,
            Self::KPa => 3,
        }
    }

    /// The unit that an instrument's button brings next.
    #[must_use]
    pub fn next(self) -> Self {
        match self {
            Self::InWc => Self::KPa,
            Self::KPa => Self::Mbar,
            Self::Mbar => Self::InWc,
        }
    }
}

/// A pressure with the unit it is shown in.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
pub struct Shown {
    /// The number as shown, already rounded to the display.
    pub value: f64,
    /// The unit that `value` counts in.
    pub unit: PressureUnit,
}

impl Shown {
    /// The pressure in pascals.
    #[must_use]
    pub fn pa(self) -> f64 {
        self.value * self.unit.pa()
    }
}

impl core::fmt::Display for Shown {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{} {}", fixed(self.value, self.unit.decimals()), self.unit.label())
    }
}

/// A pressure in pascals as hundredths of an inch of water, the last digit of the trade's digital
/// manometers; a zero has no sign. Plates give a manifold pressure to a tenth or a hundredth too.
#[must_use]
pub fn hundredths_inwc(pa: f64) -> f64 {
    (pa / PA_PER_INWC * 100.0).round() / 100.0 + 0.0
}

/// A pressure in pascals in words, to a hundredth of an inch of water: `3.50 in. w.c.`
#[must_use]
pub fn inwc(pa: f64) -> String {
    Shown { value: pa / PA_PER_INWC, unit: PressureUnit::InWc }.to_string()
}

/// A sentence made from its words: ends with one full stop, also after a unit that has its own.
#[must_use]
pub fn full_stop(mut words: String) -> String {
    if !words.ends_with('.') {
        words.push('.');
    }
    words
}

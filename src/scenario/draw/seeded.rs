//! Values of fields for one seed.

use crate::scenario::pick::Pick;
use crate::scenario::value::{Measure, Vary, whole};

/// Pressure of the air at sea level, in pascals (ICAO standard atmosphere).
pub(super) const SEA_LEVEL_PA: f64 = 101_325.0;

/// The values that fields take for one seed.
#[derive(Debug, Clone, Copy)]
pub(super) struct SeededValues {
    seed: u64,
}

impl SeededValues {
    pub(super) fn new(seed: u64) -> Self {
        Self { seed }
    }

    /// The value of a field.
    pub(super) fn get<M: Measure>(self, value: &Vary<M>, path: &str) -> f64 {
        value.draw(self.seed, path)
    }

    /// The value of a field, or what stands in for it.
    pub(super) fn or<M: Measure>(self, value: Option<&Vary<M>>, path: &str, other: f64) -> f64 {
        value.map_or(other, |value| value.draw(self.seed, path))
    }

    /// The word of a field.
    pub(super) fn pick<T: Copy>(self, value: &Pick<T>, path: &str) -> T {
        value.draw(self.seed, path)
    }

    pub(super) fn count<M: Measure>(self, value: &Vary<M>, path: &str) -> u32 {
        whole(self.get(value, path))
    }
}

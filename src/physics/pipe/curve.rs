//! A monotone odd curve of flow against driving pressure, read without any transcendental function.
//!
//! **Equation.** `Q(w)` in standard m³/s against `w = (P₁² − P₂²)/(2·p_std)` in Pa, odd: cubic
//! Hermite pieces between knots at eighths of an octave of `w`, with the tabulated law's own value
//! and slope at each knot.
//! **Assumptions.** The law is monotone and linear below the first knot.
//! **Valid range.** Any `w` of either sign; the table ends at 2¹⁸ Pa = 262 kPa.
//! **Regularisation.** Below the first knot a straight line through zero, above the last a square
//! root. Slopes are limited to three times the secant (Fritsch–Carlson), so that a piece never
//! turns back; no law here comes near that limit, so value and slope are continuous everywhere.
//! **Source.** Monotone cubic interpolation: Fritsch and Carlson, SIAM Journal on Numerical
//! Analysis 17 (1980) 238–246 (from memory). Number of knots: chosen for an error of a few parts in
//! a million.
//! **Left out.** Nothing of the law but that error.
//! **Checked.** `follows_a_power_law_smoothly()` in `src/physics/pipe/curve.rs`: 3 parts in a
//! million in value, joints in value and slope. `network_flow_is_the_curves()` in
//! `tests/core/physics/pipe.rs`.

use serde::{Serialize, Serializer};
use std::sync::Arc;

use crate::units::P_STD_PA;

/// Segments in one octave: the top three bits of the mantissa.
const SEGMENT_BITS: u32 = 3;
const SHIFT: u32 = 52 - SEGMENT_BITS;
/// The table ends at 2^18 Pa = 262 kPa of driving term; the square-root law goes on from there.
const END_PA: f64 = 262_144.0;

/// Flow in standard m³/s against the driving term `w = (P₁² − P₂²)/(2·p_std)` in Pa.
///
/// Segments are eighths of an octave found from the bits of `w`; inside each runs a cubic with the
/// law's own value and slope at both ends (limited so that it never turns back). Below the first
/// segment the curve is a straight line through zero, above the last a square root. Value and slope
/// are continuous everywhere. The table is shared between copies.
#[derive(Debug, Clone)]
pub struct FlowCurve {
    start_pa: f64,
    start_slope: f64,
    first_key: u64,
    end_flow: f64,
    segments: Arc<[[f64; 4]]>,
}

impl Serialize for FlowCurve {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        // The table in between is the law's own, and whoever writes a curve writes its law as well.
        let Self { start_pa, start_slope, first_key, end_flow, segments: _ } = self;
        (start_pa, start_slope, first_key, end_flow).serialize(serializer)
    }
}

impl FlowCurve {
    /// Tabulates `law`, which gives flow and slope at a driving term above zero and is linear below
    /// `linear_pa`.
    #[must_use]
    pub fn tabulate(linear_pa: f64, law: impl Fn(f64) -> (f64, f64)) -> Self {
        let start_pa = power_of_two_below(linear_pa);
        let first_key = start_pa.to_bits() >> SHIFT;
        let last_key = END_PA.to_bits() >> SHIFT;
        let knot = |key: u64| f64::from_bits(key << SHIFT);
        let start_slope = law(start_pa).0 / start_pa;
        let mut left = (start_pa, law(start_pa).0, start_slope);
        let mut segments = Vec::new();
        for key in first_key + 1..=last_key {
            let x = knot(key);
            let (flow, mut slope) = law(x);
            if key == last_key {
                slope = flow / (2.0 * x);
            }
            let right = (x, flow, slope);
            segments.push(hermite(left, right));
            left = right;
        }
        Self { start_pa, start_slope, first_key, end_flow: left.1, segments: segments.into() }
    }

    /// Flow and slope at a driving term of either sign.
    #[inline]
    #[must_use]
    pub fn flow(&self, drive_pa: f64) -> (f64, f64) {
        let size = drive_pa.abs();
        if size < self.start_pa {
            return (self.start_slope * drive_pa, self.start_slope);
        }
        let key = size.to_bits() >> SHIFT;
        let (flow, slope) = match self.segments.get((key - self.first_key) as usize) {
            Some(&[c0, c1, c2, c3]) => {
                let d = size - f64::from_bits(key << SHIFT);
                (c0 + d * (c1 + d * (c2 + d * c3)), c1 + d * (2.0 * c2 + 3.0 * d * c3))
            }
            None => {
                let flow = self.end_flow * (size / END_PA).sqrt();
                (flow, flow / (2.0 * size))
            }
        };
        (flow.copysign(drive_pa), slope)
    }
}

/// The driving term between two gauge pressures, with its slopes by each of them.
///
/// `diff_pa` is the pressure difference, passed apart because the network knows it more exactly
/// than the two pressures.
#[inline]
pub(crate) fn drive_pa(diff_pa: f64, from_abs_pa: f64, to_abs_pa: f64) -> (f64, f64, f64) {
    const HALF: f64 = 0.5 / P_STD_PA;
    const WHOLE: f64 = 1.0 / P_STD_PA;
    (diff_pa * (from_abs_pa + to_abs_pa) * HALF, from_abs_pa * WHOLE, -to_abs_pa * WHOLE)
}

/// The power of two at or below `x`, at most a quarter of the table's end.
fn power_of_two_below(x: f64) -> f64 {
    let bounded = x.clamp(1e-12, END_PA / 4.0);
    f64::from_bits(bounded.to_bits() & (0x7ff << 52))
}

/// Coefficients in powers of the distance from the left knot; knots are (x, value, slope).
fn hermite(left: (f64, f64, f64), right: (f64, f64, f64)) -> [f64; 4] {
    let width = right.0 - left.0;
    let secant = (right.1 - left.1) / width;
    let a = left.2.min(3.0 * secant);
    let b = right.2.min(3.0 * secant);
    [left.1, a, (3.0 * secant - 2.0 * a - b) / width, (a + b - 2.0 * secant) / (width * width)]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Between the knots the cubic follows a power law to a few parts in a million, it is odd, and
    /// value and slope join at the knots.
    #[test]
    fn follows_a_power_law_smoothly() {
        let law = |w: f64| (1e-4 * libm::pow(w, 0.54), 0.54e-4 * libm::pow(w, -0.46));
        let curve = FlowCurve::tabulate(1e-2, law);
        let mut w = 0.05;
        while w < 2e5 {
            let (flow, slope) = curve.flow(w);
            approx::assert_relative_eq!(flow, law(w).0, max_relative = 3e-6);
            approx::assert_relative_eq!(slope, law(w).1, max_relative = 3e-3);
            approx::assert_relative_eq!(curve.flow(-w).0, -flow);
            w *= 1.013;
        }
        for key in 1_u32..200 {
            let knot = 0.007_812_5 * f64::from(1 << (key / 8)) * (1.0 + f64::from(key % 8) / 8.0);
            let below = curve.flow(knot * (1.0 - 1e-12));
            let above = curve.flow(knot * (1.0 + 1e-12));
            approx::assert_relative_eq!(below.0, above.0, max_relative = 1e-10);
            approx::assert_relative_eq!(below.1, above.1, max_relative = 1e-9);
        }
    }
}

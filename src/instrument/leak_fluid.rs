//! Leak fluid on a joint: bubbles that grow with the leak and with the time they are given.
//!
//! **Equation.** Above the smallest leak, bubble size grows first-order in 4 s towards
//! `0.15 + 0.85·q/(q + q½)`, q½ = 3·10⁻⁷ m³/s (0.3 cm³/s); it never shrinks. From 0.05 on it is
//! seen.
//! **Assumptions.** One patch of fluid a joint; gas comes out evenly.
//! **Valid range.** Any leak; below 1e-10 m³/s (1e-4 cm³/s) nothing shows.
//! **Regularisation.** None: a bubble test does have a threshold.
//! **Source.** A bubble test shows leaks from about 1e-4 std cm³/s on (ASTM E515); growth time is
//! common practice (watch at least ten seconds). q½ and the size of the smallest bubbles: from
//! memory.
//! **Left out.** Drying out, spray that mimics bubbles, a large leak that blows the fluid away.
//! **Checked.** `bubbles_follow_the_leak()` in `src/instrument/leak_fluid.rs`.

use serde::Serialize;

/// Smallest leak that makes a bubble, in standard m³/s (1e-4 cm³/s, ASTM E515).
const SMALLEST_LEAK_M3_S: f64 = 1e-10;
/// Leak at which bubbles are half as large as they get, in standard m³/s.
const HALF_SIZE_M3_S: f64 = 3e-7;
/// Time for bubbles to grow, in seconds.
const GROWTH_S: f64 = 4.0;
/// Size from which an eye sees bubbles grow.
const VISIBLE: f64 = 0.05;

/// Fluid on one joint.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct LeakFluid {
    /// Seconds since it was brushed on.
    pub wet_s: f64,
    /// Size of the bubbles, 0–1.
    pub bubbles: f64,
}

impl LeakFluid {
    /// Goes on by `dt_s` with a leak under it, in standard m³/s.
    pub fn step(&mut self, dt_s: f64, leak_m3_s: f64) {
        self.wet_s += dt_s;
        let end = if leak_m3_s > SMALLEST_LEAK_M3_S {
            // Even the smallest leak shows, given time.
            0.15 + 0.85 * leak_m3_s / (leak_m3_s + HALF_SIZE_M3_S)
        } else {
            0.0
        };
        let growth = dt_s / (GROWTH_S + dt_s);
        self.bubbles += (end - self.bubbles).max(0.0) * growth;
    }

    /// Whether bubbles can be seen.
    #[must_use]
    pub fn shows(&self) -> bool {
        self.bubbles >= VISIBLE
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A tight joint stays quiet; a hole of 0.1 mm at 7 in. w.c. (0.3 cm³/s, orifice law with
    /// K 0.6) shows within ten seconds, and a larger one more.
    #[test]
    fn bubbles_follow_the_leak() {
        let grown = |q: f64| {
            let mut fluid = LeakFluid::default();
            for _ in 0..500 {
                fluid.step(0.02, q);
            }
            fluid.bubbles
        };
        assert_eq!(grown(0.0), 0.0);
        assert!(grown(0.3e-6) > 0.3);
        assert!(grown(3e-6) > grown(0.3e-6));
    }
}

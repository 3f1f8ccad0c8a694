//! The loading spring and its screw.
//!
//! **Equation.** Force at a compression `s` in m: `F = k·s` for `0 ≤ s ≤ s_bind`, none below zero,
//! and `k·(s_bind + 400·(s − s_bind))` once the coils touch, in N. `s` is turns times pitch.
//! **Assumptions.** Constant rate; touching coils are stiff, not rigid.
//! **Valid range.** Rate above zero; any compression.
//! **Regularisation.** The shortening under a force bends at coil bind over ±1 % of the force
//! there, by a quadratic: value and slope continuous. The force at a compression itself has the
//! plain corner.
//! **Source.** Hooke. Stiffness of a bound coil, 400 times the free rate, and the width of the
//! bend: chosen for the solver, no measurement behind them.
//! **Left out.** Friction of the screw, set of an old spring.
//! **Checked.** `shortening_is_smooth_and_monotone()` in `src/physics/regulator/spring.rs`;
//! `screw_from_end_to_end()` in `tests/core/physics/regulator.rs`.

use serde::Serialize;

/// A coil spring under a screw.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Spring {
    /// Rate, in N/m, above zero.
    pub rate_n_m: f64,
    /// Screw pitch, in m per turn.
    pub pitch_m: f64,
    /// Compression at which the coils touch, in m.
    pub bind_m: f64,
    /// Travel of the screw, in turns.
    pub max_turns: f64,
}

/// Rate of a spring whose coils touch, over its free rate.
const BOUND_RATIO: f64 = 400.0;
/// Half width of the rounding at coil bind, as a share of the force there.
const BIND_ROUNDING: f64 = 0.01;

impl Spring {
    /// Force at a compression, in N.
    #[must_use]
    pub fn force_n(&self, compression_m: f64) -> f64 {
        let free = compression_m.clamp(0.0, self.bind_m);
        let bound = (compression_m - self.bind_m).max(0.0);
        self.rate_n_m * (free + BOUND_RATIO * bound)
    }

    /// Force at which the coils touch, in N.
    #[must_use]
    pub fn bind_force_n(&self) -> f64 {
        self.rate_n_m * self.bind_m
    }

    /// How it gives way near its present preload.
    pub(crate) fn give(&self) -> Give {
        let soft = 1.0 / self.rate_n_m;
        let hard = soft / BOUND_RATIO;
        let half = BIND_ROUNDING * self.bind_force_n();
        Give { soft, hard, half, bend: (hard - soft) / (4.0 * half) }
    }
}

/// A spring's answer to force: worked out once, for many forces.
#[derive(Debug, Clone, Copy, Default, Serialize)]
pub(crate) struct Give {
    /// Shortening per newton, free and with the coils touching.
    soft: f64,
    hard: f64,
    /// Half width of the rounding between the two, in N.
    half: f64,
    bend: f64,
}

impl Give {
    /// How much further the spring is pressed together by `force_n` more than a preload that stands
    /// `bind_margin_n` short of coil bind, and the slope of that by the force (in m and m/N).
    /// Measured so that a spring far from binding gives zero at zero; rounded at the onset.
    #[inline]
    pub(crate) fn shortening(&self, force_n: f64, bind_margin_n: f64) -> (f64, f64) {
        let past = force_n - bind_margin_n;
        if past <= -self.half {
            (self.soft * force_n, self.soft)
        } else if past >= self.half {
            (self.soft * bind_margin_n + self.hard * past, self.hard)
        } else {
            let t = past + self.half;
            (self.soft * force_n + self.bend * t * t, self.soft + 2.0 * self.bend * t)
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The spring's shortening is monotone, with continuous value and slope through coil bind.
    #[test]
    fn shortening_is_smooth_and_monotone() {
        let spring = Spring { rate_n_m: 300.0, pitch_m: 8e-4, bind_m: 0.01, max_turns: 14.0 };
        let give = spring.give();
        let mut last = give.shortening(-1.0, 0.5);
        for k in 1..=200_000 {
            let next = give.shortening(-1.0 + 2e-5 * f64::from(k), 0.5);
            assert!(next.0 > last.0 && next.0 - last.0 < 1e-7);
            assert!((next.1 - last.1).abs() <= 1.3e-6, "slope jumps at step {k}");
            last = next;
        }
    }
}

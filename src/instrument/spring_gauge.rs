//! A round gauge with a spring and a needle: coarse, sticky, spoiled by too much pressure.
//!
//! **Equation.** The needle follows first-order in 0.3 s what gets past its play of 0.15 in. w.c.
//! either way; it is read to half a division of 1 in. w.c. Beyond 1.3 times its 35 in. w.c. the
//! spring sets: a fifth of the excess stays as a false zero.
//! **Assumptions.** The play is that of the linkage; the eye reads the nearest half division.
//! **Valid range.** 0–35 in. w.c.; below zero the needle rests on its stop.
//! **Regularisation.** A rational step `dt/(τ + dt)`.
//! **Source.** Grade B of ASME B40.100 allows 3 % of the span at the ends and 2 % in the middle: 0.7
//! to 1.05 in. w.c. of 35; play and half a division lie inside that. Over-range 1.3 times: common
//! practice. Set of the spring: from memory.
//! **Left out.** Temperature, a bent needle, tapping the glass.
//! **Checked.** `src/instrument/spring_gauge.rs`: `it_cannot_show_a_few_tenths()`,
//! `it_stays_within_its_grade()`, `too_much_spoils_it()`.

use crate::units::PA_PER_INWC;
use serde::Serialize;

/// Its range, in pascals.
const RANGE_PA: f64 = 35.0 * PA_PER_INWC;
/// Play of the linkage either way, in pascals.
const PLAY_PA: f64 = 0.15 * PA_PER_INWC;
/// Half a division, in pascals.
const READ_PA: f64 = 0.5 * PA_PER_INWC;
/// Where the spring begins to set, against its range.
const SETS_AT: f64 = 1.3;
/// Share of the excess that stays.
const SET_SHARE: f64 = 0.2;
/// Time constant, in seconds.
const LAG_S: f64 = 0.3;

/// A spring gauge of 0 to 35 in. w.c., at rest on zero when new.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct SpringGauge {
    felt_pa: f64,
    needle_pa: f64,
    set_pa: f64,
}

impl SpringGauge {
    /// Goes on by `dt_s` with a pressure on it, in pascals; says whether its spring set just now.
    pub fn step(&mut self, dt_s: f64, pressure_pa: f64) -> bool {
        self.felt_pa += (pressure_pa - self.felt_pa) * dt_s / (LAG_S + dt_s);
        let slack = self.felt_pa - self.needle_pa;
        self.needle_pa += (slack.abs() - PLAY_PA).max(0.0).copysign(slack);
        let set_pa = SET_SHARE * (self.felt_pa - SETS_AT * RANGE_PA);
        let strained = set_pa > self.set_pa;
        let first = strained && self.set_pa <= 0.0;
        if strained {
            self.set_pa = set_pa;
        }
        first
    }

    /// What is read, in pascals; none with the needle past its range.
    #[must_use]
    pub fn shown_pa(&self) -> Option<f64> {
        let needle_pa = self.needle_pa + self.set_pa;
        (needle_pa <= RANGE_PA).then(|| (needle_pa.max(0.0) / READ_PA).round() * READ_PA)
    }

    /// What is read, in tenths of an inch of water.
    #[must_use]
    pub fn shown_tenths(&self) -> Option<i32> {
        #[expect(clippy::cast_possible_truncation, reason = "its range at most")]
        self.shown_pa().map(|pa| (pa / PA_PER_INWC * 10.0).round() as i32)
    }

    /// What it reads too high by its spoiled spring, in pascals.
    #[must_use]
    pub fn error_pa(&self) -> f64 {
        self.set_pa
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rest(it: &mut SpringGauge, inches: f64) -> f64 {
        for _ in 0..10 * 50 {
            it.step(0.02, inches * PA_PER_INWC);
        }
        it.shown_pa().map_or(f64::NAN, |pa| pa / PA_PER_INWC)
    }

    /// From 3.3 to 3.5 in. w.c., a change that matters on a plate, the needle shows the same.
    #[test]
    fn it_cannot_show_a_few_tenths() {
        let mut it = SpringGauge::default();
        assert_eq!(rest(&mut it, 3.5), rest(&mut it, 3.3));
    }

    /// Within 2 % of the span in the middle of the range, coming from below and from above (grade B
    /// of ASME B40.100).
    #[test]
    fn it_stays_within_its_grade() {
        for inches in [10.0, 13.0, 17.3, 22.0, 26.0] {
            for from in [0.0, 34.0] {
                let mut it = SpringGauge::default();
                rest(&mut it, from);
                let shown = rest(&mut it, inches);
                assert!((shown - inches).abs() <= 0.02 * 35.0, "{shown} at {inches}");
            }
        }
    }

    /// After 2 psi (55 in. w.c.) the needle no longer comes back to zero.
    #[test]
    fn too_much_spoils_it() {
        let mut it = SpringGauge::default();
        assert!(rest(&mut it, 55.4).is_nan(), "past its range");
        assert!(rest(&mut it, 0.0) >= 1.0);
    }
}

//! A thermometer with a bead on a wire: it comes to a temperature in its own time.
//!
//! **Equation.** `dT/dt = (T_around − T)/τ`, one implicit step a tick; τ 6 s in moving air, 25 s in
//! still air, 4 s on a skin. Shown to 0.1 °F.
//! **Assumptions.** One lump; it follows wherever it is carried.
//! **Valid range.** −40 to 1,000 °F.
//! **Regularisation.** The rational step `dt/(τ + dt)`, error below 1 %.
//! **Source.** A small body follows Newton's law of cooling (any text on heat transfer). Time
//! constants: from memory, for a bare bead of about 1 mm in moving and in still air.
//! **Left out.** Heat radiated by the exchanger, errors of the junction, a bead pressed badly on a
//! skin.
//! **Checked.** `src/instrument/thermometer.rs`: `it_follows_newtons_law()` (closed form);
//! `tests/core/instruments/air.rs`: `rise_lies_in_the_plates_band_on_both_stages()`.

use serde::Serialize;

/// What is around the bead.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Around {
    /// Air that a fan moves.
    MovingAir,
    /// Air that nothing moves.
    StillAir,
    /// A skin that it is pressed on.
    Skin,
}

impl Around {
    fn lag_s(self) -> f64 {
        match self {
            Self::MovingAir => 6.0,
            Self::StillAir => 25.0,
            Self::Skin => 4.0,
        }
    }
}

/// A thermometer: the bead lags behind what is around it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Thermometer {
    bead_k: f64,
}

impl Thermometer {
    /// A thermometer that has lain at a temperature, in kelvins.
    #[must_use]
    pub fn new(bead_k: f64) -> Self {
        Self { bead_k }
    }

    /// Goes on by `dt_s` with its bead at a temperature (K).
    pub fn step(&mut self, dt_s: f64, around_k: f64, around: Around) {
        self.bead_k += (around_k - self.bead_k) * dt_s / (around.lag_s() + dt_s);
    }

    /// Temperature of the bead, in kelvins.
    #[must_use]
    pub fn bead_k(&self) -> f64 {
        self.bead_k
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// After one time constant 63.2 % of a step is shown, after three 95.0 % (closed form).
    #[test]
    fn it_follows_newtons_law() {
        let mut it = Thermometer::new(300.0);
        let mut after = |seconds: u32| {
            for _ in 0..seconds * 50 {
                it.step(0.02, 400.0, Around::MovingAir);
            }
            it.bead_k() - 300.0
        };
        approx::assert_abs_diff_eq!(after(6), 63.2, epsilon = 0.3);
        approx::assert_abs_diff_eq!(after(12), 95.0, epsilon = 0.3);
    }
}

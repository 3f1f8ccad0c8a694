//! A lumped house and its thermostat.
//!
//! **Equation.** `C·dT/dt = q − U·(T − T_outside)`, implicit, in W, J/K and W/K. First stage on
//! below setpoint − 0.5 °F, off above setpoint + 0.5 °F; second on below setpoint − 2 °F, off above
//! setpoint − 0.5 °F, and also on after a time on the first, where the thermostat has that; never
//! without the first.
//! **Assumptions.** One indoor temperature; the thermostat feels it at once.
//! **Valid range.** Any; the step is stable at any length.
//! **Regularisation.** None; hysteresis keeps the stages from chattering.
//! **Source.** Differentials are common practice: half a degree Fahrenheit each way for the first
//! stage, two degrees for the second. Loss and mass: the scenario's.
//! **Left out.** Sun, people, night set-back.
//! **Checked.** Closed form in `cooling_follows_the_closed_form()` and
//! `stages_come_and_go_in_order()`, `src/site/house.rs`; `a_house_is_held_at_its_setpoint()` and
//! `a_timer_calls_the_second_stage()`, `tests/core/appliance/house.rs`.

use serde::Serialize;

/// First stage comes this far below the setpoint and goes this far above it, in kelvins (0.5 °F).
const FIRST_K: f64 = 0.5 / 1.8;
/// Second stage comes this far below the setpoint, in kelvins (2 °F), and stays until the first
/// stage's own point.
const SECOND_K: f64 = 2.0 / 1.8;

/// Heat of a house: one indoor temperature, one loss to the outside.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct House {
    loss_w_k: f64,
    mass_j_k: f64,
    inside_k: f64,
}

impl House {
    /// A house at a temperature (K), with its heat loss (W/K) and thermal mass (J/K).
    #[must_use]
    pub fn new(inside_k: f64, loss_w_k: f64, mass_j_k: f64) -> Self {
        Self { loss_w_k, mass_j_k, inside_k }
    }

    /// Goes on by `dt_s` with heat from the furnace (W) and the temperature outside (K).
    pub fn step(&mut self, dt_s: f64, heat_w: f64, outside_k: f64) {
        let loss = self.loss_w_k;
        self.inside_k = (self.mass_j_k * self.inside_k + dt_s * (heat_w + loss * outside_k))
            / (self.mass_j_k + dt_s * loss);
    }

    /// Temperature inside, in kelvins.
    #[must_use]
    pub fn inside_k(&self) -> f64 {
        self.inside_k
    }
}

/// Lowest and highest setpoint that a thermostat takes, in half degrees Fahrenheit: 45 and 90 °F
/// (common practice).
pub const SETPOINTS_HALF_F: (i16, i16) = (90, 180);

/// A setpoint, or the nearest that the thermostat takes, in half degrees Fahrenheit.
#[must_use]
pub fn settable_half_f(half_f: i16) -> i16 {
    half_f.clamp(SETPOINTS_HALF_F.0, SETPOINTS_HALF_F.1)
}

/// A two-stage heating thermostat.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Thermostat {
    first: bool,
    second: bool,
    second_after_s: Option<f64>,
    first_s: f64,
}

impl Thermostat {
    /// A thermostat that also calls the second stage after `second_after_s` on the first.
    #[must_use]
    pub fn with_timer(second_after_s: f64) -> Self {
        Self { second_after_s: Some(second_after_s), ..Self::default() }
    }

    /// Compares room and setpoint, in kelvins, at once.
    pub fn step(&mut self, inside_k: f64, setpoint_k: f64) {
        self.step_timed(0.0, inside_k, setpoint_k);
    }

    /// Goes on by `dt_s` and compares room and setpoint, in kelvins.
    pub fn step_timed(&mut self, dt_s: f64, inside_k: f64, setpoint_k: f64) {
        let below = setpoint_k - inside_k;
        self.first = if self.first { below > -FIRST_K } else { below > FIRST_K };
        self.first_s = if self.first { self.first_s + dt_s } else { 0.0 };
        let timed = self.second_after_s.is_some_and(|after_s| self.first_s >= after_s);
        let cold = if self.second { below > FIRST_K } else { below > SECOND_K };
        self.second = self.first && (cold || timed);
    }

    /// Heat switched off: no calls, and none remembered.
    pub fn reset(&mut self) {
        *self = Self { second_after_s: self.second_after_s, ..Self::default() };
    }

    /// First-stage and second-stage call.
    #[must_use]
    pub fn calls(&self) -> (bool, bool) {
        (self.first, self.second)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Cooling follows the closed form `T_out + (T₀ − T_out)·e^{−Ut/C}` within a hundredth of a
    /// kelvin at a fifth-of-a-second step.
    #[test]
    fn cooling_follows_the_closed_form() {
        let mut house = House::new(294.0, 300.0, 20e6);
        for _ in 0..5 * 3600 {
            house.step(0.2, 0.0, 264.0);
        }
        let exact = 264.0 + 30.0 * libm::exp(-300.0 * 3600.0 / 20e6);
        approx::assert_abs_diff_eq!(house.inside_k(), exact, epsilon = 0.01);
    }

    /// A cold room calls both stages; near the setpoint the second drops out first.
    #[test]
    fn stages_come_and_go_in_order() {
        let mut thermostat = Thermostat::default();
        let f = |below_f: f64| 294.0 - below_f / 1.8;
        let mut calls = Vec::new();
        for below_f in [0.3, 0.7, 2.5, 1.0, 0.4, -0.4, -0.6, 0.3, 0.6] {
            thermostat.step(f(below_f), 294.0);
            calls.push(thermostat.calls());
        }
        let (none, one, two) = ((false, false), (true, false), (true, true));
        assert_eq!(calls, [none, one, two, two, one, one, none, none, one]);
    }
}

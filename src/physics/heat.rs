//! A lumped heat exchanger between hot gas and blown air.
//!
//! **Equation.** `C·dT/dt = q_in − q_air`, `q_air = ε·ṁc·(T − T_return)`, supply air
//! `T_return + q_air/ṁc`. With the fan still, a small free convection remains.
//! **Assumptions.** One metal temperature, constant effectiveness.
//! **Valid range.** Any flow; steps up to a few seconds.
//! **Source.** Sensible heat 1.08 Btu/(h·cfm·°F): 0.075 lb/ft³ × 0.24 Btu/(lb·°F) × 60 (handbook).
//! **Left out.** Radiation to a probe, duct losses.
//! **Checked.** Test below: the trade's worked example of temperature rise.

use crate::units::{M3_PER_FT3, W_PER_BTU_H};

/// Heat capacity of standard air, in J/(m³·K): 1.08 Btu/(h·cfm·°F) in SI.
pub const AIR_J_M3_K: f64 = 1.08 * W_PER_BTU_H * 1.8 / (M3_PER_FT3 / 60.0);
/// Share of the possible heat that the air takes.
const EFFECTIVENESS: f64 = 0.5;
/// Free convection with the fan still, in W/K.
const STILL_W_K: f64 = 12.0;

/// A heat exchanger.
#[derive(Debug, Clone, PartialEq)]
pub struct Exchanger {
    capacity_j_k: f64,
    metal_k: f64,
    supply_air_k: f64,
}

impl Exchanger {
    /// An exchanger at a temperature.
    #[must_use]
    pub fn new(capacity_j_k: f64, start_k: f64) -> Self {
        Self { capacity_j_k, metal_k: start_k, supply_air_k: start_k }
    }

    /// Goes on by `dt_s` with heat from the flame (W), air flow (m³/s) and return air (K); returns
    /// the heat to the air, in watts.
    pub fn step(&mut self, dt_s: f64, heat_w: f64, air_m3_s: f64, return_k: f64) -> f64 {
        let air_w_k = air_m3_s.max(0.0) * AIR_J_M3_K;
        let take_w_k = EFFECTIVENESS * air_w_k + STILL_W_K;
        // Implicit, so that any step is stable.
        let metal = (self.metal_k * self.capacity_j_k + dt_s * (heat_w + take_w_k * return_k))
            / (self.capacity_j_k + dt_s * take_w_k);
        self.metal_k = metal;
        let to_air_w = take_w_k * (metal - return_k);
        self.supply_air_k =
            if air_w_k > STILL_W_K { return_k + to_air_w / (air_w_k + STILL_W_K) } else { metal };
        to_air_w
    }

    /// Temperature of the metal, in kelvins.
    #[must_use]
    pub fn metal_k(&self) -> f64 {
        self.metal_k
    }

    /// Temperature of the air leaving, in kelvins; of the metal with the fan still.
    #[must_use]
    pub fn supply_air_k(&self) -> f64 {
        self.supply_air_k
    }

    /// Every number that changes.
    pub fn digest(&self, sink: &mut impl FnMut(u64)) {
        sink(self.metal_k.to_bits());
        sink(self.supply_air_k.to_bits());
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The trade's example: 64,000 Btu/h into 1,185 cfm gives a rise of 50.0 °F (1.08 rule).
    #[test]
    fn temperature_rise_follows_the_sensible_heat_rule() {
        let mut exchanger = Exchanger::new(30e3, 294.0);
        let air = 1185.0 * M3_PER_FT3 / 60.0;
        for _ in 0..4000 {
            exchanger.step(0.2, 64_000.0 * W_PER_BTU_H, air, 294.0);
        }
        let rise_f = (exchanger.supply_air_k() - 294.0) * 1.8;
        approx::assert_abs_diff_eq!(rise_f, 50.0, epsilon = 1.0);
    }
}

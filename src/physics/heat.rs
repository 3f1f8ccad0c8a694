//! A lumped heat exchanger between hot gas and blown air.
//!
//! **Equation.** `C·dT/dt = q_in − q_air`, `q_air = √((ε·ṁc)² + h²)·(T − T_return)` in W, `ṁc`
//! 1,207 J/K per m³ of standard air, ε = 0.5, free convection `h` = 12 W/K; supply air
//! `T_return + q_air/ṁc`, never warmer than the metal. Flue gas leaves above the metal by
//! `ΔT₀·e^(−N)`, ΔT₀ = 1,500 K, `N = N_rated·(firing share)^(−0.3)`.
//! **Assumptions.** One metal temperature, constant effectiveness. Standard air here is the
//! handbook's, 0.075 lb/ft³ (70 °F), not that of the gas volumes. Flue gas flow goes with firing.
//! **Valid range.** Any flow; steps up to a few seconds; firing 0.2–2 of rated.
//! **Regularisation.** The root joins forced and free convection smoothly; the step is implicit.
//! **Source.** Sensible heat 1.08 Btu/(h·cfm·°F): 0.075 lb/ft³ × 0.24 Btu/(lb·°F) × 60 (handbook);
//! number of transfer units against flow as in any heat-exchanger text. Exponent −0.3 from memory
//! (fully turbulent flow would have −0.2, laminar more); ΔT₀ is a flame with 40 % excess air
//! (1,858 K, thermochemistry) less a metal at 350 K; ε and `h` from memory.
//! **Left out.** Radiation to a probe, duct losses, excess air's part in the flue gas's heat
//! transfer.
//! **Checked.** `tests/core/appliance/airside.rs`: the trade's worked example in
//! `temperature_rise_follows_the_sensible_heat_rule()`, `heat_is_conserved()`,
//! `flue_gas_cools_better_on_low()`.

use crate::units::{M3_PER_FT3, W_PER_BTU_H};
use serde::Serialize;

/// Heat capacity of standard air, in J/(m³·K): 1.08 Btu/(h·cfm·°F) in SI.
pub const AIR_J_M3_K: f64 = 1.08 * W_PER_BTU_H * 1.8 / (M3_PER_FT3 / 60.0);
/// Share of the possible heat that the air takes.
const EFFECTIVENESS: f64 = 0.5;
/// Free convection with the fan still, in W/K.
const STILL_W_K: f64 = 12.0;
/// Flame above metal at the hot end, in kelvins (about 50 % excess air).
const HOT_END_K: f64 = 1500.0;

/// A heat exchanger as one mass of metal that blown air cools.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Exchanger {
    capacity_j_k: f64,
    metal_k: f64,
    supply_air_k: f64,
}

impl Exchanger {
    /// An exchanger of a heat capacity (J/K, above zero) at a temperature (K).
    #[must_use]
    pub fn new(capacity_j_k: f64, start_k: f64) -> Self {
        Self { capacity_j_k, metal_k: start_k, supply_air_k: start_k }
    }

    /// Goes on by `dt_s` with heat from the flame (W), air flow (standard m³/s) and return air (K);
    /// returns the heat to the air, in watts.
    pub fn step(&mut self, dt_s: f64, heat_w: f64, air_m3_s: f64, return_k: f64) -> f64 {
        let air_w_k = air_m3_s.max(0.0) * AIR_J_M3_K;
        let forced_w_k = EFFECTIVENESS * air_w_k;
        let take_w_k = (forced_w_k * forced_w_k + STILL_W_K * STILL_W_K).sqrt();
        // Implicit, so that any step is stable.
        let metal = (self.metal_k * self.capacity_j_k + dt_s * (heat_w + take_w_k * return_k))
            / (self.capacity_j_k + dt_s * take_w_k);
        self.metal_k = metal;
        // In nearly still air the air comes out at the metal's temperature.
        let warmed = if air_w_k > take_w_k { take_w_k / air_w_k } else { 1.0 };
        self.supply_air_k = return_k + warmed * (metal - return_k);
        take_w_k * (metal - return_k)
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
}

/// How far flue gas leaves above the metal, in kelvins, at a share of rated firing, for an
/// exchanger that leaves it `rated_k` above the metal at rated firing.
#[must_use]
pub fn flue_above_metal_k(firing_share: f64, rated_k: f64) -> f64 {
    if firing_share <= 0.0 {
        return 0.0;
    }
    let rated_units = libm::log(HOT_END_K / rated_k.clamp(1.0, HOT_END_K));
    HOT_END_K * libm::exp(-rated_units * libm::pow(firing_share, -0.3))
}

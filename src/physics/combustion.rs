//! Burning: excess air, flue gas, carbon monoxide, efficiency.
//!
//! **Equation.** Dry flue gas per air for complete burning `v`, excess air `e`:
//! `O₂ = 0.2095·e/(v + e)`, `CO₂ = CO₂max·v/(v + e)`, back `e = v·O₂/(0.2095 − O₂)`. Efficiency on
//! gross heating value `1 − latent − (a + b·e)·(T_flue − 25 °C)/152 K`. Air-free carbon monoxide:
//! measured · 20.9/(20.9 − O₂). Formed: `12 + 4000·e^(−e_x/0.06)` ppm at excess air `e_x`, and
//! `250·e^(−p/40 Pa)` ppm more for a jet of velocity head `p`.
//! **Assumptions.** Complete burning but for carbon monoxide; non-condensing flue; air at 25 °C.
//! **Valid range.** Excess air from −20 % to 200 %, flue 60–350 °C.
//! **Regularisation.** Shortage of air burns what the air allows, `1 + e` of the gas; carbon
//! monoxide stops rising at 15 % shortage. Shares are kept within 0–1.
//! **Source.** Stoichiometry. Loss at 177 °C, natural gas 5.97 % + 5.08 % per 100 % excess air and
//! 9.89 % latent, propane 5.87/5.10/8.0 %: computed from ideal-gas thermochemistry (GRI-Mech 3.0
//! species data). Air-free rule: a trade article (50 ppm at 7 % gives 75). Carbon monoxide against
//! excess air and against a weak jet: the order and the steep rise are from memory.
//! **Left out.** Quenching on cold metal, humidity of the air, condensation.
//! **Checked.** `tests/core/appliance/combustion.rs`: thermochemistry table in
//! `flue_gas_and_efficiency_match_thermochemistry()`, 1. BImSchV in
//! `sensible_loss_agrees_with_the_siegert_rule()`, `excess_air_follows_from_oxygen()`,
//! `air_free_carbon_monoxide_matches_the_trade_examples()`; limits of NFPA 54 practice and ANSI
//! Z21.47 in `carbon_monoxide_rises_steeply_as_air_runs_short()`.

pub mod flame;

use super::fluid::Gas;

/// A share or a volume fraction, 0–1.
pub type Fraction = f64;

/// Oxygen in air, as a volume fraction.
const O2_IN_AIR: f64 = 0.2095;
/// Oxygen in air as the trade's air-free rule rounds it.
const O2_IN_AIR_RULE: f64 = 0.209;

/// Flue gas of a burner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlueGas {
    /// Oxygen in dry flue gas.
    pub o2: Fraction,
    /// Carbon dioxide in dry flue gas.
    pub co2: Fraction,
    /// Carbon monoxide, air-free, in parts per million.
    pub co_air_free_ppm: f64,
    /// Share of the gas that burns.
    pub burned: Fraction,
}

impl FlueGas {
    /// Carbon monoxide as an analyser measures it in dry flue gas, in parts per million.
    #[must_use]
    pub fn co_ppm(&self) -> f64 {
        self.co_air_free_ppm * (1.0 - self.o2 / O2_IN_AIR_RULE).max(0.0)
    }
}

/// Flue gas at an excess air (0.4 is 40 %), well mixed.
#[must_use]
pub fn flue_gas(gas: &Gas, excess_air: f64) -> FlueGas {
    let v = gas.dry_flue_per_air;
    let e = excess_air.max(0.0);
    FlueGas {
        o2: O2_IN_AIR * e / (v + e),
        co2: gas.co2_max * v / (v + e),
        co_air_free_ppm: 12.0 + 4_000.0 * libm::exp(-excess_air.max(-0.15) / 0.06),
        burned: burned_share(excess_air),
    }
}

/// Share of the gas that burns with the air there is, by excess air as a fraction (−0.2 is a shortage
/// of 20 %).
#[must_use]
pub fn burned_share(excess_air: f64) -> Fraction {
    (1.0 + excess_air).clamp(0.0, 1.0)
}

/// Air-free carbon monoxide that a weak jet adds by poor mixing, in parts per million; `jet_pa` is
/// the velocity head of the gas in the hole (about three quarters of the manifold pressure).
#[must_use]
pub fn weak_jet_co_ppm(jet_pa: f64) -> f64 {
    250.0 * libm::exp(-jet_pa.max(0.0) / 40.0)
}

/// Air-free carbon monoxide, in ppm, from a measured value (ppm) and oxygen (fraction, taken as 0.2 at
/// most).
#[must_use]
pub fn co_air_free_ppm(measured_ppm: f64, o2: Fraction) -> f64 {
    measured_ppm * O2_IN_AIR_RULE / (O2_IN_AIR_RULE - o2.min(0.2))
}

/// Excess air, as a fraction, from oxygen in dry flue gas (fraction, taken as 0–0.20).
#[must_use]
pub fn excess_air_from_o2(gas: &Gas, o2: Fraction) -> f64 {
    let o2 = o2.clamp(0.0, 0.2);
    gas.dry_flue_per_air * o2 / (O2_IN_AIR - o2)
}

/// Share of the gross heat that does not go up the flue, with flue gas at `flue_k` (K, above its dew
/// point: 330 K and more) and combustion air at 25 °C.
#[must_use]
pub fn efficiency(gas: &Gas, excess_air: f64, flue_k: f64) -> Fraction {
    let propane = gas.specific_gravity > 1.0;
    let (base, per_excess, latent) =
        if propane { (0.0587, 0.0510, 0.080) } else { (0.0597, 0.0508, 0.0989) };
    let sensible = (base + per_excess * excess_air.max(0.0)) * (flue_k - 298.15) / 152.0;
    (1.0 - latent - sensible).clamp(0.0, 1.0)
}

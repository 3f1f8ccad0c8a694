//! Burning: excess air, flue gas, carbon monoxide, efficiency.
//!
//! **Equation.** Dry flue gas per air for complete burning `v`, excess air `e`:
//! `O₂ = 0.2095·e/(v + e)`, `CO₂ = CO₂max·v/(v + e)`. Loss on gross heating value: latent heat of the
//! water formed, and `(a + b·e)·(T_flue − 25 °C)/152 K` sensible.
//! **Assumptions.** Complete burning but for carbon monoxide; non-condensing flue.
//! **Valid range.** Excess air from −20 % to 200 %, flue 60–350 °C.
//! **Regularisation.** Shortage of air burns what the air allows.
//! **Source.** Stoichiometry; loss figures 5.96 % + 5.08 % per 100 % excess air at 177 °C and 9.9 %
//! latent for natural gas, 5.87/5.10/8.0 % for propane (computed from ideal-gas thermochemistry).
//! Air-free CO = measured · 20.9/(20.9 − O₂), the trade's rule (trade article; 50 ppm at 7 % gives
//! 75). CO against excess air: the order and the steep rise are from memory.
//! **Left out.** Quenching, humidity of the air, condensation.
//! **Checked.** Tests below.

use super::fluid::Gas;

/// A share, 0–1.
pub type Fraction = f64;

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

/// Flue gas at an excess air (0.4 is 40 %).
#[must_use]
pub fn flue_gas(gas: &Gas, excess_air: f64) -> FlueGas {
    let v = gas.dry_flue_per_air;
    let e = excess_air.max(0.0);
    FlueGas {
        o2: 0.2095 * e / (v + e),
        co2: gas.co2_max * v / (v + e),
        co_air_free_ppm: 12.0 + 4_000.0 * libm::exp(-excess_air.max(-0.15) / 0.06),
        burned: (1.0 + excess_air).clamp(0.0, 1.0),
    }
}

/// Air-free carbon monoxide from a measured value (ppm) and oxygen (fraction).
#[must_use]
pub fn co_air_free_ppm(measured_ppm: f64, o2: f64) -> f64 {
    measured_ppm * 0.209 / (0.209 - o2.min(0.2))
}

/// Share of the gross heat that does not go up the flue.
#[must_use]
pub fn efficiency(gas: &Gas, excess_air: f64, flue_k: f64) -> f64 {
    let propane = gas.specific_gravity > 1.0;
    let (base, per_excess, latent) =
        if propane { (0.0587, 0.0510, 0.080) } else { (0.0597, 0.0508, 0.0989) };
    let sensible = (base + per_excess * excess_air.max(0.0)) * (flue_k - 298.15) / 152.0;
    (1.0 - latent - sensible).clamp(0.0, 1.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Dry flue gas of the pipeline mix and of propane at 0–100 % excess air, and efficiency at
    /// 177 °C, from ideal-gas thermochemistry (GRI-Mech 3.0 species data): O₂, CO₂, efficiency, %.
    #[test]
    fn flue_gas_matches_thermochemistry() {
        let natural = [
            (0.0, 0.0, 11.84, 84.1),
            (0.2, 3.81, 9.68, 83.1),
            (0.4, 6.45, 8.19, 82.1),
            (0.6, 8.39, 7.10, 81.1),
            (1.0, 11.03, 5.60, 79.1),
        ];
        let propane = [
            (0.0, 0.0, 13.72, 86.1),
            (0.2, 3.75, 11.26, 85.1),
            (0.4, 6.37, 9.55, 84.1),
            (1.0, 10.93, 6.56, 81.0),
        ];
        let rows = natural
            .map(|row| (Gas::natural(), row))
            .into_iter()
            .chain(propane.map(|row| (Gas::propane(), row)));
        for (gas, (e, o2, co2, eff)) in rows {
            let flue = flue_gas(&gas, e);
            approx::assert_abs_diff_eq!(100.0 * flue.o2, o2, epsilon = 0.05);
            approx::assert_abs_diff_eq!(100.0 * flue.co2, co2, epsilon = 0.05);
            approx::assert_abs_diff_eq!(100.0 * efficiency(&gas, e, 450.15), eff, epsilon = 0.15);
        }
    }

    /// The trade's example: 50 ppm at 7 % oxygen is 75 ppm air-free; 1,200 at 6 % is 1,680.
    #[test]
    fn air_free_co_matches_the_trade_example() {
        approx::assert_abs_diff_eq!(co_air_free_ppm(50.0, 0.07), 75.0, epsilon = 1.0);
        approx::assert_relative_eq!(co_air_free_ppm(1200.0, 0.06), 1680.0, max_relative = 0.01);
    }

    /// Carbon monoxide rises steeply when air runs short, and stays low with the usual excess.
    #[test]
    fn co_rises_when_air_is_short() {
        let gas = Gas::natural();
        let co = |e| flue_gas(&gas, e).co_air_free_ppm;
        assert!(co(0.4) < 50.0);
        assert!(co(0.1) > 400.0);
        assert!(co(-0.1) > co(0.1));
    }
}

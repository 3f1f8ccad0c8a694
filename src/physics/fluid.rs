//! Fuel gases and air: the figures that every other law takes from here.
//!
//! **Equation.** `ρ_std = SG·ρ_air`, `ρ_air` = 1.2241 kg/m³ at 60 °F and 14.696 psia;
//! `ρ = ρ_std·(P/p_std)·(T_std/T)`, kg/m³, with absolute pressure `P` (Pa) and temperature `T` (K).
//! **Assumptions.** Ideal gas; composition, viscosity and heating value do not drift in a job.
//! **Valid range.** Up to 20 psi gauge, −40 to 130 °F, propane as vapour.
//! **Regularisation.** None.
//! **Source.** Specific gravity 0.60 and viscosity 0.012 cP of natural gas, 0.008 cP of propane:
//! the gases behind the pipe tables of IFGC 402.4. Air: 0.0764 lb/ft³, the trade's figure (ideal
//! dry air is 0.1 % lighter). Heating value of natural gas 1,030 Btu/ft³, a usual delivered one
//! (EIA: 1,036–1,037 for the United States in 2020–2025); of propane 2,516 Btu/ft³ with specific
//! gravity 1.52 (NFPA 58, pure vapour). Flammable limits NFPA 325 (5.0–15.0 %) and NFPA 58
//! (2.15–9.6 %); IEC 60079-20-1 has other ones. Air and dry flue gas: stoichiometry of a pipeline
//! mix with 94.9 % methane, and of propane. Ratios of specific heats 1.30 and 1.13: from memory.
//! **Left out.** Compressibility (propane vapour is about 2 % denser than ideal at ambient
//! pressure, 5 % at 20 psi; from memory), viscosity against temperature, moisture. The figures of
//! natural gas come from two gases: air and flue gas belong to a mix of 1,008 Btu/ft³ and specific
//! gravity 0.58, so air per unit of heat is about 2 % less than a gas of 1,030 Btu/ft³ would ask
//! for.
//! **Checked.** Heating values against heats of combustion and published averages:
//! `heating_values_agree_with_thermochemistry_and_statistics()` in `tests/core/bench/clocking.rs`.
//! Air and flue gas: `flue_gas_and_efficiency_match_thermochemistry()` in
//! `tests/core/appliance/combustion.rs`. Limits:
//! `a_source_lights_whatever_reaches_the_lower_limit()` in `tests/core/appliance/room.rs`.

use crate::units::{J_M3_PER_BTU_FT3, P_STD_PA};
use serde::Serialize;

/// Density of dry air at 60 °F and 14.696 psia, in kg/m³ (0.0764 lb/ft³).
const AIR_DENSITY_STD_KG_M3: f64 = 1.2241;

/// What the model needs to know of one fuel gas.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Gas {
    /// Density against air at the same state.
    pub specific_gravity: f64,
    /// Dynamic viscosity, in Pa·s.
    pub viscosity_pa_s: f64,
    /// Gross heating value, in J per standard m³.
    pub heating_value_j_m3: f64,
    /// Ratio of specific heats at constant pressure and volume.
    pub gamma: f64,
    /// Air for complete burning, in m³ per m³ of gas.
    pub air_per_gas: f64,
    /// Dry flue gas from complete burning without excess air, in m³ per m³ of that air.
    pub dry_flue_per_air: f64,
    /// Carbon dioxide in dry flue gas without excess air, as a fraction.
    pub co2_max: f64,
    /// Lower flammable limit, as a fraction of gas in air.
    pub lower_limit: f64,
    /// Upper flammable limit, as a fraction of gas in air.
    pub upper_limit: f64,
}

impl Gas {
    /// The natural gas of the pipe tables: specific gravity 0.60 and 0.012 cP (IFGC 402.4);
    /// 1,030 Btu/ft³ is a usual delivered value (EIA gives 1,036–1,037 for recent US averages);
    /// limits 5.0–15.0 % (NFPA 325); air and flue figures from the stoichiometry of a 94.9 %
    /// methane pipeline mix.
    #[must_use]
    pub fn natural() -> Self {
        Self {
            specific_gravity: 0.60,
            viscosity_pa_s: 1.2e-5,
            heating_value_j_m3: 1_030.0 * J_M3_PER_BTU_FT3,
            gamma: 1.30,
            air_per_gas: 9.53,
            dry_flue_per_air: 0.895,
            co2_max: 0.1184,
            lower_limit: 0.050,
            upper_limit: 0.150,
        }
    }

    /// Pure propane vapour: 2,516 Btu/ft³ (NFPA 58, before the commercial mix), specific
    /// gravity 1.52, 0.008 cP (IFGC 402.4), limits 2.15–9.6 % (NFPA 58).
    #[must_use]
    pub fn propane() -> Self {
        Self {
            specific_gravity: 1.52,
            viscosity_pa_s: 0.8e-5,
            heating_value_j_m3: 2_516.0 * J_M3_PER_BTU_FT3,
            gamma: 1.13,
            air_per_gas: 23.87,
            dry_flue_per_air: 0.916,
            co2_max: 0.1372,
            lower_limit: 0.0215,
            upper_limit: 0.096,
        }
    }

    /// Density at standard state, in kg/m³.
    #[must_use]
    pub fn density_std_kg_m3(&self) -> f64 {
        self.specific_gravity * AIR_DENSITY_STD_KG_M3
    }
}

/// Density of a gas at pressure `p_abs_pa` and temperature `t_k`, in kg/m³ (ideal gas).
#[must_use]
pub fn density_kg_m3(gas: &Gas, p_abs_pa: f64, t_k: f64) -> f64 {
    gas.density_std_kg_m3() * (p_abs_pa / P_STD_PA) * (crate::units::T_STD_K / t_k)
}

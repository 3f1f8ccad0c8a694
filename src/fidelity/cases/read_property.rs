//! From JSON to a property, and what the model says of it.

use super::model::{Property, Quantity, Setting};
use super::problem::CaseProblem;
use super::reader::{Fields, Measure};
use crate::physics::combustion::{efficiency, excess_air_from_o2, flue_gas};
use crate::physics::fluid::density_kg_m3;
use crate::physics::pipe::friction_factor;
use crate::site::tank::vapour_abs_pa;
use crate::units::{J_M3_PER_BTU_FT3, P_STD_PA};

const WORDS: [&str; 12] = [
    "density",
    "viscosity",
    "heating-value",
    "gamma",
    "air-per-gas",
    "co2-max",
    "o2-dry",
    "co2-dry",
    "excess-air-from-o2",
    "efficiency",
    "propane-vapour-pressure",
    "friction-factor",
];

/// Reads the fields of a property.
pub(super) fn property(
    fields: &mut Fields<'_>,
    setting: &Setting,
) -> Result<Property, CaseProblem> {
    let word = fields.need("quantity")?.word(&WORDS)?;
    let excess = |fields: &mut Fields<'_>| fields.need("excess_air")?.number(0.0, 5.0);
    let (quantity, against) = match word {
        0 => {
            let p = fields.opt_measured("absolute", Measure::Pressure, 1e3, 3e6)?;
            (Quantity::Density(p.unwrap_or(P_STD_PA)), None)
        }
        1 => (Quantity::Viscosity, None),
        2 => (Quantity::HeatingValue, None),
        3 => (Quantity::Gamma, None),
        4 => (Quantity::AirPerGas, None),
        5 => (Quantity::Co2Max, None),
        6 => excess(fields).map(|e| (Quantity::O2Dry(e), Some(100.0 * e)))?,
        7 => excess(fields).map(|e| (Quantity::Co2Dry(e), Some(100.0 * e)))?,
        8 => {
            let o2 = fields.need("o2")?.number(0.0, 0.2)?;
            (Quantity::ExcessFromO2(o2), Some(100.0 * o2))
        }
        9 => {
            let flue_k = fields.measured("flue", Measure::Temperature, 273.0, 700.0)?;
            let excess = excess(fields)?;
            (Quantity::Efficiency(excess, flue_k), Some(100.0 * excess))
        }
        10 => (Quantity::PropaneVapour(setting.t_k), Some(setting.t_k)),
        _ => {
            let re = fields.need("re")?.number(1.0, 1e8)?;
            let ratio = fields.need("roughness_ratio")?.number(0.0, 0.05)?;
            (Quantity::Friction(re, ratio), Some(re))
        }
    };
    let expect = fields.need("expect")?.number(-1e9, 1e9)?;
    Ok(Property { quantity, against, expect })
}

/// What the model says.
pub(super) fn value(quantity: Quantity, setting: &Setting) -> f64 {
    let gas = &setting.gas;
    match quantity {
        Quantity::Density(p_abs_pa) => density_kg_m3(gas, p_abs_pa, setting.t_k),
        Quantity::Viscosity => 1e6 * gas.viscosity_pa_s,
        Quantity::HeatingValue => gas.heating_value_j_m3 / J_M3_PER_BTU_FT3,
        Quantity::Gamma => gas.gamma,
        Quantity::AirPerGas => gas.air_per_gas,
        Quantity::Co2Max => 100.0 * gas.co2_max,
        Quantity::O2Dry(excess) => 100.0 * flue_gas(gas, excess).o2,
        Quantity::Co2Dry(excess) => 100.0 * flue_gas(gas, excess).co2,
        Quantity::ExcessFromO2(o2) => 100.0 * excess_air_from_o2(gas, o2),
        Quantity::Efficiency(excess, flue_k) => 100.0 * efficiency(gas, excess, flue_k),
        Quantity::PropaneVapour(t_k) => 1e-3 * vapour_abs_pa(t_k),
        Quantity::Friction(re, ratio) => friction_factor(re, ratio),
    }
}

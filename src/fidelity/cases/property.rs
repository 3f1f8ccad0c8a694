//! Properties: what can be asked for, and what the model says of it.

use serde::Deserialize;

use super::figure::{Figure, Measure};
use super::model::{Property, Quantity, Setting};
use super::place::{Place, object};
use super::problem::CaseProblem;
use crate::physics::combustion::{efficiency, excess_air_from_o2, flue_gas};
use crate::physics::fluid::density_kg_m3;
use crate::physics::pipe::friction_factor;
use crate::site::tank::vapour_abs_pa;
use crate::units::{J_M3_PER_BTU_FT3, P_STD_PA};

use Measure::{Plain, Pressure, Temperature};

#[derive(Deserialize)]
struct Head {
    quantity: PropertyName,
}

#[derive(Clone, Copy, Deserialize)]
#[serde(rename_all = "kebab-case")]
enum PropertyName {
    Density,
    Viscosity,
    HeatingValue,
    Gamma,
    AirPerGas,
    Co2Max,
    O2Dry,
    Co2Dry,
    ExcessAirFromO2,
    Efficiency,
    PropaneVapourPressure,
    FrictionFactor,
}

object! { Expect(_setting) must { expect: Plain, -1e9..=1e9; } }
object! { Nothing(_setting) }
object! { Density(_setting) may { absolute: Pressure, 1e3..=3e6; } }
object! { Air(_setting) must { excess_air: Plain, 0.0..=5.0; } }
object! { Oxygen(_setting) must { o2: Plain, 0.0..=0.2; } }
object! { Flue(_setting)
    must { excess_air: Plain, 0.0..=5.0; flue: Temperature, 273.0..=700.0; }
}
object! { Friction(_setting)
    must { re: Plain, 1.0..=1e8; roughness_ratio: Plain, 0.0..=0.05; }
}

/// Reads a property; fields of every case were read before.
pub(super) fn property(
    case: &Place<'_>,
    setting: &Setting,
    passed: &[&str],
) -> Result<Property, CaseProblem> {
    let Head { quantity } = case.read(&[])?;
    let Expect { expect, .. } = Expect::read(&case.only(&["expect"]), setting, &[])?;
    let passed = &[passed, &["quantity", "expect"]].concat();
    let plain = |quantity| Nothing::read(case, setting, passed).map(|_| (quantity, None));
    let air = || Air::read(case, setting, passed).map(|own| own.excess_air);
    let (quantity, against) = match quantity {
        PropertyName::Density => {
            let own = Density::read(case, setting, passed)?;
            (Quantity::Density(own.absolute.unwrap_or(P_STD_PA)), None)
        }
        PropertyName::Viscosity => plain(Quantity::Viscosity)?,
        PropertyName::HeatingValue => plain(Quantity::HeatingValue)?,
        PropertyName::Gamma => plain(Quantity::Gamma)?,
        PropertyName::AirPerGas => plain(Quantity::AirPerGas)?,
        PropertyName::Co2Max => plain(Quantity::Co2Max)?,
        PropertyName::O2Dry => {
            air().map(|excess| (Quantity::O2Dry(excess), Some(100.0 * excess)))?
        }
        PropertyName::Co2Dry => {
            air().map(|excess| (Quantity::Co2Dry(excess), Some(100.0 * excess)))?
        }
        PropertyName::ExcessAirFromO2 => {
            let Oxygen { o2, .. } = Oxygen::read(case, setting, passed)?;
            (Quantity::ExcessFromO2(o2), Some(100.0 * o2))
        }
        PropertyName::Efficiency => {
            let own = Flue::read(case, setting, passed)?;
            (Quantity::Efficiency(own.excess_air, own.flue), Some(100.0 * own.excess_air))
        }
        PropertyName::PropaneVapourPressure => {
            (plain(Quantity::PropaneVapour(setting.t_k))?.0, Some(setting.t_k))
        }
        PropertyName::FrictionFactor => {
            let own = Friction::read(case, setting, passed)?;
            (Quantity::Friction(own.re, own.roughness_ratio), Some(own.re))
        }
    };
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

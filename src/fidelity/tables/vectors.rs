//! Ready-made cases, one figure each.

use super::air::rise_f;
use super::csv_table::{CsvTable, TableError};
use super::gather::Gather;
use super::orifice::cfh;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::fidelity::claims;
use crate::physics::combustion::{co_air_free_ppm, flue_gas};
use crate::physics::fluid::Gas;
use crate::physics::orifice::drill_diameter_m;
use crate::physics::pipe::{
    PipeMaterial, PipeSpec, TubingSpec, copper_tube_id_m, schedule_40_id_m,
};
use crate::physics::room::dilute;
use crate::units::{
    J_M3_PER_BTU_FT3, M_PER_FT, M3_PER_FT3, M3_S_PER_CFH, PA_PER_INWC, PA_PER_PSI, T_STD_K,
    W_PER_BTU_H,
};

/// Columns of a table of cases.
pub(super) const COLUMNS: &[&str] = &["id", "description", "expected", "tolerance"];

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let name = line.text("id");
        let Some(case) = case(name) else {
            gather.set_aside(t!("unused-case-pure-methane-that"));
            continue;
        };
        for (k, got) in case.got.iter().enumerate() {
            let printed = line.figure("expected", case.figure[k.min(1)], (1e-6, 1e9))?;
            let row = Row::new(line.text("description"), printed, *got).rounded(case.rounding);
            let id = format!("case.{name}");
            gather.row_of(&id, line, row, || {
                claims::check(&id, Vec::new()).fill("description", line.text("description"))
            });
        }
    }
    Ok(gather.done())
}

/// What the model says to a case: which numbers of the expectation, and how they are rounded.
struct Case {
    got: Vec<f64>,
    figure: [usize; 2],
    rounding: f64,
}

impl Case {
    fn one(got: f64, rounding: f64) -> Self {
        Self { got: vec![got], figure: [0, 0], rounding }
    }
}

fn case(id: &str) -> Option<Case> {
    pipes(id).or_else(|| holes(id)).or_else(|| rest(id))
}

fn pipes(id: &str) -> Option<Case> {
    let natural = Gas::natural();
    let propane = Gas { specific_gravity: 1.50, ..Gas::propane() };
    let half = 0.5 * PA_PER_INWC;
    let steel = |size: &str, feet: f64, gas: &Gas, drive_pa: f64| {
        let spec = PipeSpec::new(PipeMaterial::Steel, schedule_40_id_m(size)?, feet * M_PER_FT);
        Some(spec.curve(gas, T_STD_K).flow(drive_pa).0 / M3_S_PER_CFH)
    };
    let tube = |ehd: u16, feet: f64, gas: &Gas, drive_pa: f64| {
        let spec = TubingSpec { ehd, length_m: feet * M_PER_FT, extra_fittings: 0 };
        Some(spec.curve(gas, T_STD_K)?.flow(drive_pa).0 / M3_S_PER_CFH)
    };
    Some(match id {
        "P1" => Case::one(steel("1/2", 10.0, &natural, half)?, 0.5),
        "P2" => Case::one(steel("3/4", 50.0, &natural, half)?, 0.5),
        "P3" => Case::one(steel("1", 100.0, &natural, half)?, 0.5),
        "P4" => Case::one(2.488 * steel("1/2", 50.0, &propane, half)?, 0.5),
        "P5" => {
            let drive = (24.7 * 24.7 - 23.7 * 23.7) / (2.0 * 14.696) * PA_PER_PSI;
            Case::one(2.488 * steel("1/2", 100.0, &propane, drive)?, 0.5)
        }
        "P6" => {
            let id_m = copper_tube_id_m("1/2")?;
            let spec = PipeSpec::new(PipeMaterial::Copper, id_m, 20.0 * M_PER_FT);
            Case::one(spec.curve(&natural, T_STD_K).flow(half).0 / M3_S_PER_CFH, 0.5)
        }
        "C1" => Case::one(tube(25, 20.0, &natural, half)?, 0.5),
        "C2" => Case::one(2.5 * tube(19, 30.0, &propane, half)?, 1.3),
        "C3" => {
            let (one, two) =
                (tube(18, 20.0, &natural, half)?, tube(18, 20.0, &natural, 2.0 * half)?);
            let slope = libm::log(two / one) / libm::log(2.0);
            Case::one(slope, 0.0)
        }
        _ => return None,
    })
}

fn holes(id: &str) -> Option<Case> {
    let natural = Gas::natural();
    Some(match id {
        "O1" => {
            let got = cfh(&natural, 0.90, drill_diameter_m("#80")?, 3.5);
            Case::one(got, 0.0)
        }
        "O2" => {
            let unit_k = cfh(&natural, 1.0, drill_diameter_m("#43")?, 3.6) * 1_000.0;
            Case {
                got: vec![22_000.0 / unit_k],
                // `22,000 Btu/h with K=0.870` holds 22, 0, 0.870.
                figure: [2, 2],
                rounding: 0.0,
            }
        }
        "O3" => {
            let got = cfh(&natural, 0.87, 2e-3, 1.5) / cfh(&natural, 0.87, 2e-3, 3.5);
            Case::one(got, 0.0005)
        }
        _ => return None,
    })
}

fn rest(id: &str) -> Option<Case> {
    Some(match id {
        "M1" => Case::one(M3_PER_FT3 / 36.0 / M3_S_PER_CFH, 0.0),
        "M2" => {
            let flow = 110_000.0 * W_PER_BTU_H / (1_000.0 * J_M3_PER_BTU_FT3);
            Case::one(M3_PER_FT3 / flow, 0.0)
        }
        "G2" => {
            let got = Gas::propane().heating_value_j_m3 / J_M3_PER_BTU_FT3;
            Case::one(got, 0.0)
        }
        "A1" => Case::one(rise_f(64_000.0, 1_185.0), 0.0),
        "B1" => {
            let (air, dry) = (2.0 / 0.2095, 2.0 / 0.2095 - 1.0);
            let methane = Gas {
                air_per_gas: air,
                dry_flue_per_air: dry / air,
                co2_max: 1.0 / dry,
                ..Gas::natural()
            };
            let flue = flue_gas(&methane, 0.4);
            Case {
                got: vec![100.0 * flue.o2, 100.0 * flue.co2],
                // `O2 6.47 %, CO2 8.09 % dry`.
                figure: [0, 1],
                rounding: 0.0,
            }
        }
        "B2" => Case::one(co_air_free_ppm(50.0, 0.07), 0.0),
        "L1" => {
            let got = dilute(0.0, 0.0, 1.0 / 3600.0, 1.0 / 3600.0, 2_400.0);
            Case::one(got, 0.0)
        }
        "U1" => Case::one(11.0 * PA_PER_INWC / 100.0, 0.0),
        _ => return None,
    })
}

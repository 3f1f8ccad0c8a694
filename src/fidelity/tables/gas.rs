//! Properties of the gases.

use super::Outcome;
use super::gather::{Gather, Head};
use super::sheet::{Line, Sheet, TableError, figures};
use crate::fidelity::{Row, Tolerance};
use crate::physics::fluid::Gas;
use crate::physics::room::Odorant;
use crate::site::tank::vapour_abs_pa;
use crate::units::{J_M3_PER_BTU_FT3, M3_PER_FT3, PA_PER_PSI, k_from_f};

/// Columns of a table of properties.
pub(super) const COLUMNS: &[&str] = &["property", "natural_gas_or_methane", "propane", "unit"];

const CHAPTER: &str = "Meter and gas";
const NATURAL: &str = "natural_gas_or_methane";
const KG_PER_LB: f64 = 0.453_592_37;
const ATM_PSI: f64 = 14.696;

/// One figure of the table beside the model's.
struct Figure {
    id: &'static str,
    claim: &'static str,
    unit: &'static str,
    band: Tolerance,
    reason: &'static str,
}

pub(super) fn run(sheet: &Sheet) -> Result<Outcome, TableError> {
    sheet.needs(COLUMNS)?;
    let mut gather = Gather::new(sheet);
    for line in sheet.lines() {
        match line.text("property") {
            "gross heating value, pure" | "gross heating value from ideal-gas thermochemistry" => {
                add(&mut gather, line, "propane", 0, btu_ft3(&Gas::propane()), &HEATING)?;
            }
            "US average delivered natural gas" => {
                add(&mut gather, line, NATURAL, 0, btu_ft3(&Gas::natural()), &DELIVERED)?;
            }
            "specific gravity vapour (air=1)" => {
                add(&mut gather, line, NATURAL, 1, Gas::natural().specific_gravity, &GRAVITY)?;
                add(&mut gather, line, "propane", 2, Gas::propane().specific_gravity, &GRAVITY)?;
            }
            "density at 60F 14.696 psia (ideal)" => {
                add(&mut gather, line, NATURAL, 1, lb_ft3(&Gas::natural()), &DENSITY)?;
                add(&mut gather, line, "propane", 0, lb_ft3(&Gas::propane()), &DENSITY)?;
            }
            "Wobbe index (gross)" => {
                let gas = Gas::propane();
                let got = btu_ft3(&gas) / gas.specific_gravity.sqrt();
                add(&mut gather, line, "propane", 0, got, &HEATING)?;
            }
            "LFL" => limits(&mut gather, line, |gas| 100.0 * gas.lower_limit)?,
            "UFL" => limits(&mut gather, line, |gas| 100.0 * gas.upper_limit)?,
            "one fifth of LFL" => limits(&mut gather, line, |gas| 20.0 * gas.lower_limit)?,
            "odorant rule, distribution gas" => odorant(&mut gather, line, NATURAL)?,
            "odorant rule, LP-gas" => odorant(&mut gather, line, "propane")?,
            "air required" => {
                add(&mut gather, line, NATURAL, 1, Gas::natural().air_per_gas, &AIR)?;
                add(&mut gather, line, "propane", 0, Gas::propane().air_per_gas, &AIR)?;
            }
            "boiling point" => {
                let below_zero = line.figure("propane", 0, (0.0, 200.0))?;
                vapour(&mut gather, line, -below_zero, 0.0);
            }
            "propane vapour pressure" => {
                let numbers = figures(line.text("propane"));
                if numbers.len() < 2 || !numbers.len().is_multiple_of(2) {
                    let message = "pairs of °F and psig are needed".to_owned();
                    return Err(line.error("propane", message));
                }
                for pair in numbers.chunks_exact(2) {
                    if let [deg_f, psig] = pair {
                        vapour(&mut gather, line, *deg_f, *psig);
                    }
                }
            }
            _ => gather.set_aside(
                "a property that the model does not use, or one of a gas it does not have (pure \
                 methane, a state's mean)",
            ),
        }
    }
    Ok(gather.done())
}

const HEATING: Figure = Figure {
    id: "gas.heating-value",
    claim: "Gross heating value of propane, by volume and as Wobbe index.",
    unit: "Btu/ft³",
    band: Tolerance::Relative(-0.002, 0.002),
    reason: "published and computed values differ by 0.05 %; specific gravity by 0.2 %",
};
const DELIVERED: Figure = Figure {
    id: "gas.heating-value.natural",
    claim: "Heating value of natural gas where a scenario does not say another.",
    unit: "Btu/ft³",
    band: Tolerance::Relative(-0.016, 0.028),
    reason: "state means of the contiguous United States run from 1,020 to 1,065 Btu/ft³",
};
const GRAVITY: Figure = Figure {
    id: "gas.specific-gravity",
    claim: "Specific gravity of the table's natural gas and of pure propane.",
    unit: "1",
    band: Tolerance::Relative(-0.002, 0.002),
    reason: "the model rounds propane's 1.5224 to 1.52; pipe tables are checked with their own 1.50",
};
const DENSITY: Figure = Figure {
    id: "gas.density",
    claim: "Density at 60 °F and 14.696 psia.",
    unit: "lb/ft³",
    band: Tolerance::Relative(-0.002, 0.002),
    reason: "printed to three or four digits; propane's gravity is rounded",
};
const LIMITS: Figure = Figure {
    id: "gas.flammable-limits",
    claim: "Flammable limits, and a fifth of the lower one.",
    unit: "% vol",
    band: Tolerance::Absolute(0.001),
    reason: "the NFPA set is used (natural gas NFPA 325, propane NFPA 58), not the IEC one",
};
const AIR: Figure = Figure {
    id: "gas.air-required",
    claim: "Air for complete burning.",
    unit: "ft³/ft³",
    band: Tolerance::Relative(-0.001, 0.001),
    reason: "printed to three or four digits",
};

fn btu_ft3(gas: &Gas) -> f64 {
    gas.heating_value_j_m3 / J_M3_PER_BTU_FT3
}

fn lb_ft3(gas: &Gas) -> f64 {
    gas.density_std_kg_m3() * M3_PER_FT3 / KG_PER_LB
}

fn add(
    gather: &mut Gather,
    line: Line<'_>,
    column: &str,
    k: usize,
    got: f64,
    figure: &Figure,
) -> Result<(), TableError> {
    let printed = line.figure(column, k, (1e-6, 1e6))?;
    let gas = if column == NATURAL { "natural gas" } else { "propane" };
    let row = Row::new(format!("{}, {gas}", line.text("property")), printed, got);
    gather.row(figure.id, line, row, || {
        let condition = "60 °F, 14.696 psia";
        Head::new(CHAPTER, figure.unit, figure.band, figure.claim, condition, figure.reason)
    });
    Ok(())
}

fn limits(gather: &mut Gather, line: Line<'_>, of: impl Fn(&Gas) -> f64) -> Result<(), TableError> {
    add(gather, line, NATURAL, 0, of(&Gas::natural()), &LIMITS)?;
    add(gather, line, "propane", 0, of(&Gas::propane()), &LIMITS)
}

fn odorant(gather: &mut Gather, line: Line<'_>, column: &str) -> Result<(), TableError> {
    let (part, whole) =
        (line.figure(column, 0, (0.1, 10.0))?, line.figure(column, 1, (0.1, 100.0))?);
    let row = Row::new(line.text("property"), part / whole, Odorant::default().strong_at);
    gather.row("gas.odorant", line, row, || {
        Head::new(
            CHAPTER,
            "share of the lower limit",
            Tolerance::AtMost,
            "Gas smells strongly, at the latest, where the law asks for a plain smell.",
            "fresh odorant, a nose that is not tired",
            "a bound set by law",
        )
    });
    Ok(())
}

fn vapour(gather: &mut Gather, line: Line<'_>, deg_f: f64, psig: f64) {
    let got = vapour_abs_pa(k_from_f(deg_f)) / PA_PER_PSI;
    let row = Row::new(format!("{deg_f} °F"), psig + ATM_PSI, got).on("", deg_f);
    gather.row("gas.vapour-pressure", line, row, || {
        Head::new(
            CHAPTER,
            "psia",
            Tolerance::Relative(-0.02, 0.02),
            "Vapour pressure of commercial propane.",
            "-44 to 130 °F",
            "exact at the three points the law runs through (-44, 70 and 130 °F), 2 % between",
        )
    });
}

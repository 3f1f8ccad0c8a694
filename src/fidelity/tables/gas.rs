//! Properties of the gases.

use super::csv_table::{CsvTable, Line, TableError, figures};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::fluid::Gas;
use crate::physics::room::Odorant;
use crate::site::tank::vapour_abs_pa;
use crate::units::{J_M3_PER_BTU_FT3, M3_PER_FT3, PA_PER_PSI, k_from_f};

/// Columns of a table of properties.
pub(super) const COLUMNS: &[&str] = &["property", "natural_gas_or_methane", "propane", "unit"];

const NATURAL: &str = "natural_gas_or_methane";
const KG_PER_LB: f64 = 0.453_592_37;
const ATM_PSI: f64 = 14.696;

// Claims that more than one row of a table stands on.
const HEATING: &str = "gas.heating-value";
const NATURAL_HEATING: &str = "gas.heating-value.natural";
const GRAVITY: &str = "gas.specific-gravity";
const DENSITY: &str = "gas.density";
const LIMITS: &str = "gas.flammable-limits";
const AIR: &str = "gas.air-required";

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        match line.text("property") {
            "gross heating value, pure" | "gross heating value from ideal-gas thermochemistry" => {
                add(&mut gather, line, "propane", 0, btu_ft3(&Gas::propane()), HEATING)?;
            }
            "US average delivered natural gas" => {
                add(&mut gather, line, NATURAL, 0, btu_ft3(&Gas::natural()), NATURAL_HEATING)?;
            }
            "specific gravity vapour (air=1)" => {
                add(&mut gather, line, NATURAL, 1, Gas::natural().specific_gravity, GRAVITY)?;
                add(&mut gather, line, "propane", 2, Gas::propane().specific_gravity, GRAVITY)?;
            }
            "density at 60F 14.696 psia (ideal)" => {
                add(&mut gather, line, NATURAL, 1, lb_ft3(&Gas::natural()), DENSITY)?;
                add(&mut gather, line, "propane", 0, lb_ft3(&Gas::propane()), DENSITY)?;
            }
            "Wobbe index (gross)" => {
                let gas = Gas::propane();
                let got = btu_ft3(&gas) / gas.specific_gravity.sqrt();
                add(&mut gather, line, "propane", 0, got, HEATING)?;
            }
            "LFL" => limits(&mut gather, line, |gas| 100.0 * gas.lower_limit)?,
            "UFL" => limits(&mut gather, line, |gas| 100.0 * gas.upper_limit)?,
            "one fifth of LFL" => limits(&mut gather, line, |gas| 20.0 * gas.lower_limit)?,
            "odorant rule, distribution gas" => odorant(&mut gather, line, NATURAL)?,
            "odorant rule, LP-gas" => odorant(&mut gather, line, "propane")?,
            "air required" => {
                add(&mut gather, line, NATURAL, 1, Gas::natural().air_per_gas, AIR)?;
                add(&mut gather, line, "propane", 0, Gas::propane().air_per_gas, AIR)?;
            }
            "boiling point" => {
                let below_zero = line.figure("propane", 0, (0.0, 200.0))?;
                vapour(&mut gather, line, -below_zero, 0.0);
            }
            "propane vapour pressure" => {
                let numbers = figures(line.text("propane"));
                if numbers.len() < 2 || !numbers.len().is_multiple_of(2) {
                    let message = t!("table-pairs-f-psig-are").to_owned();
                    return Err(line.error("propane", message));
                }
                for pair in numbers.chunks_exact(2) {
                    if let [deg_f, psig] = pair {
                        vapour(&mut gather, line, *deg_f, *psig);
                    }
                }
            }
            _ => gather.set_aside(t!("unused-property-that-model-does")),
        }
    }
    Ok(gather.done())
}

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
    id: &str,
) -> Result<(), TableError> {
    let printed = line.figure(column, k, (1e-6, 1e6))?;
    let gas = if column == NATURAL { t!("row-natural-gas") } else { t!("row-propane") };
    let row =
        Row::new(t!("row-property", property = line.text("property"), gas = gas), printed, got);
    gather.row(id, line, row);
    Ok(())
}

fn limits(gather: &mut Gather, line: Line<'_>, of: impl Fn(&Gas) -> f64) -> Result<(), TableError> {
    add(gather, line, NATURAL, 0, of(&Gas::natural()), LIMITS)?;
    add(gather, line, "propane", 0, of(&Gas::propane()), LIMITS)
}

fn odorant(gather: &mut Gather, line: Line<'_>, column: &str) -> Result<(), TableError> {
    let (part, whole) =
        (line.figure(column, 0, (0.1, 10.0))?, line.figure(column, 1, (0.1, 100.0))?);
    let row = Row::new(line.text("property"), part / whole, Odorant::default().strong_at);
    gather.row("gas.odorant", line, row);
    Ok(())
}

fn vapour(gather: &mut Gather, line: Line<'_>, deg_f: f64, psig: f64) {
    let got = vapour_abs_pa(k_from_f(deg_f)) / PA_PER_PSI;
    let row = Row::new(format!("{deg_f} °F"), psig + ATM_PSI, got).on("", deg_f);
    gather.row("gas.vapour-pressure", line, row);
}

//! Two stages through one orifice.

use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::orifice::{cfh, drill_m};
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::fluid::Gas;

/// Columns of a table of firing ratios.
pub(super) const RATIO_COLUMNS: &[&str] = &["gas", "low_inwc", "high_inwc", "sqrt_ratio_pct"];
/// Columns of a table of orifices and manifold pressures of a two-stage appliance.
pub(super) const PAIR_COLUMNS: &[&str] = &["drill", "high_inwc", "low_inwc"];

/// Inputs a burner that the pairs are for where no column says so, Btu/h.
const FULL_BTU_H: f64 = 22_000.0;
const FIRST_BTU_H: f64 = 14_500.0;

pub(super) fn ratios(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(RATIO_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let gas = match line.text("gas") {
            "natural" => Gas::natural(),
            "propane" => Gas::propane(),
            other => {
                let message = t!("table-neither-natural-nor-propane", other = other);
                return Err(line.error("gas", message));
            }
        };
        let first = line.number("low_inwc", (0.01, 500.0))?;
        let full = line.number("high_inwc", (0.01, 500.0))?;
        let printed = line.number("sqrt_ratio_pct", (0.1, 1_000.0))?;
        let got = 100.0 * cfh(&gas, 0.87, 2e-3, first) / cfh(&gas, 0.87, 2e-3, full);
        let row = Row::new(
            t!(
                "row-gas-low-to-high",
                gas = line.text("gas"),
                first = first.to_string(),
                full = full.to_string()
            ),
            printed,
            got,
        )
        .rounded(half_unit(line.text("sqrt_ratio_pct"), None));
        gather.row("manifold.firing-ratio", line, row);
    }
    Ok(gather.done())
}

pub(super) fn pairs(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(PAIR_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let diameter_m = drill_m(line)?;
        let full = line.number("high_inwc", (0.01, 500.0))?;
        let first = line.number("low_inwc", (0.01, 500.0))?;
        let gravity = optional(line, "specific_gravity", 0.60, (0.05, 5.0))?;
        let value = optional(line, "heating_value", 1_000.0, (100.0, 5_000.0))?;
        let full_btu_h = optional(line, "high_Btuh", FULL_BTU_H, (100.0, 1e7))?;
        let first_btu_h = optional(line, "low_Btuh", FIRST_BTU_H, (100.0, 1e7))?;
        let base = if gravity > 1.0 { Gas::propane() } else { Gas::natural() };
        let gas = Gas { specific_gravity: gravity, ..base };
        let name = line.text("drill");
        let at = |inwc: f64| cfh(&gas, 1.0, diameter_m, inwc) * value;
        let row = Row::new(
            t!(
                "row-drill-low-to-high",
                name = name,
                first = first.to_string(),
                full = full.to_string()
            ),
            first_btu_h / full_btu_h,
            at(first) / at(full),
        )
        .rounded(0.05 / full);
        gather.row("manifold.pairs.ratio", line, row);
        for (stage, inwc, btu_h) in [("high", full, full_btu_h), ("low", first, first_btu_h)] {
            let row = Row::new(
                t!("row-drill-stage", name = name, stage = stage, inwc = inwc.to_string()),
                0.873,
                btu_h / at(inwc),
            );
            gather.row("manifold.pairs.coefficient", line, row);
        }
    }
    Ok(gather.done())
}

fn optional(line: Line<'_>, column: &str, or: f64, range: (f64, f64)) -> Result<f64, TableError> {
    if line.text(column).is_empty() { Ok(or) } else { line.number(column, range) }
}

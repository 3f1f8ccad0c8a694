//! Units of pressure.

use super::csv_table::{CsvTable, TableError, figures, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::units::{PA_PER_INWC, PA_PER_PSI, PressureUnit};

/// Columns of a table of conversions.
pub(super) const COLUMNS: &[&str] = &["from", "to", "factor"];

/// Pascals in a unit that the model has.
fn pascals(unit: &str) -> Option<f64> {
    match unit {
        "Pa" => Some(1.0),
        "kPa" => Some(PressureUnit::KPa.pa()),
        "mbar" => Some(PressureUnit::Mbar.pa()),
        "psi" => Some(PA_PER_PSI),
        "in w.c." => Some(PA_PER_INWC),
        _ => None,
    }
}

pub(super) fn conversions(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let from = line.text("from").replace(" conventional (4 C, 9.80665)", "");
        let amount = line.figure("from", 0, (1e-6, 1e6))?;
        let unit = from.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.').trim();
        let Some(from_pa) = pascals(unit) else {
            gather.set_aside(t!("unused-unit-model-does-not"));
            continue;
        };
        let texts: Vec<&str> = line.text("factor").split('/').collect();
        let units: Vec<&str> = line.text("to").split('/').map(str::trim).collect();
        for (unit, text) in units.iter().zip(texts) {
            let Some(to_pa) = pascals(unit) else {
                gather.set_aside(t!("unused-unit-model-does-not-show"));
                continue;
            };
            let number = text.split_whitespace().next().unwrap_or_default();
            let Some(printed) = figures(number).first().copied().filter(|f| *f > 0.0) else {
                return Err(line.error("factor", t!("table-number-above-zero-needed").to_owned()));
            };
            let row = Row::new(
                t!("row-unit-in-unit", from = &from, unit = *unit),
                printed,
                amount * from_pa / to_pa,
            )
            .rounded(half_unit(number, None) * 1.001);
            let inch = from.contains("w.c.") || unit.contains("w.c.");
            let psi = inch && (from.contains("psi") || *unit == "psi");
            let id = if psi { "instruments.units.psi" } else { "instruments.units" };
            gather.row(id, line, row);
        }
    }
    Ok(gather.done())
}

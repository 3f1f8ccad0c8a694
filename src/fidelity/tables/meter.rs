//! Clocking the meter.

use super::csv_table::{CsvTable, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::units::{J_M3_PER_BTU_FT3, M3_PER_FT3, M3_S_PER_CFH, W_PER_BTU_H};

/// Columns of a computed clocking chart that must be there.
pub(super) const COMPUTED_COLUMNS: &[&str] = &["seconds_per_rev", "cfh_1_ft3_dial"];
/// Columns of a published clocking chart.
pub(super) const CHART_COLUMNS: &[&str] =
    &["rated_input_kBtuh", "gas", "heating_value", "seconds_1ft3", "seconds_2ft3"];

pub(super) fn computed(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COMPUTED_COLUMNS)?;
    let dials = [
        ("cfh_half_ft3_dial", 0.5 * M3_PER_FT3),
        ("cfh_1_ft3_dial", M3_PER_FT3),
        ("cfh_2_ft3_dial", 2.0 * M3_PER_FT3),
        ("cfh_5_ft3_dial", 5.0 * M3_PER_FT3),
        ("cfh_0.01m3_dial", 0.01),
    ];
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let seconds = line.number("seconds_per_rev", (0.1, 1e5))?;
        for (column, dial_m3) in dials {
            if line.text(column).is_empty() {
                continue;
            }
            let printed = line.number(column, (1e-3, 1e7))?;
            let got = dial_m3 / seconds / M3_S_PER_CFH;
            let row = Row::new(format!("{seconds} s, {column}"), printed, got)
                .rounded(half_unit(line.text(column), None) * 1.000_001);
            gather.row("meter.formula", line, row);
        }
    }
    Ok(gather.done())
}

pub(super) fn chart(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(CHART_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let input = line.number("rated_input_kBtuh", (1.0, 1e5))?;
        let value = line.number("heating_value", (100.0, 5_000.0))?;
        for (column, feet) in [("seconds_1ft3", 1.0), ("seconds_2ft3", 2.0)] {
            let printed = line.number(column, (0.1, 1e5))?;
            let implied = 3.6 * feet * value / printed;
            if (implied / input - 1.0).abs() > 0.03 {
                gather.set_aside(t!("unused-size-label-that-its"));
                continue;
            }
            let flow = 1e3 * input * W_PER_BTU_H / (value * J_M3_PER_BTU_FT3);
            let got = feet * M3_PER_FT3 / flow;
            let row = Row::new(
                t!(
                    "row-kbtu-h-ft",
                    input = input.to_string(),
                    gas = line.text("gas"),
                    feet = feet.to_string()
                ),
                printed,
                got,
            )
            .on(line.text("gas"), input);
            gather.row("meter.chart", line, row);
        }
    }
    Ok(gather.done())
}

//! Gas in the air of a room.

use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::room::dilute;

/// Columns of a dilution table.
pub(super) const COLUMNS: &[&str] =
    &["air_changes_per_h", "minutes", "source_m3_per_h", "volume_m3", "concentration_published"];

pub(super) fn vectors(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let changes = line.number("air_changes_per_h", (0.0, 1_000.0))?;
        let minutes = line.number("minutes", (0.0, 1e5))?;
        let leak = line.number("source_m3_per_h", (0.0, 1e6))?;
        let volume = line.number("volume_m3", (1e-3, 1e7))?;
        let printed = line.number("concentration_published", (0.0, 1e6))?;
        // In ten-second steps, as the bench goes.
        let steps = (6.0 * minutes).ceil().max(1.0);
        let dt_s = 60.0 * minutes / steps;
        let mut got = 0.0;
        for _ in 0..steps as u32 {
            got = dilute(got, 0.0, leak / volume / 3600.0, changes / 3600.0, dt_s);
        }
        let row = Row::new(
            t!("row-changes-minutes", changes = changes.to_string(), minutes = minutes.to_string()),
            printed,
            got,
        )
        .rounded(half_unit("0.0001", None))
        .on(format!("{changes}/h"), minutes);
        gather.row("room.dilution", line, row);
    }
    Ok(gather.done())
}

/// Worked examples among the dilution equations.
pub(super) fn equations(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(&["item", "value", "source", "confidence"])?;
    let mut gather = Gather::new(table);
    let mut room = None;
    for line in table.lines() {
        match line.text("item") {
            "time to 1/5 LFL (worked)" => {
                // 30 m³ …, 0.35 ACH, … leak 0.10 m³/h -> steady 0.95 %
                let volume = line.figure("value", 0, (1.0, 1e4))?;
                let changes = line.figure("value", 1, (0.01, 100.0))?;
                let leak = line.figure("value", 2, (1e-4, 100.0))?;
                let steady = line.figure("value", 3, (1e-3, 100.0))?;
                room = Some((volume, changes));
                add_steady(&mut gather, line, volume, changes, leak, steady);
            }
            "worked 2" => {
                let Some((volume, changes)) = room else {
                    let message = t!("table-it-names-same-room");
                    return Err(line.error("value", message.to_owned()));
                };
                let leak = line.figure("value", 0, (1e-4, 100.0))?;
                let steady = line.figure("value", 1, (1e-3, 100.0))?;
                add_steady(&mut gather, line, volume, changes, leak, steady);
                let share = line.figure("value", 2, (1e-3, 100.0))?;
                let minutes = line.figure("value", 3, (0.1, 1e4))?;
                let got = dilute(0.0, 0.0, leak / volume / 60.0, changes / 60.0, minutes);
                let row = Row::new(
                    t!("row-leak-minutes", leak = leak.to_string(), minutes = minutes.to_string()),
                    share,
                    100.0 * got,
                );
                gather.row("room.worked", line, row);
            }
            _ => gather.set_aside(t!("unused-equation-without-figures-recalled")),
        }
    }
    Ok(gather.done())
}

fn add_steady(
    gather: &mut Gather,
    line: Line<'_>,
    volume: f64,
    changes: f64,
    leak: f64,
    steady: f64,
) {
    let got = dilute(0.0, 0.0, leak / volume, changes, 100.0 / changes);
    let row = Row::new(t!("row-leak-at-last", leak = leak.to_string()), steady, 100.0 * got)
        .rounded(0.005);
    gather.row("room.worked", line, row);
}

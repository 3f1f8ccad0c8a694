//! The air side: sensible heat.

use super::csv_table::{CsvTable, Line, TableError};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::heat::{AIR_J_M3_K, Exchanger};
use crate::units::{M3_PER_FT3, W_PER_BTU_H};

const RETURN_K: f64 = 294.0;

/// Temperature rise over the exchanger once it has come to rest, °F.
pub(super) fn rise_f(useful_btu_h: f64, cfm: f64) -> f64 {
    let mut exchanger = Exchanger::new(15e3, RETURN_K);
    for _ in 0..4_000 {
        exchanger.step(1.0, useful_btu_h * W_PER_BTU_H, cfm * M3_PER_FT3 / 60.0, RETURN_K);
    }
    (exchanger.supply_air_k() - RETURN_K) * 1.8
}

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(&["item", "value", "source", "confidence"])?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        match line.text("item") {
            "sensible heat" => constant(&mut gather, line, 0)?,
            "derivation" => constant(&mut gather, line, 3)?,
            "worked example" => worked(&mut gather, line)?,
            _ => gather.set_aside(t!("unused-another-form-same-rule")),
        }
    }
    Ok(gather.done())
}

fn constant(gather: &mut Gather, line: Line<'_>, k: usize) -> Result<(), TableError> {
    let printed = line.figure("value", k, (0.1, 10.0))?;
    let got = AIR_J_M3_K / (W_PER_BTU_H * 1.8 / (M3_PER_FT3 / 60.0));
    gather.row("air.sensible-heat", line, Row::new(line.text("item"), printed, got));
    Ok(())
}

fn worked(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    let input = line.figure("value", 0, (100.0, 1e7))?;
    let efficiency = line.figure("value", 1, (1.0, 100.0))?;
    let cfm = line.figure("value", 2, (1.0, 1e6))?;
    let printed = line.figure("value", 3, (0.1, 1e4))?;
    let got = rise_f(input * efficiency / 100.0, cfm);
    let label = t!(
        "row-furnace-air",
        input = input.to_string(),
        efficiency = efficiency.to_string(),
        cfm = cfm.to_string()
    );
    gather.row("air.rise", line, Row::new(label, printed, got));
    Ok(())
}

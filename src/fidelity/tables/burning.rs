//! Flue gas, losses and carbon monoxide.

use super::csv_table::{CsvTable, Line, TableError, figures, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::combustion::{co_air_free_ppm, efficiency, excess_air_from_o2, flue_gas};
use crate::physics::fluid::Gas;

/// Columns of a table of combustion products.
pub(super) const COLUMNS: &[&str] = &[
    "fuel",
    "excess_air_pct",
    "O2_dry_pct",
    "CO2_dry_pct",
    "gross_eff_177C_pct",
    "gross_eff_232C_pct",
];

const AIR_FREE: &str = "air_free_multiplier_20.9/(20.9-O2)";

pub(super) fn products(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let fuel = line.text("fuel");
        let gas = match fuel {
            "CH4" => methane(),
            "C3H8" => Gas::propane(),
            "NGmix" => Gas::natural(),
            other => {
                return Err(line.error("fuel", t!("table-none-ch4-c3h8-ngmix", other = other)));
            }
        };
        let excess = line.number("excess_air_pct", (0.0, 200.0))?;
        let flue = flue_gas(&gas, excess / 100.0);
        let kind = if fuel == "NGmix" { "mix" } else { "pure" };
        for (what, column, share) in
            [("oxygen", "O2_dry_pct", flue.o2), ("carbon-dioxide", "CO2_dry_pct", flue.co2)]
        {
            let row = percent(line, column, share)?;
            let id = format!("burning.{what}.{kind}");
            gather.row(&id, line, row);
        }
        if fuel != "CH4" {
            for (column, celsius) in [("gross_eff_177C_pct", 177.0), ("gross_eff_232C_pct", 232.0)]
            {
                let share = efficiency(&gas, excess / 100.0, celsius + 273.15);
                let row = percent(line, column, share)?;
                let id = format!("burning.efficiency.{celsius}-c");
                gather.row(&id, line, row);
            }
        }
        if !line.text(AIR_FREE).is_empty() {
            let o2 = line.number("O2_dry_pct", (0.0, 20.0))?;
            let printed = line.number(AIR_FREE, (0.5, 100.0))?;
            let got = co_air_free_ppm(1.0, o2 / 100.0);
            let row = Row::new(format!("{fuel}, {o2} % O₂"), printed, got).rounded(5e-4);
            gather.row("burning.air-free.multiplier", line, row);
        }
    }
    Ok(gather.done())
}

/// A printed percentage beside a share of the model.
fn percent(line: Line<'_>, column: &str, share: f64) -> Result<Row, TableError> {
    let printed = line.number(column, (0.0, 100.0))?;
    let (fuel, excess) = (line.text("fuel"), line.number("excess_air_pct", (0.0, 200.0))?);
    Ok(Row::new(
        t!("row-excess-air", fuel = fuel, excess = excess.to_string()),
        printed,
        100.0 * share,
    )
    .rounded(half_unit(line.text(column), None))
    .on(fuel, excess))
}

/// Methane by its stoichiometry: 2 volumes of oxygen in 9.55 of air leave 1 of carbon dioxide and
/// 7.55 of nitrogen.
fn methane() -> Gas {
    let air = 2.0 / 0.2095;
    let dry = air - 1.0;
    Gas { air_per_gas: air, dry_flue_per_air: dry / air, co2_max: 1.0 / dry, ..Gas::natural() }
}

/// Facts in words with figures in them.
pub(super) fn facts(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(&["item", "value", "source", "confidence"])?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        match line.text("item") {
            "CO air-free" => air_free(&mut gather, line)?,
            "max CO2 dry" => most_co2(&mut gather, line)?,
            "excess air from O2" => excess_air(&mut gather, line)?,
            "Siegert check natural gas" => siegert(&mut gather, line)?,
            _ => gather.set_aside(t!("unused-limit-for-appliances-which")),
        }
    }
    Ok(gather.done())
}

fn air_free(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    let text = line.text("source");
    let numbers = figures(text.split("example").nth(1).unwrap_or(text));
    if numbers.len() < 3 {
        return Err(line.error("source", t!("table-ppm-b-o2-c").to_owned()));
    }
    for example in numbers.chunks_exact(3) {
        let [measured, o2, printed] = example else { continue };
        let got = co_air_free_ppm(*measured, o2 / 100.0);
        let row = Row::new(
            t!("row-measured-ppm", measured = measured.to_string(), o2 = o2.to_string()),
            *printed,
            got,
        );
        gather.row("burning.air-free.examples", line, row);
    }
    Ok(())
}

fn most_co2(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    let gases = [(methane(), "methane"), (Gas::natural(), "mix"), (Gas::propane(), "propane")];
    for (k, (gas, name)) in gases.iter().enumerate() {
        let printed = line.figure("value", k, (1.0, 30.0))?;
        let row = Row::new(*name, printed, 100.0 * gas.co2_max).rounded(0.05);
        gather.row("burning.most-carbon-dioxide", line, row);
    }
    Ok(())
}

fn excess_air(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    let numbers: Vec<f64> = figures(line.text("value")).into_iter().filter(|n| *n > 50.0).collect();
    let [methane_factor, propane_factor] = numbers.as_slice() else {
        return Err(line.error("value", t!("table-two-factors-above-50").to_owned()));
    };
    for (gas, name, factor) in
        [(methane(), "methane", methane_factor), (Gas::propane(), "propane", propane_factor)]
    {
        for o2 in [2.0, 5.0, 7.0, 9.0, 11.0] {
            let want = factor * o2 / (20.95 - o2);
            let got = 100.0 * excess_air_from_o2(&gas, o2 / 100.0);
            let row = Row::new(format!("{name}, {o2} % O₂"), want, got).on(name, o2);
            gather.row("burning.excess-air", line, row);
        }
    }
    Ok(())
}

fn siegert(gather: &mut Gather, line: Line<'_>) -> Result<(), TableError> {
    let flue_c = line.figure("value", 0, (60.0, 350.0))?;
    let o2 = line.figure("value", 2, (0.0, 20.0))?;
    let printed = line.figure("value", 3, (0.1, 50.0))?;
    let gas = Gas::natural();
    let excess = excess_air_from_o2(&gas, o2 / 100.0);
    let latent = 0.0989;
    let sensible = 1.0 - latent - efficiency(&gas, excess, flue_c + 273.15);
    let got = 100.0 * sensible / (1.0 - latent);
    let row = Row::new(format!("{flue_c} °C, {o2} % O₂"), printed, got);
    gather.row("burning.siegert", line, row);
    Ok(())
}

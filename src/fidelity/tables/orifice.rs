//! Drills, burner orifices and leaks.

use super::csv_table::{CsvTable, Line, TableError, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::fluid::Gas;
use crate::physics::orifice::{OpeningLaw, drill_diameter_m, hole_area_m2};
use crate::units::{M_PER_IN, M3_S_PER_CFH, P_STD_PA, PA_PER_INWC, T_STD_K};

/// Columns of a table of drills.
pub(super) const DRILL_COLUMNS: &[&str] = &["drill", "diameter_in", "diameter_mm"];
/// Columns of a table of utility gas by drill and pressure.
pub(super) const UTILITY_COLUMNS: &[&str] = &["drill", "dia_in", "pressure_inwc", "cfh"];
/// Columns of a table of propane by drill.
pub(super) const PROPANE_COLUMNS: &[&str] = &["drill", "dia_in", "pressure_inwc", "Btu_per_h"];
/// Columns of computed capacities that must be there.
pub(super) const COMPUTED_COLUMNS: &[&str] = &["drill", "dia_in", "ng_cfh_3.5"];
/// Columns of a table of leaks.
pub(super) const LEAK_COLUMNS: &[&str] = &["hole_mm", "gas", "pressure_inwc", "K", "cfh"];

/// Discharge coefficient behind the code's tables.
const CODE_K: f64 = 0.90;

/// Flow through a hole, ft³/h.
pub(super) fn cfh(gas: &Gas, k: f64, diameter_m: f64, inwc: f64) -> f64 {
    let drop_pa = inwc * PA_PER_INWC;
    let law = OpeningLaw::new(gas, T_STD_K);
    law.flow(drop_pa, P_STD_PA + drop_pa, P_STD_PA).flow * hole_area_m2(k, diameter_m)
        / M3_S_PER_CFH
}

/// Diameter of the row's drill, in metres.
pub(super) fn drill_m(line: Line<'_>) -> Result<f64, TableError> {
    let name = line.text("drill");
    drill_diameter_m(name)
        .ok_or_else(|| line.error("drill", t!("table-number-drill-1-80", name = name)))
}

pub(super) fn drills(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(DRILL_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let inches = line.number("diameter_in", (0.001, 2.0))?;
        let mm = line.number("diameter_mm", (0.01, 60.0))?;
        let got_m = drill_m(line)?;
        let name = line.text("drill");
        let row = Row::new(t!("row-drill-in", name = name), inches, got_m / M_PER_IN);
        gather.row("orifice.drills", line, row);
        let row = Row::new(t!("row-drill-mm", name = name), mm, got_m * 1e3)
            .rounded(half_unit(line.text("diameter_mm"), None) * 1.0001);
        gather.row("orifice.drills", line, row);
    }
    Ok(gather.done())
}

pub(super) fn utility(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(UTILITY_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let inwc = line.number("pressure_inwc", (0.01, 500.0))?;
        let printed = line.number("cfh", (1e-4, 1e6))?;
        let name = line.text("drill");
        let got = cfh(&Gas::natural(), CODE_K, drill_m(line)?, inwc);
        if matches!(name.trim_start_matches('#'), "77" | "78") {
            gather.set_aside(t!("unused-drills-77-78-printed"));
            continue;
        }
        let row =
            Row::new(t!("row-drill-at-inwc", name = name, inwc = inwc.to_string()), printed, got)
                .rounded(half_unit("0.01", None))
                .on(name, inwc);
        let high = inwc == 5.0 || inwc == 6.0;
        let id = if high { "orifice.utility.5-6-inwc" } else { "orifice.utility" };
        gather.row(id, line, row);
    }
    Ok(gather.done())
}

pub(super) fn propane(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(PROPANE_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let inwc = line.number("pressure_inwc", (0.01, 500.0))?;
        let printed = line.number("Btu_per_h", (0.1, 1e9))?;
        let name = line.text("drill");
        // The table's own heating value and gravity, 2,516 Btu/ft³ and 1.52, are the model's.
        let got = cfh(&Gas::propane(), CODE_K, drill_m(line)?, inwc) * 2_516.0;
        let row =
            Row::new(t!("row-drill-at-inwc", name = name, inwc = inwc.to_string()), printed, got);
        gather.row("orifice.propane", line, row);
    }
    Ok(gather.done())
}

/// Computed capacities: columns `ng_cfh_…`, `lp_cfh_…`, `ng_Btuh_…@…`, `lp_Btuh_…@…`.
pub(super) fn computed(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COMPUTED_COLUMNS)?;
    let natural = Gas::natural();
    let propane = Gas { specific_gravity: 1.50, ..Gas::propane() };
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let diameter_m = drill_m(line)?;
        for column in table.header() {
            let Some((gas, inwc, per_cfh)) = column_of(column) else { continue };
            let printed = line.number(column, (1e-6, 1e9))?;
            let gas = if gas == "ng" { &natural } else { &propane };
            let got = cfh(gas, CODE_K, diameter_m, inwc) * per_cfh;
            let row = Row::new(format!("{}, {column}", line.text("drill")), printed, got)
                .rounded(half_unit(line.text(column), None));
            gather.row("orifice.formula", line, row);
        }
    }
    Ok(gather.done())
}

/// Gas, pressure and heating value of a computed column.
fn column_of(column: &str) -> Option<(&str, f64, f64)> {
    let (gas, rest) = column.split_once('_')?;
    if gas != "ng" && gas != "lp" {
        return None;
    }
    let (kind, figures) = rest.split_once('_')?;
    match kind {
        "cfh" => Some((gas, figures.parse().ok().filter(|p| plausible(*p))?, 1.0)),
        "Btuh" => {
            let (inwc, value) = figures.split_once('@')?;
            let inwc = inwc.parse().ok().filter(|p| plausible(*p))?;
            Some((gas, inwc, value.parse().ok().filter(|v: &f64| (100.0..5_000.0).contains(v))?))
        }
        _ => None,
    }
}

fn plausible(inwc: f64) -> bool {
    (0.01..=500.0).contains(&inwc)
}

pub(super) fn leaks(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(LEAK_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let name = line.text("gas");
        let gas = match name {
            "natural" => Gas::natural(),
            "propane" => Gas { specific_gravity: 1.50, ..Gas::propane() },
            other => {
                let message = t!("table-neither-natural-nor-propane", other = other);
                return Err(line.error("gas", message));
            }
        };
        let hole_mm = line.number("hole_mm", (1e-4, 1e3))?;
        let inwc = line.number("pressure_inwc", (0.01, 500.0))?;
        let k = line.number("K", (0.01, 1.0))?;
        let printed = line.number("cfh", (1e-9, 1e9))?;
        let got = cfh(&gas, k, hole_mm * 1e-3, inwc);
        let row = Row::new(
            t!(
                "row-hole-at-inwc",
                hole_mm = hole_mm.to_string(),
                name = name,
                inwc = inwc.to_string()
            ),
            printed,
            got,
        )
        .rounded(half_unit(line.text("cfh"), None))
        .on(name, hole_mm);
        gather.row("orifice.leaks", line, row);
    }
    Ok(gather.done())
}

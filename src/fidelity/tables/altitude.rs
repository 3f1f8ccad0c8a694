//! Thin air.

use super::csv_table::{CsvTable, TableError, figures, half_unit};
use super::gather::Gather;
use super::outcome::Outcome;
use crate::fidelity::check::Row;
use crate::physics::fluid::Gas;
use crate::physics::orifice::{OpeningLaw, drill_diameter_m};
use crate::scenario::{builtin, load};
use crate::units::{Length, M_PER_FT, P_STD_PA, PA_PER_INWC, T_STD_K};

/// Columns of a table by altitude.
pub(super) const COLUMNS: &[&str] = &["altitude_ft", "pressure_ratio_ISA", ENERGY];
/// Columns of the table of worked examples at altitude.
pub(super) const EXAMPLE_COLUMNS: &[&str] = &["item", "value", "source", "confidence", "check"];
const ENERGY: &str = "energy_fraction_same_orifice_same_gauge_pressure";

/// The standard atmosphere's temperature falls by 6.8756e-6 of its sea-level value a foot.
const COOLS_PER_FT: f64 = 6.875_6e-6;

pub(super) fn run(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let feet = line.number("altitude_ft", (-1_000.0, 12_000.0))?;
        let ratio = line.number("pressure_ratio_ISA", (0.3, 1.1))?;
        let energy = line.number(ENERGY, (0.3, 1.1))?;
        if let Some(got) = ambient_ratio(feet) {
            let row = Row::new(t!("row-altitude", feet = feet.to_string()), ratio, got)
                .rounded(5e-5)
                .on("pressure", feet);
            gather.row("altitude.pressure", line, row);
        }
        let law = OpeningLaw::new(&Gas::natural(), T_STD_K * (1.0 - COOLS_PER_FT * feet));
        let drop = 3.5 * PA_PER_INWC;
        let at = |law: &OpeningLaw, p: f64| law.flow(drop, p + drop, p).flow;
        let sea = OpeningLaw::new(&Gas::natural(), T_STD_K);
        let got = at(&law, ratio * P_STD_PA) / at(&sea, P_STD_PA);
        let row = Row::new(t!("row-altitude", feet = feet.to_string()), energy, got)
            .rounded(half_unit(line.text(ENERGY), None))
            .on("input", feet);
        gather.row("altitude.input", line, row);
    }
    Ok(gather.done())
}

/// Air pressure that a scenario at this altitude gets, against sea level.
fn ambient_ratio(feet: f64) -> Option<f64> {
    let at = |feet: f64| {
        let text = builtin::JOBS.first()?.text;
        let (before, rest) = text.split_once("altitude:")?;
        let (_, after) = rest.split_once('"')?.1.split_once('"')?;
        let altitude = Length(feet * M_PER_FT);
        let scenario = load(&format!("{before}altitude:\"{altitude}\"{after}")).ok()?;
        Some(scenario.draw(0).ambient_abs_pa)
    };
    Some(at(feet)? / at(0.0)?)
}

/// `#51/#49 area = 0.842`, not `area ratio … = …`.
fn is_ratio(part: &str) -> bool {
    part.split_once('=').is_some_and(|(of, _)| of.trim_end().ends_with("area"))
}

/// Examples: areas of drills, and flows through them.
pub(super) fn examples(table: &CsvTable) -> Result<Outcome, TableError> {
    table.needs(EXAMPLE_COLUMNS)?;
    let mut gather = Gather::new(table);
    for line in table.lines() {
        let text = line.text("check");
        let Some(ratio) = text.split(';').find(|part| is_ratio(part)) else {
            gather.set_aside(t!("unused-derating-rule-formula-orifice"));
            continue;
        };
        let numbers = figures(ratio);
        let [first, second, printed] = numbers.as_slice() else {
            return Err(line.error("check", t!("table-b-area-ratio-needed").to_owned()));
        };
        let diameter = |number: f64| drill_diameter_m(&format!("#{number}"));
        let (Some(a), Some(b)) = (diameter(*first), diameter(*second)) else {
            return Err(line.error("check", t!("table-drill-outside-1-80").to_owned()));
        };
        let row = Row::new(
            t!("row-drill-for-drill", first = first.to_string(), second = second.to_string()),
            *printed,
            a * a / (b * b),
        )
        .rounded(5e-4);
        gather.row("altitude.drills", line, row);
    }
    Ok(gather.done())
}

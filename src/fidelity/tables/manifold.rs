//! Two stages through one orifice.

use super::Outcome;
use super::gather::{Gather, Head};
use super::orifice::{cfh, drill_m};
use super::sheet::{Line, Sheet, TableError, half_unit};
use crate::fidelity::{Row, Tolerance};
use crate::physics::fluid::Gas;

/// Columns of a table of firing ratios.
pub(super) const RATIO_COLUMNS: &[&str] = &["gas", "low_inwc", "high_inwc", "sqrt_ratio_pct"];
/// Columns of a table of orifices and manifold pressures of a two-stage appliance.
pub(super) const PAIR_COLUMNS: &[&str] = &["drill", "high_inwc", "low_inwc"];

const CHAPTER: &str = "Orifices and leaks";
/// Inputs a burner that the pairs are for where no column says so, Btu/h.
const HIGH_BTU_H: f64 = 22_000.0;
const LOW_BTU_H: f64 = 14_500.0;

pub(super) fn ratios(sheet: &Sheet) -> Result<Outcome, TableError> {
    sheet.needs(RATIO_COLUMNS)?;
    let mut gather = Gather::new(sheet);
    for line in sheet.lines() {
        let gas = match line.text("gas") {
            "natural" => Gas::natural(),
            "propane" => Gas::propane(),
            other => {
                let message = format!("`{other}` is neither natural nor propane");
                return Err(line.error("gas", message));
            }
        };
        let low = line.number("low_inwc", (0.01, 500.0))?;
        let high = line.number("high_inwc", (0.01, 500.0))?;
        let printed = line.number("sqrt_ratio_pct", (0.1, 1_000.0))?;
        let got = 100.0 * cfh(&gas, 0.87, 2e-3, low) / cfh(&gas, 0.87, 2e-3, high);
        let row = Row::new(format!("{}, {low} to {high} in. w.c.", line.text("gas")), printed, got)
            .rounded(half_unit(line.text("sqrt_ratio_pct"), None));
        gather.row("manifold.firing-ratio", line, row, || {
            Head::new(
                CHAPTER,
                "%",
                Tolerance::Relative(-0.003, 0.003),
                "Input on low against high through the same orifice.",
                "manifold pressures of two-stage appliances",
                "the square root alone; the model's gas expands and is denser upstream, 0.2 % at 10 \
                 in. w.c.",
            )
        });
    }
    Ok(gather.done())
}

pub(super) fn pairs(sheet: &Sheet) -> Result<Outcome, TableError> {
    sheet.needs(PAIR_COLUMNS)?;
    let mut gather = Gather::new(sheet);
    for line in sheet.lines() {
        let diameter_m = drill_m(line)?;
        let high = line.number("high_inwc", (0.01, 500.0))?;
        let low = line.number("low_inwc", (0.01, 500.0))?;
        let gravity = optional(line, "specific_gravity", 0.60, (0.05, 5.0))?;
        let value = optional(line, "heating_value", 1_000.0, (100.0, 5_000.0))?;
        let high_btu_h = optional(line, "high_Btuh", HIGH_BTU_H, (100.0, 1e7))?;
        let low_btu_h = optional(line, "low_Btuh", LOW_BTU_H, (100.0, 1e7))?;
        let base = if gravity > 1.0 { Gas::propane() } else { Gas::natural() };
        let gas = Gas { specific_gravity: gravity, ..base };
        let name = line.text("drill");
        let at = |inwc: f64| cfh(&gas, 1.0, diameter_m, inwc) * value;
        let row = Row::new(
            format!("{name}, {low} to {high} in. w.c."),
            low_btu_h / high_btu_h,
            at(low) / at(high),
        )
        .rounded(0.05 / high);
        gather.row("manifold.pairs.ratio", line, row, || pair_head(
            "Input on low against high through one orifice.",
            "1",
            Tolerance::Relative(-0.015, 0.015),
            "pressures are printed to a tenth of an inch, which is 3 % of the low one and half that of the flow",
        ));
        for (stage, inwc, btu_h) in [("high", high, high_btu_h), ("low", low, low_btu_h)] {
            let row =
                Row::new(format!("{name}, {stage}, {inwc} in. w.c."), 0.873, btu_h / at(inwc));
            gather.row("manifold.pairs.coefficient", line, row, || pair_head(
                "Discharge coefficient that the appliance's own table implies.",
                "1",
                Tolerance::Absolute(0.02),
                "pressures are printed to a tenth of an inch; the mean is 0.873, the pairs lie within 0.85 to 0.89",
            ));
        }
    }
    Ok(gather.done())
}

fn pair_head(claim: &str, unit: &'static str, band: Tolerance, reason: &str) -> Head {
    Head::new(
        CHAPTER,
        unit,
        band,
        claim,
        "orifices and manifold pressures of one appliance",
        reason,
    )
}

fn optional(line: Line<'_>, column: &str, or: f64, range: (f64, f64)) -> Result<f64, TableError> {
    if line.text(column).is_empty() { Ok(or) } else { line.number(column, range) }
}

//! The page on the format: chapters written by hand, tables and fields from the declarations
//! themselves.

use core::fmt::Write as _;

use super::draw::orifice_input_w;
use super::explain::{
    cause_table, competency_table, quantities, reference, rule_table, scoring_table,
};
use crate::appliance::plate::Fuel;
use crate::physics::orifice::DRILLS;
use crate::units::{M_PER_IN, PA_PER_INWC, W_PER_BTU_H};

/// The smallest scenario that the page shows whole.
pub const SMALLEST: &str = include_str!("guide/smallest.ron");

const HEAD: &str = include_str!("guide/head.md");
const VALUES: &str = include_str!("guide/values.md");
const PROVING: &str = include_str!("guide/proving.md");
const FUELS: &str = include_str!("guide/fuels.md");
const SCRIPTS: &str = include_str!("guide/scripts.md");
const TWO_FAULTS: &str = include_str!("guide/two_faults.md");
const SUPPLY: &str = include_str!("guide/supply.md");
const REQUIRED: &str = include_str!("guide/required.md");
const STEPS: &str = include_str!("guide/steps.md");
const UNITS: &str = include_str!("guide/units.md");
const DRILLS_HEAD: &str = include_str!("guide/drills.md");
const SCORING: &str = include_str!("guide/scoring.md");
const RULES: &str = include_str!("guide/rules.md");
const CAUSES: &str = include_str!("guide/causes.md");
const COMPETENCIES: &str = include_str!("guide/competencies.md");

/// Drills of the table: orifices of burners of about 5,000 to 50,000 Btu/h.
const SHOWN: core::ops::RangeInclusive<u16> = 30..=66;
/// Coefficient for which the table is made.
const TABLE_CD: f64 = 0.85;

/// The whole page, in Markdown.
#[must_use]
pub fn page() -> String {
    let mut text = format!("{HEAD}```\n{SMALLEST}```\n{VALUES}");
    for chapter in [FUELS, PROVING, SCRIPTS, TWO_FAULTS, SUPPLY, REQUIRED, STEPS] {
        text.push_str(chapter);
    }
    let _ = write!(text, "{COMPETENCIES}{}{SCORING}{}", competency_table(), scoring_table());
    let _ = write!(text, "{RULES}{}{CAUSES}{}", rule_table(), cause_table());
    let _ = write!(text, "{DRILLS_HEAD}{}", drills());
    text.push_str(UNITS);
    for (what, units) in quantities() {
        let _ = writeln!(text, "- {}: {}", what.text(), units.join(", "));
    }
    text.push('\n');
    // The reference stands one heading deeper here.
    for line in reference().lines() {
        let deeper = if line.starts_with("# ") || line.starts_with("##") { "#" } else { "" };
        let _ = writeln!(text, "{deeper}{line}");
    }
    text
}

fn drills() -> String {
    let mut text = String::new();
    for (number, inches) in DRILLS.iter().rev().filter(|(number, _)| SHOWN.contains(number)) {
        let hole_m = inches * M_PER_IN;
        let btu_h = |fuel, inwc: f64| {
            let input_w = orifice_input_w(fuel, inwc * PA_PER_INWC, hole_m, TABLE_CD);
            // Three figures, as a drill's rate deserves.
            (input_w / W_PER_BTU_H / 100.0).round() * 100.0
        };
        let _ = writeln!(
            text,
            "| #{number} | {inches:.4} | {:.2} | {} | {} |",
            hole_m * 1e3,
            btu_h(Fuel::Natural, 3.5),
            btu_h(Fuel::Propane, 10.0)
        );
    }
    text
}

//! The page on the format: chapters written by hand, tables and fields from the declarations
//! themselves.

use core::fmt::Write as _;

use super::draw::orifice_input_w;
use super::explain::{competency_table, quantities, reference, rule_table};
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
const STEPS: &str = include_str!("guide/steps.md");

const COMPETENCIES: &str = "
## Competencies

Ids for the list `competencies`: what the job is for. `quarterturn explain C05` names the rules that speak
for one. They are practice, and confer no qualification.

";

const RULES: &str = "
## Rules

The shared rules by which every job is marked. `quarterturn explain ID` tells why each matters and what to
practise. *Essential* names the point of the short list that the rule decides: with one of these lost, the
job is not passed, whatever the points. A rule that follows from another is not charged beside it.

A job may change them: `marking: (rules: [(id: \"hold-too-short\", weight: 2), (id: \"door-off\", applies: false)], …)`.

";

const DRILLS_HEAD: &str = "
## Drill sizes

Number drills of gas orifices (ASME B94.11M), with what one orifice burns at a discharge coefficient of
0.85: natural gas of 1,030 Btu/ft3 at a manifold of 3.5 inH2O, propane of 2,516 Btu/ft3 at 10 inH2O. Divide the plate's
`input_high` by the number of burners and look up the line. What lies between two lines is drilled in
millimetres: write `orifice: \"2.14 mm\"`.

| drill | in | mm | natural gas, Btu/h | propane, Btu/h |
|---|---|---|---|---|
";

/// Drills of the table: orifices of burners of about 5,000 to 50,000 Btu/h.
const SHOWN: core::ops::RangeInclusive<u16> = 30..=66;
/// Coefficient for which the table is made.
const TABLE_CD: f64 = 0.85;

/// The whole page, in Markdown.
#[must_use]
pub fn page() -> String {
    let mut text = format!("{HEAD}```\n{SMALLEST}```\n{VALUES}");
    for chapter in [FUELS, PROVING, SCRIPTS, TWO_FAULTS, SUPPLY, STEPS] {
        text.push_str(chapter);
    }
    let _ = write!(text, "{COMPETENCIES}{}{RULES}{}", competency_table(), rule_table());
    let _ = write!(text, "{DRILLS_HEAD}{}", drills());
    text.push_str("\n## Units\n\nEach kind of number takes these units:\n\n");
    for (what, units) in quantities() {
        let _ = writeln!(text, "- {what}: {units}");
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

//! What the job card says against what is drawn, and ranges that stand in a text.

use super::Cross;
use crate::scenario::format::Scenario;
use crate::units::J_M3_PER_BTU_FT3;

/// How far the card's heating value may lie from one that is drawn.
const HEAT: f64 = 0.02;

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    ranges(scenario, cross);
    heat(scenario, cross);
}

/// A text is shown as it stands: nothing is drawn in it.
fn ranges(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let hints = scenario.hints.iter().enumerate().map(|(i, hint)| (format!("hints[{i}]"), hint));
    let texts = [
        ("title", Some(&scenario.title)),
        ("about", Some(&scenario.about)),
        ("aim", scenario.aim.as_ref()),
        ("debrief", scenario.debrief.as_ref()),
        ("card.text", Some(&scenario.card.text)),
        ("card.supply_owner", Some(&scenario.card.supply_owner)),
    ];
    let texts = texts.into_iter().filter_map(|(path, text)| Some((path.to_owned(), text?)));
    for (path, text) in texts.chain(hints) {
        if let Some(word) = ["Between(", "OneOf("].into_iter().find(|word| text.contains(word)) {
            let message = format!("`{word}…)` is shown as it stands: nothing is drawn in a text.");
            cross.warn(&path, message);
        }
    }
}

/// The heat of the gas is what the trainee reckons with: the card's must be the one that is there.
fn heat(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let said = numbers(&scenario.card.text);
    if !scenario.card.text.contains("Btu/ft3") || said.is_empty() {
        return;
    }
    for seed in 0..super::TRIED_SEEDS {
        let drawn = scenario.draw_sound(seed).gas.heating_value_j_m3 / J_M3_PER_BTU_FT3;
        if !said.iter().any(|one| (one / drawn - 1.0).abs() <= HEAT) {
            let message = format!(
                "The card names a heating value, but the gas has {drawn:.0} Btu/ft3. Right only if \
                 this is the fault."
            );
            cross.warn("card.text", message);
            return;
        }
    }
}

/// The numbers of a text, commas between thousands left out.
fn numbers(text: &str) -> Vec<f64> {
    text.replace(',', "")
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|word| word.trim_matches('.').parse().ok())
        .collect()
}

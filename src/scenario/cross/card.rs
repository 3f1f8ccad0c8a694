//! What the job card says against what is drawn, and ranges that stand in a text.

use super::context::{Cross, TRIED_SEEDS};
use crate::appliance::plate::Fuel;
use crate::parts::Ending;
use crate::scenario::format::Scenario;
use crate::scenario::required::has_means;
use crate::units::{HeatingValue, J_M3_PER_BTU_FT3};
use crate::words::decimal;

/// How far the stated heating value may lie from one that is drawn, as a share.
const HEAT: f64 = 0.02;
/// How far a number in the text may lie from the stated one: what rounding leaves.
const ROUNDED: f64 = 0.001;

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    ranges(scenario, cross);
    heat(scenario, cross);
    required(scenario, cross);
}

/// Work that is asked for and cannot be done, is listed twice, or never falls due.
fn required(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let listed = scenario.card.required.iter().flatten().copied().enumerate();
    for (i, duty) in listed {
        let path = format!("card.required[{i}]");
        if !has_means(duty, scenario) {
            cross.error(&path, t!("problem-duty-no-means", duty = duty.label()));
        }
        if scenario.card.required.iter().flatten().take(i).any(|&before| before == duty) {
            cross.error(&path, t!("problem-duty-twice", duty = duty.label()));
        }
    }
    let stays_off = !scenario.marking.endings.is_empty()
        && scenario.marking.endings.iter().all(|it| *it == Ending::ShutOff);
    if stays_off && scenario.card.required.as_ref().is_some_and(|it| !it.is_empty()) {
        cross.warn("card.required", t!("problem-duty-never-due").into());
    }
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
            let message = t!("problem-drawn-in-text", word = word);
            cross.warn(&path, message);
        }
    }
}

/// The heat of the gas is what the trainee reckons with: the stated one must be the one that is there,
/// and the text, which the trainee reads, must say the same.
fn heat(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let stated = [
        ("natural", Fuel::Natural, &scenario.card.heating_value.natural),
        ("propane", Fuel::Propane, &scenario.card.heating_value.propane),
    ];
    for (name, fuel, value) in stated {
        let Some(value) = value else { continue };
        let path = format!("card.heating_value.{name}");
        if value.least() < value.most() {
            let message = t!("problem-heat-range");
            cross.error(&path, message.into());
        } else if fuel == scenario.gas.fuel {
            drawn(scenario, value.least(), &path, cross);
        }
    }
    let stated_btu: Vec<f64> = stated
        .into_iter()
        .filter_map(|(_, _, value)| Some(value.as_ref()?.least() / J_M3_PER_BTU_FT3))
        .collect();
    text(scenario, &stated_btu, cross);
}

/// The stated value against the gas of every seed.
fn drawn(scenario: &Scenario, stated_j_m3: f64, path: &str, cross: &mut Cross<'_, '_>) {
    for seed in 0..TRIED_SEEDS {
        let there_j_m3 = scenario.draw_sound(seed).gas.heating_value_j_m3;
        if (stated_j_m3 / there_j_m3 - 1.0).abs() > HEAT {
            let message = t!(
                "problem-heat-differs",
                stated = decimal(stated_j_m3 / J_M3_PER_BTU_FT3, 0),
                there = decimal(there_j_m3 / J_M3_PER_BTU_FT3, 0)
            );
            cross.warn(path, message);
            return;
        }
    }
}

/// The text against the stated values: each number with a unit of heating values is one of them, and
/// each of them stands in the text.
fn text(scenario: &Scenario, stated_btu: &[f64], cross: &mut Cross<'_, '_>) {
    let (with_unit, all) = numbers(&scenario.card.text);
    let among = |btu: f64, those: &[f64]| those.iter().any(|it| (it / btu - 1.0).abs() <= ROUNDED);
    for btu in with_unit.iter().copied().filter(|&btu| !among(btu, stated_btu)) {
        let fields: Vec<String> = stated_btu.iter().map(|btu| format!("{btu:.0}")).collect();
        let message = match fields.as_slice() {
            [] => t!("problem-heat-unstated", btu = decimal(btu, 0)),
            fields => t!(
                "problem-heat-stated-otherwise",
                btu = decimal(btu, 0),
                stated = fields.join(t!("list-and"))
            ),
        };
        cross.warn("card.text", message);
    }
    for &btu in stated_btu.iter().filter(|&&btu| !among(btu, &all)) {
        let message = t!("problem-heat-not-in-text", btu = decimal(btu, 0));
        cross.warn("card.text", message);
    }
}

/// The heating values in a text, in Btu/ft³: the numbers before a unit of heating values, and every
/// number, as one in "1,030 Btu/ft3, propane 2,516". Commas between thousands are left out.
fn numbers(text: &str) -> (Vec<f64>, Vec<f64>) {
    let text = text.replace(',', "");
    let (mut with_unit, mut all) = (Vec::new(), Vec::new());
    let mut before: Option<f64> = None;
    for word in text.split(|c: char| c.is_whitespace() || "();:".contains(c)) {
        let word = word.trim_end_matches('.');
        if let (Some(number), Some(btu)) = (before, btu_ft3(word)) {
            with_unit.push(number * btu);
            all.push(number * btu);
        }
        before = word.parse().ok();
        all.extend(before);
    }
    (with_unit, all)
}

/// What one of this unit is in Btu/ft³; none where it is no unit of heating values.
fn btu_ft3(unit: &str) -> Option<f64> {
    let one: HeatingValue = format!("1 {unit}").parse().ok()?;
    Some(one.si() / J_M3_PER_BTU_FT3)
}

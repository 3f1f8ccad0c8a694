//! Problems that show only when several values are looked at together.

mod card;
mod causes;
mod context;
mod endings;
mod furnace;
mod plausible;
mod scene;
mod supply;
mod teaching;

use context::{Cross, TRIED_SEEDS, last_name};

use super::format::{Card, Figures, Furnace, Plate, RuleChange, Scenario, VERSION, Variant};
use super::problem::{Code, Problem, ProblemLevel, nearest};
use super::reader::Reader;
use crate::appliance::plate::Fuel;
use crate::rules::Severity;
use crate::units::PA_PER_INWC;
use crate::words::decimal;

/// Tells of faults that leave a finding nothing to name. It plays the bench.
pub(super) fn check_causes(scenario: &Scenario, reader: &mut Reader<'_>) {
    causes::check(scenario, &mut Cross { reader });
}

/// Looks at everything together, in every setting that a seed may draw.
pub(super) fn check(scenario: &Scenario, reader: &mut Reader<'_>) {
    whole(&scenario.as_written(), reader);
    if !scenario.variants.is_empty() {
        for problem in
            reader.problems.iter_mut().filter(|it| it.path.starts_with("marking.endings"))
        {
            problem.message = t!("problem-as-written", problem = &problem.message);
        }
    }
    for (i, variant) in scenario.variants.iter().enumerate() {
        let place = format!("variants[{i}]");
        let written = variant.written();
        if written.is_empty() {
            Cross { reader }.warn(&place, t!("problem-setting-empty").into());
            continue;
        }
        unwritten(scenario, variant, &place, &mut Cross { reader });
        let before = core::mem::take(&mut reader.problems);
        reader.inside = Some((place.clone(), written));
        whole(&scenario.in_variant(variant), reader);
        reader.inside = None;
        let new = core::mem::replace(&mut reader.problems, before);
        for mut problem in new {
            let known =
                |it: &Problem| it.path == problem.path && it.message.starts_with(&problem.message);
            if reader.problems.iter().any(known) {
                continue;
            }
            if !problem.path.starts_with("variants[") {
                let (told, place) = (&problem.message, &place);
                problem.message = match problem.path.starts_with("marking.endings") {
                    true => t!("problem-endings-in-setting", problem = told, place = place),
                    false => t!("problem-in-setting", problem = told, place = place),
                };
            }
            reader.problems.push(problem);
        }
    }
}

/// What a setting on another fuel takes from the job, and most likely should not.
fn unwritten(scenario: &Scenario, variant: &Variant, place: &str, cross: &mut Cross<'_, '_>) {
    let Some(fuel) = variant.gas.as_ref().map(|gas| gas.fuel) else { return };
    if fuel == scenario.gas.fuel {
        return;
    }
    let missing = [("supply", variant.supply.is_none()), ("furnace", variant.furnace.is_none())];
    for (field, _) in missing.into_iter().filter(|(_, is)| *is) {
        let message = t!("problem-setting-takes", fuel = fuel.label(), field = field);
        cross.warn(place, message);
    }
}

/// Looks at the job in one setting.
fn whole(scenario: &Scenario, reader: &mut Reader<'_>) {
    let mut cross = Cross { reader };
    version(scenario, &mut cross);
    texts(scenario, &mut cross);
    teaching::check(scenario, &mut cross);
    card::check(scenario, &mut cross);
    fuels(scenario, &mut cross);
    supply::check(scenario, &mut cross);
    furnace::check(scenario, &mut cross);
    scene::check(&scenario.scene, &mut cross);
    plausible::check(scenario, &mut cross);
    instruments(scenario, &mut cross);
    let fit = faults(scenario, &mut cross);
    marking(scenario, &mut cross);
    // Where a fault cannot be there, nothing is said of how the job with it may end.
    if fit {
        endings::check(scenario, &mut cross);
    }
}

fn version(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let known = f64::from(VERSION);
    if scenario.version.least() < known || scenario.version.most() > known {
        let message = t!("problem-no-version", version = VERSION.to_string());
        cross.reader.at_path(ProblemLevel::Error, Code::NoSuchVersion, "version", message);
    }
}

fn texts(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let furnace = &scenario.furnace;
    let label = furnace.conversion.as_ref().map(|label| &label.orifice);
    let short = [
        ("title", &Scenario::SECTION, Some(&scenario.title)),
        ("card.supply_owner", &Card::SECTION, Some(&scenario.card.supply_owner)),
        ("furnace.plate.model", &Plate::SECTION, Some(&furnace.plate.model)),
        ("furnace.orifice_fitted", &Furnace::SECTION, furnace.orifice_fitted.as_ref()),
        (
            "furnace.plate.made_for.orifice",
            &Figures::SECTION,
            Some(&furnace.plate.made_for.orifice),
        ),
        ("furnace.conversion.orifice", &Figures::SECTION, label),
    ];
    for (path, section, text) in short {
        let length = text.map_or(0, |text| text.chars().count());
        let most = section.text_limit(last_name(path));
        if length > most {
            cross.length(path, t!("problem-too-long", length = length, most = most));
        }
    }
}

fn fuels(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    use super::format::Source;
    match (&scenario.supply.source, scenario.gas.fuel) {
        (Source::Tank(_), Fuel::Natural) => {
            cross.error("supply.source", t!("problem-tank-natural").into());
        }
        (Source::Meter(_), Fuel::Propane) => {
            cross.warn("supply.source", t!("problem-meter-propane").into());
        }
        (Source::Tank(tank), Fuel::Propane) => {
            let coldest_k = scenario.site.outside.least();
            let boils_k = crate::units::k_from_f(-44.0);
            if coldest_k <= boils_k && tank.level.least() > 0.0 {
                let message = t!("problem-tank-cold");
                cross.warn("site.outside", message.into());
            }
        }
        (Source::Meter(_), Fuel::Natural) => {}
    }
    let furnace = &scenario.furnace;
    let (path, governing) = match &furnace.conversion {
        Some(label) => ("furnace.conversion.fuel", label),
        None => ("furnace.plate.made_for.fuel", &furnace.plate.made_for),
    };
    if governing.fuel != scenario.gas.fuel {
        let message =
            t!("problem-fuels", marked = governing.fuel.label(), gas = scenario.gas.fuel.label());
        cross.warn(path, message);
    }
    if furnace.conversion.as_ref().is_some_and(|label| label.fuel == furnace.plate.made_for.fuel) {
        let message = t!("problem-label-same-fuel");
        cross.warn("furnace.conversion.fuel", message.into());
    }
}

fn instruments(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let most_pa = scenario.supply.lockup.most();
    if scenario.manometer.range.least() < most_pa {
        let message = t!("problem-manometer-range", pressure = decimal(most_pa / PA_PER_INWC, 1));
        cross.warn("manometer.range", message);
    }
}

/// Whether each fault can be there at all, and is not put in twice. Gives whether all of them can.
fn faults(scenario: &Scenario, cross: &mut Cross<'_, '_>) -> bool {
    let mut fit = true;
    for (i, affliction) in scenario.faults.iter().enumerate() {
        let path = format!("faults[{i}]");
        for choice in &affliction.choices {
            let fault = choice.fault;
            let misfit = (0..TRIED_SEEDS).find_map(|seed| fault.misfit(&scenario.draw_sound(seed)));
            if let Some(why) = misfit {
                fit = false;
                let message = t!("problem-fault-misfit", fault = fault.name(), why = why);
                cross.error(&path, message);
            }
            let before = scenario.faults.iter().take(i).flat_map(|it| &it.choices);
            if before.filter(|it| it.fault == fault).count() > 0 {
                let message = t!("problem-fault-twice", fault = fault.name());
                cross.warn(&path, message);
            }
        }
    }
    fit
}

fn marking(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let endings = &scenario.marking.endings;
    if endings.is_empty() {
        cross.length("marking.endings", t!("problem-no-ending").into());
    }
    for (i, ending) in endings.iter().enumerate() {
        if endings[..i].contains(ending) {
            cross.error(&format!("marking.endings[{i}]"), t!("problem-ending-twice").into());
        }
    }
    rules(&scenario.marking.rules, cross);
}

fn rules(changes: &[RuleChange], cross: &mut Cross<'_, '_>) {
    if changes.is_empty() {
        return;
    }
    // The shared book is part of the program; were it broken, its own test would say so.
    let book = crate::rules::shared().map(|book| book.rules).unwrap_or_default();
    let ids = || book.iter().map(|rule| rule.id.as_str());
    for (i, rule) in changes.iter().enumerate() {
        let path = format!("marking.rules[{i}].id");
        if !ids().any(|id| id == rule.id) {
            let near = nearest(&rule.id, ids());
            let message = match &near {
                Some(near) => t!("problem-no-rule-near", rule = &rule.id, near = near),
                None => t!("problem-no-rule", rule = &rule.id),
            };
            cross.reader.at_path(ProblemLevel::Error, Code::UnknownName, &path, message);
            cross.reader.suggest(near);
        } else if changes[..i].iter().any(|before| before.id == rule.id) {
            cross.error(&path, t!("problem-rule-twice").into());
        }
        let shared = book.iter().find(|it| it.id == rule.id);
        let gates_nothing = shared.is_some_and(|it| it.essential.is_none());
        if rule.severity == Some(Severity::Critical) && gates_nothing {
            let message = t!("problem-critical-rule", rule = &rule.id);
            cross.error(&format!("marking.rules[{i}].severity"), message);
        }
        if rule.weight.as_ref().is_some_and(|weight| weight.least() < weight.most()) {
            let message = t!("problem-weight-range");
            cross.error(&format!("marking.rules[{i}].weight"), message.into());
        }
    }
}

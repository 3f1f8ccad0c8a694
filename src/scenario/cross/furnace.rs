//! Plate, label, burners and valve, looked at together.

use enum_map::EnumMap;

use super::context::Cross;
use crate::appliance::plate::Fuel;
use crate::parts::{Level, Levels};
use crate::physics::orifice::{DRILLS, drill_diameter_m};
use crate::scenario::format::{Figures, Furnace, Manifold, Scenario};
use crate::scenario::problem::{Code, ProblemLevel};
use crate::setup::Stacking;
use crate::units::{M_PER_IN, PA_PER_INWC};
use crate::words::decimal;

/// How far the plate's share of low may differ from what its two pressures give.
const SHARE_BAND: f64 = 0.1;
/// Coils touch this many turns before the bottom.
const BIND_TURNS: f64 = 0.5;
/// Seeds for which the screws are tried.
const TRIED_SEEDS: u64 = 8;

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let furnace = &scenario.furnace;
    figures(&furnace.plate.made_for, "furnace.plate.made_for", furnace, cross);
    if let Some(label) = &furnace.conversion {
        figures(label, "furnace.conversion", furnace, cross);
    }
    inputs(furnace, cross);
    orifices(furnace, cross);
    coefficient(scenario, cross);
    screws(scenario, cross);
}

fn figures(it: &Figures, path: &str, furnace: &Furnace, cross: &mut Cross<'_, '_>) {
    let at = |name: &str| format!("{path}.{name}");
    cross.below((&at("inlet_min"), &it.inlet_min), (&at("inlet_max"), &it.inlet_max));
    if let Some(levels) = it.levels() {
        manifold(it, levels, path, cross);
    } else {
        cross.error(path, t!("problem-manifold-levels").into());
    }
    if it.inlet_max.least() > furnace.plate.valve_max.most() {
        let message = t!("problem-inlet-over-valve");
        cross.error(&at("inlet_max"), message.into());
    }
    let usual_inwc = match it.fuel {
        Fuel::Natural => (4.0, 14.0),
        Fuel::Propane => (10.0, 15.0),
    };
    let inwc = |pa: f64| pa / PA_PER_INWC;
    if inwc(it.inlet_min.least()) < usual_inwc.0 || inwc(it.inlet_max.most()) > usual_inwc.1 {
        let message = t!(
            "problem-inlet-unusual",
            fuel = it.fuel.label(),
            least = usual_inwc.0.to_string(),
            most = usual_inwc.1.to_string()
        );
        cross.warn(&at("inlet_min"), message);
    }
    if it.orifice_size.is_none() && drill_diameter_m(&it.orifice).is_none() {
        no_size(&at("orifice"), &it.orifice, cross);
    }
}

/// Manifold pressures, held against each other and against the inlet's.
fn manifold(it: &Figures, levels: Levels<Manifold<'_>>, path: &str, cross: &mut Cross<'_, '_>) {
    let at = |name: &str| format!("{path}.{name}");
    for (_, level) in levels.iter() {
        cross.below(
            (&at(level.tolerance_field), level.tolerance),
            (&at(level.field), level.pressure),
        );
    }
    let (first, full) = (levels.first(), levels.top());
    if levels.list().len() > 1 {
        cross.below((&at(first.field), first.pressure), (&at(full.field), full.pressure));
        let bands_pa = first.tolerance.most() + full.tolerance.most();
        let apart_pa = full.pressure.least() - first.pressure.most();
        if apart_pa > 0.0 && apart_pa <= bands_pa {
            cross.warn(&at(first.field), t!("problem-bands-overlap").into());
        }
    }
    if it.inlet_min.least() <= full.pressure.most() {
        cross.error(&at("inlet_min"), t!("problem-inlet-too-low").into());
    }
}

fn no_size(path: &str, stamp: &str, cross: &mut Cross<'_, '_>) {
    let message = t!("problem-orifice", stamp = stamp);
    cross.reader.at_path(ProblemLevel::Error, Code::UnknownName, path, message);
    if let Some(last) = cross.reader.problems.last_mut() {
        last.expected = t!("expected-orifice").to_owned();
    }
}

fn inputs(furnace: &Furnace, cross: &mut Cross<'_, '_>) {
    let plate = &furnace.plate;
    cross.below(
        ("furnace.plate.rise_min", &plate.rise_min),
        ("furnace.plate.rise_max", &plate.rise_max),
    );
    let Some(inputs) = plate.inputs() else {
        cross.error("furnace.plate", t!("problem-input-levels").into());
        return;
    };
    let written = furnace.conversion.iter().chain([&plate.made_for]).filter_map(Figures::levels);
    if written.into_iter().any(|levels| levels.list() != inputs.list()) {
        cross.error("furnace.plate", t!("problem-levels-differ").into());
    }
    let governing = furnace.conversion.as_ref().unwrap_or(&plate.made_for);
    let (Some(levels), [first_level, full_level]) = (governing.levels(), inputs.list()) else {
        return;
    };
    let (first, full) = (inputs[*first_level], inputs[*full_level]);
    let at = |(name, _): (&str, _)| format!("furnace.plate.{name}");
    cross.below((&at(first), first.1), (&at(full), full.1));
    // The rate goes with the square root of the manifold pressure.
    let by_pressure = (levels.first().pressure.least() / levels.top().pressure.least()).sqrt();
    let by_plate = first.1.least() / full.1.least();
    if (by_pressure - by_plate).abs() > SHARE_BAND {
        let message = t!(
            "problem-low-share",
            inputs = decimal(100.0 * by_plate, 0),
            pressures = decimal(100.0 * by_pressure, 0)
        );
        cross.warn(&at(first), message);
    }
}

fn orifices(furnace: &Furnace, cross: &mut Cross<'_, '_>) {
    let made_for = &furnace.plate.made_for;
    if let Some(stamp) = &furnace.orifice_fitted {
        let known = drill_diameter_m(stamp).is_some()
            || *stamp == made_for.orifice
            || furnace.conversion.as_ref().is_some_and(|label| *stamp == label.orifice)
            || furnace.orifice_sizes.is_some();
        if !known {
            no_size("furnace.orifice_fitted", stamp, cross);
        }
    }
    if let Some(sizes) = &furnace.orifice_sizes {
        let burners = (furnace.burners.least(), furnace.burners.most());
        let written = sizes.len();
        let fits =
            |count: f64| (count - f64::from(u32::try_from(written).unwrap_or(0))).abs() < 0.5;
        if !fits(burners.0) || !fits(burners.1) {
            let message =
                t!("problem-orifice-count", written = written, burners = decimal(burners.1, 0));
            cross.length("furnace.orifice_sizes", message);
        }
    }
}

/// A coefficient that was found from plate and orifice must be one that orifices have.
fn coefficient(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    if scenario.furnace.orifice_coefficient.is_some() {
        return;
    }
    let setup = scenario.draw_sound(0);
    let found = setup.furnace.orifice_cd;
    let path = match scenario.furnace.conversion {
        Some(_) => "furnace.conversion.orifice",
        None => "furnace.plate.made_for.orifice",
    };
    if !(0.4..=1.0).contains(&found) {
        let message = t!(
            "problem-coefficient",
            found = decimal(found, 2),
            fitting = fitting(found, setup.furnace.plate.figures().orifice_m)
        );
        cross.error(path, message);
    } else if !(0.78..=0.92).contains(&found) {
        let message = t!(
            "problem-coefficient-unusual",
            found = decimal(found, 2),
            fitting = fitting(found, setup.furnace.plate.figures().orifice_m)
        );
        cross.warn(path, message);
    }
}

/// Coefficients that orifices usually have, and the middle of them (NFPA 54 Annex E).
const USUAL_CD: (f64, f64, f64) = (0.80, 0.85, 0.90);

/// The drills that fit plate's pressure and input: those with a usual coefficient, else the nearest.
/// `found` is the coefficient that holes of `orifice_m` would need.
fn fitting(found: f64, orifice_m: f64) -> String {
    let (least, middle, most) = USUAL_CD;
    let needs = |inches: f64| {
        let share = orifice_m / (inches * M_PER_IN);
        found * share * share
    };
    let mut drills: Vec<_> =
        DRILLS.iter().filter(|it| (least..=most).contains(&needs(it.1))).collect();
    let off = |it: &&(u16, f64)| (needs(it.1) - middle).abs();
    drills.sort_by(|a, b| off(a).total_cmp(&off(b)));
    if drills.is_empty() {
        drills.extend(DRILLS.iter().min_by(|a, b| off(a).total_cmp(&off(b))));
    }
    let words: Vec<String> = drills
        .into_iter()
        .take(3)
        .map(|&(number, inches)| {
            let mm = inches * M_PER_IN * 1e3;
            t!(
                "problem-drill",
                number = number.to_string(),
                inches = decimal(inches, 4),
                mm = decimal(mm, 2),
                coefficient = decimal(needs(inches), 2)
            )
        })
        .collect();
    let ideal_mm = orifice_m * (found / middle).sqrt() * 1e3;
    t!(
        "problem-drills",
        middle = middle.to_string(),
        ideal_mm = decimal(ideal_mm, 2),
        drills = words.join(", ")
    )
}

/// Whether each found setting can be reached with its screw.
fn screws(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let mut told: EnumMap<Level, bool> = EnumMap::default();
    for seed in 0..TRIED_SEEDS {
        let valve = scenario.draw_sound(seed).furnace.valve;
        for (level, spring) in valve.springs.iter() {
            if told[level] {
                continue;
            }
            let (name, _) = scenario.furnace.settings.of(level);
            let path = format!("furnace.settings.{name}");
            if spring.found_turns >= spring.turns {
                told[level] = true;
                let most = spring.turns * spring.pa_per_turn / PA_PER_INWC;
                let most = decimal(most, 1);
                let message = t!("problem-screw-bottom", stage = level.id(), most = most);
                cross.warn(&path, message);
            } else if spring.found_turns > spring.turns - BIND_TURNS {
                told[level] = true;
                let message = t!("problem-coils-touch", stage = level.id());
                cross.warn(&path, message);
            }
        }
    }
    if scenario.furnace.valve.stacking == Stacking::NextOnFirst {
        for (level, next) in Level::ALL.into_iter().filter_map(|it| Some((it, it.next()?))) {
            stacked(scenario, level, next, cross);
        }
    }
}

/// A spring that stands on the one below can only add to it.
fn stacked(scenario: &Scenario, level: Level, next: Level, cross: &mut Cross<'_, '_>) {
    let set = &scenario.furnace.settings;
    let ((_, below), (name, above)) = (set.of(level), set.of(next));
    if let (Some(below), Some(above)) = (below, above)
        && below.most() > above.least()
    {
        cross.error(&format!("furnace.settings.{name}"), t!("problem-high-on-low").into());
    }
}

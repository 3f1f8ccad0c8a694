//! Plate, label, burners and valve, looked at together.

use super::Cross;
use crate::appliance::plate::Fuel;
use crate::physics::orifice::{DRILLS, drill_diameter_m};
use crate::scenario::format::{Figures, Furnace, Scenario};
use crate::scenario::problem::{Code, Gravity};
use crate::setup::Stacking;
use crate::units::{M_PER_IN, PA_PER_INWC};

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
    cross.below((&at("low"), &it.low), (&at("high"), &it.high));
    cross.below((&at("inlet_min"), &it.inlet_min), (&at("inlet_max"), &it.inlet_max));
    cross.below((&at("low_tolerance"), &it.low_tolerance), (&at("low"), &it.low));
    let bands_pa = it.low_tolerance.high() + it.high_tolerance.high();
    if it.high.low() > it.low.high() && it.high.low() - it.low.high() <= bands_pa {
        cross.warn(&at("low"), "The bands of low and high overlap.".into());
    }
    if it.inlet_min.low() <= it.high.high() {
        let message = "The lowest inlet pressure leaves the valve nothing to control the high \
                       stage with.";
        cross.error(&at("inlet_min"), message.into());
    }
    if it.inlet_max.low() > furnace.plate.valve_max.high() {
        let message = "The highest inlet pressure is above what the gas valve may see.";
        cross.error(&at("inlet_max"), message.into());
    }
    let usual_inwc = match it.fuel {
        Fuel::Natural => (4.0, 14.0),
        Fuel::Propane => (10.0, 15.0),
    };
    let inwc = |pa: f64| pa / PA_PER_INWC;
    if inwc(it.inlet_min.low()) < usual_inwc.0 || inwc(it.inlet_max.high()) > usual_inwc.1 {
        let message = format!(
            "Inlet limits for {} usually lie between {} and {} inH2O (makers' manuals).",
            it.fuel.label(),
            usual_inwc.0,
            usual_inwc.1
        );
        cross.warn(&at("inlet_min"), message);
    }
    if it.orifice_size.is_none() && drill_diameter_m(&it.orifice).is_none() {
        no_size(&at("orifice"), &it.orifice, cross);
    }
}

fn no_size(path: &str, stamp: &str, cross: &mut Cross<'_, '_>) {
    let message = format!("`{stamp}` does not tell the diameter of an orifice.");
    cross.reader.at_path(Gravity::Error, Code::UnknownName, path, message);
    if let Some(last) = cross.reader.problems.last_mut() {
        last.expected = "a number drill as \"#44\" (#1 to #80) or a diameter as \"2.14 mm\"; or \
                         `orifice_size` beside it"
            .to_owned();
    }
}

fn inputs(furnace: &Furnace, cross: &mut Cross<'_, '_>) {
    let plate = &furnace.plate;
    cross.below(
        ("furnace.plate.input_low", &plate.input_low),
        ("furnace.plate.input_high", &plate.input_high),
    );
    cross.below(
        ("furnace.plate.rise_min", &plate.rise_min),
        ("furnace.plate.rise_max", &plate.rise_max),
    );
    let governing = furnace.conversion.as_ref().unwrap_or(&plate.made_for);
    // The rate goes with the square root of the manifold pressure.
    let by_pressure = (governing.low.low() / governing.high.low()).sqrt();
    let by_plate = plate.input_low.low() / plate.input_high.low();
    if (by_pressure - by_plate).abs() > SHARE_BAND {
        let message = format!(
            "Low is {:.0} % of high by the inputs, but {:.0} % by the manifold pressures.",
            100.0 * by_plate,
            100.0 * by_pressure
        );
        cross.warn("furnace.plate.input_low", message);
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
        let burners = (furnace.burners.low(), furnace.burners.high());
        let written = sizes.len();
        let fits =
            |count: f64| (count - f64::from(u32::try_from(written).unwrap_or(0))).abs() < 0.5;
        if !fits(burners.0) || !fits(burners.1) {
            let message = format!("{written} sizes for {} burners.", burners.1);
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
        let message = format!(
            "With these orifices the plate's input would need a discharge coefficient of {found:.2}. \
             {}",
            fitting(found, setup.furnace.plate.figures().orifice_m)
        );
        cross.error(path, message);
    } else if !(0.78..=0.92).contains(&found) {
        let message = format!(
            "With these orifices the plate's input needs a discharge coefficient of {found:.2}; \
             0.80 to 0.90 is usual (NFPA 54 Annex E). {}",
            fitting(found, setup.furnace.plate.figures().orifice_m)
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
            format!("#{number} ({inches:.4} in, {mm:.2} mm: {:.2})", needs(inches))
        })
        .collect();
    let ideal_mm = orifice_m * (found / middle).sqrt() * 1e3;
    format!("For {middle} it takes {ideal_mm:.2} mm; nearest drills: {}.", words.join(", "))
}

/// Whether each found setting can be reached with its screw.
fn screws(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let mut told = [false; 2];
    for seed in 0..TRIED_SEEDS {
        let valve = scenario.draw_sound(seed).furnace.valve;
        let stages = [("low", &valve.low), ("high", &valve.high)];
        for (i, (name, spring)) in stages.into_iter().enumerate() {
            if told[i] {
                continue;
            }
            let path = format!("furnace.settings.{name}");
            if spring.found_turns >= spring.turns {
                told[i] = true;
                let most = spring.turns * spring.pa_per_turn / PA_PER_INWC;
                let message = format!(
                    "The {name} screw stands at its bottom: its spring gives at most {most:.1} \
                     inH2O. Right only if this is the fault."
                );
                cross.warn(&path, message);
            } else if spring.found_turns > spring.turns - BIND_TURNS {
                told[i] = true;
                let message = format!("The coils of the {name} spring touch at this setting.");
                cross.warn(&path, message);
            }
        }
    }
    let set = &scenario.furnace.settings;
    if let (Stacking::HighOnLow, Some(low), Some(high)) =
        (scenario.furnace.valve.stacking, &set.low, &set.high)
        && low.high() > high.low()
    {
        let message = "With springs that add up, high cannot be set below low.";
        cross.error("furnace.settings.high", message.into());
    }
}

//! What was in a job, in words, for after it.

use crate::catalogue::fault::{Scale, Severity};
use crate::model::SNUG_TURNS;
use crate::parts::{Fitted, OnOff};
use crate::setup::Setup;
use crate::units::{PA_PER_INWC, PressureUnit, full_stop, inwc};
use crate::words::decimal;

/// A zero error below this is no finding, in pascals (0.05 in. w.c., as the marking has it).
const ZERO_PA: f64 = 0.05 * PA_PER_INWC;

/// The faults that a seed drew, with cause and severity, and what else was not found as it should
/// be; a sentence each. Empty for a sound job.
#[must_use]
pub fn in_this_job(setup: &Setup) -> Vec<String> {
    let mut lines: Vec<String> = setup
        .faults
        .iter()
        .map(|(fault, severity)| {
            let entry = fault.entry();
            let name = sentence_case(&entry.name.replace('_', " "));
            let how = entry.severity.words();
            match severe(&entry.severity, *severity) {
                none if none.is_empty() => t!("in-job-fault", fault = name, cause = entry.cause),
                value => full_stop(t!(
                    "in-job-fault-severity",
                    fault = name,
                    cause = entry.cause,
                    how = how,
                    severity = value
                )),
            }
        })
        .collect();
    lines.extend(supply(setup));
    lines.extend(stages(setup));
    lines.extend(hands(setup));
    lines
}

/// A severity as people write it; nothing for a fault that is there or not.
fn severe(severity: &Severity, value: f64) -> String {
    if severity.scale == Scale::Share {
        let percent = 100.0 * value;
        // Nearly nothing and nearly all are told apart from nothing and all.
        let decimals = match percent {
            trace if trace < 0.1 => 3,
            end if end < 10.0 || (end > 99.0 && end < 100.0) => 1,
            _ => 0,
        };
        return t!("in-job-percent", percent = decimal(percent, decimals));
    }
    let shown = severity.show(value);
    let (number, unit) = shown.split_once(' ').unwrap_or((shown.as_str(), ""));
    let Ok(number) = number.parse::<f64>() else { return shown };
    let decimals = match number.abs() {
        large if large >= 100.0 => 0,
        tens if tens >= 20.0 && severity.scale != Scale::Pressure => 1,
        tiny if tiny < 0.1 => 3,
        _ => 2,
    };
    let unit = unit
        .replace("inH2O", PressureUnit::InWc.label())
        .replace("degF", "°F")
        .replace("ft3", "ft³");
    format!("{} {unit}", decimal(number, decimals)).trim_end().to_owned()
}

fn supply(setup: &Setup) -> Option<String> {
    let (least, most) = setup.supply.delivery_limits_pa;
    let set = setup.supply.set_pa;
    (set < least || set > most).then(|| {
        full_stop(t!("in-job-supply", set = inwc(set), least = inwc(least), most = inwc(most)))
    })
}

fn stages(setup: &Setup) -> Vec<String> {
    let figures = setup.furnace.plate.figures();
    let set_pa = setup.furnace.valve.set_pa();
    figures
        .manifold
        .iter()
        .map(|(level, target)| (level, set_pa[level], target))
        .filter(|(_, pa, target)| !target.band().contains(*pa))
        .map(|(level, pa, target)| {
            t!(
                "in-job-stage",
                stage = level.id(),
                set = inwc(pa),
                target = inwc(target.pa),
                tolerance = inwc(target.tolerance_pa)
            )
        })
        .collect()
}

/// Switches, valves, caps and plugs as found, and the manometer's zero.
fn hands(setup: &Setup) -> Vec<String> {
    let found = &setup.found;
    let mut lines = Vec::new();
    if !found.manual_valve.is_open() {
        lines.push(t!("in-job-valve", angle = found.manual_valve.to_string()));
    }
    let switches = [
        (t!("in-job-valve-switch"), found.valve_switch),
        (t!("in-job-furnace-switch"), found.furnace_switch),
        (t!("in-job-heat-switch"), found.thermostat_mode),
    ];
    for (found_off, state) in switches {
        if state == OnOff::Off {
            lines.push(found_off.to_owned());
        }
    }
    for (screw, cap) in found.caps {
        if cap == Fitted::Off {
            lines.push(t!("in-job-cap", screw = screw.label().to_lowercase()));
        }
    }
    for (port, turns) in found.plugs_past_hand {
        if turns < SNUG_TURNS {
            let name = port.label().to_lowercase();
            lines.push(t!("in-job-plug", port = name));
        }
    }
    if setup.meter.zero_error_pa.abs() >= ZERO_PA {
        let pressure = inwc(setup.meter.zero_error_pa);
        lines.push(full_stop(t!("in-job-zero", pressure = pressure)));
    }
    lines
}

fn sentence_case(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

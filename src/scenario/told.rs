//! What was in a job, in words, for after it.

use crate::catalogue::fault::{Scale, Severity};
use crate::model::SNUG_TURNS;
use crate::parts::{Fitted, OnOff, Screw};
use crate::setup::{Setup, SpringSetup};
use crate::units::{PA_PER_INWC, fixed, full_stop, inwc};

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
            let severe = match severe(&entry.severity, *severity) {
                none if none.is_empty() => none,
                value => full_stop(format!(" Here: {how}, {value}")),
            };
            format!("{name}. {}{severe}", entry.cause)
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
        return format!("{} %", fixed(percent, decimals));
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
    let unit = unit.replace("inH2O", "in. w.c.").replace("degF", "°F").replace("ft3", "ft³");
    format!("{} {unit}", fixed(number, decimals)).trim_end().to_owned()
}

fn supply(setup: &Setup) -> Option<String> {
    let (least, most) = setup.supply.delivery_limits_pa;
    let set = setup.supply.set_pa;
    (set < least || set > most).then(|| {
        full_stop(format!(
            "The supply regulator was found set to {}; its limits are {} to {}",
            inwc(set),
            inwc(least),
            inwc(most)
        ))
    })
}

fn stages(setup: &Setup) -> Vec<String> {
    let figures = setup.furnace.plate.figures();
    let set = |spring: &SpringSetup| spring.found_turns * spring.pa_per_turn;
    let valve = &setup.furnace.valve;
    let low = set(&valve.low);
    let high = match valve.stacking {
        crate::setup::Stacking::Independent => set(&valve.high),
        crate::setup::Stacking::HighOnLow => low + set(&valve.high),
    };
    [("low", low, figures.low), ("high", high, figures.high)]
        .into_iter()
        .filter(|(_, pa, target)| !target.band().contains(*pa))
        .map(|(name, pa, target)| {
            format!(
                "The {name} stage was found set to {}; {} ± {} is right.",
                inwc(pa),
                inwc(target.pa),
                inwc(target.tolerance_pa)
            )
        })
        .collect()
}

/// Switches, valves, caps and plugs as found, and the manometer's zero.
fn hands(setup: &Setup) -> Vec<String> {
    let found = &setup.found;
    let mut lines = Vec::new();
    if !found.manual_valve.is_open() {
        lines.push(format!("The manual valve was found {} open of 90°.", found.manual_valve));
    }
    let switches = [
        ("The switch on the gas valve", found.valve_switch),
        ("The furnace's service switch", found.furnace_switch),
        ("The thermostat's heat switch", found.thermostat_mode),
    ];
    for (name, state) in switches {
        if state == OnOff::Off {
            lines.push(format!("{name} was found off."));
        }
    }
    for (screw, cap) in found.caps {
        let name = match screw {
            Screw::Low => "low",
            Screw::High => "high",
            Screw::Supply => "supply",
        };
        if cap == Fitted::Off {
            lines.push(format!("The cap over the {name} screw was found off."));
        }
    }
    for (port, turns) in found.plugs_past_hand {
        if turns < SNUG_TURNS {
            let name = port.label().to_lowercase();
            lines.push(format!("The plug of the {name} was found short of snug."));
        }
    }
    if setup.meter.zero_error_pa.abs() >= ZERO_PA {
        lines.push(full_stop(format!(
            "The manometer's zero was off by {}",
            inwc(setup.meter.zero_error_pa)
        )));
    }
    lines
}

fn sentence_case(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

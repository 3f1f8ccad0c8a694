//! Evidence of how everything was put back.

use super::deed::lower;
use super::ended::in_use;
use super::ledger::{Hit, Ledger};
use super::piping;
use crate::model::truth::OtherApplianceTruth;
use crate::parts::{Fitted, HandValve, OnOff, Opening, OtherAppliance, Window};
use crate::words::decimal;

pub(super) fn jumper_left(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if end.stage_jumper == Fitted::Off {
        return Vec::new();
    }
    vec![Hit::new(tick, t!("seen-jumper-left"), t!("true-jumper-left"))]
}

pub(super) fn valve_switch_off(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if l.said_shut_off() || end.valve_switch == OnOff::On {
        return Vec::new();
    }
    vec![Hit::new(tick, t!("seen-valve-switch-off"), t!("true-valve-switch-off"))]
}

pub(super) fn hand_valve_not_open(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if l.said_shut_off() {
        return Vec::new();
    }
    let mut hits = Vec::new();
    for (hand_valve, handle) in
        [(HandValve::Furnace, end.manual_valve), (HandValve::Supply, end.supply_valve)]
    {
        if !handle.is_open() {
            let (valve, angle) = (lower(hand_valve.label()), handle.to_string());
            let seen = match handle.is_shut() {
                true => t!("seen-valve-closed", valve = valve, angle = angle),
                false => t!("seen-valve-part-open", valve = valve, angle = angle),
            };
            let hit = Hit::new(tick, seen, t!("true-valve-not-open"));
            hits.push(hit.grave_if(handle.starves()));
        }
    }
    hits
}

/// Half degrees Fahrenheit by which a setpoint stands above where it was found.
fn moved_half_f(l: &Ledger, left_half_f: i16) -> i16 {
    left_half_f - l.setup.house.setpoint_half_f
}

/// Whether a setpoint left so far below the one found answers no call tonight.
fn calls_no_more(moved_half_f: i16, most_k: f64) -> bool {
    f64::from(moved_half_f) / 2.0 < -most_k * 1.8
}

/// The furnace left without power or without a call, however that came about.
pub(super) fn furnace_left_off(l: &Ledger, most_k: f64) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left().filter(|_| in_use(l)) else { return Vec::new() };
    let mut hits = Vec::new();
    // However it was found: without power it answers no call.
    if end.furnace_switch == OnOff::Off {
        hits.push(Hit::new(tick, t!("seen-no-power"), t!("true-no-power")));
    }
    let found_on = l.setup.found.thermostat_mode == OnOff::On;
    if end.heating == OnOff::Off && found_on {
        hits.push(Hit::new(tick, t!("seen-heat-off"), t!("true-heat-off")));
    } else if calls_no_more(moved_half_f(l, end.setpoint_half_f), most_k) {
        hits.push(setpoint_hit(l, tick, end.setpoint_half_f));
    }
    hits
}

fn setpoint_hit(l: &Ledger, tick: u64, left_half_f: i16) -> Hit {
    let degrees = |half_f: i16| decimal(f64::from(half_f) / 2.0, 1);
    Hit::new(
        tick,
        t!("seen-thermostat", degrees = degrees(left_half_f)),
        t!("true-thermostat", degrees = degrees(l.setup.house.setpoint_half_f)),
    )
}

pub(super) fn controls_not_restored(l: &Ledger, most_k: f64) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    let mut hits = Vec::new();
    if !l.said_shut_off() && end.tag == Fitted::On {
        hits.push(Hit::new(tick, t!("seen-tag-hangs"), t!("true-tag-hangs")));
    }
    for (which, window) in end.windows {
        if window == Opening::Open {
            let room = match which {
                Window::PlantRoom => "furnace-room",
                Window::Hall => "hall",
            };
            let seen = t!("seen-window-open", room = room);
            hits.push(Hit::new(tick, seen, t!("true-window-open")));
        }
    }
    if l.said_shut_off() {
        hits.extend(doors_off(l));
        return hits;
    }
    let moved = moved_half_f(l, end.setpoint_half_f);
    if moved != 0 && !calls_no_more(moved, most_k) {
        hits.push(setpoint_hit(l, tick, end.setpoint_half_f));
    }
    if end.heating == OnOff::On && l.setup.found.thermostat_mode == OnOff::Off {
        hits.push(Hit::new(tick, t!("seen-heat-on"), t!("true-heat-on")));
    }
    hits
}

/// Doors that are off, as hits.
fn doors_off(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    end.doors
        .into_iter()
        .filter(|(_, door)| *door == Fitted::Off)
        .map(|(door, _)| {
            let seen = t!("seen-door-off", door = lower(door.label()));
            Hit::new(tick, seen, t!("true-door-off"))
        })
        .collect()
}

/// A door left off a furnace that should run.
pub(super) fn door_off(l: &Ledger) -> Vec<Hit> {
    if in_use(l) { doors_off(l) } else { Vec::new() }
}

/// Whether another appliance is turned otherwise than it was found.
fn is_moved(l: &Ledger, which: OtherAppliance, now: &OtherApplianceTruth) -> bool {
    now.switch != l.setup.found.other_appliances[which] || !now.handle.is_open()
}

pub(super) fn others_not_restored(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    let moved = end.other_appliances.iter().filter(|(which, now)| is_moved(l, *which, now));
    moved
        .map(|(which, _)| {
            let seen = t!("seen-neighbor-moved", appliance = lower(which.label()));
            Hit::new(tick, seen, t!("true-neighbor-moved"))
        })
        .collect()
}

/// Appliances that were on when they were found, lost their gas, and were not lit again; after a repair
/// with the gas of the whole house shut off also those that nobody saw burn since.
pub(super) fn others_left_out(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    // With the supply shut off for good, no flame can stand.
    if l.left_shut_off() && end.supply_valve.is_shut() {
        return Vec::new();
    }
    let out = end
        .other_appliances
        .iter()
        .filter(|(which, now)| l.setup.found.other_appliances[*which] == OnOff::On && now.gone_out);
    let out = out.filter(|(which, now)| !is_moved(l, *which, now));
    let mut hits: Vec<Hit> = out
        .map(|(which, _)| {
            let seen = t!("seen-neighbor-out", appliance = lower(which.label()));
            Hit::new(tick, seen, t!("true-neighbor-out"))
        })
        .collect();
    if hits.is_empty() && in_use(l) {
        hits.extend(piping::not_lit_since(l).into_iter().map(|which| {
            let seen = t!("seen-neighbor-not-lit", appliance = lower(which.label()));
            Hit::new(tick, seen, t!("true-neighbor-not-lit"))
        }));
    }
    hits
}

/// Whether an appliance that was found on lost its flame for want of gas at any time, or the gas of the
/// whole house was shut off for a repair.
pub(super) fn went_out(l: &Ledger) -> bool {
    (in_use(l) && piping::house_shut_off(l).is_some())
        || l.did().any(|did| {
            let mut others = did.before.other_appliances.iter();
            others.any(|(which, it)| {
                it.gone_out && l.setup.found.other_appliances[which] == OnOff::On
            })
        })
}

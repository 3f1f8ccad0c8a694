//! What the work, as it was left, would have done to the house: reckoned from the state it was left
//! in where it can be, and what each cause does that is still there.

use super::super::brief::Brief;
use super::super::ledger::Ledger;
use super::super::unsafe_left::{least_full_input, most_carbon_monoxide, most_input, over_share};
use super::causes::{CameFrom, CauseTold, Left};
use super::moment::ppm_words;
use super::own::left_outside;
use crate::model::truth::Truth;
use crate::parts::{Door, Ending, Fitted, OnOff, OtherAppliance};
use crate::units::M3_S_PER_CFH;
use crate::words::decimal;

/// Share above the plate's input from which it is told (common practice: 2 to 5 % of the plate).
const OVER: f64 = 0.05;
/// Share below the plate's input from which it is told.
const UNDER: f64 = 0.05;
/// Carbon monoxide in the flue from which it is told, in parts per million air-free (common
/// practice: more than 100 wants a look).
const CO_PPM: f64 = 100.0;
/// Gas that is told as a leak, in standard m³/s.
const LEAK_M3_S: f64 = 1e-7;

/// Consequences for the house, a sentence each, the worst first.
pub(super) fn consequences(l: &Ledger, brief: &Brief, causes: &[CauseTold]) -> Vec<String> {
    let Some((_, said, left)) = l.left() else {
        return vec![t!("house-not-handed-over").into()];
    };
    let mut told = Vec::new();
    told.extend(gas(left));
    told.extend(wires(left));
    if said.ending == Ending::ShutOff {
        told.extend(still_there(causes));
        told.push(shut_off(l, brief));
        return told;
    }
    told.extend(burning(l));
    told.extend(springs(l));
    told.extend(no_heat(left));
    told.extend(others(left));
    told.extend(still_there(causes));
    if told.is_empty() {
        told.push(t!("house-sound").into());
    }
    told.extend(mended(causes));
    told
}

/// Gas that comes out as it was left, and ports from which it would.
fn gas(left: &Truth) -> Vec<String> {
    let mut told = Vec::new();
    let flow: f64 = left.leak_m3_s.iter().sum::<f64>() + left.connector_leak_m3_s;
    if flow > LEAK_M3_S {
        told.push(t!("house-leak", flow = decimal(flow / M3_S_PER_CFH, 2)));
    }
    if left.ports.values().any(|port| port.fill.is_open()) {
        told.push(t!("house-open-port").into());
    }
    told
}

fn wires(left: &Truth) -> Option<String> {
    (!left.jumpers.named().is_empty()).then(|| t!("house-bypass").into())
}

/// What it really burned, as it was left.
fn burning(l: &Ledger) -> Vec<String> {
    let mut told = Vec::new();
    if let Some((level, share)) = most_input(l).filter(|(_, share)| *share > 1.0 + OVER) {
        let percent = decimal(100.0 * (share - 1.0), 0);
        told.push(t!("house-over-fired", stage = level.id(), percent = percent));
    }
    if let Some((level, ppm)) = most_carbon_monoxide(l).filter(|(_, ppm)| *ppm > CO_PPM) {
        told.push(t!("house-carbon-monoxide", stage = level.id(), ppm = ppm_words(ppm)));
    }
    if let Some(share) = least_full_input(l).filter(|share| *share < 1.0 - UNDER) {
        told.push(t!("house-under-fired", percent = decimal(100.0 * share, 0)));
    }
    told
}

/// Springs left outside the plate, by what they let through once the inlet gives what it should.
fn springs(l: &Ledger) -> Vec<String> {
    let manifold = &l.plate().figures().manifold;
    let each = left_outside(l).into_iter().map(|it| {
        let share = over_share(it.set_pa, manifold[it.level].pa);
        let percent = decimal(100.0 * share.abs(), 0);
        match it.is_high {
            true => t!("house-spring-high", stage = it.level.id(), percent = percent),
            false => t!("house-spring-low", stage = it.level.id(), percent = percent),
        }
    });
    each.collect()
}

/// Why the furnace gives no heat as it was left.
fn no_heat(left: &Truth) -> Option<String> {
    let why = if left.manual_valve.is_shut() {
        "manual-valve"
    } else if left.supply_valve.is_shut() {
        "supply"
    } else if left.valve_switch == OnOff::Off {
        "valve-switch"
    } else if left.furnace_switch == OnOff::Off {
        "power"
    } else if left.doors[Door::Blower] == Fitted::Off {
        "door"
    } else if left.heating == OnOff::Off {
        "thermostat"
    } else {
        return None;
    };
    Some(t!("house-no-heat", why = why))
}

/// Other appliances that are on and burn nothing.
fn others(left: &Truth) -> Vec<String> {
    let out = |appliance: &OtherAppliance| {
        let it = left.other_appliances[*appliance];
        it.gone_out && it.switch == OnOff::On
    };
    OtherAppliance::ALL
        .iter()
        .filter(|it| out(it))
        .map(|it| t!("house-appliance-out", appliance = it.label()))
        .collect()
}

/// What the causes do that are still there. Springs that the work left are told with their numbers.
fn still_there(causes: &[CauseTold]) -> Vec<String> {
    let left = causes.iter().filter(|it| it.from == CameFrom::Arrival);
    left.filter_map(|it| {
        let harm = it.cause.to_the_house();
        match it.left {
            Left::Right | Left::NotHandedOver => None,
            Left::OwnerCalled => Some(t!("house-until", cause = &it.name, harm = harm)),
            Left::ShutOff => Some(t!("house-would", cause = &it.name, harm = harm)),
            Left::InUse => Some(t!("house-does", cause = &it.name, harm = harm)),
        }
    })
    .collect()
}

/// What the causes would have done that were put right.
fn mended(causes: &[CauseTold]) -> Vec<String> {
    let right = causes.iter().filter(|it| it.left == Left::Right);
    right.map(|it| t!("house-spared", cause = &it.name, harm = it.cause.to_the_house())).collect()
}

/// A furnace left shut off: whether that is right, and that the house is cold.
fn shut_off(l: &Ledger, brief: &Brief) -> String {
    let right = brief.right_endings.contains(&Ending::ShutOff);
    match (right, l.left_shut_off()) {
        (true, true) => t!("house-shut-off-rightly").into(),
        (true, false) => t!("house-shut-off-on-paper").into(),
        (false, _) => t!("house-shut-off-needlessly").into(),
    }
}

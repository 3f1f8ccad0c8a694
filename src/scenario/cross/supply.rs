//! Supply and pipe, looked at together.

use super::context::Cross;
use crate::physics::pipe::{copper_tube_id_m, ehd_constants, schedule_40_id_m};
use crate::physics::regulator::{Behaviour, CalibrationError, RegulatorSpec};
use crate::scenario::format::{Pipe, Scenario, Supply};
use crate::scenario::value::whole;
use crate::units::{M3_S_PER_CFH, PA_PER_INWC};
use crate::words::decimal;

/// Sizes of steel pipe, to be suggested.
const STEEL: [&str; 11] =
    ["1/4", "3/8", "1/2", "3/4", "1", "1-1/4", "1-1/2", "2", "2-1/2", "3", "4"];
/// Sizes of copper tube.
const COPPER: [&str; 8] = ["1/4", "3/8", "1/2", "5/8", "3/4", "1", "1-1/4", "1-1/2"];
/// Trade numbers of corrugated tubing.
const EHD: [&str; 14] =
    ["13", "15", "18", "19", "23", "25", "30", "31", "37", "39", "46", "48", "60", "62"];
/// Seeds for which the supply regulator is tried.
const TRIED_SEEDS: u64 = 8;

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    pressures(&scenario.supply, cross);
    limits(&scenario.supply, cross);
    lines(scenario, cross);
    flows(scenario, cross);
    regulator(scenario, cross);
}

fn pressures(supply: &Supply, cross: &mut Cross<'_, '_>) {
    let set = ("supply.set", &supply.set);
    cross.below(set, ("supply.lockup", &supply.lockup));
    cross.below(("supply.droop", &supply.droop), set);
    let lowest_found_pa = supply.found.as_ref().map_or(supply.set.least(), |found| found.least());
    if supply.droop.most() >= lowest_found_pa {
        let message = t!("problem-droop");
        cross.error("supply.droop", message.into());
    }
    if let Some(upstream) = &supply.upstream {
        let raise_pa = supply.lockup.most() - supply.set.least();
        let found_pa = supply.found.as_ref().map_or(supply.set.most(), |found| found.most());
        let needed_pa = found_pa.max(supply.set.most()) + raise_pa;
        if upstream.least() <= needed_pa {
            let message = t!("problem-upstream", pressure = decimal(needed_pa / PA_PER_INWC, 1));
            cross.error("supply.upstream", message);
        }
    }
}

fn limits(supply: &Supply, cross: &mut Cross<'_, '_>) {
    let tenth = |share: f64| supply.set.least() * share;
    let least_pa = supply.delivery_min.as_ref().map_or(tenth(0.9), |min| min.most());
    let most_pa = supply.delivery_max.as_ref().map_or(tenth(1.1), |max| max.least());
    let rest_pa = supply.lockup_max.as_ref().map_or(tenth(1.2), |max| max.least());
    if least_pa >= most_pa {
        cross.error("supply.delivery_min", t!("problem-delivery-min").into());
    } else if supply.set.least() < least_pa || supply.set.most() > most_pa {
        let message = t!("problem-supply-limits");
        cross.error("supply.set", message.into());
    }
    if rest_pa < most_pa {
        cross.error("supply.lockup_max", t!("problem-lockup-max").into());
    }
    if supply.lockup.most() > rest_pa {
        let message = t!("problem-locks-up");
        cross.warn("supply.lockup", message.into());
    }
}

fn lines(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let neighbors = &scenario.neighbors;
    let lines = [
        ("trunk", &scenario.trunk),
        ("branch", &scenario.branch),
        ("neighbors.water_heater.line", &neighbors.water_heater.line),
        ("neighbors.range.line", &neighbors.range.line),
    ];
    for (path, line) in lines {
        if line.is_empty() {
            cross.length(path, t!("problem-no-pipe").into());
        }
        for (i, pipe) in line.iter().enumerate() {
            size(pipe, &format!("{path}[{i}]"), cross);
        }
    }
}

fn size(pipe: &Pipe, path: &str, cross: &mut Cross<'_, '_>) {
    match pipe {
        Pipe::Steel(it) => {
            if schedule_40_id_m(&it.size).is_none() {
                cross.unknown(&format!("{path}.size"), &it.size, STEEL.into_iter());
            }
        }
        Pipe::Copper(it) => {
            if copper_tube_id_m(&it.size).is_none() {
                cross.unknown(&format!("{path}.size"), &it.size, COPPER.into_iter());
            }
        }
        Pipe::Corrugated(it) => {
            let mut all = whole(it.ehd.least())..=whole(it.ehd.most());
            let odd = all.find(|&ehd| u16::try_from(ehd).ok().and_then(ehd_constants).is_none());
            if let Some(odd) = odd {
                cross.unknown(&format!("{path}.ehd"), &odd.to_string(), EHD.into_iter());
            }
        }
    }
}

/// Whether the regulator can pass what is drawn.
fn flows(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let supply = &scenario.supply;
    let droop_flow = &supply.droop_flow;
    let capacity = supply.capacity.as_ref();
    if capacity.is_some_and(|capacity| capacity.least() < 1.1 * droop_flow.most()) {
        let message = t!("problem-capacity");
        cross.error("supply.capacity", message.into());
    }
    let setup = scenario.draw_sound(0);
    let others_w: f64 = setup.other_appliances.values().map(|it| it.input_w).sum();
    let load_w = others_w + setup.furnace.plate.input.top().si();
    let load_m3_s = load_w / setup.gas.heating_value_j_m3;
    if setup.supply.capacity_m3_s < load_m3_s {
        let message = t!("problem-capacity-load", flow = decimal(load_m3_s / M3_S_PER_CFH, 0));
        cross.warn("supply.capacity", message);
    }
}

/// Whether there are parts that make the supply regulator behave as written.
fn regulator(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let why = (0..TRIED_SEEDS).find_map(|seed| {
        let setup = scenario.draw_sound(seed);
        let it = &setup.supply;
        let mut wanted = Behaviour::new(
            it.set_pa,
            it.lockup_pa,
            it.droop_pa,
            it.upstream_pa,
            it.droop_flow_m3_s,
        );
        wanted.pa_per_turn = it.pa_per_turn;
        let most_pa = it.set_pa.max(it.delivery_limits_pa.1);
        wanted.bind_turns = most_pa / it.pa_per_turn + 6.0;
        wanted.max_turns = wanted.bind_turns + 1.0;
        RegulatorSpec::from_behaviour(&wanted, &setup.gas, setup.ambient_abs_pa).err()
    });
    let Some(why) = why else { return };
    let path = match why {
        CalibrationError::BadNumber | CalibrationError::OutOfScrewTravel => "supply.set",
        CalibrationError::PressureOrder | CalibrationError::LockupTooLow => "supply.lockup",
        CalibrationError::FlowOrder => "supply.droop_flow",
    };
    let message = t!("problem-regulator", why = why.to_string());
    cross.warn(path, message);
}

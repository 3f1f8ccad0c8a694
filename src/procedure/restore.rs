//! Everything put back as it belongs and as it was found; the householder told.

use super::goal::{after, at, at_furnace, at_valve, in_hand, unless};
use super::{Goal, Memory, Step};
use crate::hands::action::{Action, Topic};
use crate::parts::{Fitted, OnOff, OtherAppliance, Place, Screw, Tool};
use crate::senses::seen::Seen;

fn at_screw(seen: &Seen, screw: Screw) -> Step {
    match screw.level() {
        None => at(seen, &[Place::Yard]),
        Some(_) => at_valve(seen),
    }
}

/// The cap on a screw, where it is seen to be off.
pub(super) fn capped(seen: &Seen, memory: &Memory, screw: Screw) -> Step {
    if seen.cap(screw) != Some(Fitted::Off) {
        return Step::Met;
    }
    let way = || at_screw(seen, screw).then(memory, || in_hand(seen, Tool::SlottedDriver));
    after(memory, way, Action::Cap { screw, to: Fitted::On })
}

/// The cap off a screw, the driver in the hand to turn it.
pub(super) fn uncapped(seen: &Seen, memory: &Memory, screw: Screw) -> Step {
    at_screw(seen, screw).then(memory, || in_hand(seen, Tool::SlottedDriver)).then(memory, || {
        let off = seen.cap(screw) == Some(Fitted::Off);
        unless(off, Action::Cap { screw, to: Fitted::Off })
    })
}

/// Water heater, range and thermostat as they were found.
pub(super) fn as_found(memory: &Memory) -> Vec<Goal> {
    let found = memory.found;
    let other = |which, was: Option<OnOff>| was.map(|to| Goal::Other(which, to));
    let others = [
        other(OtherAppliance::WaterHeater, found.water_heater),
        other(OtherAppliance::Range, found.range),
    ];
    others.into_iter().flatten().chain([Goal::ThermostatAsFound]).collect()
}

/// Setpoint and heat switch as they were found.
pub(super) fn thermostat(seen: &Seen, memory: &Memory) -> Step {
    let found = memory.found;
    let (Some(setpoint), Some(heat)) = (found.setpoint_half_f, found.heat) else {
        return Step::Met;
    };
    if memory.hall.is_some_and(|it| it.setpoint_half_f == setpoint && it.heat == heat) {
        return Step::Met;
    }
    let in_hall = || at(seen, &[Place::Hall]);
    let known = memory.hall;
    let set = || match known {
        Some(it) if it.setpoint_half_f == setpoint => Step::Met,
        Some(_) | None => after(memory, in_hall, Action::Setpoint(setpoint)),
    };
    set().then(memory, || match known {
        Some(it) if it.heat == heat => Step::Met,
        Some(_) | None => after(memory, in_hall, Action::ThermostatMode(heat)),
    })
}

/// The householder told something, in the hall; to get out, from anywhere.
pub(super) fn told(seen: &Seen, memory: &Memory, topic: Topic) -> Step {
    if memory.told.contains(&topic) {
        return Step::Met;
    }
    let there = || match topic {
        Topic::GetOut => Step::Met,
        Topic::WorkStarts | Topic::GasSmellDrill | Topic::Unsafe => at(seen, &[Place::Hall]),
    };
    after(memory, there, Action::Tell(topic))
}

/// The warning tag on the furnace.
pub(super) fn tagged(seen: &Seen, memory: &Memory) -> Step {
    if memory.furnace.is_some_and(|it| it.tag == Fitted::On) {
        return Step::Met;
    }
    after(memory, || at_furnace(seen), Action::Tag(Fitted::On))
}

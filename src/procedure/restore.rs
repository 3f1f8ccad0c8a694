//! Everything put back as it belongs and as it was found; the householder told.

use super::goal::{after, at, at_furnace, at_valve, hand_empty, in_hand, unless};
use super::{Memory, Step, air, fire, isolate};
use crate::hands::action::{Action, Topic};
use crate::parts::{Door, Fitted, Neighbor, Opening, Place, Screw, Tool};
use crate::senses::seen::Seen;

/// Whether the cap is on a screw, where it can be seen.
fn cap(seen: &Seen, screw: Screw) -> Option<Fitted> {
    let burners = || seen.furnace.as_ref()?.burners.as_ref();
    match screw.level() {
        None => seen.yard.as_ref().map(|yard| yard.cap),
        Some(level) => burners().map(|it| it.caps[level]),
    }
}

fn at_screw(seen: &Seen, screw: Screw) -> Step {
    match screw {
        Screw::Supply => at(seen, &[Place::Yard]),
        Screw::Low | Screw::High => at_valve(seen),
    }
}

/// The cap on a screw, where it is seen to be off.
pub(super) fn capped(seen: &Seen, memory: &Memory, screw: Screw) -> Step {
    if cap(seen, screw) != Some(Fitted::Off) {
        return Step::Met;
    }
    let way = || at_screw(seen, screw).then(memory, || in_hand(seen, Tool::SlottedDriver));
    after(memory, way, Action::Cap { screw, to: Fitted::On })
}

/// The cap off a screw, the driver in the hand to turn it.
pub(super) fn uncapped(seen: &Seen, memory: &Memory, screw: Screw) -> Step {
    at_screw(seen, screw).then(memory, || in_hand(seen, Tool::SlottedDriver)).then(memory, || {
        let off = cap(seen, screw) == Some(Fitted::Off);
        unless(off, Action::Cap { screw, to: Fitted::Off })
    })
}

/// Caps, doors, window and hand as they belong.
pub(super) fn closed_up(seen: &Seen, memory: &Memory) -> Step {
    capped(seen, memory, Screw::Low)
        .then(memory, || capped(seen, memory, Screw::High))
        .then(memory, || hand_empty(seen))
        .then(memory, || isolate::door(seen, memory, Door::Burner, Fitted::On))
        .then(memory, || isolate::door(seen, memory, Door::Blower, Fitted::On))
        .then(memory, || air::window(seen, memory, Opening::Closed))
}

/// Water heater, range and thermostat as they were found.
pub(super) fn as_found(seen: &Seen, memory: &Memory) -> Step {
    let found = memory.found;
    let other =
        |which, was: Option<_>| was.map_or(Step::Met, |to| fire::other(seen, memory, which, to));
    other(Neighbor::WaterHeater, found.water_heater)
        .then(memory, || other(Neighbor::Range, found.range))
        .then(memory, || thermostat(seen, memory))
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

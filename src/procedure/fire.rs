//! The furnace brought to burn on a level, with the other appliances on or off.

use super::Memory;
use super::awaited::Awaited;
use super::goal::{Goal, Means, Step};
use super::goal::{after, at};
use super::heard::heard;
use super::memory::turned;
use crate::hands::action::Action;
use crate::parts::{Fitted, Level, OnOff, OtherAppliance, Place};
use crate::senses::seen::{HallSeen, Seen};
use crate::site::house::settable_half_f;

/// How far above the room the setpoint stands for a call of the first stage, in half degrees.
pub const ABOVE_FIRST_HALF_F: i16 = 3;
/// The least that calls the first stage whatever the display rounds, in half degrees.
const ABOVE_LEAST_HALF_F: i16 = 2;
/// The same for both stages.
pub const ABOVE_BOTH_HALF_F: i16 = 10;

/// The setpoint so many half degrees above the room.
fn above_room(hall: &HallSeen, by_half_f: i16) -> i16 {
    settable_half_f(hall.room_half_f.saturating_add(by_half_f))
}

/// Burning on a level, called by these means, heard at the furnace or in the hall.
pub(super) fn burning(level: Option<Level>, means: Means) -> Vec<Goal> {
    let called = Goal::Called(level, means);
    match (level, means) {
        (None, _) => vec![Goal::Stopped, Goal::Standing],
        (Some(above), Means::Wire) if !above.is_first() => {
            vec![Goal::GasOn, called, Goal::Jumper(Fitted::On), Goal::Lit(level)]
        }
        (Some(_), Means::Wire | Means::Thermostat | Means::LeastSetpoint) => {
            vec![Goal::GasOn, Goal::Jumper(Fitted::Off), called, Goal::Lit(level)]
        }
    }
}

/// Burning heard on a level.
pub(super) fn lit(seen: &Seen, level: Option<Level>) -> Step {
    if heard(seen) == level { Step::Met } else { Step::Wait(Awaited::Light) }
}

/// Half degrees above the room from which both stages are called, and a call lasts while things are
/// read.
const LASTS_HALF_F: i16 = 6;

/// The thermostat calls what the level wants. A second-stage call holds until the room is near the
/// setpoint: the setpoint is brought to the room for a moment, the first stage stays.
pub(super) fn called(seen: &Seen, memory: &Memory, level: Option<Level>, means: Means) -> Step {
    let above = memory.hall.map_or(0, |it| it.setpoint_half_f.saturating_sub(it.room_half_f));
    let lasts = above >= LASTS_HALF_F;
    let first_only = (1..LASTS_HALF_F).contains(&above);
    let above = level.filter(|level| !level.is_first());
    let met = match (above, means) {
        (Some(_), Means::Thermostat | Means::LeastSetpoint) => {
            memory.is_called(|call| call == level)
        }
        (Some(_), Means::Wire) => lasts && memory.is_called(|call| call.is_some()),
        (None, _) => first_only && memory.is_called(|call| call.is_some_and(Level::is_first)),
    };
    if met {
        return Step::Met;
    }
    let Some(hall) = &seen.hall else { return at(seen, &[Place::Hall]) };
    let by_half_f = match (above, hall.call) {
        (Some(_), _) => ABOVE_BOTH_HALF_F,
        (None, Some(called)) if !called.is_first() && hall.mode == OnOff::On => 0,
        (None, _) if means == Means::LeastSetpoint => ABOVE_LEAST_HALF_F,
        (None, _) => ABOVE_FIRST_HALF_F,
    };
    let wanted = above_room(hall, by_half_f);
    if hall.setpoint_half_f != wanted {
        Step::Do(Action::Setpoint(wanted))
    } else if hall.mode == OnOff::Off {
        Step::Do(Action::ThermostatMode(OnOff::On))
    } else {
        Step::Wait(Awaited::Call)
    }
}

/// The call ended, and the wire off before it.
pub(super) fn stopped(memory: &Memory) -> Vec<Goal> {
    let wire = memory.furnace.map(|_| Goal::Jumper(Fitted::Off));
    wire.into_iter().chain([Goal::HeatOff]).collect()
}

/// Another appliance of the house.
pub(super) fn other(seen: &Seen, memory: &Memory, which: OtherAppliance, to: OnOff) -> Step {
    let (known, places): (_, &[Place]) = match which {
        OtherAppliance::WaterHeater => {
            (memory.furnace.map(|it| it.water_heater), &[Place::PlantRoom, Place::GasValve])
        }
        OtherAppliance::Range => (memory.hall.map(|it| it.range), &[Place::Hall]),
    };
    if known.map(turned) == Some(to) {
        return Step::Met;
    }
    after(memory, || at(seen, places), Action::OtherAppliance { appliance: which, to })
}

//! Furnace still and shut off, and gas and power given back.

use super::goal::{after, at, at_furnace, at_valve, unless};
use super::{Awaited, Goal, Memory, Step};
use crate::hands::action::Action;
use crate::parts::{Door, Fitted, HandValve, OnOff, Opening, Place};
use crate::physics::valve::HandleAngle;
use crate::senses::seen::{Seen, Sound};

/// Angle at which a hand valve stands part open for a moment, in degrees, and for how long, in
/// seconds: gas comes slowly (common practice).
const PART_DEG: i16 = 20;
const PART_S: f64 = 3.0;

/// The thermostat's heat switch off; seen there, or known from there.
pub(super) fn heat_off(seen: &Seen, memory: &Memory) -> Step {
    match (&seen.hall, memory.hall) {
        (Some(hall), _) => unless(hall.mode == OnOff::Off, Action::ThermostatMode(OnOff::Off)),
        (None, Some(known)) if known.heat == OnOff::Off => Step::Met,
        (None, Some(_) | None) if memory.leaves_out(&Action::ThermostatMode(OnOff::Off)) => {
            Step::Met
        }
        (None, Some(_) | None) => at(seen, &[Place::Hall]),
    }
}

/// Burners out, fans stopped: heard from the furnace or from the hall.
pub(super) fn standing(seen: &Seen, memory: &Memory) -> Step {
    let runs = |sound: &Sound| matches!(sound, Sound::Burners(_)) || sound.is_of_fan();
    at(seen, &[Place::Hall, Place::PlantRoom, Place::GasValve]).then(memory, || {
        if seen.sounds.iter().any(runs) { Step::Wait(Awaited::Rest) } else { Step::Met }
    })
}

/// Three barriers between the gas and an open port: power, manual valve, valve switch.
pub(super) fn isolated(memory: &Memory) -> Vec<Goal> {
    let barred = memory
        .furnace
        .is_some_and(|it| it.power == OnOff::Off && it.manual_valve == HandleAngle::SHUT)
        && memory.valve_switch == Some(OnOff::Off);
    let open_up = [Goal::Jumper(Fitted::Off), Goal::Door(Door::Burner, Fitted::Off)];
    if barred {
        return open_up.to_vec();
    }
    vec![
        Goal::HeatOff,
        Goal::Standing,
        Goal::Jumper(Fitted::Off),
        Goal::Power(OnOff::Off),
        Goal::Valve(HandValve::Furnace, Opening::Closed),
        Goal::Door(Door::Burner, Fitted::Off),
        Goal::ValveSwitch(OnOff::Off),
    ]
}

/// The furnace's service switch.
pub(super) fn power(seen: &Seen, memory: &Memory, to: OnOff) -> Step {
    if memory.furnace.is_some_and(|it| it.power == to) {
        return Step::Met;
    }
    after(memory, || at_furnace(seen), Action::FurnaceSwitch(to))
}

/// A furnace door on or off. The blower door comes off with the power off.
pub(super) fn door(seen: &Seen, memory: &Memory, which: Door, to: Fitted) -> Step {
    let stands = memory.furnace.map(|it| match which {
        Door::Burner => it.burner_door,
        Door::Blower => it.blower_door,
    });
    if stands == Some(to) {
        return Step::Met;
    }
    let safe = || match (which, to) {
        (Door::Blower, Fitted::Off) => power(seen, memory, OnOff::Off),
        (Door::Blower, Fitted::On) | (Door::Burner, _) => Step::Met,
    };
    let way = || safe().then(memory, || at_furnace(seen));
    after(memory, way, Action::Door { door: which, to })
}

/// A hand valve shut at once, or opened slowly.
pub(super) fn valve(seen: &Seen, memory: &Memory, hand_valve: HandValve, to: Opening) -> Step {
    let (place, stands) = match hand_valve {
        HandValve::Furnace => (Place::PlantRoom, memory.furnace.map(|it| it.manual_valve)),
        HandValve::Supply => (Place::Yard, memory.supply_valve),
        HandValve::WaterHeater => {
            (Place::PlantRoom, seen.furnace.as_ref().map(|it| it.water_heater.handle))
        }
        HandValve::Range => (Place::Hall, seen.hall.as_ref().map(|it| it.range.handle)),
    };
    let wanted = match to {
        Opening::Open => HandleAngle::OPEN,
        Opening::Closed => HandleAngle::SHUT,
    };
    if stands == Some(wanted) {
        return Step::Met;
    }
    let there = || match place {
        Place::PlantRoom => at_furnace(seen),
        Place::Yard | Place::Hall | Place::GasValve | Place::Away => at(seen, &[place]),
    };
    let turn = |degrees| after(memory, there, Action::HandValve { hand_valve, degrees });
    match (to, stands.map(HandleAngle::deg)) {
        (Opening::Open, Some(PART_DEG)) if memory.since_s(memory.valve_tick) < PART_S => there()
            .then(memory, || Step::Wait(Awaited::Trickle))
            .then(memory, || turn(wanted.deg())),
        (Opening::Open, Some(degrees)) if degrees < PART_DEG => {
            turn(PART_DEG).then(memory, || turn(wanted.deg()))
        }
        (Opening::Open | Opening::Closed, _) => turn(wanted.deg()),
    }
}

/// The switch on the gas valve, behind the burner door.
pub(super) fn valve_switch(seen: &Seen, memory: &Memory, to: OnOff) -> Step {
    if memory.valve_switch == Some(to) {
        return Step::Met;
    }
    let way = || door(seen, memory, Door::Burner, Fitted::Off).then(memory, || at_valve(seen));
    after(memory, way, Action::ValveSwitch(to))
}

/// The wire between R and W2, behind the burner door.
pub(super) fn jumper(seen: &Seen, memory: &Memory, to: Fitted) -> Step {
    if memory.furnace.is_some_and(|it| it.jumper == to) {
        return Step::Met;
    }
    let way = || at_furnace(seen).then(memory, || door(seen, memory, Door::Burner, Fitted::Off));
    after(memory, way, Action::StageJumper(to))
}

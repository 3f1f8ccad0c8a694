//! Doors, switches, valves, windows, thermostat.

use super::done::{Done, plain};
use super::reach;
use super::refusal::Refusal;
use crate::model::Model;
use crate::parts::{
    Door, Fitted, HandValve, OnOff, Opening, OtherAppliance, Place, Window, is_staged,
};
use crate::physics::valve::HandleAngle;
use crate::site::house::settable_half_f;

/// Sets a thing unless it is so already.
fn put<T: PartialEq>(slot: &mut T, to: T) -> Done {
    if *slot == to {
        return Err(Refusal::AlreadySo);
    }
    *slot = to;
    plain()
}

pub(super) fn set_window(model: &mut Model, window: Window, to: Opening) -> Done {
    match window {
        Window::PlantRoom => {
            reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
            put(&mut model.things.windows[Window::PlantRoom], to)
        }
        Window::Hall => {
            reach::place(model, &[Place::Hall])?;
            put(&mut model.things.windows[Window::Hall], to)
        }
    }
}

pub(super) fn set_door(model: &mut Model, door: Door, to: Fitted) -> Done {
    reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
    match door {
        Door::Burner => {
            if to == Fitted::On && model.things.hose_port().is_some() {
                return Err(Refusal::HoseInTheWay);
            }
            if to == Fitted::On && model.kit.clipped == Fitted::On {
                return Err(Refusal::LeadsInTheWay);
            }
            put(&mut model.things.doors[Door::Burner], to)
        }
        Door::Blower => put(&mut model.things.doors[Door::Blower], to),
    }
}

pub(super) fn set_furnace_switch(model: &mut Model, to: OnOff) -> Done {
    reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
    put(&mut model.things.furnace_switch, to)
}

pub(super) fn set_thermostat_mode(model: &mut Model, to: OnOff) -> Done {
    reach::place(model, &[Place::Hall])?;
    put(&mut model.things.heating, to)
}

pub(super) fn set_setpoint(model: &mut Model, half_f: i16) -> Done {
    reach::place(model, &[Place::Hall])?;
    if settable_half_f(half_f) != half_f {
        return Err(Refusal::OffTheDial);
    }
    put(&mut model.things.setpoint_half_f, half_f)
}

pub(super) fn set_stage_jumper(model: &mut Model, to: Fitted) -> Done {
    reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
    reach::burner_door_off(model)?;
    if !is_staged(model.levels()) {
        return Err(Refusal::NotFitted);
    }
    put(&mut model.things.stage_jumper, to)
}

pub(super) fn set_valve_switch(model: &mut Model, to: OnOff) -> Done {
    reach::valve(model)?;
    put(&mut model.things.valve_switch, to)
}

pub(super) fn set_hand_valve(model: &mut Model, hand_valve: HandValve, degrees: i16) -> Done {
    let handle = HandleAngle::from_deg(degrees).ok_or(Refusal::Absurd)?;
    let plant = [Place::PlantRoom, Place::GasValve];
    match hand_valve {
        HandValve::Furnace => {
            reach::place(model, &plant)?;
            put(&mut model.things.handles[HandValve::Furnace], handle)
        }
        HandValve::WaterHeater => {
            reach::place(model, &plant)?;
            put(&mut model.things.handles[HandValve::WaterHeater], handle)
        }
        HandValve::Range => {
            reach::place(model, &[Place::Hall])?;
            put(&mut model.things.handles[HandValve::Range], handle)
        }
        HandValve::Supply => {
            reach::place(model, &[Place::Yard])?;
            put(&mut model.things.handles[HandValve::Supply], handle)
        }
    }
}

pub(super) fn set_appliance(model: &mut Model, appliance: OtherAppliance, to: OnOff) -> Done {
    match appliance {
        OtherAppliance::WaterHeater => {
            reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
            put(&mut model.things.other_appliances[appliance], to)?;
            model.things.starved_s[appliance] = 0.0;
            plain()
        }
        OtherAppliance::Range => {
            reach::place(model, &[Place::Hall])?;
            put(&mut model.things.other_appliances[appliance], to)?;
            model.things.starved_s[appliance] = 0.0;
            plain()
        }
    }
}

pub(super) fn set_tag(model: &mut Model, to: Fitted) -> Done {
    reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
    put(&mut model.things.tag, to)
}

pub(super) fn reset_rollout(model: &mut Model) -> Done {
    reach::place(model, &[Place::PlantRoom, Place::GasValve])?;
    reach::burner_door_off(model)?;
    if model.furnace.reset_rollout() { plain() } else { Err(Refusal::AlreadySo) }
}

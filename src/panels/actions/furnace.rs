//! The furnace's outside, its switches, and the water heater beside it.

use super::at_hand;
use super::here::{probe_at, sniff, walks};
use super::list::List;
use crate::hands::action::Action;
use crate::parts::{
    Door, Fitted, HandValve, Height, Joint, OnOff, Opening, OtherAppliance, Place, Tool, Window,
};
use crate::physics::valve::HandleAngle;
use crate::senses::seen::{Burning, FluidSeen, FurnaceSeen, Seen};

pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    let Some(furnace) = seen.furnace.as_ref() else { return };
    match id {
        "burner-door" => door(Door::Burner, furnace.burner_door, list),
        "blower-door" | "door-switch" => door(Door::Blower, furnace.blower_door, list),
        "furnace-switch" => switch(furnace.switch, list),
        "manual-valve" => hand_valve(HandValve::Furnace, furnace.manual_valve, list),
        "water-heater-cock" => {
            hand_valve(HandValve::WaterHeater, furnace.water_heater.handle, list)
        }
        "water-heater" => {
            appliance(OtherAppliance::WaterHeater, furnace.water_heater.burning, list)
        }
        "plant-window" => window(Window::PlantRoom, furnace.window, list),
        "furnace" => {
            kneel(seen, list);
            tag(furnace, list);
        }
        "tag" => tag(furnace, list),
        "stage-jumper" | "control-board" => jumper(furnace, list),
        "rollout-1" | "rollout-2" => list.add(t!("rollout-reset"), Action::ResetRollout),
        "breathing-zone" => {
            sniff(Height::Head, list);
            probe_at(Height::Head, seen, list);
        }
        "floor-zone" => {
            sniff(Height::Floor, list);
            probe_at(Height::Floor, seen, list);
        }
        "exit-door" => walks(seen, list),
        "union" => joint(Joint::Union, seen, list),
        "connector" => joint(Joint::Connector, seen, list),
        "gas-valve" | "burners" | "orifices" | "igniter" | "flame-rod" | "manifold" => {
            kneel(seen, list);
        }
        _ => {}
    }
    // What is behind the burner door needs it off.
    let behind = matches!(
        id,
        "stage-jumper"
            | "control-board"
            | "status-lamp"
            | "rollout-1"
            | "rollout-2"
            | "burners"
            | "pressure-switch"
            | "pressure-switch-low"
            | "pressure-switch-high"
            | "inducer"
            | "limit"
    );
    if behind && furnace.burner_door == Fitted::On {
        door(Door::Burner, furnace.burner_door, list);
    }
}

fn kneel(seen: &Seen, list: &mut List) {
    if seen.place != Place::GasValve {
        list.add(t!("walk-gas-valve"), Action::Go(Place::GasValve));
    }
}

/// A furnace door: taken off or put on.
pub(super) fn door(door: Door, now: Fitted, list: &mut List) {
    let name = door.label().to_lowercase();
    match now {
        Fitted::On => {
            list.add(t!("door-off", door = name), Action::Door { door, to: Fitted::Off });
        }
        Fitted::Off => {
            list.add(t!("door-on", door = name), Action::Door { door, to: Fitted::On });
        }
    }
}

fn switch(now: OnOff, list: &mut List) {
    match now {
        OnOff::On => list.add(t!("furnace-switch-off"), Action::FurnaceSwitch(OnOff::Off)),
        OnOff::Off => list.add(t!("furnace-switch-on"), Action::FurnaceSwitch(OnOff::On)),
    }
}

/// A hand valve: shut and open; any angle is a form.
pub(super) fn hand_valve(hand_valve: HandValve, handle: HandleAngle, list: &mut List) {
    let name = hand_valve.label().to_lowercase();
    if handle != HandleAngle::SHUT {
        list.add(t!("valve-shut", valve = &name), Action::HandValve { hand_valve, degrees: 0 });
    }
    if handle != HandleAngle::OPEN {
        list.add(t!("valve-open", valve = name), Action::HandValve { hand_valve, degrees: 90 });
    }
}

/// Another appliance: turned off or on.
pub(super) fn appliance(appliance: OtherAppliance, now: Burning, list: &mut List) {
    let name = appliance.label().to_lowercase();
    match now {
        Burning::Burning | Burning::NoGas => {
            list.add(
                t!("appliance-off", appliance = name),
                Action::OtherAppliance { appliance, to: OnOff::Off },
            );
        }
        Burning::Off => {
            list.add(
                t!("appliance-on", appliance = name),
                Action::OtherAppliance { appliance, to: OnOff::On },
            );
        }
    }
}

/// A window: opened or closed.
pub(super) fn window(window: Window, now: Opening, list: &mut List) {
    let name = window.label().to_lowercase();
    match now {
        Opening::Open => {
            list.add(
                t!("window-close", window = name),
                Action::Window { window, to: Opening::Closed },
            );
        }
        Opening::Closed => {
            list.add(
                t!("window-open", window = name),
                Action::Window { window, to: Opening::Open },
            );
        }
    }
}

fn tag(furnace: &FurnaceSeen, list: &mut List) {
    match furnace.tag {
        Fitted::On => list.add(t!("tag-off"), Action::Tag(Fitted::Off)),
        Fitted::Off => list.add(t!("tag-on"), Action::Tag(Fitted::On)),
    }
}

fn jumper(furnace: &FurnaceSeen, list: &mut List) {
    match furnace.stage_jumper {
        Fitted::On => list.add(t!("jumper-off"), Action::StageJumper(Fitted::Off)),
        Fitted::Off => {
            list.add(t!("jumper-on"), Action::StageJumper(Fitted::On));
        }
    }
}

/// Leak fluid on a joint and what it showed.
pub(super) fn joint(joint: Joint, seen: &Seen, list: &mut List) {
    list.need(Tool::LeakFluid, seen);
    list.add(t!("joint-brush"), Action::LeakFluid(joint));
    if seen.fluid(joint) != Some(FluidSeen::Dry) {
        list.add(t!("joint-wipe"), Action::Wipe(joint));
    }
    at_hand::verdicts(joint, list);
}

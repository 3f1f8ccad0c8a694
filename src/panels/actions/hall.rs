//! The thermostat, the range, the telephone and the people of the house.

use super::furnace::{appliance, hand_valve, window};
use super::here::{calls, walks};
use super::list::List;
use crate::hands::action::{Action, Topic};
use crate::parts::{HandValve, OnOff, OtherAppliance, Window};
use crate::senses::seen::{HallSeen, Seen};

/// One press of a thermostat button, in half degrees Fahrenheit.
const PRESS_HALF_F: i16 = 1;

pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    let Some(hall) = seen.hall.as_ref() else { return };
    match id {
        "thermostat" => {
            mode(hall, list);
            warmer(hall, list);
            cooler(hall, list);
        }
        "thermostat-mode" => mode(hall, list),
        "thermostat-up" => warmer(hall, list),
        "thermostat-down" => cooler(hall, list),
        "hall-window" => window(Window::Hall, hall.window, list),
        "range" => appliance(OtherAppliance::Range, hall.range.burning, list),
        "range-cock" => hand_valve(HandValve::Range, hall.range.handle, list),
        "telephone" => calls(list),
        "householder" => tell(list),
        "exit-door" => walks(seen, list),
        _ => {}
    }
}

fn mode(hall: &HallSeen, list: &mut List) {
    match hall.mode {
        OnOff::On => {
            list.add(t!("thermostat-heat-off"), Action::ThermostatMode(OnOff::Off));
        }
        OnOff::Off => {
            list.add(t!("thermostat-heat-on"), Action::ThermostatMode(OnOff::On));
        }
    }
}

fn warmer(hall: &HallSeen, list: &mut List) {
    list.add(
        t!("thermostat-warmer"),
        Action::Setpoint(hall.setpoint_half_f.saturating_add(PRESS_HALF_F)),
    );
}

fn cooler(hall: &HallSeen, list: &mut List) {
    list.add(
        t!("thermostat-cooler"),
        Action::Setpoint(hall.setpoint_half_f.saturating_sub(PRESS_HALF_F)),
    );
}

fn tell(list: &mut List) {
    for topic in [Topic::WorkStarts, Topic::GasSmellDrill, Topic::Unsafe, Topic::GetOut] {
        let label = match topic {
            Topic::WorkStarts => t!("tell-work-starts"),
            Topic::GasSmellDrill => t!("tell-smell-drill"),
            Topic::Unsafe => t!("tell-unsafe"),
            Topic::GetOut => t!("tell-get-out"),
        };
        list.add(label, Action::Tell(topic));
    }
}

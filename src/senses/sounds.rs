//! What is heard from where the person stands.

use super::seen::{Heard, Relays, Sound};
use crate::model::Model;
use crate::parts::{OtherAppliance, Place, is_staged};

/// Flow that is heard hissing, in standard m³/s (2 ft³/h).
const HISS_M3_S: f64 = 1.6e-5;
/// Speed from which a fan is heard.
const HEARD: f64 = 0.15;
/// Inducer speed from which it is heard to run fast.
const INDUCER_FAST: f64 = 0.85;

/// Everything that is heard here.
pub(super) fn sounds(model: &Model) -> Vec<Sound> {
    let mut sounds = Vec::new();
    if model.alerts.alarm {
        sounds.push(Sound::Alarm);
    }
    if model.person.place == Place::Yard && model.gas.vented() > HISS_M3_S {
        sounds.push(Sound::Relief);
    }
    if matches!(model.person.place, Place::Away | Place::Yard) {
        return sounds;
    }
    sounds.extend(of_furnace(model));
    let near = model.person.is_at_furnace();
    if near && hisses(model).next().is_some() {
        sounds.push(Sound::Hiss);
    }
    let appliance = if near { OtherAppliance::WaterHeater } else { OtherAppliance::Range };
    if model.appliance_burns(appliance) {
        sounds.push(Sound::OtherApplianceBurning);
    }
    sounds
}

/// How strong and how fast what is heard here is.
pub(super) fn heard(model: &Model) -> Heard {
    match model.person.place {
        Place::Away => Heard::default(),
        Place::Yard => Heard { relief_m3_s: model.gas.vented(), ..Heard::default() },
        Place::Hall => heard_of_furnace(model),
        Place::PlantRoom | Place::GasValve => {
            Heard { hiss_m3_s: hisses(model).sum(), ..heard_of_furnace(model) }
        }
    }
}

fn heard_of_furnace(model: &Model) -> Heard {
    let furnace = &model.furnace;
    let outputs = furnace.outputs();
    let full_w = model.setup.furnace.plate.input.top().si();
    Heard {
        inducer: furnace.inducer(),
        blower: furnace.blower(),
        firing: furnace.input_w() / full_w,
        relays: Relays {
            inducer: outputs.inducer,
            igniter: outputs.igniter,
            blower: outputs.blower,
            gas_valve: furnace.seats(),
        },
        ..Heard::default()
    }
}

/// Flows that hiss at the furnace, in standard m³/s.
fn hisses(model: &Model) -> impl Iterator<Item = f64> {
    let connector = model.gas.connector_leak();
    let leaks: Vec<f64> = model.gas.leaks().iter().chain(connector).collect();
    leaks.into_iter().filter(|flow| *flow > HISS_M3_S)
}

fn of_furnace(model: &Model) -> Vec<Sound> {
    let mut sounds = Vec::new();
    // With one level it has one speed, and there is nothing to compare it with.
    let fast = is_staged(model.levels()) && model.furnace.inducer() > INDUCER_FAST;
    if fast {
        sounds.push(Sound::InducerFast);
    } else if model.furnace.inducer() > HEARD {
        sounds.push(Sound::Inducer);
    }
    match model.firing() {
        None => {}
        Some(level) => sounds.push(Sound::Burners(level)),
    }
    if model.furnace.blower() > HEARD {
        sounds.push(if model.furnace.blower_labors() { Sound::BlowerSlow } else { Sound::Blower });
    }
    if model.furnace.banged() {
        sounds.push(Sound::Bang);
    }
    sounds
}

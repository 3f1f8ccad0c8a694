//! Tools taken in hand and put down.

use super::done::{Done, plain};
use super::reach;
use super::refusal::Refusal;
use crate::instrument::electrical::Needle;
use crate::instrument::flue_analyser::FlueAnalyser;
use crate::instrument::stopwatch::Stopwatch;
use crate::instrument::thermometer::Thermometer;
use crate::model::{Model, PortState};
use crate::parts::{Fitted, Tool};

pub(super) fn take(model: &mut Model, tool: Tool) -> Done {
    if model.person.hand == Some(tool) {
        return Err(Refusal::AlreadySo);
    }
    if model.person.hand.is_some() {
        return Err(Refusal::HandFull);
    }
    if tool == Tool::Hose {
        reach::meter(model)?;
    }
    match tool {
        Tool::Adapter if model.things.ports.values().any(PortState::has_adapter) => {
            Err(Refusal::AdapterElsewhere)
        }
        Tool::Microammeter if model.kit.clipped == Fitted::On => Err(Refusal::ClippedIn),
        Tool::Hose if model.things.hose_port().is_some() => Err(Refusal::HoseInUse),
        Tool::HexKey
        | Tool::SlottedDriver
        | Tool::Adapter
        | Tool::Hose
        | Tool::LeakFluid
        | Tool::GasDetector
        | Tool::Thermometer
        | Tool::FlueAnalyser
        | Tool::Microammeter
        | Tool::ElectricalMeter
        | Tool::Stopwatch => {
            ready(model, tool);
            model.person.hand = Some(tool);
            plain()
        }
    }
}

pub(super) fn put_down(model: &mut Model) -> Done {
    if model.person.hand.take().is_none() {
        return Err(Refusal::AlreadySo);
    }
    model.person.detector = None;
    plain()
}

/// A fresh instrument comes into the hand at the temperature that is here.
fn ready(model: &mut Model, tool: Tool) {
    let here_k = model.air_here_k();
    match tool {
        Tool::Thermometer => model.kit.thermometer = Thermometer::new(here_k),
        Tool::FlueAnalyser => model.kit.analyser = FlueAnalyser::new(here_k),
        Tool::ElectricalMeter => model.kit.meter = Needle::default(),
        Tool::Stopwatch => model.kit.stopwatch = Stopwatch::Nought,
        Tool::HexKey
        | Tool::SlottedDriver
        | Tool::Adapter
        | Tool::Hose
        | Tool::LeakFluid
        | Tool::GasDetector
        | Tool::Microammeter => {}
    }
}

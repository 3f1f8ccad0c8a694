//! What an instrument other than the manometer shows.

use super::seen::Measured;
use crate::appliance::plate::Fuel;
use crate::instrument::figure::{Figure, Quantity};
use crate::model::Model;
use crate::parts::{Fitted, Range, Spot, Tool};
use crate::physics::fluid::Gas;
use crate::units::f_from_k;

/// What an instrument shows at a spot, if it is held there.
pub(crate) fn measured_at(model: &Model, spot: Spot) -> Option<Measured> {
    let clipped = spot == Spot::FlameRod && model.kit.clipped == Fitted::On;
    if clipped {
        if !(model.is_at(spot.places()) && model.is_burner_door_off()) {
            return None;
        }
    } else if model.kit.spot != Some(spot) || model.person.hand != Some(spot.tool()) {
        return None;
    }
    let one = |quantity, value| vec![Figure::new(quantity, value)];
    let figures = match spot.tool() {
        Tool::Thermometer => one(Quantity::Temperature, f_from_k(model.kit.thermometer.bead_k())),
        Tool::FlueAnalyser => {
            let fuel = match model.setup.fuel {
                Fuel::Natural => Gas::natural(),
                Fuel::Propane => Gas::propane(),
            };
            model.kit.analyser.face(&fuel)
        }
        Tool::Microammeter => one(Quantity::FlameCurrent, model.kit.micro.shown()),
        Tool::Stopwatch => model.kit.stopwatch.face(model.tick),
        Tool::ElectricalMeter if spot.range() == Some(Range::Ohms) => {
            one(Quantity::Resistance, model.kit.meter.ohms(model.ohms(spot)))
        }
        Tool::ElectricalMeter => one(Quantity::Voltage, model.kit.meter.shown()),
        Tool::HexKey
        | Tool::SlottedDriver
        | Tool::Adapter
        | Tool::Hose
        | Tool::LeakFluid
        | Tool::GasDetector => return None,
    };
    Some(Measured { spot, figures })
}

/// What an instrument shows now: the one in hand, or the microammeter while it is clipped in.
pub(crate) fn measured(model: &Model) -> Option<Measured> {
    let held = model.kit.spot.and_then(|spot| measured_at(model, spot));
    held.or_else(|| measured_at(model, Spot::FlameRod))
}

//! What the instrument at the hose measures: which port, in which state of the furnace, what number.

use super::meter_history::{At, GasDemand, MeterSample};
use crate::model::Model;
use crate::parts::{Gauge, HandValve, OtherAppliance, Port, PortFill};
use crate::units::PressureUnit;

/// Flow below which nothing flows for a reading at rest, in standard m³/s (0.1 ft³/h).
const NO_FLOW_M3_S: f64 = 8e-7;

/// What the instrument at the hose reads at this tick, with what is true, in pascals.
pub(crate) fn sample(model: &Model, true_pa: f64) -> MeterSample {
    let kit = &model.kit;
    let (shown_pa, error_pa, unit) = match kit.gauge {
        Gauge::Digital => (model.meter.shown_pa(), model.meter.error_pa(), model.meter.unit()),
        Gauge::WaterColumn => (kit.column.shown_pa().unwrap_or(0.0), 0.0, PressureUnit::InWc),
        Gauge::SpringGauge => {
            (kit.spring.shown_pa().unwrap_or(0.0), kit.spring.error_pa(), PressureUnit::InWc)
        }
    };
    MeterSample { shown_pa, unit, true_pa, error_pa, tick: model.tick }
}

/// Where the meter measures, while it is on, zeroed or not, and in range.
pub(crate) fn metered(model: &Model) -> Option<At> {
    let in_range = match model.kit.gauge {
        Gauge::Digital => model.meter.is_on() && !model.meter.over_range(),
        Gauge::WaterColumn => model.kit.column.shown_pa().is_some(),
        Gauge::SpringGauge => model.kit.spring.shown_pa().is_some(),
    };
    let (port, push) = model.things.hose_port().filter(|_| in_range)?;
    Some(At { port, push, demand: gas_demand(model, port) })
}

/// What the furnace and the other appliances draw.
fn gas_demand(model: &Model, port: Port) -> GasDemand {
    let burning =
        OtherAppliance::ALL.iter().filter(|&&appliance| model.appliance_burns(appliance)).count();
    // What shut seats let by is at rest for everybody who looks.
    let burners = match model.furnace.seats() {
        None => 0.0,
        Some(_) => model.gas.burner_flow().abs(),
    };
    let flow = burners
        + OtherAppliance::ALL.iter().map(|&n| model.gas.appliance_flow(n).abs()).sum::<f64>();
    GasDemand {
        firing: model.firing(),
        burning: u8::try_from(burning).unwrap_or(u8::MAX),
        any_flow: flow > NO_FLOW_M3_S,
        fed: model.things.is_fed(),
        throttled: is_throttled(model),
        tapped: !matches!(model.things.ports[port].looks(), PortFill::HoseOnShutTap(_)),
    }
}

/// Whether a hand put the manual valve or the supply's to neither open nor as it was found.
fn is_throttled(model: &Model) -> bool {
    let [furnace, supply] =
        [HandValve::Furnace, HandValve::Supply].map(|valve| model.things.handles[valve]);
    let by_hand = !furnace.is_open() && furnace != model.setup.found.manual_valve;
    by_hand || !supply.is_open()
}

//! What the instrument at the hose measures: which port, in which state of the furnace, what number.

use super::meter_history::{GasDemand, MeterSample};
use crate::model::Model;
use crate::parts::{Gauge, OtherAppliance, Port};

/// Flow below which nothing flows for a reading at rest, in standard m³/s (0.1 ft³/h).
const NO_FLOW_M3_S: f64 = 8e-7;

/// What the instrument reads, and what it reads too high, in pascals.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Reads {
    pub(crate) shown_pa: f64,
    pub(crate) error_pa: f64,
}

/// What the instrument at the hose reads now.
pub(crate) fn reads(model: &Model) -> Reads {
    let kit = &model.kit;
    let (shown_pa, error_pa) = match kit.gauge {
        Gauge::Digital => (model.meter.shown_pa(), model.meter.error_pa()),
        Gauge::WaterColumn => (kit.column.shown_pa().unwrap_or(0.0), 0.0),
        Gauge::SpringGauge => (kit.spring.shown_pa().unwrap_or(0.0), kit.spring.error_pa()),
    };
    Reads { shown_pa, error_pa }
}

/// The same at this tick, with what is true, in pascals.
pub(crate) fn sample(model: &Model, true_pa: f64) -> MeterSample {
    let Reads { shown_pa, error_pa } = reads(model);
    MeterSample { shown_pa, true_pa, error_pa, tick: model.tick }
}

/// The port that the meter measures, while it is on, zeroed or not, and in range.
pub(crate) fn metered_port(model: &Model) -> Option<Port> {
    let in_range = match model.kit.gauge {
        Gauge::Digital => model.meter.is_on() && !model.meter.over_range(),
        Gauge::WaterColumn => model.kit.column.shown_pa().is_some(),
        Gauge::SpringGauge => model.kit.spring.shown_pa().is_some(),
    };
    model.things.hose_port().map(|(port, _)| port).filter(|_| in_range)
}

/// What the furnace and the other appliances draw.
pub(crate) fn gas_demand(model: &Model) -> GasDemand {
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
    }
}

//! The manometer: its buttons and its low side.

use super::done::{Done, plain};
use super::event::EventKind;
use super::reach;
use super::refusal::Refusal;
use crate::model::Model;
use crate::parts::{LowSide, OnOff};
use crate::units::PressureUnit;

pub(super) fn meter_power(model: &mut Model, to: OnOff) -> Done {
    reach::meter(model)?;
    if model.meter.is_on() == (to == OnOff::On) {
        return Err(Refusal::AlreadySo);
    }
    model.meter.set_on(to == OnOff::On);
    plain()
}

pub(super) fn meter_zero(model: &mut Model) -> Done {
    reach::meter(model)?;
    if !model.meter.is_on() {
        return Err(Refusal::MeterOff);
    }
    let applied_pa = model.meter.felt_pa();
    model.meter.zero();
    Ok(vec![EventKind::Zeroed { applied_pa }])
}

pub(super) fn meter_unit(model: &mut Model, unit: PressureUnit) -> Done {
    reach::meter(model)?;
    if !model.meter.is_on() {
        return Err(Refusal::MeterOff);
    }
    if model.meter.unit() == unit {
        return Err(Refusal::AlreadySo);
    }
    model.meter.set_unit(unit);
    plain()
}

pub(super) fn meter_low_side(model: &mut Model, side: LowSide) -> Done {
    reach::meter(model)?;
    reach::valve(model)?;
    if model.low_side == side {
        return Err(Refusal::AlreadySo);
    }
    model.low_side = side;
    plain()
}

//! Repairs on the manometer and on the ports.
//!
//! **Source.** A blocked tapped hole is cleaned, never drilled: common practice.
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::{Edit, RepairContext};
use crate::parts::Port;
use crate::units::PA_PER_INWC;

/// Range of a borrowed manometer, in pascals.
const GREAT_RANGE_PA: f64 = 60.0 * PA_PER_INWC;

pub(crate) const SWAP_METER_HOSE: Edit = |context| {
    let worn = &mut context.setup.condition.meter;
    worn.hose_hole_m = 0.0;
    worn.wear.water_pa = 0.0;
    context.setup.meter.lag_s = context.sound.meter.lag_s;
};

pub(crate) const REPLACE_METER_BATTERY: Edit = |context| {
    context.setup.condition.meter.wear.battery_s = None;
};

pub(crate) const BORROW_METER: Edit = |context| {
    let (setup, sound) = (&mut context.setup, context.sound);
    setup.meter = sound.meter.clone();
    setup.meter.range_pa = setup.meter.range_pa.max(GREAT_RANGE_PA);
    setup.condition.meter.wear = Default::default();
};

pub(crate) const CLEAN_INLET_TAP: Edit = |context| clean(context, Port::Inlet);

pub(crate) const CLEAN_MANIFOLD_TAP: Edit = |context| clean(context, Port::Manifold);

fn clean(context: &mut RepairContext<'_>, port: Port) {
    context.setup.condition.ports[port].tap_free_m = None;
}

pub(crate) const DRILL_INLET_TAP: Edit = |context| drill(context, Port::Inlet);

pub(crate) const DRILL_MANIFOLD_TAP: Edit = |context| drill(context, Port::Manifold);

/// The hole is free, and the boss has a crack.
fn drill(context: &mut RepairContext<'_>, port: Port) {
    clean(context, port);
    context.beside.cracked = Some(port);
}

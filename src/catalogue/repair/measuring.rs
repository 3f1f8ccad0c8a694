//! Repairs on the manometer and on the ports.
//!
//! **Source.** A blocked tapped hole is cleaned, never drilled: common practice.
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::{Bay, Edit};
use crate::parts::Port;
use crate::units::PA_PER_INWC;

/// Range of a borrowed manometer, in pascals.
const GREAT_RANGE_PA: f64 = 60.0 * PA_PER_INWC;

pub(crate) const SWAP_METER_HOSE: Edit = |bay| {
    let worn = &mut bay.setup.condition.meter;
    worn.hose_hole_m = 0.0;
    worn.wear.water_pa = 0.0;
    bay.setup.meter.lag_s = bay.sound.meter.lag_s;
};

pub(crate) const REPLACE_METER_BATTERY: Edit = |bay| {
    bay.setup.condition.meter.wear.battery_s = None;
};

pub(crate) const BORROW_METER: Edit = |bay| {
    let (setup, sound) = (&mut bay.setup, bay.sound);
    setup.meter = sound.meter.clone();
    setup.meter.range_pa = setup.meter.range_pa.max(GREAT_RANGE_PA);
    setup.condition.meter.wear = Default::default();
};

pub(crate) const CLEAN_INLET_TAP: Edit = |bay| clean(bay, Port::Inlet);

pub(crate) const CLEAN_MANIFOLD_TAP: Edit = |bay| clean(bay, Port::Manifold);

fn clean(bay: &mut Bay<'_>, port: Port) {
    bay.setup.condition.ports[port].tap_free_m = None;
}

pub(crate) const DRILL_INLET_TAP: Edit = |bay| drill(bay, Port::Inlet);

pub(crate) const DRILL_MANIFOLD_TAP: Edit = |bay| drill(bay, Port::Manifold);

/// The hole is free, and the boss has a crack.
fn drill(bay: &mut Bay<'_>, port: Port) {
    clean(bay, port);
    bay.beside.cracked = Some(port);
}

//! Repairs on the manometer and on the ports.
//!
//! **Source.** A blocked tapped hole is cleaned, never drilled: common practice.
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::{Bay, Moves, Nature, Need, Work};
use crate::parts::{Cock, Place, Port};
use crate::setup::Renewed;
use crate::units::PA_PER_INWC;

/// Range of a borrowed manometer, in pascals.
const GREAT_RANGE_PA: f64 = 60.0 * PA_PER_INWC;

pub(crate) const SWAP_METER_HOSE: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    let worn = &mut bay.setup.condition.meter;
    worn.hose_hole_m = 0.0;
    worn.wear.water_pa = 0.0;
    bay.setup.meter.lag_s = bay.sound.meter.lag_s;
})
.needs(&[Need::HoseFree])
.on_reading();

pub(crate) const REPLACE_METER_BATTERY: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.meter.wear.battery_s = None;
})
.on_reading();

pub(crate) const BORROW_METER: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    let (setup, sound) = (&mut bay.setup, bay.sound);
    setup.meter = sound.meter.clone();
    setup.meter.range_pa = setup.meter.range_pa.max(GREAT_RANGE_PA);
    setup.condition.meter.wear = Default::default();
})
.needs(&[Need::HoseFree])
.renews(Renewed::Meter)
.on_reading();

pub(crate) const CLEAN_INLET_TAP: Work =
    Work::new(Place::GasValve, Nature::Care, |bay| clean(bay, Port::Inlet))
        .needs(&[
            Need::BurnerDoorOff,
            Need::PowerOff,
            Need::Shut(Cock::Furnace),
            Need::Open(Port::Inlet),
        ])
        .moves(Moves::Inlet)
        .on_reading();

pub(crate) const CLEAN_MANIFOLD_TAP: Work =
    Work::new(Place::GasValve, Nature::Care, |bay| clean(bay, Port::Manifold))
        .needs(&[
            Need::BurnerDoorOff,
            Need::PowerOff,
            Need::Shut(Cock::Furnace),
            Need::Open(Port::Manifold),
        ])
        .moves(Moves::Manifold)
        .on_reading();

fn clean(bay: &mut Bay<'_>, port: Port) {
    bay.setup.condition.ports[port].tap_free_m = None;
}

pub(crate) const DRILL_INLET_TAP: Work =
    Work::new(Place::GasValve, Nature::Danger, |bay| drill(bay, Port::Inlet))
        .needs(&[Need::BurnerDoorOff, Need::Shut(Cock::Furnace), Need::Open(Port::Inlet)])
        .moves(Moves::Inlet)
        .on_reading();

pub(crate) const DRILL_MANIFOLD_TAP: Work =
    Work::new(Place::GasValve, Nature::Danger, |bay| drill(bay, Port::Manifold))
        .needs(&[Need::BurnerDoorOff, Need::Shut(Cock::Furnace), Need::Open(Port::Manifold)])
        .moves(Moves::Manifold)
        .on_reading();

/// The hole is free, and the boss has a crack.
fn drill(bay: &mut Bay<'_>, port: Port) {
    clean(bay, port);
    bay.beside.cracked = Some(port);
}

//! Faults of manometer, hose and ports, and leaks. Each takes its severity in SI.

use super::entry::Edit;
use crate::parts::Port;
use crate::setup::PlugFound;
use crate::units::PressureUnit;

pub(crate) const METER_ZERO_OFF: Edit = |setup, pa| setup.meter.zero_error_pa = pa;

pub(crate) const METER_ZERO_DRIFTS: Edit = |setup, pa| {
    setup.meter.drift_pa = pa;
    setup.meter.drift_s = setup.meter.drift_s.max(480.0);
};

pub(crate) const METER_ZEROED_UNDER_PRESSURE: Edit = |setup, pa| {
    // It learned what it felt, its own error with it.
    setup.condition.meter.wear.learned_pa = pa + setup.meter.zero_error_pa;
};

pub(crate) const HOLED_METER_HOSE: Edit =
    |setup, hole_m| setup.condition.meter.hose_hole_m = hole_m;

pub(crate) const WATER_IN_METER_HOSE: Edit = |setup, pa| setup.condition.meter.wear.water_pa = pa;

pub(crate) const PINCHED_METER_HOSE: Edit =
    |setup, time_s| setup.meter.lag_s = setup.meter.lag_s.max(time_s);

pub(crate) const BLOCKED_INLET_TAP: Edit =
    |setup, free_m| setup.condition.ports[Port::Inlet].tap_free_m = Some(free_m);

pub(crate) const BLOCKED_MANIFOLD_TAP: Edit =
    |setup, free_m| setup.condition.ports[Port::Manifold].tap_free_m = Some(free_m);

pub(crate) const METER_SET_TO_KILOPASCALS: Edit =
    |setup, _| setup.condition.meter.wear.unit = Some(PressureUnit::KPa);

pub(crate) const METER_SET_TO_MILLIBARS: Edit =
    |setup, _| setup.condition.meter.wear.unit = Some(PressureUnit::Mbar);

pub(crate) const LOW_METER_BATTERY: Edit =
    |setup, time_s| setup.condition.meter.wear.battery_s = Some(time_s);

pub(crate) const SMALL_METER_RANGE: Edit = |setup, pa| setup.meter.range_pa = pa;

pub(crate) const CROSS_THREADED_PLUG: Edit =
    |setup, _| setup.condition.ports[Port::Manifold].plug = PlugFound::Leaning;

pub(crate) const LOOSE_INLET_PLUG: Edit =
    |setup, turns| setup.found.plugs_past_hand[Port::Inlet] = turns;

pub(crate) const LOOSE_MANIFOLD_PLUG: Edit =
    |setup, turns| setup.found.plugs_past_hand[Port::Manifold] = turns;

pub(crate) const CRACKED_BOSS: Edit = |setup, _| {
    setup.condition.ports[Port::Manifold].plug = PlugFound::Cracked;
    setup.found.plugs_past_hand[Port::Manifold] = 1.5;
};

pub(crate) const ADAPTER_LEFT_IN: Edit =
    |setup, _| setup.condition.ports[Port::Manifold].plug = PlugFound::Adapter;

pub(crate) const FADED_ODORANT: Edit = |setup, share| setup.condition.odorant.left = share;

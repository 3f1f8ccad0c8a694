//! Faults of burners, air and altitude. Each takes its severity in SI.

use super::entry::Edit;
use crate::units::P_STD_PA;

pub(crate) const PLUGGED_ORIFICE: Edit = |setup, share| {
    if let Some(hole_m) = setup.furnace.orifices_m.get_mut(2) {
        *hole_m *= (1.0 - share).max(0.0).sqrt();
    }
};

pub(crate) const OVERSIZE_ORIFICES: Edit = |setup, share| {
    for hole_m in &mut setup.furnace.orifices_m {
        *hole_m *= (1.0 + share).sqrt();
    }
};

pub(crate) const LEAN_GAS: Edit = |setup, heating_value| {
    let gas = &mut setup.gas;
    let share = heating_value / gas.heating_value_j_m3;
    gas.heating_value_j_m3 = heating_value;
    gas.air_per_gas *= share;
    let heavier = 0.62 / gas.specific_gravity;
    gas.specific_gravity = 0.62;
    // The other appliances keep their orifices: they draw what those pass, and make less of it.
    for appliance in setup.other_appliances.values_mut() {
        appliance.input_w *= share / heavier.sqrt();
    }
};

/// ICAO standard atmosphere (Doc 7488).
pub(crate) const NOT_DERATED_FOR_ALTITUDE: Edit = |setup, height_m| {
    setup.ambient_abs_pa = P_STD_PA * libm::pow(1.0 - 2.255_77e-5 * height_m, 5.255_88);
};

pub(crate) const DELAYED_IGNITION: Edit = |setup, late_s| setup.condition.burners.late_s = late_s;

pub(crate) const HOLED_EXCHANGER: Edit =
    |setup, share| setup.condition.burners.exchanger_hole = share;

pub(crate) const BLOCKED_VENT: Edit = |setup, share| setup.condition.air.vent_blocked = share;

pub(crate) const BLOCKED_INTAKE: Edit = |setup, share| setup.condition.air.intake_blocked = share;

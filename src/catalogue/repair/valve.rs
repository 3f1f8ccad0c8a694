//! Repairs on the gas valve: screen, coil, springs, the valve itself.
//!
//! **Source.** Springs and orifices by plate and label, prove a conversion before any pressure:
//! common practice and installation manuals of two-stage furnaces (makers withheld).
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::fitting::{figures_for_fuel, fit_orifices, springs_for_fuel};
use super::work::Edit;
use crate::appliance::plate::Fuel;
use crate::setup::{Coil, HoseState, PlugFound, ValveCondition};
use crate::units::M3_S_PER_CFH;

/// Turns past hand-tight at which a new valve's plugs stand.
const NEW_PLUG_TURNS: f64 = 0.75;
/// What seats let by on which the screen's dirt has come to lie, in standard m³/s: natural gas,
/// propane (from memory).
const DIRTY_SEATS_M3_S: [f64; 2] = [4.0 * M3_S_PER_CFH, 1.6 * M3_S_PER_CFH];

pub(crate) const CLEAN_INLET_SCREEN: Edit = |context| {
    context.setup.condition.valve.screen_blocked = 0.0;
};

pub(crate) const REMOVE_INLET_SCREEN: Edit = |context| {
    let [natural, propane] = DIRTY_SEATS_M3_S;
    let lets_by = match context.setup.fuel {
        Fuel::Natural => natural,
        Fuel::Propane => propane,
    };
    let worn = &mut context.setup.condition.valve;
    worn.screen_blocked = 0.0;
    worn.lets_by_m3_s = worn.lets_by_m3_s.max(lets_by);
};

pub(crate) const REPLACE_GAS_VALVE: Edit = |context| {
    let ValveCondition { box_hose, .. } = context.setup.condition.valve;
    // The box's hose is no part of the valve.
    context.setup.condition.valve = ValveCondition { box_hose, ..ValveCondition::default() };
    for port in context.setup.condition.ports.values_mut() {
        port.tap_free_m = None;
        port.plug = PlugFound::Straight;
    }
    context.beside.new_plugs_turns = Some(NEW_PLUG_TURNS);
    springs_for_fuel(context);
};

pub(crate) const REPLACE_SECOND_COIL: Edit = |context| {
    context.setup.condition.valve.second_coil = Coil::Works;
};

pub(crate) const FIT_SPRINGS: Edit = springs_for_fuel;

pub(crate) const FIT_CONVERSION_KIT: Edit = |context| {
    springs_for_fuel(context);
    fit_orifices(context);
    if let Some(figures) = figures_for_fuel(context.setup, context.sound) {
        let plate = &mut context.setup.furnace.plate;
        plate.converted_to = (plate.made_for.fuel != figures.fuel).then_some(figures);
    }
    context.setup.furnace.low_gas_switch =
        context.sound.furnace.low_gas_switch || context.setup.fuel == Fuel::Propane;
};

pub(crate) const REFIT_BOX_HOSE: Edit = |context| {
    context.setup.condition.valve.box_hose = HoseState::On;
};

//! Repairs on control, safety devices and house air; and the wires that put a device out of work.
//!
//! **Source.** Power off before a part is taken out; no safety device is ever bridged: common
//! practice and installation manuals of two-stage furnaces (makers withheld).
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::Edit;
use crate::appliance::safety::{Hose, Jumper, Jumpers, SwitchState};
use crate::setup::{Contact, Fuse, Motor, Wire};

pub(crate) const CLEAN_FLAME_ROD: Edit = |context| {
    context.setup.condition.burners.rod_dirty = 0.0;
};

pub(crate) const MEND_BURNER_GROUND: Edit = |context| {
    context.setup.condition.burners.ground_poor = 0.0;
};

pub(crate) const REPLACE_IGNITER: Edit = |context| {
    context.setup.condition.burners.igniter_weak = 0.0;
};

pub(crate) const REPLACE_FIRST_SWITCH: Edit = |context| {
    let first = context.setup.furnace.plate.input.first_level();
    context.setup.condition.sensing.switches[first] = SwitchState::Works;
};

pub(crate) const REPLACE_FULL_SWITCH: Edit = |context| {
    let full = context.setup.furnace.plate.input.top_level();
    context.setup.condition.sensing.switches[full] = SwitchState::Works;
};

pub(crate) const REPLACE_DRAFT_HOSE: Edit = |context| {
    context.setup.condition.sensing.hose = Hose::Sound;
};

pub(crate) const REFIT_DRAFT_HOSE: Edit = |context| {
    let hose = &mut context.setup.condition.sensing.hose;
    *hose = match *hose {
        Hose::Sound | Hose::Off => Hose::Sound,
        // Pushed home, it is still split.
        Hose::Split => Hose::Split,
    };
};

pub(crate) const CLEAR_TRAP: Edit = |context| {
    context.setup.condition.sensing.water_pa = 0.0;
};

pub(crate) const PRIME_TRAP: Edit = |context| {
    context.setup.condition.air.trap_leak = 0.0;
};

pub(crate) const REPLACE_CONTROL_BOARD: Edit = |context| {
    context.setup.condition.control.second_contact = Contact::Works;
};

pub(crate) const MEND_SECOND_STAGE_WIRE: Edit = |context| {
    context.setup.condition.control.second_call = Wire::Whole;
};

pub(crate) const MEND_THERMOSTAT_WIRE: Edit = |context| {
    context.setup.condition.control.thermostat = Wire::Whole;
};

pub(crate) const REPLACE_FILTER: Edit = |context| {
    context.setup.condition.air.filter_blocked = 0.0;
};

pub(crate) const OPEN_REGISTERS: Edit = |context| {
    context.setup.condition.air.registers_closed = 0.0;
};

pub(crate) const REPLACE_INDUCER: Edit = |context| {
    context.setup.condition.air.inducer = Motor::Turns;
};

pub(crate) const REPLACE_BLOWER_MOTOR: Edit = |context| {
    context.setup.condition.air.blower_slow = 0.0;
};

pub(crate) const REPLACE_CONTROL_FUSE: Edit = |context| {
    context.setup.condition.control.fuse = Fuse::Whole;
};

pub(crate) const REPLACE_LOW_GAS_SWITCH: Edit = |context| {
    context.setup.condition.control.low_gas = None;
};

pub(crate) const BYPASS_FIRST_SWITCH: Edit = |context| {
    let first = context.setup.furnace.plate.input.first_level();
    context.setup.condition.control.jumpers.switches[first] = Jumper::On;
};

pub(crate) const BYPASS_FULL_SWITCH: Edit = |context| {
    let full = context.setup.furnace.plate.input.top_level();
    context.setup.condition.control.jumpers.switches[full] = Jumper::On;
};

pub(crate) const BYPASS_LIMIT: Edit = |context| {
    context.setup.condition.control.jumpers.limit = Jumper::On;
};

pub(crate) const BYPASS_ROLLOUT: Edit = |context| {
    context.setup.condition.control.jumpers.rollout = Jumper::On;
};

pub(crate) const BYPASS_LOW_GAS_SWITCH: Edit = |context| {
    context.setup.condition.control.jumpers.low_gas = Jumper::On;
};

pub(crate) const REMOVE_BYPASSES: Edit = |context| {
    context.setup.condition.control.jumpers = Jumpers::default();
};

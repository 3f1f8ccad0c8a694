//! Faults of control, safety devices and house air: many look like faults of the gas. Each takes
//! its severity in SI.

use super::entry::Edit;
use crate::appliance::safety::{Hose, Jumper, SwitchState};
use crate::parts::OnOff;
use crate::setup::{Fuse, Motor, Setup, Tripped, Wire};

pub(crate) const DIRTY_FLAME_ROD: Edit = |setup, share| setup.condition.burners.rod_dirty = share;

pub(crate) const POOR_BURNER_GROUND: Edit =
    |setup, share| setup.condition.burners.ground_poor = share;

pub(crate) const WEAK_IGNITER: Edit = |setup, share| setup.condition.burners.igniter_weak = share;

pub(crate) const FIRST_SWITCH_OPEN: Edit = |setup, _| *first_switch(setup) = SwitchState::StuckOpen;

pub(crate) const SPLIT_DRAFT_HOSE: Edit = |setup, _| setup.condition.sensing.hose = Hose::Split;

pub(crate) const DRAFT_HOSE_OFF: Edit = |setup, _| setup.condition.sensing.hose = Hose::Off;

pub(crate) const FIRST_SWITCH_CLOSED: Edit =
    |setup, _| *first_switch(setup) = SwitchState::StuckClosed;

pub(crate) const BLOCKED_CONDENSATE_TRAP: Edit = |setup, pa| setup.condition.sensing.water_pa = pa;

pub(crate) const DRY_CONDENSATE_TRAP: Edit = |setup, share| setup.condition.air.trap_leak = share;

pub(crate) const FULL_SWITCH_OPEN: Edit = |setup, _| {
    let full = setup.furnace.plate.input.top_level();
    setup.condition.sensing.switches[full] = SwitchState::StuckOpen;
};

pub(crate) const BLOCKED_FILTER: Edit = |setup, share| setup.condition.air.filter_blocked = share;

pub(crate) const CLOSED_REGISTERS: Edit =
    |setup, share| setup.condition.air.registers_closed = share;

pub(crate) const TRIPPED_ROLL_OUT: Edit = |setup, _| setup.condition.control.rollout = Tripped::Yes;

pub(crate) const VALVE_SWITCH_OFF: Edit = |setup, _| setup.found.valve_switch = OnOff::Off;

pub(crate) const DEAD_THERMOSTAT_CIRCUIT: Edit =
    |setup, _| setup.condition.control.thermostat = Wire::Open;

pub(crate) const JUMPERED_LIMIT: Edit =
    |setup, _| setup.condition.control.jumpers.limit = Jumper::On;

pub(crate) const JUMPERED_ROLL_OUT: Edit =
    |setup, _| setup.condition.control.jumpers.rollout = Jumper::On;

pub(crate) const JUMPERED_FIRST_SWITCH: Edit = |setup, _| {
    let first = setup.furnace.plate.input.first_level();
    setup.condition.control.jumpers.switches[first] = Jumper::On;
};

pub(crate) const DEAD_INDUCER: Edit = |setup, _| setup.condition.air.inducer = Motor::Dead;

pub(crate) const WEAK_BLOWER: Edit = |setup, share| setup.condition.air.blower_slow = share;

pub(crate) const BLOWN_CONTROL_FUSE: Edit = |setup, _| setup.condition.control.fuse = Fuse::Blown;

/// The pressure switch of the level at which the burners light.
fn first_switch(setup: &mut Setup) -> &mut SwitchState {
    let first = setup.furnace.plate.input.first_level();
    &mut setup.condition.sensing.switches[first]
}

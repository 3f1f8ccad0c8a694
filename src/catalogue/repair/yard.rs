//! Repairs in the yard: regulators and their vents.
//!
//! **Source.** What is right and what is dangerous at a regulator: common practice; two-stage
//! regulation of propane: NFPA 58. Sizes of a drilled hole and of a burnt one: from memory.
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::{Edit, RepairContext};
use crate::setup::{SeatState, Setup, SupplyKind};

/// Hole that a drill through the vent leaves in the diaphragm, in metres.
const DRILLED_M: f64 = 2.0e-3;
/// Hole that a torch burns into the diaphragm, in metres.
const BURNT_M: f64 = 1.0e-3;

pub(crate) const REPLACE_SUPPLY_REGULATOR: Edit = new_supply_regulator;

/// A sound regulator of the right size, set as it should be.
fn new_supply_regulator(context: &mut RepairContext<'_>) {
    let (supply, sound) = (&mut context.setup.supply, &context.sound.supply);
    supply.set_pa = sound.set_pa;
    supply.lockup_pa = sound.lockup_pa;
    supply.droop_pa = sound.droop_pa;
    supply.droop_flow_m3_s = sound.droop_flow_m3_s;
    supply.capacity_m3_s = sound.capacity_m3_s;
    supply.pa_per_turn = sound.pa_per_turn;
    let worn = &mut context.setup.condition.supply;
    worn.lets_by_m3_s = 0.0;
    worn.seat = SeatState::Works;
    worn.vent_blocked = 0.0;
    worn.diaphragm_hole_m = 0.0;
}

pub(crate) const REPLACE_FIRST_STAGE: Edit = |context| {
    context.setup.condition.supply.upstream_pa = None;
};

pub(crate) fn two_stages(setup: &Setup) -> bool {
    tank(setup) && setup.condition.supply.single_stage_set_k.is_none()
}

pub(crate) fn tank(setup: &Setup) -> bool {
    match setup.supply.kind {
        SupplyKind::Tank { .. } => true,
        SupplyKind::Meter { .. } => false,
    }
}

pub(crate) const FIT_TWO_STAGE_REGULATORS: Edit = |context| {
    new_supply_regulator(context);
    context.setup.condition.supply.single_stage_set_k = None;
    context.setup.condition.supply.upstream_pa = None;
};

pub(crate) const REPLACE_EXCESS_FLOW_VALVE: Edit = |context| {
    context.setup.condition.supply.excess_flow_m3_s = None;
};

pub(crate) const CLEAR_REGULATOR_VENT: Edit = |context| {
    context.setup.condition.supply.vent_blocked = 0.0;
};

pub(crate) const PLUG_REGULATOR_VENT: Edit = |context| {
    let worn = &mut context.setup.condition.supply;
    worn.vent_blocked = 1.0;
};

pub(crate) const DRILL_REGULATOR_VENT: Edit = |context| {
    let worn = &mut context.setup.condition.supply;
    worn.vent_blocked = 0.0;
    worn.diaphragm_hole_m = worn.diaphragm_hole_m.max(DRILLED_M);
};

pub(crate) const THAW_REGULATOR: Edit = |context| context.beside.thawed = true;

pub(crate) const FLAME_ON_REGULATOR: Edit = |context| {
    context.beside.thawed = true;
    let worn = &mut context.setup.condition.supply;
    worn.diaphragm_hole_m = worn.diaphragm_hole_m.max(BURNT_M);
};

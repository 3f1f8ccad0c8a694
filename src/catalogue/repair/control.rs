//! Repairs on control, safety devices and house air; and the wires that put a device out of work.
//!
//! **Source.** Power off before a part is taken out; no safety device is ever bridged: common
//! practice and installation manuals of two-stage furnaces (makers withheld).
//! **Checked.** `tests/core/faults/mended.rs`, `tests/core/faults/made_worse.rs`.

use super::work::{Nature, Need, Work};
use crate::appliance::safety::{Hose, Jumper, Jumpers, SwitchState};
use crate::parts::Place;
use crate::setup::{Contact, Setup, Wire};

const AT_BURNERS: &[Need] = &[Need::BurnerDoorOff, Need::PowerOff];
/// A wire is put across a switch with the power on as well.
const AT_SWITCH: &[Need] = &[Need::BurnerDoorOff];

pub(crate) const CLEAN_FLAME_ROD: Work = Work::new(Place::GasValve, Nature::Care, |bay| {
    bay.setup.condition.burners.rod_dirty = 0.0;
})
.needs(AT_BURNERS);

pub(crate) const MEND_BURNER_GROUND: Work = Work::new(Place::GasValve, Nature::Care, |bay| {
    bay.setup.condition.burners.ground_poor = 0.0;
})
.needs(AT_BURNERS);

pub(crate) const REPLACE_IGNITER: Work = Work::new(Place::GasValve, Nature::Part, |bay| {
    bay.setup.condition.burners.igniter_weak = 0.0;
})
.needs(AT_BURNERS);

pub(crate) const REPLACE_LOW_SWITCH: Work = Work::new(Place::PlantRoom, Nature::Part, |bay| {
    bay.setup.condition.sensing.low = SwitchState::Works;
})
.needs(AT_BURNERS);

pub(crate) const REPLACE_HIGH_SWITCH: Work = Work::new(Place::PlantRoom, Nature::Part, |bay| {
    bay.setup.condition.sensing.high = SwitchState::Works;
})
.needs(AT_BURNERS);

pub(crate) const REPLACE_DRAFT_HOSE: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.sensing.hose = Hose::Sound;
})
.needs(AT_BURNERS);

pub(crate) const REFIT_DRAFT_HOSE: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    let hose = &mut bay.setup.condition.sensing.hose;
    *hose = match *hose {
        Hose::Sound | Hose::Off => Hose::Sound,
        // Pushed home, it is still split.
        Hose::Split => Hose::Split,
    };
})
.needs(AT_SWITCH);

pub(crate) const CLEAR_TRAP: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.sensing.water_pa = 0.0;
})
.needs(AT_BURNERS);

pub(crate) const PRIME_TRAP: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.air.trap_leak = 0.0;
})
.needs(&[Need::BurnerDoorOff]);

pub(crate) const REPLACE_CONTROL_BOARD: Work = Work::new(Place::PlantRoom, Nature::Part, |bay| {
    bay.setup.condition.control.second_contact = Contact::Works;
})
.needs(AT_BURNERS);

pub(crate) const MEND_SECOND_STAGE_WIRE: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.control.second_call = Wire::Whole;
})
.needs(AT_BURNERS);

pub(crate) const MEND_THERMOSTAT_WIRE: Work = Work::new(Place::Hall, Nature::Care, |bay| {
    bay.setup.condition.control.thermostat = Wire::Whole;
})
.needs(&[Need::PowerOff]);

pub(crate) const REPLACE_FILTER: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.air.filter_blocked = 0.0;
})
.needs(&[Need::BlowerDoorOff]);

pub(crate) const OPEN_REGISTERS: Work = Work::new(Place::Hall, Nature::Care, |bay| {
    bay.setup.condition.air.registers_closed = 0.0;
});

pub(crate) const REPLACE_LOW_GAS_SWITCH: Work = Work::new(Place::GasValve, Nature::Part, |bay| {
    bay.setup.condition.control.low_gas = None;
})
.needs(AT_BURNERS)
.there(low_gas_switch);

fn low_gas_switch(setup: &Setup) -> bool {
    setup.furnace.low_gas_switch
}

pub(crate) const BYPASS_LOW_SWITCH: Work = Work::new(Place::PlantRoom, Nature::Bypass, |bay| {
    bay.setup.condition.control.jumpers.low = Jumper::On;
})
.needs(AT_SWITCH);

pub(crate) const BYPASS_HIGH_SWITCH: Work = Work::new(Place::PlantRoom, Nature::Bypass, |bay| {
    bay.setup.condition.control.jumpers.high = Jumper::On;
})
.needs(AT_SWITCH);

pub(crate) const BYPASS_LIMIT: Work = Work::new(Place::PlantRoom, Nature::Bypass, |bay| {
    bay.setup.condition.control.jumpers.limit = Jumper::On;
})
.needs(AT_SWITCH);

pub(crate) const BYPASS_ROLLOUT: Work = Work::new(Place::PlantRoom, Nature::Bypass, |bay| {
    bay.setup.condition.control.jumpers.rollout = Jumper::On;
})
.needs(AT_SWITCH);

pub(crate) const BYPASS_LOW_GAS_SWITCH: Work = Work::new(Place::GasValve, Nature::Bypass, |bay| {
    bay.setup.condition.control.jumpers.low_gas = Jumper::On;
})
.needs(AT_SWITCH)
.there(low_gas_switch);

pub(crate) const REMOVE_BYPASSES: Work = Work::new(Place::PlantRoom, Nature::Care, |bay| {
    bay.setup.condition.control.jumpers = Jumpers::default();
})
.needs(AT_SWITCH)
.there(|setup| setup.condition.control.jumpers.any());

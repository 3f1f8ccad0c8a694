//! Faults of the gas valve, of staging and of fuel conversion. Each takes its severity in SI.

use super::entry::Edit;
use crate::appliance::plate::Fuel;
use crate::catalogue::springs::fit_springs;
use crate::parts::Fitted;
use crate::physics::fluid::Gas;
use crate::setup::{Coil, Contact, HoseState, Setup, SpringSetup, Wire};
use crate::units::PA_PER_INWC;

pub(crate) const FIRST_SET_DOWN: Edit =
    |setup, pa| move_screw(setup.furnace.valve.springs.first_mut(), -pa);

pub(crate) const FIRST_SET_UP: Edit =
    |setup, pa| move_screw(setup.furnace.valve.springs.first_mut(), pa);

pub(crate) const FULL_SET_UP: Edit =
    |setup, pa| move_screw(setup.furnace.valve.springs.top_mut(), pa);

pub(crate) const FULL_SET_DOWN: Edit =
    |setup, pa| move_screw(setup.furnace.valve.springs.top_mut(), -pa);

/// What a stage that is set low still gives, in pascals (0.4 in. w.c.; from memory): at the end of
/// its way out a screw leaves some load on its spring, and the burners still light. Below that
/// nothing burns, nothing can be read as found, and it is no fault of setting any more.
const LEAST_SET_PA: f64 = 0.4 * PA_PER_INWC;

fn move_screw(spring: &mut SpringSetup, by_pa: f64) {
    let turns = spring.found_turns + by_pa / spring.pa_per_turn;
    let least = (LEAST_SET_PA / spring.pa_per_turn).min(spring.found_turns);
    spring.found_turns = turns.clamp(least.min(spring.turns), spring.turns);
}

pub(crate) const DEAD_SECOND_COIL: Edit = |setup, _| setup.condition.valve.second_coil = Coil::Dead;

pub(crate) const NO_SECOND_STAGE_CALL: Edit =
    |setup, _| setup.condition.control.second_call = Wire::Open;

pub(crate) const STUCK_IN_SECOND: Edit =
    |setup, _| setup.condition.control.second_contact = Contact::Closed;

pub(crate) const BLOCKED_INLET_SCREEN: Edit =
    |setup, share| setup.condition.valve.screen_blocked = share;

pub(crate) const NATURAL_SPRINGS_ON_PROPANE: Edit = |setup, _| natural_springs(setup);

pub(crate) const NATURAL_ORIFICES_ON_PROPANE: Edit = |setup, _| natural_orifices(setup);

pub(crate) const UNCONVERTED_ON_PROPANE: Edit = |setup, _| {
    natural_springs(setup);
    natural_orifices(setup);
    setup.furnace.plate.converted_to = None;
    setup.furnace.low_gas_switch = false;
};

pub(crate) const PROPANE_ORIFICES_ON_NATURAL: Edit = |setup, _| {
    let share = propane_hole_share();
    for hole_m in &mut setup.furnace.orifices_m {
        *hole_m *= share;
    }
    let hole_m = share * setup.furnace.plate.figures().orifice_m;
    setup.furnace.orifice_stamp = format!("{:.2} mm", 1e3 * hole_m);
};

pub(crate) const PROPANE_SPRINGS_ON_NATURAL: Edit = |setup, _| {
    let set_pa = setup
        .furnace
        .plate
        .input
        .map(|level, _| if level.is_top() { 10.0 * PA_PER_INWC } else { 4.9 * PA_PER_INWC });
    fit_springs(setup, Fuel::Propane, set_pa);
};

fn natural_springs(setup: &mut Setup) {
    let made_for = &setup.furnace.plate.made_for;
    let set_pa = made_for.manifold.map(|_, target| target.pa);
    fit_springs(setup, Fuel::Natural, set_pa);
}

fn natural_orifices(setup: &mut Setup) {
    let made_for = &setup.furnace.plate.made_for;
    setup.furnace.orifices_m.fill(made_for.orifice_m);
    setup.furnace.orifice_stamp.clone_from(&made_for.orifice_stamp);
}

/// Diameter of a propane orifice against that of natural gas with the same heat at 10 against
/// 3.5 in. w.c.
fn propane_hole_share() -> f64 {
    let (natural, propane) = (Gas::natural(), Gas::propane());
    let heat = natural.heating_value_j_m3 / propane.heating_value_j_m3;
    let speed = (propane.specific_gravity / natural.specific_gravity * 3.5 / 10.0).sqrt();
    (heat * speed).sqrt()
}

pub(crate) const BOTTOMED_FULL_SCREW: Edit = |setup, _| {
    let spring = setup.furnace.valve.springs.top_mut();
    spring.found_turns = spring.turns;
};

pub(crate) const MISSING_STAGE_CAP: Edit = |setup, _| {
    let full = setup.furnace.plate.input.top_level();
    setup.found.caps[full.screw()] = Fitted::Off;
};

pub(crate) const LEAKING_GAS_VALVE: Edit = |setup, flow| setup.condition.valve.lets_by_m3_s = flow;

pub(crate) const SLOW_CLOSING_GAS_VALVE: Edit =
    |setup, time_s| setup.condition.valve.closes_s = time_s;

pub(crate) const BURNER_BOX_HOSE_OFF: Edit =
    |setup, _| setup.condition.valve.box_hose = HoseState::Off;

pub(crate) const HUNTING_VALVE_REGULATOR: Edit = |setup, pa| setup.condition.valve.swing_pa = pa;

//! Faults of the gas valve, of staging and of fuel conversion.

use super::entry::{Entry, Family, Scale, Severity, anywhere};
use super::remedy::Operation::{FitCap, LeaveStageJumper};
use super::remedy::Remedy::{Mend, Operate, ShutOffAndTag, Turn};
use super::remedy::wrong;
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair::{
    CleanInletScreen, FitConversionKit, FitOrifices, FitSprings, MendSecondStageWire, RefitBoxHose,
    RemoveInletScreen, ReplaceControlBoard, ReplaceGasValve, ReplaceHighCoil,
};
use crate::catalogue::springs::fit_springs;
use crate::parts::{Fitted, Screw};
use crate::physics::fluid::Gas;
use crate::setup::{Coil, Contact, HoseState, Setup, SpringSetup, Wire};
use crate::units::PA_PER_INWC;

const FAMILY: Family = Family::Valve;

/// How far a stage is off its plate.
const fn off(typical: &'static str) -> Severity {
    Severity::new(Scale::Pressure, "off the right setting", ("0.2 inH2O", "4 inH2O"), typical)
}

pub(crate) const LOW_STAGE_SET_LOW: Entry = Entry {
    number: 21,
    name: "low_stage_set_low",
    family: FAMILY,
    severity: off("0.6 inH2O").on_propane("1.5 inH2O"),
    cause: "The screw over the low spring of the gas valve is turned out too far.",
    right: &[Turn(Screw::Low)],
    wrong: &[wrong(Turn(Screw::High), "High leaves its plate, and low is as lazy as before.")],
    misfit: anywhere,
    apply: |setup, pa| move_screw(&mut setup.furnace.valve.low, -pa),
};

pub(crate) const LOW_STAGE_SET_HIGH: Entry = Entry {
    number: 22,
    name: "low_stage_set_high",
    family: FAMILY,
    severity: off("0.7 inH2O").on_propane("1.5 inH2O"),
    cause: "The screw over the low spring of the gas valve is turned in too far.",
    right: &[Turn(Screw::Low)],
    wrong: &[wrong(Turn(Screw::High), "High leaves its plate, and low goes on overfiring.")],
    misfit: anywhere,
    apply: |setup, pa| move_screw(&mut setup.furnace.valve.low, pa),
};

pub(crate) const HIGH_STAGE_SET_HIGH: Entry = Entry {
    number: 23,
    name: "high_stage_set_high",
    family: FAMILY,
    severity: off("0.7 inH2O").on_propane("1 inH2O"),
    cause: "The screw over the high spring of the gas valve is turned in too far.",
    right: &[Turn(Screw::High)],
    wrong: &[wrong(Turn(Screw::Low), "Low leaves its plate, and high goes on overfiring.")],
    misfit: anywhere,
    apply: |setup, pa| move_screw(&mut setup.furnace.valve.high, pa),
};

pub(crate) const HIGH_STAGE_SET_LOW: Entry = Entry {
    number: 24,
    name: "high_stage_set_low",
    family: FAMILY,
    severity: off("0.7 inH2O").on_propane("2 inH2O"),
    cause: "The screw over the high spring of the gas valve is turned out too far.",
    right: &[Turn(Screw::High)],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "The manifold does not follow the supply, and everything before it stands \
            too high.",
    )],
    misfit: anywhere,
    apply: |setup, pa| move_screw(&mut setup.furnace.valve.high, -pa),
};

/// What a stage that is set low still gives, in pascals (0.4 in. w.c.; from memory): at the end of its
/// way out a screw leaves some load on its spring, and the burners still light. Below that nothing burns,
/// nothing can be read as found, and it is no fault of setting any more.
const LEAST_SET_PA: f64 = 0.4 * PA_PER_INWC;

fn move_screw(spring: &mut SpringSetup, by_pa: f64) {
    let turns = spring.found_turns + by_pa / spring.pa_per_turn;
    let least = (LEAST_SET_PA / spring.pa_per_turn).min(spring.found_turns);
    spring.found_turns = turns.clamp(least.min(spring.turns), spring.turns);
}

pub(crate) const DEAD_HIGH_COIL: Entry = Entry {
    number: 25,
    name: "dead_high_coil",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The coil that loads the high spring is burned out or unplugged, so that the valve stays \
            on its low spring.",
    right: &[Mend(ReplaceHighCoil)],
    wrong: &[
        wrong(
            Turn(Screw::High),
            "The spring under that screw is never loaded; once the coil works, the \
            furnace is overfired.",
        ),
        wrong(Turn(Screw::Low), "Low set up to high's pressure burns a full fire on low's air."),
    ],
    misfit: anywhere,
    apply: |setup, _| setup.condition.valve.high_coil = Coil::Dead,
};

pub(crate) const NO_SECOND_STAGE_CALL: Entry = Entry {
    number: 26,
    name: "no_second_stage_call",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The thermostat is set up for one stage, or its wire to W2 is open, so that the control \
            never hears of a second stage.",
    right: &[Mend(MendSecondStageWire)],
    wrong: &[wrong(
        Operate(LeaveStageJumper),
        "The furnace then runs on high at every call, however mild the day.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.control.second_call = Wire::Open,
};

pub(crate) const STUCK_IN_HIGH: Entry = Entry {
    number: 27,
    name: "stuck_in_high",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "A wire from W1 to W2 or a welded relay calls the second stage whenever the first is \
            called.",
    right: &[Mend(ReplaceControlBoard)],
    wrong: &[wrong(
        Turn(Screw::High),
        "High set down to pass for low leaves the house cold when it needs high.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.condition.control.second_contact = Contact::Closed,
};

pub(crate) const BLOCKED_INLET_SCREEN: Entry = Entry {
    number: 28,
    name: "blocked_inlet_screen",
    family: FAMILY,
    severity: Severity::new(
        Scale::Share,
        "of the free area behind the inlet port blocked",
        ("0.2", "0.95"),
        "0.62",
    ),
    cause: "Scale and dirt lie on the screen in the gas valve, behind the inlet port.",
    right: &[Mend(CleanInletScreen), Mend(ReplaceGasValve)],
    wrong: &[
        wrong(
            Mend(RemoveInletScreen),
            "The dirt goes to the seats, and they let gas by with no call for heat.",
        ),
        wrong(
            Turn(Screw::High),
            "The screw has no effect until the screen is clean, and then overfires.",
        ),
    ],
    misfit: anywhere,
    apply: |setup, share| setup.condition.valve.screen_blocked = share,
};

pub(crate) const NATURAL_SPRINGS_ON_PROPANE: Entry = Entry {
    number: 29,
    name: "natural_springs_on_propane",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The propane orifices are in, but the gas valve kept its natural-gas springs at their \
            natural-gas setting.",
    right: &[Mend(FitSprings)],
    wrong: &[wrong(
        Turn(Screw::High),
        "Driven to propane's pressure a natural-gas spring comes coil to coil, and \
            the valve regulates no more.",
    )],
    misfit: converted_to_propane,
    apply: |setup, _| natural_springs(setup),
};

pub(crate) const NATURAL_ORIFICES_ON_PROPANE: Entry = Entry {
    number: 30,
    name: "natural_orifices_on_propane",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The propane springs are in, but the natural-gas orifices stayed.",
    right: &[ShutOffAndTag, Mend(FitOrifices)],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "Turned down until the flames look better, the air is still wrong and the \
            other appliances starve.",
    )],
    misfit: converted_to_propane,
    apply: |setup, _| natural_orifices(setup),
};

pub(crate) const UNCONVERTED_ON_PROPANE: Entry = Entry {
    number: 31,
    name: "unconverted_on_propane",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The furnace was moved to propane with nothing changed: natural-gas springs, orifices \
            and plate, no low-gas switch, no label.",
    right: &[ShutOffAndTag, Mend(FitConversionKit)],
    wrong: &[wrong(
        Turn(Screw::Low),
        "The manifold reads what the plate says, and the furnace burns half as much \
            again as it may.",
    )],
    misfit: converted_to_propane,
    apply: |setup, _| {
        natural_springs(setup);
        natural_orifices(setup);
        setup.furnace.plate.converted_to = None;
        setup.furnace.low_gas_switch = false;
    },
};

pub(crate) const PROPANE_ORIFICES_ON_NATURAL: Entry = Entry {
    number: 32,
    name: "propane_orifices_on_natural",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The furnace came back to natural gas, but the propane orifices stayed.",
    right: &[Mend(FitOrifices)],
    wrong: &[wrong(Turn(Screw::High), "No pressure makes up for a hole of the wrong size.")],
    misfit: on_natural,
    apply: |setup, _| {
        let share = propane_hole_share();
        for hole_m in &mut setup.furnace.orifices_m {
            *hole_m *= share;
        }
        let hole_m = share * setup.furnace.plate.figures().orifice_m;
        setup.furnace.orifice_stamp = format!("{:.2} mm", 1e3 * hole_m);
    },
};

pub(crate) const PROPANE_SPRINGS_ON_NATURAL: Entry = Entry {
    number: 33,
    name: "propane_springs_on_natural",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The furnace came back to natural gas with its own orifices, but the gas valve kept its \
            propane springs at their propane setting.",
    right: &[Mend(FitSprings)],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "Trimmed down until the manifold reads right, every other appliance starves.",
    )],
    misfit: on_natural,
    apply: |setup, _| {
        fit_springs(setup, Fuel::Propane, [4.9 * PA_PER_INWC, 10.0 * PA_PER_INWC]);
    },
};

/// Fits a furnace made for natural gas and converted to propane.
fn converted_to_propane(setup: &Setup) -> Option<&'static str> {
    let plate = &setup.furnace.plate;
    let converted = plate.converted_to.as_ref().is_some_and(|to| to.fuel == Fuel::Propane);
    (setup.fuel != Fuel::Propane || plate.made_for.fuel != Fuel::Natural || !converted)
        .then_some("this is no furnace that was converted from natural gas to propane")
}

/// Fits a furnace that burns natural gas.
fn on_natural(setup: &Setup) -> Option<&'static str> {
    let natural =
        setup.fuel == Fuel::Natural && setup.furnace.plate.figures().fuel == Fuel::Natural;
    (!natural).then_some("this furnace does not burn natural gas")
}

fn natural_springs(setup: &mut Setup) {
    let made_for = &setup.furnace.plate.made_for;
    let set_pa = [made_for.low.pa, made_for.high.pa];
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

pub(crate) const BOTTOMED_HIGH_SCREW: Entry = Entry {
    number: 34,
    name: "bottomed_high_screw",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "Somebody drove the high screw to its stop; the coils of the spring touch, and the valve \
            no longer regulates.",
    right: &[Turn(Screw::High), Mend(ReplaceGasValve)],
    wrong: &[wrong(
        Turn(Screw::Supply),
        "The manifold then follows the supply, and the other appliances with it.",
    )],
    misfit: anywhere,
    apply: |setup, _| {
        let high = &mut setup.furnace.valve.high;
        high.found_turns = high.turns;
    },
};

pub(crate) const MISSING_STAGE_CAP: Entry = Entry {
    number: 35,
    name: "missing_stage_cap",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The cap over the high screw is gone, so that the bonnet feels the room beside the \
            burner box, and dirt and hands reach the screw.",
    right: &[Operate(FitCap)],
    wrong: &[wrong(
        Turn(Screw::High),
        "Set with the cap off, it is off the plate with the cap on.",
    )],
    misfit: anywhere,
    apply: |setup, _| setup.found.caps[Screw::High] = Fitted::Off,
};

pub(crate) const LEAKING_GAS_VALVE: Entry = Entry {
    number: 36,
    name: "leaking_gas_valve",
    family: FAMILY,
    severity: Severity::new(
        Scale::Flow,
        "let by with the valve shut",
        ("0.05 ft3/h", "30 ft3/h"),
        "4 ft3/h",
    )
    .on_propane("1.6 ft3/h"),
    cause: "Dirt or wear on the gas valve's seats lets gas into the manifold with no call for heat.",
    right: &[Mend(ReplaceGasValve)],
    wrong: &[wrong(
        Mend(CleanInletScreen),
        "What keeps the seats open lies behind the screen, and gas goes on passing.",
    )],
    misfit: anywhere,
    apply: |setup, flow| setup.condition.valve.lets_by_m3_s = flow,
};

pub(crate) const SLOW_CLOSING_GAS_VALVE: Entry = Entry {
    number: 36,
    name: "slow_closing_gas_valve",
    family: FAMILY,
    severity: Severity::new(
        Scale::Time,
        "in which the seats fall most of their way",
        ("0.3 s", "20 s"),
        "5 s",
    ),
    cause: "Gum on the stem of the gas valve lets its seats fall shut slowly when the call ends.",
    right: &[Mend(ReplaceGasValve)],
    wrong: &[wrong(Turn(Screw::Low), "A lower flame burns on just as long after the call.")],
    misfit: anywhere,
    apply: |setup, time_s| setup.condition.valve.closes_s = time_s,
};

pub(crate) const BURNER_BOX_HOSE_OFF: Entry = Entry {
    number: 37,
    name: "burner_box_hose_off",
    family: FAMILY,
    severity: Severity::PLAIN,
    cause: "The hose that brings the pressure of a sealed burner box to the gas valve's bonnet is \
            off or cracked, and the valve regulates against the room instead.",
    right: &[Mend(RefitBoxHose)],
    wrong: &[wrong(
        Turn(Screw::High),
        "Set with the hose off, both stages are wrong the day it is put back.",
    )],
    misfit: |setup| {
        (setup.furnace.box_suction_pa < 10.0)
            .then_some("this furnace has no sealed burner box (`furnace.box_suction`)")
    },
    apply: |setup, _| setup.condition.valve.box_hose = HoseState::Off,
};

pub(crate) const HUNTING_VALVE_REGULATOR: Entry = Entry {
    number: 38,
    name: "hunting_valve_regulator",
    family: FAMILY,
    severity: Severity::new(
        Scale::Pressure,
        "of swing either way at full rate",
        ("0.05 inH2O", "1 inH2O"),
        "0.35 inH2O",
    ),
    cause: "The guide of the gas valve's regulator is worn; the flow shakes it, and it swings by \
            itself.",
    right: &[Mend(ReplaceGasValve)],
    wrong: &[wrong(
        Turn(Screw::High),
        "It swings around the new setting as it did around the old one.",
    )],
    misfit: anywhere,
    apply: |setup, pa| setup.condition.valve.swing_pa = pa,
};

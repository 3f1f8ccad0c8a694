//! Causes that are no fault of the catalogue but drawn as found: a screw out of its band, a hand
//! valve or a switch that was left shut or off, a conversion that does not fit.

use crate::parts::{Cause, Fitted, Level, OnOff, Port};
use crate::setup::{PlugFound, Setup, SupplyKind};
use crate::units::PA_PER_INWC;

/// By how much a setting lies out of its band before a meter that shows tenths tells of it, in
/// pascals.
const TELLS_PA: f64 = 0.05 * PA_PER_INWC;
/// A zero that manometers come to a job with, in pascals (a little over 0.3 in. w.c., from memory):
/// zeroing it belongs to every reading, and is no finding.
pub const ORDINARY_ZERO_PA: f64 = 0.32 * PA_PER_INWC;
/// Level of a tank at which its gauge speaks for filling it (common practice).
const TANK_LOW: f64 = 0.1;
/// Level at which nobody who says so is wrong: a tenth, and a margin.
const TANK_LOWISH: f64 = 0.15;
/// Turns past hand-tight below which a plug is found loose: it spins between the fingers.
const LOOSE_TURNS: f64 = crate::model::SNUG_TURNS;

/// What is to be named of how a bench is found.
pub(super) fn to_name(setup: &Setup) -> Vec<Cause> {
    let base = setup.sound.as_deref().unwrap_or(setup);
    let mut all = conversion(base);
    if all.is_empty() {
        all.extend(levels(base));
    }
    all.extend(supply(base, TANK_LOW));
    all.extend(stands(base));
    all
}

/// What is so as well, though it is not to be named: whoever writes it is not wrong.
pub(super) fn true_as_well(setup: &Setup) -> Vec<Cause> {
    let mut all = conversion(setup);
    all.extend(levels(setup));
    all.extend(stands(setup));
    all.extend(supply(setup, TANK_LOWISH));
    if setup.supply.lockup_pa > setup.supply.lockup_max_pa {
        all.extend([Cause::SupplySetHigh, Cause::SupplyCreeps]);
    }
    let learned_pa = setup.condition.meter.wear.learned_pa;
    if (setup.meter.zero_error_pa - learned_pa).abs() >= TELLS_PA {
        all.push(Cause::MeterZeroOff);
    }
    if setup.meter.drift_pa.abs() >= TELLS_PA {
        all.extend([Cause::MeterZeroDrifts, Cause::MeterZeroOff]);
    }
    if setup.furnace.plate.figures().fuel == setup.fuel && is_drilled(setup) {
        all.push(Cause::OrificesTooLarge);
    }
    all
}

/// Papers, springs and orifices that do not belong to the gas in the pipes.
fn conversion(setup: &Setup) -> Vec<Cause> {
    let figures = setup.furnace.plate.figures();
    if figures.fuel != setup.fuel {
        return vec![Cause::NotConverted];
    }
    let mut all = Vec::new();
    if setup.furnace.springs_for != setup.fuel {
        all.push(Cause::SpringsForOtherGas);
    }
    if setup.furnace.orifice_stamp != figures.orifice_stamp {
        all.push(Cause::OrificesForOtherGas);
    }
    all
}

/// Orifices of more area than their stamp says.
fn is_drilled(setup: &Setup) -> bool {
    let written_m = setup.furnace.plate.figures().orifice_m;
    let stamped = setup.furnace.orifice_stamp == setup.furnace.plate.figures().orifice_stamp;
    stamped && setup.furnace.orifices_m.iter().any(|&hole_m| hole_m > 1.005 * written_m)
}

/// Levels whose springs give what lies out of the band.
fn levels(setup: &Setup) -> Vec<Cause> {
    let figures = setup.furnace.plate.figures();
    let set_pa = setup.furnace.valve.set_pa();
    let mut all = Vec::new();
    for &level in set_pa.list() {
        let Some(&target) = figures.manifold.get(level) else { continue };
        let off_pa = set_pa[level] - target.pa;
        if target.band().out_by_pa(set_pa[level]) > TELLS_PA {
            all.push(set(level, off_pa > 0.0));
        }
    }
    all
}

/// The cause of a level that is set too high or too low.
#[must_use]
pub fn set(level: Level, high: bool) -> Cause {
    match (level, high) {
        (Level::Only, false) => Cause::ManifoldSetLow,
        (Level::Only, true) => Cause::ManifoldSetHigh,
        (Level::Low, false) => Cause::LowSetLow,
        (Level::Low, true) => Cause::LowSetHigh,
        (Level::High, false) => Cause::HighSetLow,
        (Level::High, true) => Cause::HighSetHigh,
    }
}

/// The level whose spring a cause says is set wrong, and whether it is set too high.
#[must_use]
pub fn set_level(cause: Cause) -> Option<(Level, bool)> {
    let mut all = Level::ALL.into_iter().flat_map(|level| [(level, false), (level, true)]);
    all.find(|&(level, high)| set(level, high) == cause)
}

fn supply(setup: &Setup, tank_low: f64) -> Vec<Cause> {
    let mut all = Vec::new();
    let (least_pa, most_pa) = setup.supply.delivery_limits_pa;
    if setup.supply.set_pa < least_pa - TELLS_PA {
        all.push(Cause::SupplySetLow);
    }
    if setup.supply.set_pa > most_pa + TELLS_PA {
        all.push(Cause::SupplySetHigh);
    }
    match setup.supply.kind {
        SupplyKind::Tank { level, .. } if level <= tank_low => all.push(Cause::TankNearlyEmpty),
        SupplyKind::Tank { .. } | SupplyKind::Meter { .. } => {}
    }
    all
}

/// Valves, switches, caps and plugs that are not found as they belong.
fn stands(setup: &Setup) -> Vec<Cause> {
    let found = &setup.found;
    let mut all = Vec::new();
    if found.manual_valve.is_shut() {
        all.push(Cause::ManualValveShut);
    } else if !found.manual_valve.is_open() {
        all.push(Cause::ManualValvePartOpen);
    }
    if found.valve_switch == OnOff::Off {
        all.push(Cause::ValveSwitchOff);
    }
    if found.furnace_switch == OnOff::Off {
        all.push(Cause::FurnaceSwitchOff);
    }
    let levels = setup.furnace.plate.input.list();
    if levels.iter().any(|level| found.caps[level.screw()] == Fitted::Off) {
        all.push(Cause::CapMissing);
    }
    for (port, cause) in
        [(Port::Inlet, Cause::InletPlugLoose), (Port::Manifold, Cause::ManifoldPlugLoose)]
    {
        let straight = setup.condition.ports[port].plug == PlugFound::Straight;
        if straight && found.plugs_past_hand[port] < LOOSE_TURNS {
            all.push(cause);
        }
    }
    all
}

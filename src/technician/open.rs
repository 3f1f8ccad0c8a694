//! Isolating, and opening a port.

use super::diagnosis::Diagnosis;
use super::hose;
use super::mend::{check, check_opened, mend_open};
use super::plan::{Step, Technician, act, go, think};
use super::task::reach;
use crate::bench::action::{Action, Height};
use crate::bench::part::{Place, Port};
use crate::bench::repair::Repair;
use crate::bench::seen::{Display, Seen};
use crate::procedure::Goal;

/// Thermostat off, furnace at rest, power off, manual valve shut, burner door off, valve switch
/// off: three barriers, each tried.
pub(super) fn isolate() -> Vec<Step> {
    vec![reach(Goal::Isolated)]
}

/// Zero the meter in open air, open the isolated port, mend what waits for that, put adapter and
/// hose on, give gas back.
pub(super) fn open_port(port: Port) -> Vec<Step> {
    let mut steps = vec![
        reach(Goal::Isolated),
        reach(Goal::MeterWarm),
        think(flat_battery),
        reach(Goal::PlugOut(port)),
    ];
    if port == Port::Inlet {
        steps.push(mend_open());
    }
    steps.extend(hose_on_and_gas(port));
    if port == Port::Inlet {
        steps.push(think(hose::hisses));
        steps.extend(check_joint(port));
        steps.push(check_opened());
        steps.extend(hose::quick(port));
    }
    steps
}

/// The hose on, the meter zeroed before; then gas.
fn hose_on_and_gas(port: Port) -> Vec<Step> {
    let mut steps = vec![reach(Goal::HoseOn(port))];
    steps.extend(give_gas());
    steps
}

/// Switched on and dark: a fresh battery, before anything is measured.
fn flat_battery(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let repair = Repair::ReplaceMeterBattery;
    if seen.meter.display != Display::Dark || me.careless || me.know.has_mended(repair) {
        return Vec::new();
    }
    me.know.note(Diagnosis::MeterBatteryFlat);
    me.know.mended.push(repair);
    vec![
        go(Place::PlantRoom),
        act(Action::Mend(repair)),
        reach(Goal::MeterWarm),
        think(flat_battery),
    ]
}

/// Manual valve slowly on, valve switch on, power on.
pub(super) fn give_gas() -> Vec<Step> {
    vec![go(Place::GasValve), reach(Goal::GasOn), act(Action::Sniff(Height::Floor))]
}

/// Leak fluid on a port's joint, long enough to judge, wiped, written down.
pub(super) fn check_joint(port: Port) -> Vec<Step> {
    check(port.joint())
}

/// Zeroes the meter again and puts its hose back on the adapter, with the furnace isolated.
pub(super) fn hose_back_on(port: Port) -> Vec<Step> {
    let mut steps = vec![reach(Goal::MeterWarm)];
    steps.extend(hose_on_and_gas(port));
    steps.extend(check_joint(port));
    steps
}

/// Lets the gas trapped in the hose seep out at a barb that is only half on, then takes it off.
pub(super) fn hose_off() -> Vec<Step> {
    vec![reach(Goal::HoseOff), reach(Goal::HandEmpty)]
}

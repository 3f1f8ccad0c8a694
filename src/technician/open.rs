//! Isolating, and opening a port.

use super::diagnosis::Diagnosis;
use super::hose;
use super::mend::{check, check_opened, mend_open};
use super::mind::Mind;
use super::sequence::Sequence;
use super::step::{Step, act, fluid_first, give_gas, go, reach, think};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Place, Port};
use crate::procedure::Goal;
use crate::senses::seen::{Display, Seen};

/// Zero the meter in open air, open the isolated port, mend what waits for that, put adapter and
/// hose on, give gas back.
pub(super) fn open_port(port: Port) -> Vec<Step> {
    let mut steps = vec![
        reach(Goal::Isolated),
        reach(Goal::MeterWarm),
        think(flat_battery),
        think(|me, _| {
            let ready = me.works(Sequence::ZeroesFirst).then(|| reach(Goal::MeterReady));
            ready.into_iter().collect()
        }),
        reach(Goal::PlugOut(port)),
    ];
    if port == Port::Inlet {
        steps.push(mend_open());
    }
    steps.push(reach(Goal::HoseOn(port)));
    if port == Port::Inlet {
        steps.push(fluid_first());
    }
    steps.extend(give_gas());
    if port == Port::Inlet {
        steps.push(think(hose::hisses));
        steps.extend(check(port.joint()));
        steps.push(check_opened());
        steps.extend(hose::quick(port));
    }
    steps
}

/// Switched on and dark: a fresh battery, before anything is measured.
fn flat_battery(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let repair = Repair::ReplaceMeterBattery;
    if seen.display() != Some(Display::Dark) || me.careless || me.know.has_mended(repair) {
        return Vec::new();
    }
    me.know.note(Diagnosis::MeterBatteryFlat);
    me.know.repairs.done.push(repair);
    vec![
        go(Place::PlantRoom),
        act(Action::Mend(repair)),
        reach(Goal::MeterWarm),
        think(flat_battery),
    ]
}

//! Repairs: whether they can be done here and now, and what they leave behind.

use super::done::Done;
use super::event::{EventKind, Outcome};
use super::job::Job;
use super::reach;
use super::refusal::Refusal;
use crate::catalogue::repair::{Beside, Nature, Need, Repair, RepairContext};
use crate::model::{Fill, Model, PortState};
use crate::parts::{Door, Fitted, OnOff, Place, Port};
use crate::senses::seen;
use crate::setup::Setup;
use enum_map::EnumMap;

/// Pressure below which nothing is felt at an opened joint, in pascals (0.1 in. w.c.).
const LET_OFF_PA: f64 = 25.0;

/// Does a repair, refused where something is in its way.
pub(super) fn mend(model: &mut Model, job: &mut Job, repair: Repair) -> Done {
    repair_place(model, repair.place())?;
    if !repair.fits(&model.setup) {
        return Err(Refusal::NotFitted);
    }
    for need in repair.needs() {
        ready(model, *need)?;
    }
    model.note_screws();
    let before = model.setup.clone();
    let ports_before = model.things.ports;
    let ice_before = model.gas.ice();
    let sound = before.sound.clone().unwrap_or_else(|| Box::new(before.clone()));
    let mut beside = Beside::default();
    repair.apply(&mut RepairContext {
        setup: &mut model.setup,
        sound: &sound,
        beside: &mut beside,
    });
    if let Some(turns) = beside.new_plugs_turns {
        model.fit_plugs(turns);
    }
    if let Some(port) = beside.cracked {
        model.things.ports[port].crack();
    }
    let ice = if beside.thawed { 0.0 } else { ice_before };
    let changed = anything_but_screws(&before, &model.setup)
        || ice != ice_before
        || worse_ports(&ports_before) != worse_ports(&model.things.ports);
    if repair.nature() == Nature::Bypass && !changed {
        return Err(Refusal::AlreadySo);
    }
    model.renew(repair.renews());
    model.refit(&before, repair.renews(), ice);
    for joint in repair.disturbs() {
        model.disturb(*joint);
    }
    let plate = &model.setup.furnace.plate;
    let plate = (*plate != before.furnace.plate).then(|| Box::new(plate.clone()));
    job.built_from.get_or_insert_with(|| Box::new(before));
    job.mended.push(repair);
    job.sheet_mut().done.push(seen::Done { repair, tick: model.tick });
    let outcome = if changed { Outcome::Changed } else { Outcome::Nothing };
    Ok(vec![EventKind::Mended { repair, outcome, plate }])
}

fn repair_place(model: &Model, place: Place) -> Result<(), Refusal> {
    let furnace = [Place::PlantRoom, Place::GasValve];
    let there = core::slice::from_ref(&place);
    reach::place(model, if place == Place::PlantRoom { &furnace } else { there })
}

/// Refuses unless what a repair asks for is so.
fn ready(model: &Model, need: Need) -> Result<(), Refusal> {
    let things = &model.things;
    let (fine, why) = match need {
        Need::Shut(hand_valve) => {
            let handle = things.handles[hand_valve];
            (handle.is_shut(), Refusal::ShutFirst(hand_valve))
        }
        Need::NoPressure => {
            (model.gas.pressure_pa(Port::Inlet) < LET_OFF_PA, Refusal::PressureLeft)
        }
        Need::PowerOff => (things.furnace_switch == OnOff::Off, Refusal::PowerOn),
        Need::BurnerDoorOff => return reach::burner_door_off(model),
        Need::BlowerDoorOff => (things.doors[Door::Blower] == Fitted::Off, Refusal::DoorInTheWay),
        Need::Open(port) => (things.ports[port].is_empty(), Refusal::PortNotOpen),
        Need::HoseFree => (model.things.hose_port().is_none(), Refusal::HoseInTheWay),
    };
    if fine { Ok(()) } else { Err(why) }
}

/// Whether anything but the turns of the stage screws and what has tripped is another.
fn anything_but_screws(before: &Setup, after: &Setup) -> bool {
    let mut as_before = after.clone();
    let (kept, was) = (&mut as_before.furnace.valve, &before.furnace.valve);
    for &level in was.springs.list() {
        kept.springs[level].found_turns = was.springs[level].found_turns;
    }
    as_before != *before
}

/// What of the ports counts as worse or better: a crack, a plug across its thread.
fn worse_ports(ports: &EnumMap<Port, PortState>) -> EnumMap<Port, (bool, bool)> {
    ports.map(|_, port| (port.cracked, matches!(port.fill, Fill::Leaning(_))))
}

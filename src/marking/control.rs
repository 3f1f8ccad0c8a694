//! Evidence of how everything was put back, what was proven, and how the job ended.

use super::evaluate::Brief;
use super::ledger::{Hit, Ledger};
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::hands::action::{Action, Contact, NotDone, Topic};
use crate::hands::event::Happening;
use crate::measure::felt::is_felt;
use crate::parts::{Ending, Firing, Fitted, OnOff, Opening, Port, Spot, Subject, Window};

pub(super) fn jumper_left(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if end.stage_jumper == Fitted::Off {
        return Vec::new();
    }
    vec![Hit::new(tick, "a wire between R and W2", "every call runs on high")]
}

pub(super) fn valve_switch_off(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if l.said_shut_off() || end.valve_switch == OnOff::On {
        return Vec::new();
    }
    vec![Hit::new(tick, "valve switch: off", "no gas reaches the burners")]
}

pub(super) fn cock_not_open(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if l.said_shut_off() {
        return Vec::new();
    }
    let mut hits = Vec::new();
    for (name, handle) in
        [("manual valve", end.manual_valve), ("supply shut-off", end.supply_valve)]
    {
        if !handle.is_open() {
            let state = if handle.is_shut() { "closed" } else { "part open" };
            hits.push(Hit::new(
                tick,
                format!("{name}: {state}, {handle}"),
                "it opens at 90°, in line with its pipe",
            ));
        }
    }
    hits
}

pub(super) fn controls_not_restored(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    let found = &l.setup.found;
    let mut hits = Vec::new();
    if !l.said_shut_off() && end.tag == Fitted::On {
        hits.push(Hit::new(tick, "the warning tag still hangs there", "the furnace is in service"));
    }
    // However it was found: without power it answers no call.
    if !l.said_shut_off() && end.furnace_switch == OnOff::Off {
        hits.push(Hit::new(tick, "service switch off", "the furnace has no power"));
    }
    for (which, window) in end.windows {
        if window == Opening::Open {
            let name = match which {
                Window::PlantRoom => "plant room",
                Window::Hall => "hall",
            };
            let seen = format!("the window of the {name} stands open");
            hits.push(Hit::new(tick, seen, "it was closed as found"));
        }
    }
    let wanted_half_f = l.setup.house.setpoint_half_f;
    let moved = end.setpoint_half_f != wanted_half_f || end.heating != found.thermostat_mode;
    if moved && !l.said_shut_off() {
        hits.push(Hit::new(
            tick,
            format!("thermostat at {} °F", f64::from(end.setpoint_half_f) / 2.0),
            format!("found at {} °F", f64::from(wanted_half_f) / 2.0),
        ));
    }
    hits
}

pub(super) fn door_off(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    end.doors
        .into_iter()
        .filter(|(_, door)| *door == Fitted::Off)
        .map(|(door, _)| {
            let name = door.label().to_lowercase();
            Hit::new(tick, format!("{name}: off"), "it stood on as found")
        })
        .collect()
}

pub(super) fn others_not_restored(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    end.neighbors
        .iter()
        .filter_map(|(neighbor, now)| {
            let name = neighbor.label().to_lowercase();
            let found = l.setup.found.neighbors[neighbor];
            let moved = now.switch != found || !now.handle.is_open();
            // With the supply shut off for good, no flame can stand.
            let no_gas = l.left_shut_off() && end.supply_valve.is_shut();
            let went_out = found == OnOff::On && now.gone_out && !no_gas;
            (moved || went_out).then(|| {
                let truth = if moved { "it is theirs" } else { "its flame went out" };
                Hit::new(tick, format!("{name} not as found"), truth)
            })
        })
        .collect()
}

pub(super) fn no_final_cycle(l: &Ledger) -> Vec<Hit> {
    if l.said_shut_off() || l.left().is_none() {
        return Vec::new();
    }
    let touched = l
        .did()
        .filter(|did| {
            matches!(
                did.action,
                Action::Turn { .. }
                    | Action::Cap { .. }
                    | Action::Plug { .. }
                    | Action::Adapter { .. }
                    | Action::ValveSwitch(_)
                    | Action::FurnaceSwitch(_)
                    | Action::StageJumper(_)
                    | Action::Mend(_)
                    | Action::Cock { .. }
            )
        })
        .map(|did| did.index)
        .last();
    let Some(touched) = touched else { return Vec::new() };
    let seen = l.events[touched..].iter().any(|event| matches!(event.what, Happening::Cycle));
    if seen {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        "no cycle from the thermostat after the last work",
        "low, high and shut-down were not seen together",
    )]
}

/// Whether it was left shut off after gas in the air: nobody looks for springs then.
pub(super) fn left_for_gas(l: &Ledger) -> bool {
    l.said_shut_off() && super::safety::alarm_before(l, l.events.len())
}

pub(super) fn conversion_not_proven(l: &Ledger) -> Vec<Hit> {
    if left_for_gas(l) {
        return Vec::new();
    }
    let mut needed =
        vec![Subject::Plate, Subject::ConversionLabel, Subject::SpringMark, Subject::Orifices];
    if l.setup.fuel == Fuel::Propane {
        needed.push(Subject::LowGasSwitch);
    }
    let missing: Vec<&str> = needed
        .into_iter()
        .filter(|subject| !l.did().any(|did| *did.action == Action::Look(*subject)))
        .map(Subject::label)
        .collect();
    if missing.is_empty() {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        format!("not looked at: {}", missing.join(", ").to_lowercase()),
        "whether the furnace is made for this fuel was taken on trust",
    )]
}

/// Whether the supply's faults on this job are all too small for anything that is read, seen, heard or
/// smelt, and no inlet was written outside the plate: nobody can tell them.
fn theirs_is_hidden(l: &Ledger) -> bool {
    let sound = l.setup.sound.as_deref().unwrap_or(&l.setup);
    let theirs = |fault: &Fault| fault.entry().right.contains(&Remedy::CallOwner);
    let mut faults = l.setup.faults.iter().filter(|(fault, _)| theirs(fault)).peekable();
    faults.peek().is_some()
        && !l.wrote().any(|(_, _, fact)| {
            fact.reading.port == Port::Inlet && super::grounds::outside(l, fact)
        })
        && faults.all(|(fault, severity)| !is_felt(sound, *fault, *severity))
}

/// Whether what is wrong is for the owner of the supply.
fn is_theirs(l: &Ledger, brief: &Brief) -> bool {
    brief.right_endings.contains(&Ending::SupplyOwnerCalled)
        || l.setup.faults.iter().any(|(fault, _)| fault.entry().right.contains(&Remedy::CallOwner))
}

/// Whether the owner of the supply has to be called.
pub(super) fn owner_is_due(l: &Ledger, brief: &Brief) -> bool {
    // Shut off for a reason of the furnace's own, the supply has nothing to do with it.
    !brief.right_endings.contains(&Ending::InService) && is_theirs(l, brief) && !theirs_is_hidden(l)
}

pub(super) fn owner_not_called(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    if !owner_is_due(l, brief) {
        return Vec::new();
    }
    let owner = &l.setup.card.supply_owner;
    let call = l.did().filter(|did| *did.action == Action::Call(Contact::SupplyOwner)).last();
    let Some(call) = call else {
        return vec![Hit::new(
            l.last_tick(),
            format!("{owner} was not called"),
            "the supply is out of its limits, and theirs",
        )];
    };
    // A call with nothing read has nothing to say.
    let known =
        l.wrote().any(|(index, _, fact)| index < call.index && fact.reading.port == Port::Inlet);
    if known || super::safety::alarm_before(l, call.index) {
        return Vec::new();
    }
    vec![Hit::new(
        call.tick,
        format!("{owner} was called"),
        "no inlet pressure stood on the sheet yet: there was nothing to tell them",
    )]
}

/// Whether there was nothing to tell the owner of the supply before an event: no fault of theirs on this
/// job, no inlet pressure written that lies outside the plate, no gas in the air.
pub(super) fn nothing_to_tell(l: &Ledger, brief: &Brief, before: usize) -> bool {
    let read = l.wrote().any(|(index, _, fact)| {
        index < before && fact.reading.port == Port::Inlet && super::grounds::outside(l, fact)
    });
    let (least, most) = l.setup.supply.delivery_limits_pa;
    let set_right = (least..=most).contains(&l.setup.supply.set_pa);
    !is_theirs(l, brief) && !read && set_right && !super::safety::alarm_before(l, before)
}

/// A call to the owner of the supply with nothing to tell.
pub(super) fn needless_call(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    let call = l.did().find(|did| *did.action == Action::Call(Contact::SupplyOwner));
    let Some(call) = call.filter(|call| nothing_to_tell(l, brief, call.index)) else {
        return Vec::new();
    };
    let seen = format!("{} was called", l.setup.card.supply_owner);
    vec![Hit::new(call.tick, seen, "the supply was in order, and no number said otherwise")]
}

/// Whether it was left to burn a gas that plate and label are not for, whatever else is right.
fn unfit_for_its_gas(l: &Ledger, ending: Ending) -> bool {
    ending != Ending::ShutOff && l.plate().figures().fuel != l.setup.fuel
}

pub(super) fn wrong_ending(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    let Some((tick, said, _)) = l.left() else { return Vec::new() };
    // What nobody can tell need not be called for.
    let untold = said.ending == Ending::InService
        && brief.right_endings.contains(&Ending::SupplyOwnerCalled)
        && theirs_is_hidden(l);
    let right = untold || brief.right_endings.contains(&said.ending);
    if right && !unfit_for_its_gas(l, said.ending) {
        return Vec::new();
    }
    let name = |ending: &Ending| match ending {
        Ending::InService => "back in service",
        Ending::SupplyOwnerCalled => "in service, owner of the supply called",
        Ending::ShutOff => "shut off and tagged",
    };
    let right: Vec<&str> = brief.right_endings.iter().map(name).collect();
    let truth = if unfit_for_its_gas(l, said.ending) {
        "neither plate nor label is for the gas that it burns".to_owned()
    } else {
        format!("right here: {}", right.join("; or "))
    };
    vec![Hit::new(tick, format!("ended: {}", name(&said.ending)), truth)]
}

pub(super) fn not_tagged(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if !l.said_shut_off() || l.left_shut_off() {
        return Vec::new();
    }
    let tag = if end.tag == Fitted::On { "tag on" } else { "no tag" };
    vec![Hit::new(tick, format!("{tag}, manual valve at {}", end.manual_valve), "said: shut off")]
}

pub(super) fn householder_not_told(l: &Ledger) -> Vec<Hit> {
    let told = l.did().any(|did| *did.action == Action::Tell(Topic::Unsafe));
    if !l.said_shut_off() || told {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), "nothing was said about the shut-off", "the house has no heat")]
}

pub(super) fn not_done_unsaid(l: &Ledger) -> Vec<Hit> {
    let Some((tick, said, _)) = l.left() else { return Vec::new() };
    if said.ending == Ending::ShutOff {
        return Vec::new();
    }
    let measured = measured_work(l);
    let unsaid: Vec<&str> = [
        (NotDone::Combustion, "combustion"),
        (NotDone::TemperatureRise, "temperature rise"),
        (NotDone::GasRate, "gas rate"),
    ]
    .into_iter()
    .filter(|(what, _)| !said.not_done.contains(what) && !measured.contains(what))
    .map(|(_, name)| name)
    .collect();
    if unsaid.is_empty() {
        return Vec::new();
    }
    vec![Hit::new(tick, format!("not named: {}", unsaid.join(", ")), "none of it was done here")]
}

/// Work beyond the pressures that was really done, as what was written from instruments shows: the
/// flue analysed with the burners on high, both temperatures of the air on low and on high, the dial
/// timed on high.
fn measured_work(l: &Ledger) -> Vec<NotDone> {
    let wrote = |spot: Spot, stage: Firing| {
        l.events.iter().any(|event| match &event.what {
            Happening::WroteMeasured { written, firing } => {
                written.spot == spot && *firing == stage
            }
            _ => false,
        })
    };
    let air = |stage| wrote(Spot::ReturnAir, stage) && wrote(Spot::SupplyAir, stage);
    let mut done = Vec::new();
    if wrote(Spot::Flue, Firing::High) {
        done.push(NotDone::Combustion);
    }
    if air(Firing::Low) && air(Firing::High) {
        done.push(NotDone::TemperatureRise);
    }
    if wrote(Spot::MeterDial, Firing::High) {
        done.push(NotDone::GasRate);
    }
    done
}

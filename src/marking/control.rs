//! Evidence of how everything was put back, what was proven, and how the job ended.

use super::brief::Brief;
use super::deed::lower;
use super::grounds;
use super::ledger::{Hit, Ledger};
use super::numbers::numbers;
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::hands::action::{Action, Contact, NotDone, Topic};
use crate::hands::event::EventKind;
use crate::measure::felt::is_felt;
use crate::parts::{Ending, Fitted, HandValve, Level, OnOff, Opening, Spot, Subject, Window};
use crate::words::decimal;

pub(super) fn jumper_left(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if end.stage_jumper == Fitted::Off {
        return Vec::new();
    }
    vec![Hit::new(tick, t!("seen-jumper-left"), t!("true-jumper-left"))]
}

pub(super) fn valve_switch_off(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if l.said_shut_off() || end.valve_switch == OnOff::On {
        return Vec::new();
    }
    vec![Hit::new(tick, t!("seen-valve-switch-off"), t!("true-valve-switch-off"))]
}

pub(super) fn hand_valve_not_open(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if l.said_shut_off() {
        return Vec::new();
    }
    let mut hits = Vec::new();
    for (hand_valve, handle) in
        [(HandValve::Furnace, end.manual_valve), (HandValve::Supply, end.supply_valve)]
    {
        if !handle.is_open() {
            let (valve, angle) = (lower(hand_valve.label()), handle.to_string());
            let seen = match handle.is_shut() {
                true => t!("seen-valve-closed", valve = valve, angle = angle),
                false => t!("seen-valve-part-open", valve = valve, angle = angle),
            };
            hits.push(Hit::new(tick, seen, t!("true-valve-not-open")));
        }
    }
    hits
}

pub(super) fn controls_not_restored(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    let found = &l.setup.found;
    let mut hits = Vec::new();
    if !l.said_shut_off() && end.tag == Fitted::On {
        hits.push(Hit::new(tick, t!("seen-tag-hangs"), t!("true-tag-hangs")));
    }
    // However it was found: without power it answers no call.
    if !l.said_shut_off() && end.furnace_switch == OnOff::Off {
        hits.push(Hit::new(tick, t!("seen-no-power"), t!("true-no-power")));
    }
    for (which, window) in end.windows {
        if window == Opening::Open {
            let room = match which {
                Window::PlantRoom => "furnace-room",
                Window::Hall => "hall",
            };
            let seen = t!("seen-window-open", room = room);
            hits.push(Hit::new(tick, seen, t!("true-window-open")));
        }
    }
    let wanted_half_f = l.setup.house.setpoint_half_f;
    let moved = end.setpoint_half_f != wanted_half_f || end.heating != found.thermostat_mode;
    if moved && !l.said_shut_off() {
        hits.push(Hit::new(
            tick,
            t!("seen-thermostat", degrees = decimal(f64::from(end.setpoint_half_f) / 2.0, 1)),
            t!("true-thermostat", degrees = decimal(f64::from(wanted_half_f) / 2.0, 1)),
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
            let seen = t!("seen-door-off", door = lower(door.label()));
            Hit::new(tick, seen, t!("true-door-off"))
        })
        .collect()
}

pub(super) fn others_not_restored(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    end.other_appliances
        .iter()
        .filter_map(|(appliance, now)| {
            let found = l.setup.found.other_appliances[appliance];
            let moved = now.switch != found || !now.handle.is_open();
            // With the supply shut off for good, no flame can stand.
            let no_gas = l.left_shut_off() && end.supply_valve.is_shut();
            let went_out = found == OnOff::On && now.gone_out && !no_gas;
            (moved || went_out).then(|| {
                let seen = t!("seen-neighbor-moved", appliance = lower(appliance.label()));
                let truth = if moved { t!("true-neighbor-moved") } else { t!("true-neighbor-out") };
                Hit::new(tick, seen, truth)
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
                    | Action::HandValve { .. }
            )
        })
        .map(|did| did.index)
        .last();
    let Some(touched) = touched else { return Vec::new() };
    let seen = l.events[touched..].iter().any(|event| matches!(event.what, EventKind::Cycle));
    if seen {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), t!("seen-no-cycle"), t!("true-no-cycle"))]
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
        t!("seen-not-looked-at", subjects = lower(&missing.join(", "))),
        t!("true-not-looked-at"),
    )]
}

/// Whether the supply's faults on this job are all too small for anything that is read, seen, heard or
/// smelt, and no inlet was written outside the plate: nobody can tell them.
fn theirs_is_hidden(l: &Ledger) -> bool {
    let sound = l.setup.sound.as_deref().unwrap_or(&l.setup);
    let theirs = |fault: &Fault| fault.entry().right.contains(&Remedy::CallOwner);
    let mut faults = l.setup.faults.iter().filter(|(fault, _)| theirs(fault)).peekable();
    faults.peek().is_some()
        && !grounds::inlet_outside(l, &numbers(l), l.events.len())
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
            t!("seen-owner-not-called", owner = owner),
            t!("true-owner-not-called"),
        )];
    };
    // A call without the numbers, or what was seen, has nothing to say.
    if grounds::speaks_for_a_call(l, call.index) {
        return Vec::new();
    }
    vec![Hit::new(call.tick, t!("seen-owner-called", owner = owner), t!("true-called-unread"))]
}

/// Whether there was nothing to tell the owner of the supply before an event: no fault of theirs on this
/// job, no inlet pressure written that lies outside the plate, no gas in the air.
pub(super) fn nothing_to_tell(l: &Ledger, brief: &Brief, before: usize) -> bool {
    let read = grounds::inlet_outside(l, &numbers(l), before);
    let (least, most) = l.setup.supply.delivery_limits_pa;
    let set_right = (least..=most).contains(&l.setup.supply.set_pa);
    !is_theirs(l, brief) && !read && set_right && !super::safety::alarm_before(l, before)
}

/// A call to the owner of the supply with nothing to tell, and one to the emergency number with no gas
/// in the air.
pub(super) fn needless_call(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    let first = |contact| l.did().find(|did| *did.action == Action::Call(contact));
    let owner = first(Contact::SupplyOwner).filter(|call| nothing_to_tell(l, brief, call.index));
    let owner = owner.map(|call| {
        let seen = t!("seen-owner-called", owner = &l.setup.card.supply_owner);
        Hit::new(call.tick, seen, t!("true-called-needlessly"))
    });
    let emergency = first(Contact::Emergency).filter(|call| !grounds::gas_found(l, call.index));
    let emergency = emergency
        .map(|call| Hit::new(call.tick, t!("seen-emergency-called"), t!("true-no-emergency")));
    owner.into_iter().chain(emergency).collect()
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
        Ending::InService => t!("ending-in-service"),
        Ending::SupplyOwnerCalled => t!("ending-owner-called"),
        Ending::ShutOff => t!("ending-shut-off"),
    };
    let truth = if unfit_for_its_gas(l, said.ending) {
        t!("true-ending-wrong-gas").to_owned()
    } else {
        let right = brief.right_endings.iter().map(name).map(str::to_owned);
        let or = |first: String, second: String| t!("ending-or", first = first, second = second);
        t!("true-ending", endings = right.reduce(or).unwrap_or_default())
    };
    vec![Hit::new(tick, t!("seen-ending", ending = name(&said.ending)), truth)]
}

pub(super) fn not_tagged(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    if !l.said_shut_off() || l.left_shut_off() {
        return Vec::new();
    }
    let angle = end.manual_valve.to_string();
    let seen = match end.tag {
        Fitted::On => t!("seen-tagged-open", angle = angle),
        Fitted::Off => t!("seen-not-tagged", angle = angle),
    };
    vec![Hit::new(tick, seen, t!("true-not-tagged"))]
}

pub(super) fn householder_not_told(l: &Ledger) -> Vec<Hit> {
    let told = l.did().any(|did| *did.action == Action::Tell(Topic::Unsafe));
    if !l.said_shut_off() || told {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), t!("seen-not-told"), t!("true-not-told"))]
}

pub(super) fn not_done_unsaid(l: &Ledger) -> Vec<Hit> {
    let Some((tick, said, _)) = l.left() else { return Vec::new() };
    if said.ending == Ending::ShutOff {
        return Vec::new();
    }
    let measured = measured_work(l);
    let unsaid: Vec<&str> = [
        (NotDone::Combustion, t!("undone-combustion")),
        (NotDone::TemperatureRise, t!("undone-temperature-rise")),
        (NotDone::GasRate, t!("undone-gas-rate")),
    ]
    .into_iter()
    .filter(|(what, _)| !said.not_done.contains(what) && !measured.contains(what))
    .map(|(_, name)| name)
    .collect();
    if unsaid.is_empty() {
        return Vec::new();
    }
    vec![Hit::new(tick, t!("seen-not-named", work = unsaid.join(", ")), t!("true-not-named"))]
}

/// Work beyond the pressures that was really done, as what was written from instruments shows: the
/// flue analysed at the full rate, both temperatures of the air at each level, the dial timed at
/// the full rate.
fn measured_work(l: &Ledger) -> Vec<NotDone> {
    let wrote = |spot: Spot, stage: Option<Level>| {
        l.events.iter().any(|event| {
            matches!(&event.what, EventKind::WroteMeasured { written, firing }
                if written.spot == spot && *firing == stage)
        })
    };
    let air = |level| wrote(Spot::ReturnAir, Some(level)) && wrote(Spot::SupplyAir, Some(level));
    let full = l.levels().last().copied();
    let mut done = Vec::new();
    if wrote(Spot::Flue, full) {
        done.push(NotDone::Combustion);
    }
    if l.levels().iter().copied().all(air) {
        done.push(NotDone::TemperatureRise);
    }
    if wrote(Spot::MeterDial, full) {
        done.push(NotDone::GasRate);
    }
    done
}

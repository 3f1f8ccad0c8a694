//! Evidence of whom was called, how the job ended, and what was said at the end.

use super::brief::Brief;
use super::deed::ending_words;
use super::ledger::{Hit, Ledger};
use super::numbers::numbers;
use super::{grounds, safety};
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::hands::action::{Action, Contact, Topic};
use crate::measure::felt::is_felt;
use crate::parts::{Ending, Fitted};

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
    !is_theirs(l, brief) && !read && set_right && !safety::alarm_before(l, before)
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

/// The right endings of a job, in words.
fn right_ones(brief: &Brief) -> String {
    let right = brief.right_endings.iter().map(|it| ending_words(*it).to_owned());
    let or = |first: String, second: String| t!("ending-or", first = first, second = second);
    t!("true-ending", endings = right.reduce(or).unwrap_or_default())
}

/// Left shut off though it should run: the house is cold.
pub(super) fn shut_off_without_need(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    let Some((tick, said, _)) = l.left() else { return Vec::new() };
    if said.ending != Ending::ShutOff || brief.right_endings.contains(&Ending::ShutOff) {
        return Vec::new();
    }
    let seen = t!("seen-ending", ending = ending_words(said.ending));
    vec![Hit::new(tick, seen, right_ones(brief))]
}

/// Left in use otherwise than the finding asks.
pub(super) fn wrong_ending(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    let in_use = l.left().filter(|(_, said, _)| said.ending != Ending::ShutOff);
    let Some((tick, said, _)) = in_use else { return Vec::new() };
    // What nobody can tell need not be called for.
    let untold = said.ending == Ending::InService
        && brief.right_endings.contains(&Ending::SupplyOwnerCalled)
        && theirs_is_hidden(l);
    let right = untold || brief.right_endings.contains(&said.ending);
    let unfit = l.plate().figures().fuel != l.setup.fuel;
    if right && !unfit {
        return Vec::new();
    }
    // It burns, and nothing but shutting it off is right.
    let must_stop = brief.right_endings.iter().all(|it| *it == Ending::ShutOff);
    let truth = if unfit { t!("true-ending-wrong-gas").to_owned() } else { right_ones(brief) };
    let seen = t!("seen-ending", ending = ending_words(said.ending));
    vec![Hit::new(tick, seen, truth).grave_if(unfit || must_stop)]
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

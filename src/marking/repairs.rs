//! Evidence of repairs: dangerous ones, needless ones, safety devices left bypassed.

use super::brief::Brief;
use super::deed::lower;
use super::ledger::{Caught, Hit, Ledger};
use crate::catalogue::repair::{Nature, Repair};
use crate::hands::event::{EventKind, Outcome};
use crate::parts::Ending;

/// A repair that was done.
pub(super) struct Mended {
    /// Its place in the list of events.
    pub index: usize,
    /// Moment of the repair, in ticks.
    pub tick: u64,
    pub repair: Repair,
    pub outcome: Outcome,
}

/// Every repair that was done, in order.
pub(super) fn mended(l: &Ledger) -> impl Iterator<Item = Mended> {
    l.events.iter().enumerate().filter_map(|(index, event)| {
        let EventKind::Mended { repair, outcome, .. } = event.what else { return None };
        Some(Mended { index, tick: event.tick, repair, outcome })
    })
}

fn did(it: &Mended) -> String {
    t!("seen-repair", repair = lower(it.repair.label()))
}

pub(super) fn safety_bypassed(l: &Ledger) -> Vec<Hit> {
    let left = match l.left() {
        Some((tick, _, left)) => left
            .jumpers
            .named()
            .into_iter()
            .map(|device| Hit::new(tick, t!("seen-bypass", device = device), t!("true-bypass")))
            .collect(),
        None => Vec::new(),
    };
    if left.is_empty() { burned_on_a_bypass(l).into_iter().collect() } else { left }
}

/// The first time that the burners fired with a wire across a safety device. Taken off before the
/// end it is caught, but for that time nothing stood guard.
fn burned_on_a_bypass(l: &Ledger) -> Option<Hit> {
    let mut wired = false;
    let mut burning = false;
    for event in &l.events {
        if let EventKind::Mended { repair, .. } = &event.what {
            let wires = repair.nature() == Nature::Bypass;
            wired = *repair != Repair::RemoveBypasses && (wired || wires);
        }
        if let EventKind::Fired { to, .. } = &event.what {
            burning = to.is_some();
        }
        if wired && burning {
            let mut hit = Hit::new(event.tick, t!("seen-bypass-fired"), t!("true-bypass-fired"));
            hit.caught = Caught::InTime;
            return Some(hit);
        }
    }
    None
}

pub(super) fn dangerous_repair(l: &Ledger) -> Vec<Hit> {
    mended(l)
        .filter(|it| it.repair.nature() == Nature::Danger)
        .map(|it| Hit::new(it.tick, did(&it), t!("true-dangerous-repair")))
        .collect()
}

/// Repairs of a kind that changed nothing.
fn in_vain(l: &Ledger, nature: Nature) -> impl Iterator<Item = Mended> {
    mended(l).filter(move |it| it.repair.nature() == nature && it.outcome == Outcome::Nothing)
}

pub(super) fn needless_repair(l: &Ledger, first: usize) -> Vec<Hit> {
    in_vain(l, Nature::Part)
        .take(first)
        .map(|it| Hit::new(it.tick, did(&it), t!("true-needless-repair")))
        .collect()
}

/// What was swapped or cleaned with nothing wrong there, after the first so many.
pub(super) fn on_suspicion(l: &Ledger, nature: Nature, free: usize) -> Vec<Hit> {
    in_vain(l, nature)
        .enumerate()
        .skip(free)
        .map(|(i, it)| {
            let truth = t!("true-on-suspicion", number = i + 1);
            Hit::new(it.tick, did(&it), truth)
        })
        .collect()
}

/// Work on a supply, which is a slip where it belongs to somebody else; and on the pipe behind it
/// where the job cannot end in service without its owner.
pub(super) fn on_supply(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    mended(l)
        .filter(|it| {
            let trunk = it.repair == Repair::ReplaceTrunk;
            it.repair.is_on_supply() || (trunk && !brief.right_endings.contains(&Ending::InService))
        })
        .map(|it| {
            let truth = t!("true-repair-not-yours", owner = &l.setup.card.supply_owner);
            Hit::new(it.tick, did(&it), truth)
        })
        .collect()
}

//! Evidence of repairs: dangerous ones, needless ones, safety devices left bypassed.

use super::evaluate::Brief;
use super::ledger::{Caught, Hit, Ledger};
use crate::catalogue::repair::{Nature, Repair};
use crate::hands::event::{Happening, Outcome};
use crate::parts::{Ending, Firing};
use crate::setup::SupplyRight;

/// A repair that was done.
pub(super) struct Mended {
    /// Its place in the list of events.
    pub index: usize,
    /// When, in ticks.
    pub tick: u64,
    /// Which.
    pub repair: Repair,
    /// What it changed.
    pub outcome: Outcome,
}

/// Every repair that was done, in order.
pub(super) fn mended(l: &Ledger) -> impl Iterator<Item = Mended> {
    l.events.iter().enumerate().filter_map(|(index, event)| match event.what {
        Happening::Mended { repair, outcome, .. } => {
            Some(Mended { index, tick: event.tick, repair, outcome })
        }
        _ => None,
    })
}

fn did(it: &Mended) -> String {
    format!("done: {}", it.repair.label().to_lowercase())
}

pub(super) fn safety_bypassed(l: &Ledger) -> Vec<Hit> {
    let left = match l.left() {
        Some((tick, _, left)) => left
            .jumpers
            .named()
            .into_iter()
            .map(|name| {
                Hit::new(
                    tick,
                    format!("a wire lies across the {name}"),
                    "the control finds it closed whatever happens",
                )
            })
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
        match &event.what {
            Happening::Mended { repair: Repair::RemoveBypasses, .. } => wired = false,
            Happening::Mended { repair, .. } => wired |= repair.nature() == Nature::Bypass,
            Happening::Fired { to, .. } => burning = *to != Firing::Out,
            _ => {}
        }
        if wired && burning {
            let seen = "the burners fired with a wire across a safety switch";
            let mut hit = Hit::new(event.tick, seen, "nothing would have stopped them");
            hit.caught = Caught::InTime;
            return Some(hit);
        }
    }
    None
}

pub(super) fn dangerous_repair(l: &Ledger) -> Vec<Hit> {
    mended(l)
        .filter(|it| it.repair.nature() == Nature::Danger)
        .map(|it| {
            Hit::new(it.tick, did(&it), "it makes the installation more dangerous than it was")
        })
        .collect()
}

/// Repairs of a kind that changed nothing.
fn in_vain(l: &Ledger, nature: Nature) -> impl Iterator<Item = Mended> {
    mended(l).filter(move |it| it.repair.nature() == nature && it.outcome == Outcome::Nothing)
}

pub(super) fn needless_repair(l: &Ledger, first: usize) -> Vec<Hit> {
    in_vain(l, Nature::Part)
        .take(first)
        .map(|it| Hit::new(it.tick, did(&it), "the old part was sound"))
        .collect()
}

/// What was swapped or cleaned with nothing wrong there, after the first so many.
pub(super) fn on_suspicion(l: &Ledger, nature: Nature, free: usize) -> Vec<Hit> {
    in_vain(l, nature)
        .enumerate()
        .skip(free)
        .map(|(i, it)| {
            let truth = format!("it was number {} with nothing wrong", i + 1);
            Hit::new(it.tick, did(&it), truth)
        })
        .collect()
}

/// Work on a supply that belongs to somebody else; and on the pipe behind it where the job cannot end
/// in service without its owner.
pub(super) fn supply_not_yours(l: &Ledger, brief: &Brief) -> Vec<Hit> {
    if l.setup.card.supply == SupplyRight::Trainee {
        return Vec::new();
    }
    mended(l)
        .filter(|it| {
            let trunk = it.repair == Repair::ReplaceTrunk;
            it.repair.is_on_supply() || (trunk && !brief.right_endings.contains(&Ending::InService))
        })
        .map(|it| {
            let truth = format!("it is for {}", l.setup.card.supply_owner);
            Hit::new(it.tick, did(&it), truth)
        })
        .collect()
}

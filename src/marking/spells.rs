//! Spells of reading as they were told, and those of them that are at rest after flow.
//!
//! At rest before the first light-up and at rest after flow the furnace draws the same: nothing. So what
//! came before tells them apart: a spell at rest is one after flow where the furnace fired in an earlier
//! spell at the inlet, and the hose has not been moved since.

use super::ledger::Ledger;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::{Port, Stage};
use crate::senses::meter_history::Spell;
use crate::units::TICK_S;

/// Spells told before an event, each as it was told last, in order.
pub(super) fn shown_before(l: &Ledger, index: usize) -> Vec<Spell> {
    let mut spells: Vec<Spell> = Vec::new();
    for event in &l.events[..index] {
        let EventKind::Showed(spell) = event.what else { continue };
        match spells.last_mut() {
            Some(last) if last.shown.since == spell.shown.since => *last = spell,
            Some(_) | None => spells.push(spell),
        }
    }
    spells
}

/// A spell as it was told last.
pub(super) fn as_it_ended(l: &Ledger, wanted: &Spell) -> Option<Spell> {
    l.events.iter().rev().find_map(|event| {
        let EventKind::Showed(spell) = event.what else { return None };
        (spell.shown.since == wanted.shown.since).then_some(spell)
    })
}

/// Whether it is at rest at the inlet.
fn is_at_rest(spell: &Spell) -> bool {
    spell.is(Port::Inlet, Stage::Rest)
}

/// Beginnings of those of these spells that are at rest after flow, in ticks.
pub(super) fn after_flow(l: &Ledger, known: &[Spell]) -> Vec<u64> {
    let moves = |action: &Action| matches!(action, Action::HoseOn { .. } | Action::HoseOff);
    let moved = |from: u64, to: u64| {
        l.did().any(|did| moves(did.action) && (from..=to).contains(&did.tick))
    };
    let mut fired_until = None;
    let mut after = Vec::new();
    for spell in known.iter().filter(|spell| spell.port == Port::Inlet) {
        let since = spell.shown.since;
        if spell.demand.firing.is_some() {
            fired_until = Some(spell.shown.until);
        } else if is_at_rest(spell) && fired_until.is_some_and(|until| !moved(until, since)) {
            after.push(since);
        }
    }
    after
}

/// For how long the inlet was watched at rest, in seconds, by whoever read it in this spell and wrote it
/// at this place in the list: from the first of the spells at rest that follow each other to the end of
/// this one.
pub(super) fn watched_s(l: &Ledger, spell: &Spell, index: usize) -> f64 {
    let until = as_it_ended(l, spell).unwrap_or(*spell).shown.until;
    let known = shown_before(l, index);
    let earlier = known.iter().rev().skip_while(|one| one.shown.since > spell.shown.since);
    let at_rest = earlier.take_while(|one| is_at_rest(one));
    let since = at_rest.map(|one| one.shown.since).last().unwrap_or(spell.shown.since);
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let ticks = until.saturating_sub(since) as f64;
    ticks * TICK_S
}

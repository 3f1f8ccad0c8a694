//! Evidence of burners whose gas was changed and whose flue gas nobody looked at.

use super::deed::lower;
use super::ended::in_use;
use super::ledger::{Hit, Ledger};
use super::repairs::Mended;
use crate::catalogue::repair::{Moves, Nature};
use crate::hands::event::{EventKind, Outcome};
use crate::parts::{Level, Spot};

/// Whether a repair changed the gas to the burners.
fn changes_gas(it: &Mended) -> bool {
    let moves = it.repair.moves() == Moves::Manifold && !it.repair.is_on_reading();
    moves && (it.outcome == Outcome::Changed || it.repair.nature() == Nature::Part)
}

/// The last work that changed the gas to the burners: its place in the list, and what it was.
pub(super) fn last_change(l: &Ledger) -> Option<(usize, String)> {
    let turned = l.events.iter().enumerate().rev().find_map(|(index, event)| {
        let EventKind::Turned { screw, .. } = event.what else { return None };
        screw.level().map(|_| (index, lower(screw.label())))
    });
    let mends = super::repairs::mended(l).filter(changes_gas);
    let mended = mends.map(|it| (it.index, lower(it.repair.label()))).last();
    [turned, mended].into_iter().flatten().max_by_key(|(index, _)| *index)
}

/// Whether the flue was analysed at the full rate after an event.
fn analysed_after(l: &Ledger, index: usize) -> bool {
    l.events[index..].iter().any(|event| {
        matches!(&event.what, EventKind::WroteMeasured { written, firing }
            if written.spot == Spot::Flue && firing.is_some_and(Level::is_top))
    })
}

pub(super) fn not_taken(l: &Ledger) -> Vec<Hit> {
    let Some((index, what)) = last_change(l).filter(|_| in_use(l)) else { return Vec::new() };
    if analysed_after(l, index) {
        return Vec::new();
    }
    vec![Hit::new(
        l.last_tick(),
        t!("seen-flue-not-analyzed", work = what),
        t!("true-flue-not-analyzed"),
    )]
}

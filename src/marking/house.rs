//! Evidence of the house and its people: air, and what they were told.

use super::ledger::{Hit, Ledger};
use super::{conversion, safety};
use crate::appliance::plate::Fuel;
use crate::hands::action::{Action, Topic};
use crate::hands::event::EventKind;
use crate::parts::{Opening, Window};

/// On propane, burners lit by whoever had a hand on the furnace, with the furnace room's window not
/// opened before.
pub(super) fn not_aired(l: &Ledger) -> Vec<Hit> {
    if l.setup.fuel == Fuel::Natural {
        return Vec::new();
    }
    let Some((lit, tick)) = first_lit(l) else { return Vec::new() };
    let open = Action::Window { window: Window::PlantRoom, to: Opening::Open };
    let aired = l
        .did()
        .take_while(|did| did.index < lit)
        .any(|did| *did.action == open || did.before.windows[Window::PlantRoom] == Opening::Open);
    if aired {
        return Vec::new();
    }
    vec![Hit::new(tick, t!("seen-not-aired"), t!("true-not-aired"))]
}

/// Where and when the burners lit first after a hand was on the furnace.
pub(super) fn first_lit(l: &Ledger) -> Option<(usize, u64)> {
    let first = safety::first_hand(l)?;
    let lights = |what: &EventKind| matches!(what, EventKind::Fired { from: None, to: Some(_) });
    let mut later = l.events.iter().enumerate().skip(first.index);
    later.find(|(_, event)| lights(&event.what)).map(|(index, event)| (index, event.tick))
}

/// Whether the householder was told something before an event.
pub(super) fn told(l: &Ledger, topic: Topic, before: usize) -> bool {
    l.did().any(|did| did.index < before && *did.action == Action::Tell(topic))
}

pub(super) fn work_not_announced(l: &Ledger) -> Vec<Hit> {
    let Some(first) = safety::first_hand(l) else { return Vec::new() };
    // With gas in the air there is something else to be said.
    if told(l, Topic::WorkStarts, first.index) || safety::alarm_before(l, first.index) {
        return Vec::new();
    }
    vec![Hit::new(first.tick, t!("seen-not-announced"), t!("true-not-announced"))]
}

pub(super) fn drill_not_told(l: &Ledger) -> Vec<Hit> {
    if told(l, Topic::GasSmellDrill, l.events.len()) || conversion::left_for_gas(l) {
        return Vec::new();
    }
    vec![Hit::new(l.last_tick(), t!("seen-drill-not-told"), t!("true-drill-not-told"))]
}

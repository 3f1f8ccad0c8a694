//! What can be done at a place without touching any part, and with what is in hand.

use super::list::{ActionChoice, List, put_down_label};
use crate::hands::action::{Action, Contact, Topic};
use crate::parts::{Height, Place, Tool};
use crate::senses::seen::Seen;

/// What can be done here: walk, smell, probe, call, shout.
#[must_use]
pub fn here(seen: &Seen) -> Vec<ActionChoice> {
    let mut list = List::default();
    super::measure::shown(seen, &mut list);
    smell(seen, &mut list);
    walks(seen, &mut list);
    calls(&mut list);
    list.add(t!("tell-get-out"), Action::Tell(Topic::GetOut));
    list.choices
}

/// What can be done with what is in hand.
#[must_use]
pub fn in_hand(seen: &Seen) -> Vec<ActionChoice> {
    let mut list = List::default();
    if let Some(held) = seen.hand {
        if held == Tool::GasDetector {
            probe(seen, &mut list);
        }
        super::measure::held(held, seen, &mut list);
        list.add(put_down_label(held), Action::PutDown);
    }
    list.choices
}

/// Ways to every other place.
pub(super) fn walks(seen: &Seen, list: &mut List) {
    for &place in Place::ALL {
        if place != seen.place {
            list.add(walk_label(place), Action::Go(place));
        }
    }
}

fn walk_label(place: Place) -> &'static str {
    match place {
        Place::Yard => t!("walk-yard"),
        Place::PlantRoom => t!("walk-plant-room"),
        Place::GasValve => t!("walk-gas-valve"),
        Place::Hall => t!("walk-hall"),
        Place::Away => t!("walk-away"),
    }
}

fn smell(seen: &Seen, list: &mut List) {
    sniff(Height::Head, list);
    sniff(Height::Floor, list);
    if seen.hand == Some(Tool::GasDetector) {
        probe(seen, list);
    }
}

/// The nose at a height.
pub(super) fn sniff(height: Height, list: &mut List) {
    let label = match height {
        Height::Floor => t!("sniff-floor"),
        Height::Head => t!("sniff-head"),
    };
    list.add(label, Action::Sniff(height));
}

/// The detector at both heights; how to take it, when it is not in hand.
pub(super) fn probe(seen: &Seen, list: &mut List) {
    probe_at(Height::Floor, seen, list);
    probe_at(Height::Head, seen, list);
}

/// The detector at a height; how to take it, when it is not in hand.
pub(super) fn probe_at(height: Height, seen: &Seen, list: &mut List) {
    list.need(Tool::GasDetector, seen);
    let label = match height {
        Height::Floor => t!("probe-floor"),
        Height::Head => t!("probe-head"),
    };
    list.add(label, Action::Probe(height));
}

/// Calls to the supply's owner and to the emergency number.
pub(super) fn calls(list: &mut List) {
    for contact in [Contact::SupplyOwner, Contact::Emergency] {
        list.add(call_label(contact), Action::Call(contact));
    }
}

fn call_label(contact: Contact) -> &'static str {
    match contact {
        Contact::SupplyOwner => t!("call-supply-owner"),
        Contact::Emergency => t!("call-emergency"),
    }
}

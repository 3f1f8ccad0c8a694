//! What can be done at a place without touching any part, and with what is in hand.

use super::{List, Way, call_label, put_down_label};
use crate::hands::action::{Action, Contact, Topic};
use crate::parts::{Height, Place, Tool};
use crate::senses::seen::Seen;

/// What can be done here: walk, smell, probe, call, shout.
#[must_use]
pub fn here(seen: &Seen) -> Vec<Way> {
    let mut list = List::default();
    super::measure::shown(seen, &mut list);
    smell(seen, &mut list);
    walks(seen, &mut list);
    calls(&mut list);
    list.add("Call out: leave the house", Action::Tell(Topic::GetOut));
    list.ways
}

/// What can be done with what is in hand.
#[must_use]
pub fn in_hand(seen: &Seen) -> Vec<Way> {
    let mut list = List::default();
    if let Some(held) = seen.hand {
        if held == Tool::GasDetector {
            probe(seen, &mut list);
        }
        super::measure::held(held, seen, &mut list);
        list.add(put_down_label(held), Action::PutDown);
    }
    list.ways
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
        Place::Yard => "Go out to the yard",
        Place::PlantRoom => "Go to the plant room",
        Place::GasValve => "Kneel at the gas valve",
        Place::Hall => "Go to the hall",
        Place::Away => "Leave the premises, to a safe distance",
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
        Height::Floor => "Smell the air just above the floor",
        Height::Head => "Smell the air at head height",
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
        Height::Floor => "Hold the detector just above the floor",
        Height::Head => "Hold the detector at head height",
    };
    list.add(label, Action::Probe(height));
}

/// Calls.
pub(super) fn calls(list: &mut List) {
    for contact in [Contact::SupplyOwner, Contact::Emergency] {
        list.add(call_label(contact), Action::Call(contact));
    }
}

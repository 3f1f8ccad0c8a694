//! The numbered list of what can be done now: at the chosen part, with what is in hand, and here.

mod letters;

use egui::Key;

use super::parts;
use super::ways::{self, Way};
use crate::catalogue::repair::{Nature, Repair};
use crate::hands::action::Action;
use crate::senses::seen::Seen;

pub use letters::Letters;

/// Keys of the list, in its order.
const KEYS: [Key; 26] = [
    Key::A,
    Key::B,
    Key::C,
    Key::D,
    Key::E,
    Key::F,
    Key::G,
    Key::H,
    Key::I,
    Key::J,
    Key::K,
    Key::L,
    Key::M,
    Key::N,
    Key::O,
    Key::P,
    Key::Q,
    Key::R,
    Key::S,
    Key::T,
    Key::U,
    Key::V,
    Key::W,
    Key::X,
    Key::Y,
    Key::Z,
];

/// Where an offer belongs in the list.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Group {
    /// At the chosen part.
    Part,
    /// With what is in hand.
    Hand,
    /// At this place, whatever part is chosen.
    Here,
}

/// One thing that can be done, with its key.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// The heading that it stands under.
    pub group: Group,
    /// The action with its label.
    pub way: Way,
    /// Its key, while there are keys left.
    pub key: Option<Key>,
}

/// What can be done now. Each action comes once.
#[must_use]
pub fn offers(chosen: Option<&str>, seen: &Seen) -> Vec<Offer> {
    let at_part = chosen.map(|part| ways::ways(part, seen)).unwrap_or_default();
    let lists = [
        (Group::Part, at_part),
        (Group::Hand, ways::in_hand(seen)),
        (Group::Here, ways::here(seen)),
    ];
    let mut offers: Vec<Offer> = Vec::new();
    for (group, list) in lists {
        for way in list {
            if !offers.iter().any(|offer| offer.way.action == way.action) {
                let key = KEYS.get(offers.len()).copied();
                offers.push(Offer { group, way, key });
            }
        }
    }
    offers
}

/// Puts a repair that was chosen once, and not yet done, as a question.
pub fn ask(offers: &mut [Offer], asked: Option<Repair>) {
    let Some(repair) = asked else { return };
    for offer in offers.iter_mut().filter(|offer| offer.way.action == Action::Mend(repair)) {
        offer.way.label = t!("offers-again", repair = repair.label());
    }
}

/// Whether a repair is asked for twice: where a part is swapped or harm may be done. Cleaning and
/// clearing go at once.
#[must_use]
pub fn is_asked_twice(repair: Repair) -> bool {
    match repair.nature() {
        Nature::Care => false,
        Nature::Part | Nature::Danger | Nature::Bypass => true,
    }
}

/// Heading of a group.
#[must_use]
pub fn heading(group: Group, chosen: Option<&str>) -> String {
    match group {
        Group::Part => chosen.map(parts::name).unwrap_or_default(),
        Group::Hand => t!("offers-hand").into(),
        Group::Here => t!("offers-here").into(),
    }
}

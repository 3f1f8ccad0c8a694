//! The numbered list of what can be done now: at the chosen part, with what is in hand, and here.

mod letters;

use egui::Key;

use super::actions::{self, ActionChoice};
use super::parts;
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

/// Where an item belongs in the list.
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
pub struct MenuItem {
    /// The heading that it stands under.
    pub group: Group,
    /// The action with its label.
    pub choice: ActionChoice,
    /// Its key, while there are keys left.
    pub key: Option<Key>,
}

/// What can be done now. Each action comes once.
#[must_use]
pub fn menu(chosen: Option<&str>, seen: &Seen) -> Vec<MenuItem> {
    let at_part = chosen.map(|part| actions::choices(part, seen)).unwrap_or_default();
    let lists = [
        (Group::Part, at_part),
        (Group::Hand, actions::in_hand(seen)),
        (Group::Here, actions::here(seen)),
    ];
    let mut menu: Vec<MenuItem> = Vec::new();
    for (group, list) in lists {
        for choice in list {
            if !menu.iter().any(|item| item.choice.action == choice.action) {
                let key = KEYS.get(menu.len()).copied();
                menu.push(MenuItem { group, choice, key });
            }
        }
    }
    menu
}

/// Puts a repair that was chosen once, and not yet done, as a question.
pub fn ask(menu: &mut [MenuItem], asked: Option<Repair>) {
    let Some(repair) = asked else { return };
    for item in menu.iter_mut().filter(|item| item.choice.action == Action::Mend(repair)) {
        item.choice.label = t!("offers-again", repair = repair.label());
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

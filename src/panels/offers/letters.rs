//! Letters that fingers can learn: what was offered once keeps its letter for the job, whatever
//! else comes and goes in the list.

use egui::Key;

use super::{KEYS, Offer};
use crate::hands::action::Action;
use crate::panels::ways::Way;

/// Which letter each thing that was offered has had last. Empty at the start of a job.
#[derive(Debug, Default)]
pub struct Letters {
    /// The one used last stands at the end.
    had: Vec<(Same, Key)>,
}

/// What makes two offers the same to a hand: what they do; of a setpoint, which moves with every
/// press, what they say.
#[derive(Debug, Clone, PartialEq)]
enum Same {
    Does(Action),
    Says(String),
}

impl Same {
    fn of(way: &Way) -> Self {
        if let Action::Setpoint(_) = &way.action {
            Self::Says(way.label.clone())
        } else {
            Self::Does(way.action.clone())
        }
    }
}

impl Letters {
    /// Gives every offer its letter: the one that it had before, unless something in the same list
    /// had it first; else one that nobody has had, or the one that has been out of use longest.
    pub fn give(&mut self, offers: &mut [Offer]) {
        let mut taken: Vec<Key> = Vec::new();
        for offer in offers.iter_mut() {
            let before = self.of(&Same::of(&offer.way)).filter(|key| !taken.contains(key));
            taken.extend(before);
            offer.key = before;
        }
        for offer in offers.iter_mut().filter(|offer| offer.key.is_none()) {
            offer.key = self.free(&taken);
            taken.extend(offer.key);
        }
        for offer in offers.iter() {
            self.note(Same::of(&offer.way), offer.key);
        }
    }

    fn of(&self, same: &Same) -> Option<Key> {
        self.had.iter().find(|(other, _)| other == same).map(|(_, key)| *key)
    }

    fn free(&self, taken: &[Key]) -> Option<Key> {
        let last_used = |key: &Key| self.had.iter().rposition(|(_, had)| had == key);
        KEYS.into_iter().filter(|key| !taken.contains(key)).min_by_key(last_used)
    }

    fn note(&mut self, same: Same, key: Option<Key>) {
        self.had.retain(|(other, _)| *other != same);
        self.had.extend(key.map(|key| (same, key)));
    }
}

//! Letters that fingers can learn: what was offered once keeps its letter for the job, whatever
//! else comes and goes in the list.

use egui::Key;

use super::{KEYS, MenuItem};
use crate::hands::action::Action;
use crate::panels::actions::ActionChoice;

/// Which letter each thing that was offered has had last. Empty at the start of a job.
#[derive(Debug, Default)]
pub struct Letters {
    /// The one used last stands at the end.
    had: Vec<(Same, Key)>,
}

/// What makes two items the same to a hand: what they do; of a setpoint, which moves with every
/// press, what they say.
#[derive(Debug, Clone, PartialEq)]
enum Same {
    Does(Action),
    Says(String),
}

impl Same {
    fn of(choice: &ActionChoice) -> Self {
        if let Action::Setpoint(_) = &choice.action {
            Self::Says(choice.label.clone())
        } else {
            Self::Does(choice.action.clone())
        }
    }
}

impl Letters {
    /// Gives every item its letter: the one that it had before, unless something in the same list
    /// had it first; else one that nobody has had, or the one that has been out of use longest.
    pub fn give(&mut self, menu: &mut [MenuItem]) {
        let mut taken: Vec<Key> = Vec::new();
        for item in menu.iter_mut() {
            let before = self.of(&Same::of(&item.choice)).filter(|key| !taken.contains(key));
            taken.extend(before);
            item.key = before;
        }
        for item in menu.iter_mut().filter(|item| item.key.is_none()) {
            item.key = self.free(&taken);
            taken.extend(item.key);
        }
        for item in menu.iter() {
            self.note(Same::of(&item.choice), item.key);
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

//! The list that the choices at a part are gathered in.

use crate::hands::action::Action;
use crate::parts::Tool;
use crate::senses::seen::Seen;

/// One thing that can be done.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct ActionChoice {
    /// What a person reads on the button.
    pub label: String,
    /// The action that the button gives to the bench.
    pub action: Action,
}

/// A list being filled; nothing comes twice.
#[derive(Debug, Default)]
pub(super) struct List {
    pub choices: Vec<ActionChoice>,
}

impl List {
    pub(super) fn add(&mut self, label: impl Into<String>, action: Action) {
        if !self.choices.iter().any(|choice| choice.action == action) {
            self.choices.push(ActionChoice { label: label.into(), action });
        }
    }

    /// Adds how the wanted tool comes into the hand, unless it is there.
    pub(super) fn need(&mut self, tool: Tool, seen: &Seen) {
        match seen.hand {
            Some(held) if held == tool => {}
            Some(held) => self.add(put_down_label(held), Action::PutDown),
            None => self.add(take_label(tool), Action::Take(tool)),
        }
    }

    /// Adds how the hand gets free, unless it is.
    pub(super) fn need_free_hand(&mut self, seen: &Seen) {
        if let Some(held) = seen.hand {
            self.add(put_down_label(held), Action::PutDown);
        }
    }
}

pub(super) fn take_label(tool: Tool) -> String {
    t!("way-take", tool = tool.label().to_lowercase())
}

pub(super) fn put_down_label(tool: Tool) -> String {
    t!("way-put-down", tool = tool.label().to_lowercase())
}

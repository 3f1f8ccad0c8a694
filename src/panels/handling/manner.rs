//! How the hand goes about it at a part, in a few words.

use super::part::{Handling, handling};
use super::turn::Turning;
use crate::hands::action::Action;
use crate::panels::actions;
use crate::parts::Height;
use crate::senses::seen::Seen;

/// What the hand can do on a part itself, in a few words; nothing where only the list opens.
#[must_use]
pub fn manner(part: &str, seen: &Seen) -> Option<String> {
    let Handling { press, turning, lever, stroke, hold, pull } = handling(part, Height::Head, seen);
    if lever.is_some() {
        return Some(t!("handling-lever").into());
    }
    if let Some(first) = press.last() {
        let known = actions::choices(part, seen).into_iter().find(|it| it.action == *first);
        return known.map(|choice| t!("handling-press", act = choice.label));
    }
    if let Some(stroke) = stroke {
        let wipes = matches!(stroke, Action::Wipe(_));
        return Some(if wipes { t!("handling-wipe") } else { t!("handling-brush") }.into());
    }
    if turning != Turning::default() {
        return Some(t!("handling-turn").into());
    }
    if let Some(hold) = hold {
        let probes = matches!(hold, Action::Probe(_));
        return Some(if probes { t!("handling-probe") } else { t!("handling-smell") }.into());
    }
    pull.map(|_| t!("handling-pull").into())
}

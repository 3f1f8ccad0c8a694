//! The next step in words, and what the coach asks of a job card.

use crate::hands::action::Action;
use crate::panels::sheet::Cell;
use crate::parts::{Duty, Level, Place, Port, Stage};

/// The next step of the job, in words and as an action.
#[derive(Debug, Clone, PartialEq)]
pub struct Hint {
    /// What to do and why, in a sentence or two.
    pub text: String,
    /// The part it is about, to be marked in the drawing.
    pub part: Option<&'static str>,
    /// The action meant, where it is a single one; none where waiting or writing is meant.
    pub action: Option<Action>,
    /// The cell of the sheet to write in, where writing is meant.
    pub cell: Option<Cell>,
    /// Seconds to let pass before it is done.
    pub patience_s: u32,
}

impl Hint {
    pub(super) fn act(text: impl Into<String>, part: &'static str, action: Action) -> Self {
        Self {
            text: text.into(),
            part: Some(part),
            action: Some(action),
            cell: None,
            patience_s: 0,
        }
    }

    pub(super) fn go(text: impl Into<String>, place: Place) -> Self {
        Self {
            text: text.into(),
            part: None,
            action: Some(Action::Go(place)),
            cell: None,
            patience_s: 0,
        }
    }

    pub(super) fn wait(text: impl Into<String>, part: &'static str) -> Self {
        Self { text: text.into(), part: Some(part), action: None, cell: None, patience_s: 0 }
    }

    pub(super) fn write(text: impl Into<String>, cell: Cell, patience_s: u32) -> Self {
        Self { text: text.into(), part: Some("meter"), action: None, cell: Some(cell), patience_s }
    }

    pub(super) fn say(text: impl Into<String>) -> Self {
        Self { text: text.into(), part: None, action: None, cell: None, patience_s: 0 }
    }
}

/// What the job card asks for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct CardAsks<'a> {
    /// How long a hold without flow must last, in seconds.
    pub hold_s: f64,
    /// How long after a change a reading counts, in seconds.
    pub settle_s: f64,
    /// Work beyond the pressures.
    pub required: &'a [Duty],
}

/// Readings in the order in which the coach leads to them: the hose goes to the manifold port
/// first, the inlet is read whole before any screw is touched.
pub(super) fn order(levels: &'static [Level]) -> Vec<(Port, Stage)> {
    let manifold = levels.iter().map(|&level| (Port::Manifold, Stage::Firing(level)));
    manifold.chain(Stage::of(levels).map(|stage| (Port::Inlet, stage))).collect()
}

//! What an action leads to beside being done.

use super::event::EventKind;
use super::refusal::Refusal;

/// What happened beside the action itself, or why it cannot be done.
pub(crate) type Done = Result<Vec<EventKind>, Refusal>;

/// Done, with nothing more to tell.
pub(crate) fn plain() -> Done {
    Ok(Vec::new())
}

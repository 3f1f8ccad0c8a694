//! What an action leads to beside being done.

use super::event::Happening;
use super::refusal::Refusal;

/// What happened beside the action itself, or why it cannot be done.
pub(crate) type Done = Result<Vec<Happening>, Refusal>;

/// Done, with nothing more to tell.
pub(crate) fn plain() -> Done {
    Ok(Vec::new())
}

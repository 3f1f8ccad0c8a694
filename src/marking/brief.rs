//! What marking is told of a scenario beside its setup.

use crate::parts::Ending;

/// What the scenario says about its right end.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Brief {
    /// Endings that are right; the first is the usual one.
    pub right_endings: Vec<Ending>,
}

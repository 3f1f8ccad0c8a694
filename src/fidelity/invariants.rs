//! What must hold whatever the numbers: conservation, order, symmetry. Each question can be put to
//! any network; the checks put it to a few dozen drawn from a seed and tell the worst.

mod curves;
mod heat;
pub mod nets;
pub mod shape;

use super::check::Check;

/// All checks of the chapter.
#[must_use]
pub fn checks() -> Vec<Check> {
    [nets::checks(), heat::checks(), curves::checks()].concat()
}

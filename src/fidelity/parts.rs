//! How parts behave.
use super::Check;
/// All checks of the chapter.
#[must_use]
pub fn checks() -> Vec<Check> {
    Vec::new()
}

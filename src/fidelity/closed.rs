//! The model against laws solved with pencil and paper.

mod balance;
mod bleed;
mod flow;
mod heat;
mod lags;
mod lines;
pub(super) mod rig;
mod room;
mod scaling;

use super::check::Check;

/// All checks of the chapter.
#[must_use]
pub fn checks() -> Vec<Check> {
    [
        balance::checks(),
        bleed::checks(),
        flow::checks(),
        lines::checks(),
        scaling::checks(),
        lags::checks(),
        room::checks(),
        heat::checks(),
    ]
    .concat()
}

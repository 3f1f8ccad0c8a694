//! Good work spoiled in one place: a goal left out, swapped, hurried or reached at the wrong moment, or a
//! step towards one botched. Each way names the rules that it must trip, and no others.

mod arriving;
mod closing;
mod cycle;
mod finding;
mod good;
mod measuring;
mod mending;
mod reading;
mod restoring;
mod said;
mod setting;
mod steps;
mod way;

pub(super) use good::Good;
pub(super) use way::Fork;
pub use way::Spoil;

/// All ways of spoiling.
pub fn spoils() -> impl Iterator<Item = &'static Spoil> {
    [
        arriving::SPOILS,
        reading::SPOILS,
        setting::SPOILS,
        measuring::SPOILS,
        mending::SPOILS,
        closing::SPOILS,
        cycle::SPOILS,
        restoring::SPOILS,
        finding::SPOILS,
    ]
    .into_iter()
    .flatten()
}

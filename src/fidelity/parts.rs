//! How parts and the whole healthy bench behave, against standards, manuals and common practice.

mod combustion;
mod ignition;
mod instruments;
mod odor;
mod regulators;
mod rigs;
mod run;
mod springs;
mod tank;
mod valve;

use super::{Check, Row};
use crate::scenario::builtin;
use crate::setup::Setup;

/// All checks of the chapter.
#[must_use]
pub fn checks() -> Vec<Check> {
    [
        regulators::checks(),
        springs::checks(),
        valve::checks(),
        ignition::checks(),
        combustion::checks(),
        tank::checks(),
        odor::checks(),
        instruments::checks(),
        rigs::checks(),
    ]
    .concat()
}

/// The bench of a built-in scenario at seed 1.
fn setup(id: &str) -> Option<Setup> {
    let built_in = builtin::find(id)?;
    crate::scenario::load(built_in.text).ok().map(|scenario| scenario.draw(1))
}

/// A row whose reference is the value of the published range that lies nearest the result, so
/// that a result within the range agrees exactly.
fn in_range(name: &str, [low, high]: [f64; 2], result: f64) -> Row {
    Row::new(format!("{name}: {low} to {high}"), result.clamp(low, high), result)
}

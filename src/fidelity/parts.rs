//! How parts and the whole healthy bench behave, against standards, manuals and common practice.

mod bench;
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

use super::check::Check;

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

//! The benches of built-in scenarios, and rows of ranges.

use crate::fidelity::check::Row;
use crate::scenario::builtin;
use crate::setup::Setup;

/// The bench of a built-in scenario at seed 1.
pub(super) fn setup(id: &str) -> Option<Setup> {
    let built_in = builtin::find(id)?;
    crate::scenario::load(built_in.text).ok().map(|scenario| scenario.draw(1))
}

/// A row whose reference is the value of the published range that lies nearest the result, so
/// that a result within the range agrees exactly.
pub(super) fn in_range(name: &str, [lower, upper]: [f64; 2], result: f64) -> Row {
    Row::new(
        t!("row-range", name = name, least = lower.to_string(), most = upper.to_string()),
        result.clamp(lower, upper),
        result,
    )
}

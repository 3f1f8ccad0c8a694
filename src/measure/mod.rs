//! Tools that have a bench played to measure what a fault changes, and whether that can be felt. Each
//! states which goals of the procedure it reaches and what it measures at each. They stand above the
//! bench that they play: neither the model nor the catalogue of faults needs them.

pub mod air;
pub mod causes;
pub mod driver;
pub mod endings;
pub mod felt;
pub mod looks;
pub mod pattern;

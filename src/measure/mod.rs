//! Drivers that play a bench through its doors to measure what a fault changes, and whether that can
//! be felt. They stand above the bench that they play: neither the model nor the catalogue of faults
//! needs them.

pub mod air;
pub mod causes;
pub mod endings;
pub mod felt;
pub mod pattern;

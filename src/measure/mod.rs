//! Drivers that play a bench to measure what a fault changes.

pub mod air;
pub mod felt;
pub mod pattern;

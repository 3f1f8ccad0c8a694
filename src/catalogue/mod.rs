//! Faults and repairs: edits of a setup.

pub mod fault;
pub mod repair;

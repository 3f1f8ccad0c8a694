//! The catalogue of faults.

mod probe;

//! Tests of the whole bench.

mod calibrated;
mod clocking;
pub mod rig;
mod technician;

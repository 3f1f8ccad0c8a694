//! Tests of the whole bench.

mod answers;
mod calibrated;
mod clocking;
pub mod golden;
pub mod random;
pub mod rig;
mod storm;
mod technician;

//! Tests of the whole bench.

mod answers;
mod calibrated;
mod clocking;
mod golden;
pub mod random;
pub mod rig;
mod storm;
mod technician;

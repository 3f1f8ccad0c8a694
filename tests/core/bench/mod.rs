//! Tests of the whole bench.

mod answers;
mod calibrated;
mod clocking;
mod digest;
pub mod golden;
mod night;
pub mod random;
pub mod rig;
mod storm;
mod technician;

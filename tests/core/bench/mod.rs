//! Tests of the whole bench.

mod aftermath;
mod answers;
mod calibrated;
mod clocking;
mod digest;
pub mod golden;
mod inside;
pub mod random;
pub mod rig;
mod storm;
mod technician;

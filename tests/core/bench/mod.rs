//! Tests of the whole bench.

mod calibrated;
pub mod rig;
mod technician;

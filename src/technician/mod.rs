//! The reference technician: does the job properly, seeing only what a person sees and acting only
//! through actions. And scripts, which do what they are told through the same two doors.

mod alarm;
mod arrive;
mod burn;
mod by_eye;
pub mod close;
pub mod diagnosis;
pub mod drive;
mod flue;
mod hose;
mod judge;
mod know;
mod mend;
mod no_fire;
pub mod open;
pub mod plan;
pub mod proof;
pub mod run_furnace;

pub mod script;
pub mod set;
pub mod spoil;
pub mod task;

pub use drive::{Player, play};
pub use plan::Technician;

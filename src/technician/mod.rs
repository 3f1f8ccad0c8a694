//! The reference technician: does the job properly, seeing only what a person sees and acting only
//! through actions. And scripts, which do what they are told through the same two doors.

mod after_flow;
mod again;
mod alarm;
mod arrive;
mod burn;
mod by_eye;
mod close;
mod course;
pub mod diagnosis;
pub mod drive;
mod duties;
mod edit;
pub mod fairness;
mod findings;
mod flue;
mod hose;
mod judge;
mod know;
mod mend;
mod mind;
mod no_fire;
mod noticed;
mod open;
mod plan;
pub mod proof;
mod run_furnace;
mod screw;
pub mod script;
mod sequence;
mod set;
pub mod spoil;
mod step;

pub use drive::{Player, play};
pub use plan::Technician;

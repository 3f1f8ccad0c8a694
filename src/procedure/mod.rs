//! The procedure of the job: goals, each with "is it met?" and "what is the next action towards it?".
//!
//! A [`Goal`] is asked with what is seen now ([`Seen`]) and what was seen and done before
//! ([`Memory`], which is made from nothing else), and answers with a [`Step`]: met, an action, or
//! something to wait for. It never knows the truth, and it decides nothing about faults.
//!
//! Everything that brings a furnace somewhere asks here: the coach says the step of the first goal
//! that is not met, the reference technician pursues the goals of its plan one after the other with
//! a [`Pursuit`], and so do the tools that measure a bench.
//!
//! The order inside a goal is the trade's (common practice): call off, wait until everything stands,
//! power, manual valve, valve switch before a port is opened; hose off before the adapter, adapter
//! before the plug; gas before fire.

mod air;
mod ask;
mod awaited;
mod fire;
mod goal;
mod heard;
mod isolate;
mod joint;
mod measured;
mod memory;
mod meter;
mod piping;
mod port;
mod pursuit;
mod restore;
mod wait;

pub use awaited::{Awaited, LIGHT_UP_S};
pub use fire::{ABOVE_BOTH_HALF_F, ABOVE_FIRST_HALF_F};
pub use goal::{Goal, Means, Step};
pub use measured::{DRAWS_S, to_measure, undone};
pub use memory::{Called, Found, Memory};
pub use pursuit::{Move, Pursuit};
pub use wait::{Until, Wait, Waiting, number};

//! The physical state of the whole station by named parts, and how it goes on: supply, pipes, gas
//! valve, furnace, house, room and the instruments in them.
//!
//! It knows no action, no eye, no fault and no mark: the hands change it, the senses read it, and it
//! tells by [`Notice`]s what came about by itself.

pub mod aftermath;
mod air;
mod as_found;
mod brushed;
mod dangers;
mod digest;
mod electric;
mod furnace;
mod gas;
pub mod inside;
mod instruments;
mod kit;
mod notice;
mod person;
mod port;
mod refit;
mod state;
mod step;
mod survey;
mod things;
pub mod truth;

pub(crate) use brushed::Brushed;
pub(crate) use digest::digest;
pub(crate) use notice::Notice;
pub(crate) use person::Probe;
pub(crate) use port::{
    CRACK_TURNS, Fill, LEANING_STOP_TURNS, LOOSENED_TURNS, PortState, SNUG_TURNS,
};
pub(crate) use state::Model;

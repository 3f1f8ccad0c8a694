//! What eyes, ears, nose and instruments give: read off the model, never written into it.

pub(crate) mod look;
pub(crate) mod measured;
pub(crate) mod meter;
pub mod meter_history;
pub(crate) mod perceive;
pub mod seen;
mod signs;
mod sounds;

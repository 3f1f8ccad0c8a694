//! The physical state of the whole station and how it goes on.

pub(crate) mod furnace;
pub(crate) mod gas;
pub(crate) mod kit;
pub mod night;
pub(crate) mod port;
pub(crate) mod stand;
pub(crate) mod step;
pub mod truth;

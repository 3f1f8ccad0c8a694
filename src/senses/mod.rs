//! What eyes, ears, nose and instruments give.

pub(crate) mod look;
pub(crate) mod perceive;
pub mod seen;
pub(crate) mod watch;

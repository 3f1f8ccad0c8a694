//! What is seen in the port that a part belongs to.

use crate::panels::actions::port_of;
use crate::parts::{Port, PortFill};
use crate::senses::seen::Seen;

/// What is seen in the port that a part belongs to.
pub(super) fn port_fill(id: &str, seen: &Seen) -> Option<(Port, PortFill)> {
    let port = port_of(id)?;
    Some((port, seen.fill(port)?))
}

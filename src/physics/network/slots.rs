//! Slots: the places of the nodes' numbers in every list of a network.

use serde::Serialize;

/// Slots of a network: as many as a byte can name, so that no index needs a check.
pub(super) const SLOTS: usize = 256;
/// A number for each slot; nodes with a volume come first, then boundaries, the rest is unused.
pub(super) type Slots<T> = [T; SLOTS];

/// The gauge pressure in a slot.
#[derive(Debug, Clone, Copy, Default, Serialize)]
pub(super) struct Head {
    pub pa: f64,
    /// What `pa` leaves out below its last digit.
    pub rest_pa: f64,
}

//! The person at work: where it stands, what it holds, how keen its nose is.

use crate::parts::{Height, Place, Tool};
use crate::physics::room::{Nose, Strength};
use serde::Serialize;

/// Where the person is and what is in the hand.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub(crate) struct Person {
    pub(crate) place: Place,
    pub(crate) hand: Option<Tool>,
    /// The gas detector in hand, once it has been held somewhere.
    pub(crate) detector: Option<Probe>,
    /// The last deliberate sniff: where, and how strong it was.
    pub(crate) sniffed: Option<(Height, Strength)>,
    pub(crate) nose: Nose,
}

/// The gas detector as it is held.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct Probe {
    pub(crate) height: Height,
    /// Per cent of the lower flammable limit, 0–100.
    pub(crate) percent_lel: f64,
}

impl Person {
    /// Somebody who has just arrived.
    pub(crate) fn arrived() -> Self {
        Self {
            place: Place::Yard,
            hand: None,
            detector: None,
            sniffed: None,
            nose: Nose::default(),
        }
    }

    /// Whether the person is in the house.
    pub(crate) fn is_inside(&self) -> bool {
        match self.place {
            Place::PlantRoom | Place::GasValve | Place::Hall => true,
            Place::Yard | Place::Away => false,
        }
    }

    /// Whether the furnace is within reach.
    pub(crate) fn is_at_furnace(&self) -> bool {
        match self.place {
            Place::PlantRoom | Place::GasValve => true,
            Place::Yard | Place::Hall | Place::Away => false,
        }
    }
}

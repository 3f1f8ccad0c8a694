//! Kinds of what speaks for a finding. The table of causes writes them by their ids.

use serde::Deserialize;

use crate::parts::{Backing, Joint, Port, Sight, Spot, Subject};

/// Kind of what speaks for a finding: a reading of a port counts in every state of the furnace.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
#[serde(try_from = "String")]
pub enum BackingKind {
    /// A reading of the manometer at a port.
    Reading(Port),
    /// A figure from another instrument, held to a spot.
    Measured(Spot),
    /// A close look at a subject.
    Look(Subject),
    /// Leak fluid on a joint.
    Joint(Joint),
    /// Something noticed in passing.
    Sight(Sight),
}

impl BackingKind {
    /// The one with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        match id.split_once(' ')? {
            ("reading", port) => Port::from_id(port).map(Self::Reading),
            ("measured", spot) => Spot::from_id(spot).map(Self::Measured),
            ("look", subject) => Subject::from_id(subject).map(Self::Look),
            ("joint", joint) => Joint::from_id(joint).map(Self::Joint),
            ("sight", sight) => Sight::from_id(sight).map(Self::Sight),
            _ => None,
        }
    }

    /// The kind of a backing.
    #[must_use]
    pub fn of(backing: Backing) -> Self {
        match backing {
            Backing::Reading { port, .. } => Self::Reading(port),
            Backing::Measured(spot) => Self::Measured(spot),
            Backing::Look(subject) => Self::Look(subject),
            Backing::Joint(joint) => Self::Joint(joint),
            Backing::Sight(sight) => Self::Sight(sight),
        }
    }
}

impl TryFrom<String> for BackingKind {
    type Error = String;

    fn try_from(id: String) -> Result<Self, String> {
        Self::from_id(&id).ok_or_else(|| t!("table-backs-nothing", id = id))
    }
}

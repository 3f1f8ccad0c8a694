//! Where and in which state a pressure is read: the ports of the gas valve and the test states.
//!
//! **Source.** The four states are those that start-up sheets of two-stage furnaces ask for (makers
//! withheld): static, low fire, high fire, and high fire with every other appliance on.
//!
//! **Checked.** What the plate allows at each port in each state: `tests/core/appliance/plate.rs`.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

/// A pressure port on the gas valve.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Port {
    /// Upstream of the shut-off seats.
    Inlet,
    /// Downstream of the regulator.
    Manifold,
}

impl Port {
    /// Both, the inlet first.
    pub const ALL: &'static [Self] = &[Self::Inlet, Self::Manifold];

    /// The id in scripts and drawings.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Inlet => "inlet-port",
            Self::Manifold => "manifold-port",
        }
    }

    /// The name a person reads.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Inlet => t!("part-inlet-port"),
            Self::Manifold => t!("part-manifold-port"),
        }
    }

    /// The port with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|port| port.id() == id)
    }
}

/// A running state of the furnace at which a pressure is read.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Stage {
    /// No gas flows anywhere in the house.
    Rest,
    /// The furnace fires on low.
    Low,
    /// The furnace fires on high.
    High,
    /// The furnace fires on high and every other gas appliance burns.
    HighWithOthers,
}

impl Stage {
    /// All, in the order of the job sheet.
    pub const ALL: [Self; 4] = [Self::Rest, Self::Low, Self::High, Self::HighWithOthers];

    /// The state in words, as reports and findings write it. It holds no comma, so that it can
    /// stand in a list.
    #[must_use]
    pub const fn label(self) -> &'static str {
        match self {
            Self::Rest => "at rest",
            Self::Low => "low",
            Self::High => "high",
            Self::HighWithOthers => "high with the others",
        }
    }
}

//! States that parts can be in: switches, caps, windows, ports.

use enum_map::Enum;
use serde::{Deserialize, Serialize};

use super::names::Screw;

/// A two-way switch.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OnOff {
    /// On.
    On,
    /// Off.
    Off,
}

/// An instrument for pressure, at the near end of the hose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Gauge {
    /// The digital manometer.
    #[default]
    Digital,
    /// The water column: a tube bent to a U, half full of water.
    WaterColumn,
    /// The round gauge with a spring and a needle.
    SpringGauge,
}

impl Gauge {
    /// All.
    pub const ALL: [Self; 3] = [Self::Digital, Self::WaterColumn, Self::SpringGauge];

    /// Its name for a person.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Digital => "Manometer",
            Self::WaterColumn => "Water column",
            Self::SpringGauge => "Spring gauge",
        }
    }
}

/// Whether something is in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fitted {
    /// In its place.
    On,
    /// Taken off.
    Off,
}

/// Whether a window is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Opening {
    /// Open.
    Open,
    /// Closed.
    Closed,
}

/// Where the nose or the probe is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Height {
    /// Just above the floor.
    Floor,
    /// At breathing height.
    Head,
}

/// How far a hose is pushed on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Push {
    /// Over all the barbs.
    Fully,
    /// Over the first barb only.
    Halfway,
}

/// What the manometer's low side feels.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum LowSide {
    /// The room's air.
    Air,
    /// The burner box.
    BurnerBox,
}

/// A level of firing: each has a spring of the gas valve with its screw.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum, Serialize, Deserialize,
)]
#[serde(rename_all = "kebab-case")]
pub enum Level {
    /// Low stage.
    Low,
    /// High stage.
    High,
}

impl Level {
    /// The screw under its spring.
    #[must_use]
    pub fn screw(self) -> Screw {
        match self {
            Self::Low => Screw::Low,
            Self::High => Screw::High,
        }
    }
}

impl Screw {
    /// The level whose spring it loads; none for the supply regulator's.
    #[must_use]
    pub fn level(self) -> Option<Level> {
        match self {
            Self::Low => Some(Level::Low),
            Self::High => Some(Level::High),
            Self::Supply => None,
        }
    }
}

/// What the furnace does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub enum Firing {
    /// No gas to the burners.
    Out,
    /// Low stage.
    Low,
    /// High stage.
    High,
}

/// What is in a port.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum PortFill {
    /// A plug, seated; felt snug.
    Snug,
    /// A plug, hand-tight: it can be spun.
    HandTight,
    /// A plug started straight, most of its thread showing.
    Started,
    /// A plug leaning in its thread.
    Leaning,
    /// Nothing: the port is open.
    Open,
    /// The barbed adapter, nothing on it.
    BareAdapter,
    /// The barbed adapter with the hose on.
    Hose(Push),
}

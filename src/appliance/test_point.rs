//! Where and in which state a pressure is read: the ports of the gas valve and the test states.
//!
//! **Source.** The states are those that start-up sheets of furnaces ask for (makers withheld):
//! static, each firing level, the full rate with every other appliance on, and static once more
//! after flow, as a regulator's lock-up is tested.
//!
//! **Checked.** What the plate allows at each port in each state: `tests/core/appliance/plate.rs`.

use super::level::Level;
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
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Enum)]
pub enum Stage {
    /// No gas flows anywhere in the house.
    Rest,
    /// The furnace fires at a level.
    Firing(Level),
    /// Full connected load: the furnace fires at its full rate and every other gas appliance burns.
    FullLoad,
    /// At rest once more after the burners stopped, the meter on its port all the while: the lock-up
    /// of the supply regulator after flow.
    RestAgain,
}

impl Stage {
    /// Every state of any furnace, the least demanding first.
    pub const ALL: &'static [Self] = &[
        Self::Rest,
        Self::Firing(Level::ALL[0]),
        Self::Firing(Level::ALL[1]),
        Self::Firing(Level::ALL[2]),
        Self::FullLoad,
        Self::RestAgain,
    ];

    /// The states under test of a furnace with these levels, in the order of the job sheet.
    pub fn of(levels: &'static [Level]) -> impl DoubleEndedIterator<Item = Self> + Clone {
        let firing = levels.iter().map(|&level| Self::Firing(level));
        std::iter::once(Self::Rest).chain(firing).chain([Self::FullLoad, Self::RestAgain])
    }

    /// The level that the furnace fires at: its full rate at full load. None at rest.
    #[must_use]
    pub fn level(self, levels: &'static [Level]) -> Option<Level> {
        match self {
            Self::Rest | Self::RestAgain => None,
            Self::Firing(level) => Some(level),
            Self::FullLoad => levels.last().copied(),
        }
    }

    /// Whether the furnace fires at its full rate.
    #[must_use]
    pub fn is_at_full_rate(self) -> bool {
        match self {
            Self::Rest | Self::RestAgain => false,
            Self::Firing(level) => level.is_top(),
            Self::FullLoad => true,
        }
    }

    /// The id in scripts, records and job sheets.
    #[must_use]
    pub const fn id(self) -> &'static str {
        match self {
            Self::Rest => "rest",
            Self::Firing(level) => level.id(),
            Self::FullLoad => "full-load",
            Self::RestAgain => "rest-again",
        }
    }

    /// The one with this id.
    #[must_use]
    pub fn from_id(id: &str) -> Option<Self> {
        match id {
            "rest" => Some(Self::Rest),
            "full-load" => Some(Self::FullLoad),
            "rest-again" => Some(Self::RestAgain),
            level => Level::from_id(level).map(Self::Firing),
        }
    }

    /// The state in words, as reports and findings write it. It holds no comma, so that it can
    /// stand in a list.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Rest => t!("stage-rest"),
            Self::Firing(level) => level.label(),
            Self::FullLoad => t!("stage-full-load"),
            Self::RestAgain => t!("stage-rest-again"),
        }
    }
}

/// Full connected load as records write it, since model 2.
const FULL_LOAD_RECORDED: &str = "high-with-others";

impl Serialize for Stage {
    fn serialize<S: serde::Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(match self {
            Self::FullLoad => FULL_LOAD_RECORDED,
            Self::Rest | Self::Firing(_) | Self::RestAgain => self.id(),
        })
    }
}

impl<'de> Deserialize<'de> for Stage {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let id = std::borrow::Cow::<str>::deserialize(deserializer)?;
        let known =
            if id == FULL_LOAD_RECORDED { Some(Self::FullLoad) } else { Self::from_id(&id) };
        known.ok_or_else(|| {
            let known: Vec<&str> = Self::ALL.iter().map(|stage| stage.id()).collect();
            serde::de::Error::custom(t!("stage-none-of", id = &*id, known = known.join(", ")))
        })
    }
}

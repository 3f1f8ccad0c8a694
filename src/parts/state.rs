//! States that parts can be in: switches, caps, windows, ports.

use serde::{Deserialize, Serialize};

/// Switch with two places.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum OnOff {
    /// Turned on, or with power.
    On,
    /// Turned off, or without power.
    Off,
}

/// An instrument for pressure, at the near end of the hose.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Gauge {
    /// Digital manometer, in its three units.
    #[default]
    Digital,
    /// The water column: a tube bent to a U, half full of water.
    WaterColumn,
    /// The round gauge with a spring and a needle.
    SpringGauge,
}

impl Gauge {
    /// All of them, the one that a job starts with first.
    pub const ALL: [Self; 3] = [Self::Digital, Self::WaterColumn, Self::SpringGauge];

    /// The name a person reads, as it stands inside a sentence.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Digital => t!("gauge-digital"),
            Self::WaterColumn => t!("gauge-water-column"),
            Self::SpringGauge => t!("gauge-spring"),
        }
    }
}

/// Whether something is in its place.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Fitted {
    /// Put on, in its place.
    On,
    /// Taken off, or not there.
    Off,
}

/// Whether a window is open.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Opening {
    /// Open; a hand valve with its handle along the pipe.
    Open,
    /// Closed; a hand valve with its handle across the pipe.
    Closed,
}

/// Where the nose or the probe is held.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Height {
    /// Just above the floor.
    Floor,
    /// At the height of a standing person's head.
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
    /// Open to the air of the room.
    Air,
    /// On the tap of the burner box.
    BurnerBox,
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
    /// A pressure tap, its captive screw turned in snug.
    TapSnug,
    /// A pressure tap, its captive screw seated without force: it seeps.
    TapLoose,
    /// A pressure tap, its captive screw loosened by a turn: gas comes out of it.
    TapOpen,
    /// The hose over a tap whose screw is loosened.
    HoseOnTap(Push),
    /// The hose over a tap whose screw is turned in: nothing comes to it.
    HoseOnShutTap(Push),
}

impl PortFill {
    /// Whether gas can flow freely out of it.
    #[must_use]
    pub fn is_open(self) -> bool {
        match self {
            Self::Open | Self::BareAdapter | Self::TapOpen => true,
            Self::Snug
            | Self::HandTight
            | Self::Started
            | Self::Leaning
            | Self::Hose(_)
            | Self::TapSnug
            | Self::TapLoose
            | Self::HoseOnTap(_)
            | Self::HoseOnShutTap(_) => false,
        }
    }

    /// Whether a plug or a captive screw closes it, snug.
    #[must_use]
    pub fn is_snug(self) -> bool {
        matches!(self, Self::Snug | Self::TapSnug)
    }

    /// How far the hose is on, whether anything comes to it or not.
    #[must_use]
    pub fn hose(self) -> Option<Push> {
        match self {
            Self::Hose(push) | Self::HoseOnTap(push) | Self::HoseOnShutTap(push) => Some(push),
            Self::Snug
            | Self::HandTight
            | Self::Started
            | Self::Leaning
            | Self::Open
            | Self::BareAdapter
            | Self::TapSnug
            | Self::TapLoose
            | Self::TapOpen => None,
        }
    }

    /// Whether it is a pressure tap with a captive screw.
    #[must_use]
    pub fn is_tap(self) -> bool {
        match self {
            Self::TapSnug
            | Self::TapLoose
            | Self::TapOpen
            | Self::HoseOnTap(_)
            | Self::HoseOnShutTap(_) => true,
            Self::Snug
            | Self::HandTight
            | Self::Started
            | Self::Leaning
            | Self::Open
            | Self::BareAdapter
            | Self::Hose(_) => false,
        }
    }
}

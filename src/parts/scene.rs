//! Kinds of equipment and of surroundings that a job may have, as far as hands or eyes meet them.

use serde::{Deserialize, Serialize};

/// How the gas valve is built where pressures are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize, Deserialize)]
pub enum ValveBody {
    /// Both ports closed by 1/8 in. NPT plugs.
    #[default]
    Plugs,
    /// Both ports are pressure taps with a captive screw: the hose goes straight over a tap.
    TapScrews,
    /// Plugs as well; inlet and manifold port lie side by side.
    SideBySide,
}

/// The room that the furnace stands in. It changes nothing that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Room {
    /// Block walls and joists overhead.
    #[default]
    Basement,
    /// A finished utility closet.
    Closet,
    /// A garage: gypsum board over a concrete curb.
    Garage,
    /// An attic under the roof: rafters, joists and a walkway of planks.
    Attic,
}

impl Room {
    /// How a furnace is built into this room: under a roof there is no height for an upright one.
    #[must_use]
    pub fn position(self) -> Position {
        match self {
            Self::Basement | Self::Closet | Self::Garage => Position::Upright,
            Self::Attic => Position::Horizontal,
        }
    }
}

/// How the furnace is built in. It changes nothing that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Position {
    /// It stands, the burners above the blower.
    #[default]
    Upright,
    /// It lies, the burners beside the blower.
    Horizontal,
}

/// A time of day.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub struct TimeOfDay {
    /// Whole minutes after midnight.
    pub minutes: u16,
}

impl TimeOfDay {
    /// The time that a number of hours after midnight is, to the minute; a whole day at most.
    #[must_use]
    pub fn from_hours(hours: f64) -> Self {
        let minutes = (hours * 60.0).round().clamp(0.0, 1440.0);
        #[expect(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "between 0 and 1440"
        )]
        let minutes = minutes as u16;
        Self { minutes }
    }

    /// How many seconds after midnight it is.
    #[must_use]
    pub fn seconds(self) -> f64 {
        f64::from(self.minutes) * 60.0
    }
}

impl Default for TimeOfDay {
    /// Half past seven, when a working day begins.
    fn default() -> Self {
        Self { minutes: 450 }
    }
}

/// What the house wall in the yard is made of. It changes nothing that can be measured.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum YardLook {
    /// Siding of painted clapboards.
    #[default]
    Siding,
    /// Brick in a running bond.
    Brick,
}

/// Equipment and surroundings of a job that are chosen by their kind.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub struct Scene {
    /// The gas valve's body.
    pub valve: ValveBody,
    // Looks alone are not in the digest: another wall is no other bench.
    /// The room of the furnace.
    #[serde(skip)]
    pub room: Room,
    /// The wall in the yard.
    #[serde(skip)]
    pub yard: YardLook,
    /// When the job begins; by it sky and windows are light or dark.
    #[serde(skip)]
    pub begins: TimeOfDay,
}

impl Scene {
    /// How the furnace is built in.
    #[must_use]
    pub fn position(&self) -> Position {
        self.room.position()
    }
}

//! What can be heard, each with its caption.

use crate::parts::Level;

/// Something heard. Every one has a caption.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Sound {
    /// The inducer's hum at its lower speed.
    Inducer,
    /// The inducer at its higher speed.
    InducerFast,
    /// Burners at a level.
    Burners(Level),
    /// The blower in the cabinet.
    Blower,
    /// The blower, laboring below the speed that it is switched to.
    BlowerSlow,
    /// Gas hissing from an open port.
    Hiss,
    /// A late, hard light.
    Bang,
    /// The gas detector's or the CO alarm's call.
    Alarm,
    /// The relief of a regulator.
    Relief,
    /// Water heater or range burning.
    OtherApplianceBurning,
}

impl Sound {
    /// Whether a fan of the furnace makes it.
    #[must_use]
    pub fn is_of_fan(self) -> bool {
        match self {
            Self::Inducer | Self::InducerFast | Self::Blower | Self::BlowerSlow => true,
            Self::Burners(_)
            | Self::Hiss
            | Self::Bang
            | Self::Alarm
            | Self::Relief
            | Self::OtherApplianceBurning => false,
        }
    }

    /// Caption of the sound, for people who cannot hear it.
    #[must_use]
    pub fn caption(self) -> &'static str {
        match self {
            Self::Inducer => t!("sound-inducer"),
            Self::InducerFast => t!("sound-inducer-high"),
            Self::Burners(level) => {
                level.choose(t!("sound-burners"), t!("sound-burners-low"), t!("sound-burners-high"))
            }
            Self::Blower => t!("sound-blower"),
            Self::BlowerSlow => t!("sound-blower-slow"),
            Self::Hiss => t!("sound-hiss"),
            Self::Bang => t!("sound-bang"),
            Self::Alarm => t!("sound-alarm"),
            Self::Relief => t!("sound-relief"),
            Self::OtherApplianceBurning => t!("sound-neighbor-burning"),
        }
    }
}

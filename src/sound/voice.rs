//! The voices that go on, and what each caption of a sound has for one.

use enum_map::Enum;

use super::moment::Moment;
use crate::senses::seen::Sound;

/// A voice that goes on as long as its caption stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Enum)]
pub enum Voice {
    /// The inducer's wheel and motor.
    Inducer,
    /// The blower's wheel and motor.
    Blower,
    /// Flames of the furnace's burners.
    Burners,
    /// Gas from a port, the hose or a crack.
    Hiss,
    /// Gas from the vent of the supply regulator.
    Relief,
    /// The burner of the water heater or the range.
    OtherBurner,
    /// The sounder of an alarm.
    Alarm,
}

impl Voice {
    /// All of them, in their usual order.
    pub const ALL: [Self; 7] = [
        Self::Inducer,
        Self::Blower,
        Self::Burners,
        Self::Hiss,
        Self::Relief,
        Self::OtherBurner,
        Self::Alarm,
    ];

    /// The caption, in its plainest form.
    #[must_use]
    pub fn caption(self) -> &'static str {
        match self {
            Self::Inducer => Sound::Inducer.caption(),
            Self::Blower => Sound::Blower.caption(),
            Self::Burners => t!("sound-burners"),
            Self::Hiss => Sound::Hiss.caption(),
            Self::Relief => Sound::Relief.caption(),
            Self::OtherBurner => Sound::OtherApplianceBurning.caption(),
            Self::Alarm => Sound::Alarm.caption(),
        }
    }
}

/// What is made for a captioned sound.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Made {
    /// A voice that goes on.
    Voice(Voice),
    /// A moment, struck when the caption comes up.
    Moment(Moment),
}

/// What is made for a captioned sound.
#[must_use]
pub fn made_for(sound: Sound) -> Made {
    match sound {
        Sound::Inducer | Sound::InducerFast => Made::Voice(Voice::Inducer),
        Sound::Burners(_) => Made::Voice(Voice::Burners),
        Sound::Blower | Sound::BlowerSlow => Made::Voice(Voice::Blower),
        Sound::Hiss => Made::Voice(Voice::Hiss),
        Sound::Bang => Made::Moment(Moment::LateLight),
        Sound::Alarm => Made::Voice(Voice::Alarm),
        Sound::Relief => Made::Voice(Voice::Relief),
        Sound::OtherApplianceBurning => Made::Voice(Voice::OtherBurner),
    }
}

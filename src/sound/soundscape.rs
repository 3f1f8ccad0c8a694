//! What is to be heard now, read off what is seen: how loud each voice is and how far away.

use enum_map::EnumMap;

use super::moment::Moment;
use super::voice::{Made, Voice, made_for};
use crate::parts::Place;
use crate::senses::seen::{Heard, Relays, Seen};

/// Flow of gas that hisses at full loudness, in standard m³/s (13 ft³/h, from memory).
const HISS_FULL_M3_S: f64 = 1e-4;
/// Flow at which a relief blows at full loudness, in standard m³/s (from memory).
const RELIEF_FULL_M3_S: f64 = 5e-4;
/// Power of the rate that the flames' loudness goes with: sound power of a turbulent flame goes
/// with the velocity of the jet to the power 2.7, about (combustion noise, from memory).
const ROAR_POWER: f64 = 1.35;

/// What is to be heard now.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct Soundscape {
    /// How loud each voice is against its full loudness.
    pub level: EnumMap<Voice, f64>,
    /// Speed of the inducer, 0 still, 1 full.
    pub inducer: f64,
    /// Speed of the blower, 0 still, 1 full.
    pub blower: f64,
    /// Heat input of the burners against the plate's full rate.
    pub firing: f64,
    /// How far away the furnace is.
    pub furnace: Distance,
    /// Where the ear is; none where nobody listens.
    pub place: Option<Place>,
    /// Relays and coils, which click when they change.
    pub relays: Relays,
    /// Whether the burners have just lit late and hard.
    pub late_light: bool,
}

/// How far away the furnace is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Distance {
    /// The ear is at the burner compartment.
    AtHand,
    /// The ear is in the same room.
    SameRoom,
    /// A wall and a door are between.
    OtherRoom,
    /// Nothing of it is heard.
    #[default]
    Outside,
}

impl Distance {
    fn from(place: Place) -> Self {
        match place {
            Place::GasValve => Self::AtHand,
            Place::PlantRoom => Self::SameRoom,
            Place::Hall => Self::OtherRoom,
            Place::Yard | Place::Away => Self::Outside,
        }
    }

    /// How loud what is there comes across: half as loud at some twice the distance (6 dB, a point
    /// in the open), 20 dB less through a door (a light inner door, from memory).
    pub(super) fn gain(self) -> f64 {
        match self {
            Self::AtHand => 1.0,
            Self::SameRoom => 0.5,
            Self::OtherRoom => 0.1,
            Self::Outside => 0.0,
        }
    }

    /// Above which frequency it is dulled, in hertz: a wall lets through less the higher it is
    /// (mass law, 6 dB an octave).
    pub(super) fn corner_hz(self) -> f64 {
        match self {
            Self::AtHand => 16_000.0,
            Self::SameRoom => 9_000.0,
            Self::OtherRoom | Self::Outside => 500.0,
        }
    }
}

impl Soundscape {
    /// What is to be heard of what is seen: the voices of the captions that stand, as strong as
    /// the ear has them.
    #[must_use]
    pub fn of(seen: &Seen) -> Self {
        let Heard { inducer, blower, firing, relays, .. } = seen.heard;
        let mut scape = Self {
            inducer,
            blower,
            firing,
            relays,
            furnace: Distance::from(seen.place),
            place: Some(seen.place),
            ..Self::default()
        };
        for sound in &seen.sounds {
            match made_for(*sound) {
                Made::Voice(voice) => scape.level[voice] = level(voice, &seen.heard),
                Made::Moment(_) => scape.late_light = true,
            }
        }
        scape
    }

    /// Whether a moment is heard where the ear is.
    #[must_use]
    pub fn hears(&self, moment: Moment) -> bool {
        !moment.is_of_furnace() || self.furnace != Distance::Outside
    }

    /// Moments that lie between what was to be heard before and now. Nothing clicks because
    /// somebody walks up to it.
    #[must_use]
    pub fn moments_since(&self, before: &Self) -> [Option<Moment>; 3] {
        if self.place != before.place {
            return [None; 3];
        }
        let switched = |relays: Relays| (relays.inducer, relays.igniter, relays.blower);
        let relay = switched(self.relays) != switched(before.relays);
        let valve = self.relays.gas_valve != before.relays.gas_valve;
        let late = self.late_light && !before.late_light;
        [
            relay.then_some(Moment::Relay),
            valve.then_some(Moment::GasValve),
            late.then_some(Moment::LateLight),
        ]
    }
}

/// How loud a voice is whose caption stands.
fn level(voice: Voice, heard: &Heard) -> f64 {
    let jet = |flow_m3_s: f64, full_m3_s: f64| {
        // The power of a jet at one pressure goes with its area, and so with its flow.
        libm::sqrt(flow_m3_s.max(0.0) / full_m3_s)
    };
    match voice {
        // The fans' own law makes them as loud as they are fast.
        Voice::Inducer | Voice::Blower | Voice::OtherBurner | Voice::Alarm => 1.0,
        Voice::Burners => libm::pow(heard.firing.max(0.0), ROAR_POWER),
        Voice::Hiss => jet(heard.hiss_m3_s, HISS_FULL_M3_S),
        Voice::Relief => jet(heard.relief_m3_s, RELIEF_FULL_M3_S),
    }
}

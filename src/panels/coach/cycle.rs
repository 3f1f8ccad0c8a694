//! A whole cycle from the thermostat, with no hand on the gas: what was heard of it, and the next
//! step towards it.

use super::hint::Hint;
use crate::hands::action::Action;
use crate::parts::{OnOff, Place};
use crate::senses::seen::{Call, HallSeen, Seen, Sound};

/// How far above the room the thermostat is set so that it calls both stages, in half degrees.
const BOTH_HALF_F: i16 = 10;
/// How far below the room it is set so that it calls nothing, in half degrees.
const NONE_HALF_F: i16 = 4;

/// How far a cycle has come, by the ear.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Cycle {
    /// The furnace must come to rest first.
    #[default]
    Running,
    /// It stands; a cycle can begin.
    AtRest,
    /// It burns on low.
    Low,
    /// It has burnt on low and on high.
    High,
    /// It has come to rest after both.
    Seen,
}

impl Cycle {
    /// What is heard now takes it on.
    pub(super) fn heard(self, seen: &Seen) -> Self {
        match seen.place {
            Place::Yard | Place::Away => return self,
            Place::PlantRoom | Place::GasValve | Place::Hall => {}
        }
        let heard = |sound| seen.sounds.contains(&sound);
        let low = heard(Sound::BurnersLow);
        let high = heard(Sound::BurnersHigh);
        let fans = [Sound::Inducer, Sound::InducerHigh, Sound::Blower];
        let still = !low && !high && !fans.into_iter().any(heard);
        match self {
            Self::Seen => Self::Seen,
            Self::High if still => Self::Seen,
            Self::Running | Self::AtRest | Self::Low if still => Self::AtRest,
            Self::AtRest if low => Self::Low,
            Self::AtRest | Self::Low if high => Self::High,
            same => same,
        }
    }
}

/// The next step of the cycle, at the thermostat; none once it was seen.
pub(super) fn step(cycle: Cycle, hall: &HallSeen) -> Option<Hint> {
    let set = |text: &str, above: i16| {
        let to = hall.room_half_f.saturating_add(above).clamp(90, 180);
        Some(Hint::act(text, "thermostat", Action::Setpoint(to)))
    };
    let listen = |text: &str| Some(Hint::wait(text, "thermostat"));
    if cycle == Cycle::Seen {
        return None;
    }
    if hall.mode == OnOff::Off {
        return Some(Hint::act(
            t!("coach-cycle-on"),
            "thermostat-mode",
            Action::ThermostatMode(OnOff::On),
        ));
    }
    match (cycle, hall.call) {
        (Cycle::Running, Call::None) | (Cycle::High, Call::None) => listen(t!("coach-cycle-ends")),
        (Cycle::Running, Call::First | Call::Second) => set(t!("coach-cycle-rest"), -NONE_HALF_F),
        (Cycle::AtRest | Cycle::Low, Call::None | Call::First) => {
            set(t!("coach-cycle-call"), BOTH_HALF_F)
        }
        (Cycle::AtRest | Cycle::Low, Call::Second) => listen(t!("coach-cycle-listen")),
        (Cycle::High, Call::First | Call::Second) => set(t!("coach-cycle-end-call"), -NONE_HALF_F),
        (Cycle::Seen, _) => None,
    }
}

//! A whole cycle from the thermostat, with no hand on the gas: what was seen and heard of it, and the
//! next step towards it. It is called and ended in the hall, and seen at the furnace meanwhile.

use super::hint::Hint;
use crate::hands::action::Action;
use crate::parts::{Level, OnOff, Place, is_staged};
use crate::procedure::Called;
use crate::senses::seen::{HallSeen, Seen, Sound};
use crate::site::house::settable_half_f;

/// How far above the room the thermostat is set so that it calls every level, in half degrees.
const BOTH_HALF_F: i16 = 10;
/// How far below the room it is set so that it calls nothing, in half degrees.
const NONE_HALF_F: i16 = 4;

/// How far a cycle has come, by the ear: from light-up to its full rate at the furnace.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Cycle {
    /// The furnace must come to rest first.
    #[default]
    Running,
    /// It stands; a cycle can begin.
    AtRest,
    /// It was seen to light, and burns below its full rate.
    Lit,
    /// It was seen to burn at its full rate.
    Full,
    /// It has come to rest after that.
    Seen,
}

impl Cycle {
    /// What burns meanwhile is not seen from the yard.
    fn out_of_sight(self) -> Self {
        match self {
            Self::Lit | Self::Full => Self::Running,
            same @ (Self::Running | Self::AtRest | Self::Seen) => same,
        }
    }

    /// What is heard now takes it on.
    pub(super) fn heard(self, seen: &Seen) -> Self {
        let at_furnace = match seen.place {
            Place::Yard | Place::Away => return self.out_of_sight(),
            Place::PlantRoom | Place::GasValve => true,
            Place::Hall => false,
        };
        let heard = |sound| seen.sounds.contains(&sound);
        let burns = seen.levels.iter().copied().find(|&level| heard(Sound::Burners(level)));
        let still = burns.is_none() && !seen.sounds.iter().any(|sound| sound.is_of_fan());
        let full = burns.is_some_and(Level::is_top);
        match self {
            Self::Seen => Self::Seen,
            Self::Full if still => Self::Seen,
            Self::Running | Self::AtRest | Self::Lit if still => Self::AtRest,
            Self::AtRest if burns.is_some() && !at_furnace => Self::Running,
            Self::AtRest | Self::Lit if full && at_furnace => Self::Full,
            Self::AtRest if burns.is_some() => Self::Lit,
            same @ (Self::Running | Self::AtRest | Self::Lit | Self::Full) => same,
        }
    }
}

/// The next step of the cycle away from the thermostat, by what was called when it was left.
pub(super) fn elsewhere(cycle: Cycle, seen: &Seen, called: Called) -> Option<Hint> {
    let one = !is_staged(seen.levels);
    match (cycle, called) {
        (Cycle::Seen, _) => None,
        (Cycle::AtRest | Cycle::Lit, Called::JustNow | Called::LongSince) => {
            let text = if one { t!("coach-cycle-watch-one") } else { t!("coach-cycle-watch") };
            Some(match seen.place {
                Place::PlantRoom | Place::GasValve => Hint::wait(text, "burners"),
                Place::Hall | Place::Yard | Place::Away => Hint::go(text, Place::PlantRoom),
            })
        }
        (Cycle::Full, _) => Some(Hint::go(t!("coach-cycle-back"), Place::Hall)),
        (Cycle::Running | Cycle::AtRest | Cycle::Lit, _) => {
            Some(Hint::go(t!("coach-hall-cycle"), Place::Hall))
        }
    }
}

/// The next step of the cycle, at the thermostat; none once it was seen.
pub(super) fn step(cycle: Cycle, hall: &HallSeen, levels: &[Level]) -> Option<Hint> {
    let set = |text: &str, above: i16| {
        let to = settable_half_f(hall.room_half_f.saturating_add(above));
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
    let one = !is_staged(levels);
    match (cycle, hall.call) {
        (Cycle::Running | Cycle::Full, None) => listen(t!("coach-cycle-ends")),
        (Cycle::Running, Some(_)) => set(t!("coach-cycle-rest"), -NONE_HALF_F),
        (Cycle::AtRest | Cycle::Lit, Some(level)) if level.is_top() => {
            Some(Hint::go(t!("coach-cycle-see"), Place::PlantRoom))
        }
        (Cycle::AtRest | Cycle::Lit, None | Some(_)) => {
            let text = if one { t!("coach-cycle-call-one") } else { t!("coach-cycle-call") };
            set(text, BOTH_HALF_F)
        }
        (Cycle::Full, Some(_)) => {
            let text = if one { t!("coach-cycle-end-one") } else { t!("coach-cycle-end-call") };
            set(text, -NONE_HALF_F)
        }
        (Cycle::Seen, _) => None,
    }
}

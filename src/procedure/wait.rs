//! Waiting for what is perceived, for at most so long.

use crate::appliance::ignition::ControlStatus;
use crate::senses::seen::{Seen, Sound};
use crate::units::TICK_S;

/// Something to wait for, by what is perceived.
#[derive(Debug, Clone, PartialEq)]
pub enum Until {
    /// This many seconds pass.
    Seconds(f64),
    /// A sound is heard.
    Heard(Sound),
    /// None of these sounds is heard.
    Quiet(Vec<Sound>),
    /// The control's status, read at the furnace, is one of these.
    Status(Vec<ControlStatus>),
    /// The manometer shows a number between these, in pascals.
    MeterBetween(f64, f64),
    /// The manometer has changed by less than this many pascals over this many seconds.
    MeterSteady {
        /// Largest change, in pascals.
        within_pa: f64,
        /// For so long, in seconds.
        for_s: f64,
    },
    /// The room has reached this temperature, read at the thermostat, in half degrees Fahrenheit.
    RoomAtLeast(i16),
}

/// A waiting, with what it remembers from tick to tick.
#[derive(Debug, Clone, PartialEq)]
pub struct Wait {
    until: Until,
    limit_s: f64,
    waited_s: f64,
    anchor: Option<(f64, f64)>,
}

/// How a wait stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Waiting {
    /// It has not come yet.
    On,
    /// It came within its time.
    Met,
    /// The time passed without it.
    TooLong,
}

impl Wait {
    /// Waits for `until`, at most `limit_s` seconds.
    #[must_use]
    pub fn new(until: Until, limit_s: f64) -> Self {
        Self { until, limit_s, waited_s: 0.0, anchor: None }
    }

    /// What it waits for.
    #[must_use]
    pub fn until(&self) -> &Until {
        &self.until
    }

    /// Looks once; a tick passes when the answer is [`Waiting::On`].
    pub fn look(&mut self, seen: &Seen) -> Waiting {
        if self.holds(seen) {
            return Waiting::Met;
        }
        if self.waited_s >= self.limit_s {
            return Waiting::TooLong;
        }
        self.waited_s += TICK_S;
        Waiting::On
    }

    fn holds(&mut self, seen: &Seen) -> bool {
        match &self.until {
            Until::Seconds(seconds) => self.waited_s >= *seconds - 0.5 * TICK_S,
            Until::Heard(sound) => seen.sounds.contains(sound),
            Until::Quiet(sounds) => !sounds.iter().any(|sound| seen.sounds.contains(sound)),
            Until::Status(any_of) => {
                seen.furnace.as_ref().is_some_and(|furnace| any_of.contains(&furnace.status))
            }
            Until::MeterBetween(lower, upper) => {
                number(seen).is_some_and(|pa| (*lower..=*upper).contains(&pa))
            }
            Until::MeterSteady { within_pa, for_s } => {
                let (within_pa, for_s) = (*within_pa, *for_s);
                let Some(pa) = number(seen) else {
                    self.anchor = None;
                    return false;
                };
                match self.anchor {
                    Some((at, since)) if (pa - at).abs() <= within_pa => {
                        self.waited_s - since >= for_s
                    }
                    Some(_) | None => {
                        self.anchor = Some((pa, self.waited_s));
                        false
                    }
                }
            }
            Until::RoomAtLeast(half_f) => {
                seen.hall.as_ref().is_some_and(|hall| hall.room_half_f >= *half_f)
            }
        }
    }
}

/// The number on the instrument at the hose, in pascals.
#[must_use]
pub fn number(seen: &Seen) -> Option<f64> {
    seen.pressure_shown().map(|shown| shown.pa())
}

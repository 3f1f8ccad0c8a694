//! Stopwatch at the test dial: time from one pass of the hand to a later one, over whole turns.
//!
//! **Equation.** `seconds per turn = (stop − start)/n`, `n` the whole number of turns nearest to what
//! the hand has made since the start.
//! **Assumptions.** The eye takes the hand's place at the start as its mark; the finger is as late
//! at the stop as at the start.
//! **Valid range.** From half a turn on; before that no turn can be counted.
//! **Regularisation.** None.
//! **Source.** Clocking a meter over whole turns of its test dial: common practice.
//! **Left out.** The finger's own delay beyond the tick at which it is pressed; temperature and
//! pressure of the gas in the meter.
//! **Checked.** `src/instrument/stopwatch.rs`: `whole_turns_are_counted()`;
//! `tests/core/instruments/dial.rs`: `the_dial_gives_the_input()`,
//! `one_plugged_orifice_slows_the_meter()`.

use super::figure::{Figure, Quantity};
use crate::units::TICK_S;
use serde::Serialize;

/// A stopwatch held to a dial.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub enum Stopwatch {
    /// Stands at zero and has not been started.
    #[default]
    Nought,
    /// Runs since it was started at the dial.
    Running {
        /// Tick at which it was started.
        since: u64,
        /// The dial then, in turns.
        turns: f64,
    },
    /// Stopped; holds its time until it is started anew.
    Stopped {
        /// Ticks from start to stop.
        ticks: u64,
        /// Turns that the hand made meanwhile.
        turns: f64,
    },
}

impl Stopwatch {
    /// Starts from nought at a tick with the dial at so many turns.
    pub fn start(&mut self, tick: u64, dial_turns: f64) {
        *self = Self::Running { since: tick, turns: dial_turns };
    }

    /// Stops; says whether it ran.
    pub fn stop(&mut self, tick: u64, dial_turns: f64) -> bool {
        let Self::Running { since, turns } = *self else { return false };
        let ticks = tick.saturating_sub(since);
        *self = Self::Stopped { ticks, turns: dial_turns - turns };
        true
    }

    /// Its face at a tick: the time, and once it has stopped the turns counted and the time of one.
    #[must_use]
    pub fn face(&self, tick: u64) -> Vec<Figure> {
        #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
        let seconds = |ticks: u64| ticks as f64 * TICK_S;
        match *self {
            Self::Nought => vec![Figure::new(Quantity::Time, 0.0)],
            Self::Running { since, .. } => {
                vec![Figure::new(Quantity::Time, seconds(tick.saturating_sub(since)))]
            }
            Self::Stopped { ticks, turns } => {
                let whole = turns.round();
                let one = if whole >= 1.0 { seconds(ticks) / whole } else { f64::INFINITY };
                vec![
                    Figure::new(Quantity::Time, seconds(ticks)),
                    Figure::new(Quantity::Turns, whole),
                    Figure::new(Quantity::SecondsPerTurn, one),
                ]
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Two turns in 46 s are 23 s a turn; stopped a little late, the time is that much long; before
    /// half a turn nothing is counted.
    #[test]
    fn whole_turns_are_counted() {
        let timed = |turns: f64, ticks: u64| {
            let mut it = Stopwatch::default();
            it.start(100, 7.3);
            assert!(it.stop(100 + ticks, 7.3 + turns));
            it.face(0).last().and_then(|figure| figure.value())
        };
        assert_eq!(timed(2.0, 2_300), Some(23.0));
        assert_eq!(timed(2.02, 2_320), Some(23.2));
        assert_eq!(timed(0.4, 500), None);
    }
}

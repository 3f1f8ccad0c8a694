//! A bench that is run through its stages without an instrument.

use crate::bench::Bench;
use crate::bench::run::{Nobody, Witness};
use crate::hands::action::Action;
use crate::hands::event::Event;
use crate::hands::refusal::Refusal;
use crate::measure::driver::Driver;
use crate::model::truth::Truth;
use crate::parts::{Level, OnOff, Place};
use crate::procedure::{Goal, Means};
use crate::setup::Setup;

/// Time from a lit level to a reading, in seconds.
const SETTLE_S: u64 = 12;

/// A bench and whether everything asked of it was done.
pub(super) struct Run {
    by: Driver,
    levels: &'static [Level],
    pub(super) refused: bool,
}

/// Whether an action was refused that was not done already.
struct Refused(bool);

impl Witness for Refused {
    fn acted(&mut self, _: &Bench, _: &Action, result: Result<(), Refusal>) {
        self.0 |= matches!(result, Err(why) if why != Refusal::AlreadySo);
    }
}

impl Run {
    /// The bench at rest, its heat off.
    pub(super) fn at_rest(mut setup: Setup) -> Self {
        setup.found.thermostat_mode = OnOff::Off;
        let levels = setup.furnace.plate.input.list();
        Self { by: Driver::new(Bench::new(setup)), levels, refused: false }
    }

    fn reach(&mut self, goals: &[Goal]) {
        let mut refused = Refused(false);
        let came = self.by.reach(goals, &mut refused);
        self.refused |= refused.0 || !came;
    }

    /// Lets seconds pass; the truth at their end.
    pub(super) fn wait(&mut self, seconds: u64) -> Truth {
        self.by.wait(seconds, &mut Nobody);
        self.by.bench().truth()
    }

    /// Burns at the level of light-up and has settled.
    pub(super) fn first(&mut self) -> Truth {
        self.reach(&[Goal::Burning(self.levels.first().copied(), Means::Thermostat)]);
        self.wait(SETTLE_S)
    }

    /// The full rate is wired on and has settled.
    pub(super) fn full(&mut self) -> Truth {
        self.reach(&[Goal::Burning(self.levels.last().copied(), Means::Wire)]);
        self.wait(SETTLE_S)
    }

    /// The other appliances too.
    pub(super) fn others(&mut self) -> Truth {
        self.reach(&[Goal::Others(OnOff::On)]);
        self.wait(SETTLE_S)
    }

    /// Manifold pressure at every tick from when it comes from the level of light-up to the full
    /// rate, in pascals, for so many seconds.
    pub(super) fn manifold_to_full(&mut self, seconds: u64) -> Vec<f64> {
        let full = self.levels.last().copied();
        self.first();
        self.reach(&[Goal::Called(full, Means::Thermostat), Goal::Lit(full)]);
        let mut trace = Vec::new();
        let mut note = |bench: &Bench, _: Vec<Event>| trace.push(bench.truth().manifold_pa);
        self.by.wait(seconds, &mut note);
        trace
    }

    /// Seconds for one turn of the meter's test dial, counted over `seconds`.
    pub(super) fn dial_s(&mut self, seconds: u32) -> f64 {
        self.reach(&[Goal::At(Place::Yard)]);
        let turns = |by: &Driver| by.bench().seen().yard.and_then(|yard| yard.dial_turns);
        let before = turns(&self.by);
        self.wait(u64::from(seconds));
        match (before, turns(&self.by)) {
            (Some(before), Some(after)) => f64::from(seconds) / (after - before),
            (None, _) | (_, None) => f64::NAN,
        }
    }

    /// The largest imbalance of gas so far, relative to the throughput.
    pub(super) fn imbalance(&self) -> f64 {
        self.by.bench().worst_imbalance()
    }
}

//! A job under way that is proven.

use super::super::drive::{Player, Stopped, play};
use crate::bench::Bench;
use crate::bench::run::{act, pass};
use crate::marking::{Brief, Marks, Observer};
use crate::rules::RuleBook;
use crate::scenario::Scenario;
use crate::setup::Setup;
use crate::units::TICKS_PER_S;

/// Longest job, in simulated seconds: a run that has not ended by then is no proof.
pub const LIMIT_S: u64 = 6 * 3600;

/// What is proven: a seed of a scenario, marked by a book.
#[derive(Debug, Clone, Copy)]
pub(super) struct Job<'a> {
    pub scenario: &'a Scenario,
    pub book: &'a RuleBook,
    pub seed: u64,
}

impl Job<'_> {
    /// What the scenario says about its right end.
    pub(super) fn brief(&self) -> Brief {
        Brief { right_endings: self.scenario.right_endings(self.seed) }
    }
}

/// A job under way, with all that is needed to fork it.
#[derive(Debug, Clone)]
pub(super) struct Run {
    pub bench: Bench,
    pub observer: Observer,
}

impl Run {
    /// At the first tick of a seed.
    pub(super) fn new(job: Job<'_>) -> Self {
        Self::of(job.scenario.draw(job.seed))
    }

    /// At the first tick of a bench.
    pub(super) fn of(setup: Setup) -> Self {
        let bench = Bench::new(setup);
        let observer = Observer::new(&bench);
        Self { bench, observer }
    }

    /// Lets somebody play to the end.
    pub(super) fn play(&mut self, player: &mut dyn Player) -> Stopped {
        let left_s = LIMIT_S.saturating_sub(self.bench.tick() / TICKS_PER_S);
        play(&mut self.bench, player, left_s, &mut self.observer)
    }

    /// Lets somebody play until a tick, whose actions are still to come.
    pub(super) fn play_until(&mut self, tick: u64, player: &mut dyn Player) {
        while self.bench.tick() < tick && self.bench.over().is_none() {
            while let Some(action) = player.next(&self.bench.seen()) {
                if let Err(why) = act(&mut self.bench, &action, &mut self.observer) {
                    player.refused(&action, why);
                }
            }
            pass(&mut self.bench, &mut self.observer);
        }
    }

    /// Marks that the job earned.
    pub(super) fn marks(&self, job: Job<'_>) -> Marks {
        self.observer.marks(job.book, &job.brief())
    }
}

/// Why a run stopped short of its end.
pub(super) fn short_of_end(stopped: Stopped) -> Option<&'static str> {
    match stopped {
        Stopped::Over => None,
        Stopped::PlayerFinished => Some(t!("proof-not-handed-over")),
        Stopped::TimeUp => Some(t!("proof-not-in-time")),
    }
}

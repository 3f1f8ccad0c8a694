//! Every way of spoiling a good run, forked from it where it goes wrong.

use serde::Serialize;

use super::super::plan::Technician;
use super::super::spoil::{Fork, Good, spoils};
use super::run::{Job, Run, short_of_end};

/// What a spoiled run lost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SpoilProof {
    /// How the run was spoiled.
    pub name: &'static str,
    /// The tick at which it left the good run.
    pub tick: u64,
    /// Rules that it had to trip, sorted.
    pub trips: Vec<String>,
    /// Rules that it tripped, sorted.
    pub found: Vec<String>,
    /// Points, where the job is met.
    pub points: Option<f64>,
    /// Why it stopped short of its end, if it did.
    pub stopped: Option<&'static str>,
}

impl SpoilProof {
    /// Whether exactly its items were lost.
    #[must_use]
    pub fn is_right(&self) -> bool {
        self.trips == self.found && self.stopped.is_none()
    }
}

/// Plays the good run again and lets every way of spoiling it fork off, in the order of time.
pub(super) fn all(job: Job<'_>, good: &Good) -> Vec<SpoilProof> {
    let mut run = Run::new(job);
    let mut technician = Technician::new(&run.bench.setup().card);
    let mut forks: Vec<Fork> = spoils().filter_map(|spoil| spoil.fork(good)).collect();
    forks.sort_by_key(|fork| fork.tick);
    let spoiled = forks.into_iter().map(|fork| {
        run.play_until(fork.tick, &mut technician);
        finish(job, run.clone(), &fork, fork.player(&technician))
    });
    spoiled.collect()
}

fn finish(job: Job<'_>, mut run: Run, fork: &Fork, mut player: Technician) -> SpoilProof {
    let stopped = run.play(&mut player);
    let marks = run.marks(job);
    let mut found: Vec<String> = marks.findings.iter().map(|one| one.rule.clone()).collect();
    found.sort_unstable();
    SpoilProof {
        name: fork.spoil.name(),
        tick: fork.tick,
        trips: fork.spoil.trips.iter().map(|&rule| rule.to_owned()).collect(),
        found,
        points: marks.verdict.points().map(|(points, _)| points),
        stopped: short_of_end(stopped),
    }
}

//! Every way of spoiling a good run, forked from it where it goes wrong.

use std::sync::Arc;

use serde::Serialize;

use super::super::drive::Player;
use super::super::plan::Technician;
use super::super::spoil::{Forks, Good, Spoiled};
use super::LIMIT_S;
use super::good::{Run, short_of_end};
use crate::bench::run;
use crate::rules::RuleBook;
use crate::scenario::Scenario;
use crate::units::TICKS_PER_S;

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

/// Plays the good run again and lets every way of spoiling it fork off.
pub(super) fn all(
    scenario: &Scenario,
    book: &RuleBook,
    seed: u64,
    good: &Arc<Good>,
) -> Vec<SpoilProof> {
    let mut run = Run::new(scenario, seed);
    let mut technician = Technician::new(&run.bench.setup().card);
    let mut forks = Forks::new(good);
    let mut proofs = Vec::new();
    let mut judge = |run: &Run, spoiled: Vec<Spoiled>| {
        for mut player in spoiled {
            proofs.push(finish(run.clone(), &mut player, scenario, seed, book));
        }
    };
    while run.bench.tick() < LIMIT_S * TICKS_PER_S {
        while let Some(action) = technician.next(&run.bench.seen()) {
            judge(&run, forks.at(&action, &technician));
            // The good run is a good one: nothing of it was refused.
            let _ = run::act(&mut run.bench, &action, &mut run.observer);
            if run.bench.over().is_some() {
                break;
            }
            judge(&run, forks.hurried(&technician));
        }
        if run.bench.over().is_some() || technician.finished() {
            run::tell(&mut run.bench, &mut run.observer);
            break;
        }
        run::pass(&mut run.bench, &mut run.observer);
    }
    proofs.sort_by_key(|one| one.tick);
    proofs
}

fn finish(
    mut run: Run,
    player: &mut Spoiled,
    scenario: &Scenario,
    seed: u64,
    book: &RuleBook,
) -> SpoilProof {
    let tick = run.bench.tick();
    let stopped = run.play(player);
    let marks = run.marks(scenario, seed, book);
    let mut found: Vec<String> = marks.findings.iter().map(|one| one.rule.clone()).collect();
    found.sort_unstable();
    SpoilProof {
        name: player.spoil().name(),
        tick,
        trips: names(player.spoil().trips),
        found,
        points: marks.verdict.points().map(|(points, _)| points),
        stopped: short_of_end(stopped),
    }
}

fn names(rules: &[&str]) -> Vec<String> {
    rules.iter().map(|&rule| rule.to_owned()).collect()
}

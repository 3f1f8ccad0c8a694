//! The good run of a seed.

use std::sync::Arc;

use serde::Serialize;

use super::super::diagnosis::Diagnosis;
use super::super::drive::{Player, Stopped, play};
use super::super::plan::Technician;
use super::super::script::action_line;
use super::super::spoil::Good;
use super::spoiled::{self, SpoilProof};
use super::{LIMIT_S, Spoiling};
use crate::bench::Bench;
use crate::marking::{Brief, Marks, Observer};
use crate::parts::Ending;
use crate::rules::RuleBook;
use crate::scenario::Scenario;

/// What the technician made of a seed.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct SeedProof {
    /// Seed that the job was drawn with.
    pub seed: u64,
    /// Faults that are in the job, by name.
    pub faults: Vec<&'static str>,
    /// What the technician took them for, by what it read and saw.
    pub diagnosis: Vec<Diagnosis>,
    /// How the job ended; none when it did not.
    pub ending: Option<Ending>,
    /// Why the run stopped short of its end, if it did.
    pub stopped: Option<&'static str>,
    /// Model time that the job took, in seconds.
    pub seconds: f64,
    /// Number of actions that were taken.
    pub actions: usize,
    /// Points, where the job is met.
    pub points: Option<f64>,
    /// Whether the essentials are met.
    pub met: bool,
    /// What it lost points for: rule and what was seen.
    pub findings: Vec<(String, String)>,
    /// What was refused, and why.
    pub refused: Vec<String>,
    /// The ways of spoiling it that were tried.
    pub spoiled: Vec<SpoilProof>,
}

impl SeedProof {
    /// Whether the technician has full marks.
    #[must_use]
    pub fn is_full(&self) -> bool {
        self.stopped.is_none() && self.met && self.findings.is_empty() && self.refused.is_empty()
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
    pub(super) fn new(scenario: &Scenario, seed: u64) -> Self {
        let bench = Bench::new(scenario.draw(seed));
        let observer = Observer::new(&bench);
        Self { bench, observer }
    }

    /// Lets somebody play to the end.
    pub(super) fn play(&mut self, player: &mut dyn Player) -> Stopped {
        let left_s = LIMIT_S.saturating_sub(self.bench.tick() / crate::units::TICKS_PER_S);
        play(&mut self.bench, player, left_s, &mut self.observer)
    }

    /// Marks that the job earned.
    pub(super) fn marks(&self, scenario: &Scenario, seed: u64, book: &RuleBook) -> Marks {
        self.observer.marks(book, &brief(scenario, seed))
    }
}

/// What the scenario says about its right end.
fn brief(scenario: &Scenario, seed: u64) -> Brief {
    Brief { right_endings: scenario.right_endings(seed) }
}

/// Why a run stopped short of its end.
pub(super) fn short_of_end(stopped: Stopped) -> Option<&'static str> {
    match stopped {
        Stopped::Over => None,
        Stopped::PlayerFinished => Some(t!("proof-not-handed-over")),
        Stopped::TimeUp => Some(t!("proof-not-in-time")),
    }
}

pub(super) fn prove(
    scenario: &Scenario,
    book: &RuleBook,
    seed: u64,
    spoiling: Spoiling,
) -> SeedProof {
    let mut run = Run::new(scenario, seed);
    let mut technician = Technician::new(&run.bench.setup().card);
    let stopped = run.play(&mut technician);
    let marks = run.marks(scenario, seed, book);
    let good = Good::of(&run.observer.ledger, book, &brief(scenario, seed));
    let refused = technician.refused();
    let mut proof = SeedProof {
        seed,
        faults: run.bench.setup().faults.iter().map(|(fault, _)| fault.name()).collect(),
        diagnosis: technician.diagnosis(),
        ending: good.ending,
        stopped: short_of_end(stopped),
        seconds: run.bench.seconds(),
        actions: good.actions.len(),
        points: marks.verdict.points().map(|(points, _)| points),
        met: marks.verdict.is_met(),
        findings: marks.findings.iter().map(|f| (f.rule.clone(), f.seen.clone())).collect(),
        refused: refused
            .iter()
            .map(|(action, why)| format!("{}: {}", action_line(action), why.text()))
            .collect(),
        spoiled: Vec::new(),
    };
    // A run that is not good itself cannot show what spoiling it costs.
    if spoiling == Spoiling::Yes && proof.is_full() {
        proof.spoiled = spoiled::all(scenario, book, seed, &Arc::new(good));
    }
    proof
}

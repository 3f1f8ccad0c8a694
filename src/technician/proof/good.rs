//! The good run of a seed.

use serde::Serialize;

use super::super::diagnosis::Diagnosis;
use super::super::plan::Technician;
use super::super::script::action_line;
use super::super::spoil::Good;
use super::run::{Job, Run, short_of_end};
use super::spoiled::{self, SpoilProof};
use crate::parts::Ending;

/// Whether good runs are spoiled too.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Spoiling {
    /// The good run only.
    No,
    /// The good run, and every way of spoiling it.
    Yes,
}

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

/// Plays the good run, and spoils it where that is asked for.
pub(super) fn prove(job: Job<'_>, spoiling: Spoiling) -> SeedProof {
    let mut run = Run::new(job);
    let mut technician = Technician::new(&run.bench.setup().card);
    let stopped = run.play(&mut technician);
    let marks = run.marks(job);
    let good = Good::of(&run.observer.ledger, technician.deeds(), job.book, &job.brief());
    let refused = technician.refused();
    let mut proof = SeedProof {
        seed: job.seed,
        faults: run.bench.setup().faults.iter().map(|(fault, _)| fault.name()).collect(),
        diagnosis: technician.diagnosis(),
        ending: run.observer.ledger.ending(),
        stopped: short_of_end(stopped),
        seconds: run.bench.seconds(),
        actions: run.observer.ledger.did().count(),
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
        proof.spoiled = spoiled::all(job, &good);
    }
    proof
}

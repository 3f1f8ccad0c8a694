//! The marks tried from both sides: fair runs that must lose nothing, blind runs that must not pass.

use serde::Serialize;

use super::super::drive::{Player, Stopped};
use super::super::fairness::{Blind, Fair, Manner, Policy};
use super::super::script::action_line;
use super::run::{Job, Run, short_of_end};
use crate::catalogue::cause::true_causes;
use crate::marking::Marks;
use crate::parts::Cause;
use crate::rules::RuleBookError;
use crate::scenario::Scenario;
use crate::setup::Setup;

/// A fair run and what it lost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FairProof {
    /// Seed that the job was drawn with.
    pub seed: u64,
    /// Number of the run, which draws its manners.
    pub run: u64,
    /// Its manners, in words.
    pub manners: Vec<&'static str>,
    /// Whether the essentials are met.
    pub met: bool,
    /// What it was charged with: rule and what was seen.
    pub findings: Vec<(String, String)>,
    /// Why the run stopped short of its end, if it did.
    pub stopped: Option<&'static str>,
    /// What was refused, and why.
    pub refused: Vec<String>,
}

impl FairProof {
    /// Whether it lost nothing.
    #[must_use]
    pub fn is_right(&self) -> bool {
        self.met && self.findings.is_empty() && self.stopped.is_none() && self.refused.is_empty()
    }
}

/// A blind run and how it was judged.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BlindProof {
    /// Seed that the job was drawn with.
    pub seed: u64,
    /// Its habit, in words.
    pub habit: &'static str,
    /// Whether the job asks for nothing that the habit leaves undone.
    pub fits: bool,
    /// Whether the essentials are met.
    pub met: bool,
    /// Rules that it was charged with.
    pub findings: Vec<String>,
}

impl BlindProof {
    /// Whether it did not pass where it does not fit. What it gets where its habit happens to be right
    /// is no matter of this proof.
    #[must_use]
    pub fn is_right(&self) -> bool {
        self.fits || !self.met
    }
}

/// Plays a fair run of a seed.
///
/// # Errors
/// When the scenario's changes do not fit the rule book.
pub fn fair_run(scenario: &Scenario, seed: u64, run: u64) -> Result<FairProof, RuleBookError> {
    let book = scenario.marking.rule_book()?;
    let player = |setup: &Setup| Fair::new(&setup.card, run);
    let (player, stopped, marks) = play(Job { scenario, book: &book, seed }, player);
    let refused = player.refused().iter();
    Ok(FairProof {
        seed,
        run,
        manners: player.manners().iter().map(|it: &Manner| it.words()).collect(),
        met: marks.verdict.is_met(),
        findings: marks.findings.into_iter().map(|it| (it.rule, it.seen)).collect(),
        stopped: short_of_end(stopped),
        refused: refused
            .map(|(did, why)| format!("{}: {}", action_line(did), why.text()))
            .collect(),
    })
}

/// Plays a blind run of a seed.
///
/// # Errors
/// When the scenario's changes do not fit the rule book.
pub fn blind_run(
    scenario: &Scenario,
    seed: u64,
    policy: Policy,
) -> Result<BlindProof, RuleBookError> {
    let book = scenario.marking.rule_book()?;
    let player = |setup: &Setup| Blind::new(&setup.card, policy, seed);
    let (player, _, marks) = play(Job { scenario, book: &book, seed }, player);
    Ok(BlindProof {
        seed,
        habit: policy.words(),
        fits: fits(policy, &scenario.draw(seed), player.named()),
        met: marks.verdict.is_met(),
        findings: marks.findings.into_iter().map(|it| it.rule).collect(),
    })
}

/// Whether a habit happens to be right: there is nothing to find where it leaves all as it is, or
/// what was drawn names what is wrong.
fn fits(policy: Policy, setup: &Setup, named: Cause) -> bool {
    let causes = true_causes(setup);
    match policy {
        Policy::AllIsWell | Policy::Cranks => causes.is_empty(),
        Policy::NamesAtRandom => causes.iter().any(|it| it.accepts(named)),
        Policy::ShutsOff
        | Policy::CallsOwner
        | Policy::SwapsParts
        | Policy::CleansAll
        | Policy::RaisesSupply => false,
    }
}

fn play<P: Player>(job: Job<'_>, player: impl FnOnce(&Setup) -> P) -> (P, Stopped, Marks) {
    let mut run = Run::new(job);
    let mut player = player(run.bench.setup());
    let stopped = run.play(&mut player);
    let marks = run.marks(job);
    (player, stopped, marks)
}

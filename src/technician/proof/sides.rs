//! The marks tried from both sides: fair runs that must lose nothing, blind runs that must not pass.

use serde::Serialize;

use super::super::drive::{Player, Stopped};
use super::super::fairness::{Blind, Fair, Manner, Policy, Sequence};
use super::super::findings::is_of_every_job;
use super::super::script::action_line;
use super::run::{Run, short_of_end};
use crate::catalogue::cause::{TrueCause, true_causes};
use crate::marking::{Brief, Marks, Verdict};
use crate::measure::causes::to_be_named;
use crate::parts::Cause;
use crate::rules::{RuleBook, RuleBookError};
use crate::scenario::Scenario;
use crate::setup::Setup;

/// A fair run and what it lost.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct FairProof {
    /// Seed that the job was drawn with.
    pub seed: u64,
    /// Number of the run, which draws its manners and sequences.
    pub run: u64,
    /// Its manners, in words.
    pub manners: Vec<&'static str>,
    /// Its sequences, in words.
    pub sequences: Vec<&'static str>,
    /// Whether the essentials are met, or the job ended by itself before they could be.
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

/// How a blind run was judged.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum Judgment {
    /// The essentials are not met.
    Caught,
    /// The essentials are met, and the job asks for nothing that the habit leaves undone.
    Fits,
    /// The essentials are met, and they should not be.
    Passes,
}

/// A blind run and how it was judged.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct BlindProof {
    /// Seed that the job was drawn with.
    pub seed: u64,
    /// Its habit, in words.
    pub habit: &'static str,
    /// Verdict on it, held against what the job asks for.
    pub judgment: Judgment,
    /// Rules that it was charged with.
    pub findings: Vec<String>,
}

impl BlindProof {
    /// Whether it did not pass where it does not fit. What it loses where its habit happens to be
    /// right is no matter of this proof.
    #[must_use]
    pub fn is_right(&self) -> bool {
        self.judgment != Judgment::Passes
    }
}

/// A bench that the marks are tried on.
pub(super) struct Tried {
    /// Seed that it was drawn with.
    pub seed: u64,
    /// Everything that it is built from.
    pub setup: Setup,
    /// What the author says about the right end.
    pub brief: Brief,
    /// Rules that it is marked by.
    pub book: RuleBook,
}

impl Tried {
    fn of(scenario: &Scenario, seed: u64) -> Result<Self, RuleBookError> {
        let book = scenario.marking.rule_book()?;
        let brief = Brief { right_endings: scenario.right_endings(seed) };
        Ok(Self { seed, setup: scenario.draw(seed), brief, book })
    }

    pub(super) fn fair(&self, run: u64) -> FairProof {
        let (player, stopped, marks) = self.play(Fair::new(&self.setup.card, run));
        let refused = player.refused().iter();
        FairProof {
            seed: self.seed,
            run,
            manners: player.manners().iter().map(|it: &Manner| it.words()).collect(),
            sequences: player.sequences().iter().map(|it: &Sequence| it.words()).collect(),
            met: marks.verdict.is_met() || marks.verdict == Verdict::EndedByItself,
            findings: marks.findings.into_iter().map(|it| (it.rule, it.seen)).collect(),
            stopped: short_of_end(stopped),
            refused: refused
                .map(|(did, why)| format!("{}: {}", action_line(did), why.text()))
                .collect(),
        }
    }

    pub(super) fn blind(&self, policy: Policy) -> BlindProof {
        let card = &self.setup.card;
        let (player, _, marks) = self.play(match policy {
            Policy::OnlyNames => {
                let causes = to_be_named(&self.setup).into_iter().map(|it| it.cause);
                Blind::naming(card, policy, causes.collect())
            }
            Policy::AllIsWell
            | Policy::ShutsOff
            | Policy::CallsOwner
            | Policy::SwapsParts
            | Policy::CleansAll
            | Policy::Cranks
            | Policy::RaisesSupply
            | Policy::NamesAtRandom => Blind::new(card, policy, self.seed),
        });
        let judgment = if !marks.verdict.is_met() {
            Judgment::Caught
        } else if fits(policy, &self.setup, player.named()) {
            Judgment::Fits
        } else {
            Judgment::Passes
        };
        BlindProof {
            seed: self.seed,
            habit: policy.words(),
            judgment,
            findings: marks.findings.into_iter().map(|it| it.rule).collect(),
        }
    }

    pub(super) fn play<P: Player>(&self, mut player: P) -> (P, Stopped, Marks) {
        let mut run = Run::of(self.setup.clone());
        let stopped = run.play(&mut player);
        let marks = run.observer.marks(&self.book, &self.brief);
        (player, stopped, marks)
    }
}

/// Plays a fair run of a seed.
///
/// # Errors
/// When the scenario's changes do not fit the rule book.
pub fn fair_run(scenario: &Scenario, seed: u64, run: u64) -> Result<FairProof, RuleBookError> {
    Ok(Tried::of(scenario, seed)?.fair(run))
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
    Ok(Tried::of(scenario, seed)?.blind(policy))
}

/// Whether a habit happens to be right: nothing shows that has to be named where it leaves all as it
/// is; or what it names is true, and the order of the job puts right whatever shows.
fn fits(policy: Policy, setup: &Setup, named: &[Cause]) -> bool {
    let all_put_right = || to_be_named(setup).iter().all(|it| is_of_every_job(it.cause));
    let is_true = |it: &TrueCause| named.iter().any(|&named| it.accepts(named));
    match policy {
        Policy::AllIsWell | Policy::Cranks => to_be_named(setup).is_empty(),
        Policy::OnlyNames => all_put_right(),
        Policy::NamesAtRandom => true_causes(setup).iter().any(is_true) && all_put_right(),
        Policy::ShutsOff
        | Policy::CallsOwner
        | Policy::SwapsParts
        | Policy::CleansAll
        | Policy::RaisesSupply => false,
    }
}

//! Proving a scenario: the reference technician must have full marks on every seed, and every way of
//! spoiling its work, forked from the good run where it goes wrong, must lose exactly its items.

mod alike;
mod bare;
mod catalogue;
mod good;
mod run;
mod sides;
mod spoiled;

pub use alike::{Alike, alike, alike_pairs};
pub use bare::{FaultBench, FaultProof, fault_benches};
pub use good::{SeedProof, Spoiling};
pub use run::LIMIT_S;
pub use sides::{BlindProof, FairProof, Judgment, blind_run, fair_run};
pub use spoiled::SpoilProof;

use std::collections::BTreeSet;

use serde::Serialize;

use self::run::Job;
use crate::rules::{RuleBook, RuleBookError};
use crate::scenario::Scenario;

/// Most seeds that are tried at once.
pub const MAX_SEEDS: u64 = 1000;

/// What a scenario's proof found.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Proof {
    /// Each seed that was tried, in order.
    pub seeds: Vec<SeedProof>,
    /// Rules of the scenario's book that no spoiled run tripped.
    pub untripped: Vec<String>,
    /// Sets of faults that show the same signs as this job's.
    pub alike: Vec<Alike>,
}

impl Proof {
    /// Seeds on which the technician has not full marks.
    pub fn unsolved(&self) -> impl Iterator<Item = &SeedProof> {
        self.seeds.iter().filter(|seed| !seed.is_full())
    }

    /// Spoiled runs that lost other items than theirs.
    pub fn misjudged(&self) -> impl Iterator<Item = (u64, &SpoilProof)> {
        self.seeds.iter().flat_map(|seed| {
            seed.spoiled.iter().filter(|one| !one.is_right()).map(|one| (seed.seed, one))
        })
    }

    /// Whether the scenario is proven on these seeds.
    #[must_use]
    pub fn holds(&self) -> bool {
        self.unsolved().next().is_none() && self.misjudged().next().is_none()
    }
}

/// Proves one seed of a scenario.
///
/// # Errors
/// When the scenario's changes do not fit the rule book.
pub fn prove_seed(
    scenario: &Scenario,
    seed: u64,
    spoiling: Spoiling,
) -> Result<SeedProof, RuleBookError> {
    let book = scenario.marking.rule_book()?;
    Ok(good::prove(Job { scenario, book: &book, seed }, spoiling))
}

/// Puts the proofs of seeds together.
///
/// # Errors
/// When the scenario's changes do not fit the rule book.
pub fn gather(
    scenario: &Scenario,
    seeds: Vec<SeedProof>,
    alike: Vec<Alike>,
) -> Result<Proof, RuleBookError> {
    let book = scenario.marking.rule_book()?;
    Ok(Proof { untripped: untripped(&book, &seeds), seeds, alike })
}

/// Rules that none of these runs tripped, in the order of the book.
fn untripped(book: &RuleBook, seeds: &[SeedProof]) -> Vec<String> {
    let tripped: BTreeSet<&str> = seeds
        .iter()
        .flat_map(|seed| &seed.spoiled)
        .flat_map(|one| one.found.iter().map(String::as_str))
        .collect();
    book.rules
        .iter()
        .map(|rule| rule.id.clone())
        .filter(|id| !tripped.contains(id.as_str()))
        .collect()
}

//! Which competencies a job shows: only where there was occasion, the work was really done, and
//! nothing above a minor slip speaks against it.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::brief::Brief;
use super::grounds;
use super::judged::Judged;
use super::ledger::Ledger;
use super::numbers::numbers;
use super::occasion::gives_occasion;
use super::work::is_done;
use crate::rules::{Evidence, Rule, RuleBook, Severity};

/// Whether one job shows a competency.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Shown {
    /// The work was done, and nothing above a minor slip speaks against it.
    Shown,
    /// There was occasion for it, and it was not done, or not well.
    NotShown,
    /// The job gave no occasion for it.
    NoOccasion,
}

/// How a job stands to one rule that speaks for a competency.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Work {
    Done,
    NotDone,
    NoOccasion,
}

fn work(evidence: Evidence, l: &Ledger, brief: &Brief) -> Work {
    if !gives_occasion(evidence, l, brief) {
        return Work::NoOccasion;
    }
    match is_done(evidence, l, brief) {
        None => Work::NoOccasion,
        Some(true) => Work::Done,
        Some(false) => Work::NotDone,
    }
}

/// Whether the job was done with open eyes: something was read, or found that speaks for leaving
/// the furnace shut off.
fn is_worked(l: &Ledger) -> bool {
    let read = numbers(l).iter().any(|it| it.is_right());
    read || (l.said_shut_off() && grounds::found(l))
}

/// Each competency that rules speak for. A job that was not handed over, or handed over blind, shows
/// none.
pub(super) fn competencies(
    book: &RuleBook,
    l: &Ledger,
    brief: &Brief,
    charged: &[Judged<'_>],
) -> BTreeMap<String, Shown> {
    let is_against = |rule: &Rule| {
        let of_rule = charged.iter().find(|it| it.rule.id == rule.id);
        let charge = of_rule.and_then(|it| it.charge(book));
        charge.is_some_and(|charge| charge.severity > Severity::Minor)
    };
    let worked = l.left().is_some() && is_worked(l);
    let mut all: BTreeMap<String, Vec<Told>> = BTreeMap::new();
    for rule in &book.rules {
        let told = if is_against(rule) {
            Told::Against
        } else {
            match work(rule.evidence, l, brief) {
                Work::Done if worked => Told::For,
                Work::Done | Work::NotDone => Told::Wanting,
                Work::NoOccasion => Told::Nothing,
            }
        };
        for id in &rule.claims {
            all.entry(id.clone()).or_default().push(told);
        }
    }
    all.into_iter().map(|(id, told)| (id, Shown::of(&told))).collect()
}

/// What a rule tells of a competency on one job.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Told {
    Against,
    For,
    Wanting,
    Nothing,
}

impl Shown {
    /// By what the rules of a competency tell: one that speaks against it outweighs the others.
    fn of(told: &[Told]) -> Self {
        if told.contains(&Told::Against) {
            Self::NotShown
        } else if told.contains(&Told::For) {
            Self::Shown
        } else if told.contains(&Told::Wanting) {
            Self::NotShown
        } else {
            Self::NoOccasion
        }
    }
}

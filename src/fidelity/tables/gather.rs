//! Collects rows into checks, and rows that are not used into reasons.

use super::sheet::{Line, Sheet};
use super::{Outcome, SetAside};
use crate::fidelity::{Check, Row, Tolerance, Truth};

/// What all rows of a check have in common.
#[derive(Debug, Clone)]
pub(super) struct Head {
    pub chapter: &'static str,
    pub claim: String,
    pub condition: String,
    pub tolerance: Tolerance,
    pub reason: String,
    pub unit: &'static str,
    pub known_miss: Option<Miss>,
}

/// A miss that is known: why, and the band that holds all the same.
#[derive(Debug, Clone, Copy)]
pub(super) struct Miss {
    pub why: &'static str,
    pub bound: Tolerance,
    pub reason: &'static str,
}

impl Head {
    /// A head without a known miss.
    pub(super) fn new(
        chapter: &'static str,
        unit: &'static str,
        tolerance: Tolerance,
        claim: &str,
        condition: &str,
        reason: &str,
    ) -> Self {
        Self {
            chapter,
            claim: claim.to_owned(),
            condition: condition.to_owned(),
            tolerance,
            reason: reason.to_owned(),
            unit,
            known_miss: None,
        }
    }
}

/// Checks and set-aside rows of one table, growing.
#[derive(Debug)]
pub(super) struct Gather {
    file: String,
    out: Outcome,
    misses: Vec<(String, Miss)>,
}

impl Gather {
    pub(super) fn new(sheet: &Sheet) -> Self {
        Self { file: sheet.file().to_owned(), out: Outcome::default(), misses: Vec::new() }
    }

    /// Adds a row to the check `id`, which is begun with `head` when it is its first. Rows from
    /// memory and computed ones go to checks of their own.
    pub(super) fn row(&mut self, id: &str, line: Line<'_>, row: Row, head: impl FnOnce() -> Head) {
        let truth = truth(line.text("confidence"));
        let id = match truth {
            Truth::Memory => format!("{id}.memory"),
            Truth::Published
            | Truth::ClosedForm
            | Truth::Solver
            | Truth::Invariant
            | Truth::Practice => id.to_owned(),
        };
        let named = ["source", "where"].into_iter().map(|column| line.text(column));
        let source = named.into_iter().find(|text| !text.is_empty()).unwrap_or(&self.file);
        if let Some(check) = self.out.checks.iter_mut().find(|check| check.id == id) {
            if !check.source.split(" | ").any(|known| known == source) {
                check.source = format!("{} | {source}", check.source);
            }
            check.rows.push(row);
            return;
        }
        let head = head();
        if let Some(miss) = head.known_miss {
            self.misses.push((id.clone(), miss));
        }
        self.out.checks.push(Check {
            id,
            chapter: head.chapter,
            claim: head.claim,
            truth,
            source: source.to_owned(),
            condition: format!("{} ({})", head.condition, self.file),
            tolerance: head.tolerance,
            reason: head.reason,
            unit: head.unit,
            rows: vec![row],
            known_miss: head.known_miss.map(|miss| miss.why.to_owned()),
        });
    }

    /// The same, but a row whose label the check has already is dropped.
    pub(super) fn once(&mut self, id: &str, line: Line<'_>, row: Row, head: impl FnOnce() -> Head) {
        let same = |known: &Row| known.label == row.label && known.reference == row.reference;
        let known = |check: &Check| check.id.starts_with(id) && check.rows.iter().any(same);
        if !self.out.checks.iter().any(known) {
            self.row(id, line, row, head);
        }
    }

    /// Leaves a row out.
    pub(super) fn set_aside(&mut self, reason: &str) {
        match self.out.set_aside.iter_mut().find(|class| class.reason == reason) {
            Some(class) => class.rows += 1,
            None => self.out.set_aside.push(SetAside {
                file: self.file.clone(),
                rows: 1,
                reason: reason.to_owned(),
            }),
        }
    }

    /// The checks so far.
    pub(super) fn checks(&mut self) -> &mut Vec<Check> {
        &mut self.out.checks
    }

    /// What came of the table; beside each known miss stands the band that holds all the same.
    pub(super) fn done(mut self) -> Outcome {
        for (id, miss) in self.misses {
            let Some(at) = self.out.checks.iter().position(|check| check.id == id) else {
                continue;
            };
            let Some(check) = self.out.checks.get(at).cloned() else { continue };
            let bound = Check {
                id: format!("{id}.bound"),
                claim: format!("{} The miss is no larger.", check.claim),
                tolerance: miss.bound,
                reason: miss.reason.to_owned(),
                known_miss: None,
                ..check
            };
            self.out.checks.insert(at + 1, bound);
        }
        self.out
    }
}

/// What a row is worth, from its column `confidence`: seen in print, from memory, or computed.
fn truth(confidence: &str) -> Truth {
    let from_memory = confidence.starts_with("memory") || confidence.contains("/ memory");
    if from_memory {
        Truth::Memory
    } else if confidence.starts_with("computed") {
        Truth::ClosedForm
    } else if confidence.contains("found") {
        Truth::Published
    } else {
        // A row that does not say is worth no more.
        Truth::Memory
    }
}

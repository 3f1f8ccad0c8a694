//! Collects rows into checks, and rows that are not used into reasons.

use super::csv_table::{CsvTable, Line};
use super::outcome::{Outcome, SetAside};
use crate::fidelity::check::{Check, Row, Truth};
use crate::fidelity::claims;

/// Checks and set-aside rows of one table, growing.
#[derive(Debug)]
pub(super) struct Gather {
    file: String,
    out: Outcome,
}

impl Gather {
    pub(super) fn new(table: &CsvTable) -> Self {
        Self { file: table.file().to_owned(), out: Outcome::default() }
    }

    /// Adds a row to the check `id`, which stands on the claim of that name.
    pub(super) fn row(&mut self, id: &str, line: Line<'_>, row: Row) {
        self.row_of(id, line, row, || claims::check(id, Vec::new()));
    }

    /// Adds a row to the check `id`, which is begun with `new` when it is its first. Rows from
    /// memory and computed ones go to checks of their own.
    pub(super) fn row_of(
        &mut self,
        id: &str,
        line: Line<'_>,
        row: Row,
        new: impl FnOnce() -> Check,
    ) {
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
        let new = new();
        self.out.checks.push(Check {
            id,
            truth,
            source: source.to_owned(),
            condition: format!("{} ({})", new.condition, self.file),
            rows: vec![row],
            ..new
        });
    }

    /// The same, but a row whose label the check has already is dropped.
    pub(super) fn once(&mut self, id: &str, line: Line<'_>, row: Row) {
        let same = |known: &Row| known.label == row.label && known.reference == row.reference;
        let known = |check: &Check| check.id.starts_with(id) && check.rows.iter().any(same);
        if !self.out.checks.iter().any(known) {
            self.row(id, line, row);
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
        let mut checks = Vec::with_capacity(self.out.checks.len());
        for check in self.out.checks {
            let miss = claims::claim(check.row).and_then(|claim| claim.miss.as_ref());
            let bound = miss.and_then(|miss| miss.bound.clone()).map(|(tolerance, reason)| Check {
                id: format!("{}.bound", check.id),
                claim: t!("row-claim-bound", claim = &check.claim),
                tolerance,
                reason,
                known_miss: None,
                ..check.clone()
            });
            checks.push(check);
            checks.extend(bound);
        }
        self.out.checks = checks;
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

//! A rule put to a job: what shows that it was broken, and what that comes to.

use super::ledger::{Caught, Hit};
use crate::rules::{Charge, Rule, RuleBook};

/// A rule with what shows that it was broken.
pub(super) struct Judged<'a> {
    pub rule: &'a Rule,
    pub hits: Vec<Hit>,
}

impl Judged<'_> {
    /// The worst of its hits: not caught in time before caught, grave before usual, early before
    /// late.
    pub(super) fn worst(&self) -> Option<&Hit> {
        let rank = |hit: &Hit| (hit.caught == Caught::No, hit.grade);
        self.hits.iter().rev().max_by_key(|hit| rank(hit))
    }

    /// The same without some of its hits.
    pub(super) fn without(&self, out: impl Fn(&Hit) -> bool) -> Self {
        Self { rule: self.rule, hits: self.hits.iter().filter(|hit| !out(hit)).cloned().collect() }
    }

    /// Whether it was broken and not caught in time.
    pub(super) fn is_broken(&self) -> bool {
        self.hits.iter().any(|hit| hit.caught == Caught::No)
    }

    /// What its worst hit comes to.
    pub(super) fn charge(&self, book: &RuleBook) -> Option<Charge> {
        let worst = self.worst()?;
        Some(match worst.caught {
            Caught::No => book.charge(self.rule, worst.grade),
            Caught::InTime => book.in_time(self.rule, worst.grade),
        })
    }

    /// Whether it fails the essential that its rule names.
    pub(super) fn gates(&self, book: &RuleBook) -> bool {
        self.charge(book).is_some_and(|charge| charge.gates)
    }
}

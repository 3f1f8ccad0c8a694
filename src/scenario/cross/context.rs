//! What every look across fields needs: where problems go, and how many seeds are tried.

use crate::scenario::problem::{Code, ProblemLevel, nearest};
use crate::scenario::reader::Reader;
use crate::scenario::value::{Measure, Vary};

/// Seeds for which faults are tried.
pub(super) const TRIED_SEEDS: u64 = 8;

/// Tells problems to the reader of the scenario, at the path of a field.
pub(super) struct Cross<'r, 'a> {
    pub(super) reader: &'r mut Reader<'a>,
}

impl Cross<'_, '_> {
    pub(super) fn error(&mut self, path: &str, message: String) {
        self.reader.at_path(ProblemLevel::Error, Code::Contradiction, path, message);
    }

    pub(super) fn warn(&mut self, path: &str, message: String) {
        self.reader.at_path(ProblemLevel::Warning, Code::Unusual, path, message);
    }

    pub(super) fn unknown<'n>(
        &mut self,
        path: &str,
        found: &str,
        names: impl Iterator<Item = &'n str> + Clone,
    ) {
        let message = t!("problem-size", found = found);
        self.reader.at_path(ProblemLevel::Error, Code::UnknownName, path, message);
        if let Some(last) = self.reader.problems.last_mut() {
            last.nearest = nearest(found, names.clone());
            last.expected = t!("expected-one-of", names = names.collect::<Vec<_>>().join(", "));
        }
    }

    pub(super) fn length(&mut self, path: &str, message: String) {
        self.reader.at_path(ProblemLevel::Error, Code::BadLength, path, message);
    }

    /// For every draw, `low` must stay below `high`.
    pub(super) fn below<A: Measure, B: Measure>(
        &mut self,
        (least_path, least): (&str, &Vary<A>),
        (most_path, most): (&str, &Vary<B>),
    ) {
        if least.most() >= most.least() {
            self.error(least_path, t!("problem-stay-below", other = last_name(most_path)));
        }
    }
}

pub(super) fn last_name(path: &str) -> &str {
    path.rsplit('.').next().unwrap_or(path)
}

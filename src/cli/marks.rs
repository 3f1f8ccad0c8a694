//! Marking what was watched, for `run` and `mark`.

use super::exit::{Exit, Trouble};
use crate::marking::{Brief, Marks, Observer};
use crate::scenario::Scenario;

/// The marks of a job of a seed as it stands.
pub(super) fn marks(observer: &Observer, scenario: &Scenario, seed: u64) -> Result<Marks, Trouble> {
    let book = scenario.marking.rule_book().map_err(|error| {
        Trouble::new(Exit::Findings, t!("mark-rules-broken", error = error.to_string()))
    })?;
    let brief = Brief { right_endings: scenario.right_endings(seed) };
    Ok(observer.marks(&book, &brief))
}

/// 0 when every essential is met and nothing else was found.
pub(super) fn exit(marks: &Marks) -> Exit {
    if marks.verdict.is_met() && marks.findings.is_empty() { Exit::Fine } else { Exit::Findings }
}

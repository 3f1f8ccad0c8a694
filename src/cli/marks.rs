//! Marking what was watched, for `run` and `mark`.

use super::exit::{Exit, Trouble};
use crate::bench::Bench;
use crate::marking::debrief::{Debrief, Job, NIGHT_S, debrief};
use crate::marking::{Brief, Marks, Observer};
use crate::model::aftermath::Stepping;
use crate::scenario::{Scenario, builtin};

/// The debrief of a job of a seed as it stands, with its marks. `shipped` is the job's id, where it is
/// one that ships.
pub(super) fn debriefed(
    observer: Observer,
    bench: &Bench,
    scenario: &Scenario,
    seed: u64,
    shipped: Option<&str>,
) -> Result<Debrief, Trouble> {
    let book = scenario.marking.rule_book().map_err(|error| {
        Trouble::new(Exit::Findings, t!("mark-rules-broken", error = error.to_string()))
    })?;
    let brief = Brief { right_endings: scenario.right_endings(seed) };
    let marks = observer.marks(&book, &brief);
    let night = bench.aftermath(NIGHT_S, Stepping::Strides);
    let note = scenario.debrief.as_deref();
    let job = Job { brief: &brief, id: shipped, note, night: Some(&night) };
    Ok(debrief(&observer.ledger, marks, observer.trace, job))
}

/// The id of a scenario, where its text is the one that ships under it.
pub(super) fn shipped<'a>(id: &'a str, text: &str) -> Option<&'a str> {
    builtin::find(id).filter(|one| one.text == text).map(|_| id)
}

/// 0 when every essential is met and nothing else was found.
pub(super) fn exit(marks: &Marks) -> Exit {
    if marks.verdict.is_met() && marks.findings.is_empty() { Exit::Fine } else { Exit::Findings }
}

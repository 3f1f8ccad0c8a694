//! The one thing to practise next: a job that ships, or a part of one.

use serde::{Deserialize, Serialize};

use super::super::brief::Brief;
use super::super::ended::stays_off;
use super::super::evaluate::{Finding, Marks};
use super::super::verdict::Verdict;
use crate::scenario::{builtin, load};

/// What to practise next.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Next {
    /// Id of the shipped job.
    pub job: String,
    /// Title of that job.
    pub title: String,
    /// Part of it that matters, in a sentence; none for the whole job.
    pub part: Option<String>,
    /// Rule that it is for; none after a job without a finding.
    pub rule: Option<String>,
    /// All of it in a sentence.
    pub words: String,
}

/// The job that fits the worst finding; after a job without one the next on the ladder, after one
/// that was stopped the same again. `played` is the id of the job that was played, where it ships.
pub(super) fn next(marks: &Marks, brief: &Brief, played: Option<&str>) -> Option<Next> {
    let worst = worst(&marks.findings);
    let stopped = matches!(marks.verdict, Verdict::NotHandedOver { .. } | Verdict::EndedByItself);
    match worst {
        Some(finding) => of_finding(finding, played),
        None if stopped => of_same(brief, played),
        None => of_ladder(played),
    }
}

/// The worst finding: one that fails an essential before one that does not, then by severity and
/// time, as findings are sorted.
fn worst(findings: &[Finding]) -> Option<&Finding> {
    findings.iter().find(|it| it.fails.is_some()).or_else(|| findings.first())
}

fn of_finding(finding: &Finding, played: Option<&str>) -> Option<Next> {
    let title = title(&finding.job)?;
    let part = finding.practise.clone();
    let words = match played == Some(finding.job.as_str()) {
        true => t!("next-same-job", title = &title, part = &part),
        false => t!("next-job-part", title = &title, part = &part),
    };
    Some(Next {
        job: finding.job.clone(),
        title,
        part: Some(part),
        rule: Some(finding.rule.clone()),
        words,
    })
}

/// The same job again, to the hand-over.
fn of_same(brief: &Brief, played: Option<&str>) -> Option<Next> {
    let id = played?;
    let title = title(id)?;
    let words = match stays_off(brief) {
        true => t!("next-again-unsafe", title = &title),
        false => t!("next-again", title = &title),
    };
    Some(Next { job: id.to_owned(), title, part: None, rule: None, words })
}

/// The job after this one on the ladder; the last one again with another house.
fn of_ladder(played: Option<&str>) -> Option<Next> {
    let at = played.and_then(|id| builtin::LADDER.iter().position(|one| one.id == id));
    let after = at.map_or(0, |at| (at + 1).min(builtin::LADDER.len() - 1));
    let id = builtin::LADDER.get(after)?.id;
    let title = title(id)?;
    let words = t!("next-job", title = &title);
    Some(Next { job: id.to_owned(), title, part: None, rule: None, words })
}

/// The title of a shipped job.
fn title(id: &str) -> Option<String> {
    load(builtin::find(id)?.text).ok().map(|scenario| scenario.title)
}

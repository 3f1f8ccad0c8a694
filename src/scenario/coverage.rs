//! The page on coverage: mistakes and competencies, each with the rules that speak for it and the jobs
//! that are for it.

use core::fmt::Write as _;

use super::builtin::LADDER;
use super::explain::mistake_table;
use super::load;
use crate::rules::{competency, mistake, shared};

/// The whole page, in Markdown.
#[must_use]
pub fn page() -> String {
    let beside = beside_mistakes();
    format!(
        "{}\n\n{}\n{}\n\n{}\n\n{}",
        t!("coverage-head"),
        mistake_table(),
        t!("coverage-beside", rules = beside.join(", ")),
        t!("coverage-competencies"),
        competencies()
    )
}

/// Rules that speak for no mistake of the list.
fn beside_mistakes() -> Vec<String> {
    let mistakes = mistake::all().unwrap_or_default();
    let rules = shared().map(|book| book.rules).unwrap_or_default().into_iter();
    let beside = rules.filter(|rule| !mistakes.iter().any(|it| it.rules.contains(&rule.id)));
    beside.map(|rule| format!("`{}`", rule.id)).collect()
}

/// The competencies as a table in Markdown, with their rules and the shipped jobs that are for them.
fn competencies() -> String {
    let rules = shared().map(|book| book.rules).unwrap_or_default();
    let jobs: Vec<(&str, Vec<String>)> =
        LADDER.iter().filter_map(|one| Some((one.id, load(one.text).ok()?.competencies))).collect();
    let mut text = format!("{}\n|---|---|---|---|\n", t!("coverage-columns"));
    for one in &competency::ALL {
        let is_of = |ids: &[String]| ids.iter().any(|id| id == one.id);
        let speak = rules.iter().filter(|rule| is_of(&rule.claims));
        let speak: Vec<_> = speak.map(|rule| format!("`{}`", rule.id)).collect();
        let speak = match speak.is_empty() {
            true => t!("coverage-no-rule").to_owned(),
            false => speak.join(", "),
        };
        let of_jobs = jobs.iter().filter(|(_, aims)| is_of(aims)).map(|(id, _)| *id);
        let of_jobs = of_jobs.collect::<Vec<_>>().join(", ");
        let _ = writeln!(text, "| {} | {} | {speak} | {of_jobs} |", one.id, one.name());
    }
    text
}

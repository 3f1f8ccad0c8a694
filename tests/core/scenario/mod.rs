//! Scenarios: what ships, what is refused and why.

mod authors;
mod bad_input;
mod contradictions;
mod faults;
mod format;
mod ladder;
mod plausible;
mod readings;
mod required;
mod rule_changes;
mod scene;
mod shipped;
mod teaching;
mod told;
mod variants;
mod wild_input;
mod wild_previews;

use quarterturn::scenario::{Code, Problem, builtin, check};

/// The text of a shipped job, to be spoiled.
fn natural() -> String {
    builtin::find("natural-gas-busy-kitchen").unwrap().text.to_owned()
}

/// The text of a shipped propane job, to be spoiled.
fn propane() -> String {
    builtin::find("propane-cold-morning").unwrap().text.to_owned()
}

/// `text` with `from`, which must stand in it, replaced once.
fn spoiled(text: &str, from: &str, to: &str) -> String {
    assert!(text.contains(from), "`{from}` is not in the scenario");
    text.replacen(from, to, 1)
}

/// Problems of the natural-gas job after one replacement.
fn problems(from: &str, to: &str) -> Vec<Problem> {
    check("job.ron", &spoiled(&natural(), from, to))
}

/// Line and column, from 1, of `what` in `text`.
fn place_of(text: &str, what: &str) -> (usize, usize) {
    let at = text.find(what).unwrap_or_else(|| panic!("`{what}` is not in the text"));
    let before = &text[..at];
    let line = before.matches('\n').count() + 1;
    let column = before.rsplit('\n').next().unwrap_or("").chars().count() + 1;
    (line, column)
}

/// The only problem after one replacement; it must stand where `at` stands in the spoiled text.
fn only(from: &str, to: &str, at: &str, code: Code) -> Problem {
    let text = spoiled(&natural(), from, to);
    let found = check("job.ron", &text);
    assert_eq!(found.len(), 1, "{found:#?}");
    let problem = found.into_iter().next().unwrap();
    assert_eq!(problem.code, code, "{problem:#?}");
    assert_eq!(problem.file, "job.ron");
    assert_eq!((problem.line, problem.column), place_of(&text, at), "{problem:#?}");
    problem
}

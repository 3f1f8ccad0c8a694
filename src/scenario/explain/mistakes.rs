//! Mistakes of the trade, as text, as a table and for programs.

use core::fmt::Write as _;

use crate::rules::mistake::{self, Mistake};

/// Every mistake for `mistakes`, else the one with this number; a test forbids that they cannot be
/// read.
pub(super) fn told(wanted: &str) -> Vec<Mistake> {
    let number = wanted.strip_prefix("mistakes.").unwrap_or(wanted).to_uppercase();
    let all = mistake::all().unwrap_or_default().into_iter();
    all.filter(|it| wanted == "mistakes" || it.number == number).collect()
}

/// Every mistake in a line.
pub(super) fn list(text: &mut String) {
    for it in told("mistakes") {
        let rules = match it.rules.is_empty() {
            true => t!("explain-mistake-not-modelled").to_owned(),
            false => it.rules.join(", "),
        };
        let _ = writeln!(text, "    {} {}: {rules}", it.number, it.name);
    }
}

/// Appends the entry of one mistake.
pub(super) fn entry(text: &mut String, it: &Mistake) {
    let _ = writeln!(text, "    {}.", it.name);
    if !it.rules.is_empty() {
        let _ =
            writeln!(text, "    - {}", t!("explain-mistake-rules", rules = it.rules.join(", ")));
    }
    if let Some(beyond) = &it.beyond {
        let _ = writeln!(text, "    - {}", told_beyond(it, beyond));
    }
}

/// What no rule asks, with a word before it where that is all of the mistake.
fn told_beyond(it: &Mistake, beyond: &str) -> String {
    match it.rules.is_empty() {
        true => t!("explain-mistake-beyond", why = beyond),
        false => beyond.to_owned(),
    }
}

/// The mistakes as a table in Markdown.
pub(in crate::scenario) fn mistake_table() -> String {
    let mut text = format!("{}\n|---|---|---|---|\n", t!("explain-mistake-columns"));
    for it in told("mistakes") {
        let rules: Vec<_> = it.rules.iter().map(|id| format!("`{id}`")).collect();
        let rules = rules.join(", ");
        let beyond = it.beyond.as_ref().map(|why| told_beyond(&it, why)).unwrap_or_default();
        let _ = writeln!(text, "| {} | {} | {rules} | {beyond} |", it.number, it.name);
    }
    text
}

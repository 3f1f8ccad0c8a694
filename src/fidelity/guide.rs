//! The guide as text: every check, its figures, what is not used and what is left out.

mod figures;

use std::fmt::Write;

use super::check::{Check, Verdict};
use super::tables::{self, SetAside};
use super::words::{band, count, row, truth, verdict};
use super::{left_out, plot};
use crate::chart::figure;

pub use figures::FIGURES;

/// A file of the guide: its name under the folder of documents, and its text.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Page {
    /// Path under the folder of documents: `fidelity.md` or `fidelity/….svg`.
    pub name: String,
    /// The whole text of the file, Markdown or SVG.
    pub text: String,
}

/// The whole guide: `fidelity.md` first, then its figures; `set_aside` are the rows not used.
#[must_use]
pub fn pages(checks: &[Check], set_aside: &[SetAside]) -> Vec<Page> {
    let mut drawn = Vec::new();
    for spec in FIGURES {
        let number = drawn.len() + 1;
        if let Some(text) = plot::draw(spec, number, checks) {
            drawn.push((spec, Page { name: format!("fidelity/{}.svg", spec.file), text }));
        }
    }
    let specs: Vec<&plot::Figure> = drawn.iter().map(|(spec, _)| *spec).collect();
    let mut pages =
        vec![Page { name: "fidelity.md".to_owned(), text: guide(checks, set_aside, &specs) }];
    pages.extend(drawn.into_iter().map(|(_, page)| page));
    pages
}

/// Writing into a string cannot fail.
macro_rules! put {
    ($out:expr) => { $out.push('\n'); };
    ($out:expr, $($arg:tt)*) => {
        let _ = writeln!($out, $($arg)*);
    };
}

fn guide(checks: &[Check], set_aside: &[SetAside], drawn: &[&plot::Figure]) -> String {
    let mut out = format!("{}\n", t!("guide-head"));
    summary(&mut out, checks);
    for chapter in chapters(checks) {
        put!(out);
        put!(out, "## {chapter}");
        for (k, spec) in drawn.iter().enumerate() {
            let first = spec.checks.first().and_then(|id| checks.iter().find(|c| c.id == **id));
            if first.is_some_and(|check| check.chapter == chapter) {
                put!(out);
                let caption = t!("guide-figure", number = k + 1, title = spec.title.text());
                put!(out, "![{caption}](fidelity/{}.svg)", spec.file);
            }
        }
        for check in checks.iter().filter(|check| check.chapter == chapter) {
            entry(&mut out, check);
        }
    }
    misses(&mut out, checks);
    not_used(&mut out, set_aside);
    put!(out);
    put!(out, "## {}", t!("guide-left-out"));
    put!(out);
    put!(out, "{}", t!("guide-left-out-where"));
    put!(out);
    put!(out, "{}", t!("guide-left-out-columns"));
    put!(out, "|---|---|---|");
    for part in left_out::left_out() {
        put!(out, "| `{}` | {} | {} |", part.module, cell(&part.what), cell(&part.text));
    }
    out
}

/// Chapters in the order in which they first come up.
fn chapters(checks: &[Check]) -> Vec<&'static str> {
    let mut chapters = Vec::new();
    for check in checks {
        if !chapters.contains(&check.chapter) {
            chapters.push(check.chapter);
        }
    }
    chapters
}

fn summary(out: &mut String, checks: &[Check]) {
    put!(out);
    put!(out, "{}", t!("guide-summary-columns"));
    put!(out, "|---|---:|---:|---:|---:|---:|");
    let mut line = |name: &str, c: super::words::Count| {
        put!(
            out,
            "| {name} | {} | {} | {} | {} | {} |",
            c.checks,
            c.rows,
            c.pass,
            c.known_miss,
            c.fail
        );
    };
    for chapter in chapters(checks) {
        line(chapter, count(checks.iter().filter(|check| check.chapter == chapter)));
    }
    line(&format!("**{}**", t!("guide-all")), count(checks));
}

fn entry(out: &mut String, check: &Check) {
    put!(out);
    put!(out, "### `{}`: {}", check.id, verdict(check.verdict()));
    put!(out);
    put!(out, "{}", check.claim);
    put!(out);
    let tolerance = band(check.tolerance, check.unit);
    let worst = match check.worst() {
        Some(worst) => {
            t!("guide-worst", rows = check.rows.len(), row = row(worst, check.unit))
        }
        None => t!("guide-no-row").to_owned(),
    };
    for line in [
        t!("guide-source", source = &check.source, truth = truth(check.truth)),
        t!("guide-condition", condition = &check.condition),
        t!("guide-tolerance", tolerance = tolerance, reason = &check.reason),
        worst,
    ] {
        put!(out, "- {line}");
    }
}

fn misses(out: &mut String, checks: &[Check]) {
    put!(out);
    put!(out, "## {}", t!("guide-misses"));
    put!(out);
    put!(out, "{}", t!("guide-misses-columns"));
    put!(out, "|---|---:|---|");
    for check in checks.iter().filter(|check| check.verdict() == Verdict::KnownMiss) {
        let outside: Vec<_> = check.rows.iter().filter(|row| !check.holds(row)).collect();
        let few = if outside.len() <= 4 {
            let each = outside.iter().map(|row| {
                t!(
                    "guide-miss-row",
                    label = &row.label,
                    result = figure(row.result),
                    reference = figure(row.reference)
                )
            });
            format!(" ({})", each.collect::<Vec<_>>().join("; "))
        } else {
            String::new()
        };
        let why = check.known_miss.as_deref().unwrap_or_default();
        let count = t!("guide-outside", outside = outside.len(), rows = check.rows.len());
        put!(out, "| `{}` | {count}{few} | {} |", check.id, cell(why));
    }
}

fn not_used(out: &mut String, set_aside: &[SetAside]) {
    put!(out);
    put!(out, "## {}", t!("guide-not-used"));
    put!(out);
    put!(out, "{}", t!("guide-not-used-columns"));
    put!(out, "|---|---:|---|");
    for class in set_aside {
        put!(out, "| `{}` | {} | {} |", class.file, class.rows, cell(&class.reason));
    }
    put!(out);
    put!(out, "{}", t!("guide-corrected"));
    put!(out);
    put!(out, "{}", t!("guide-tables-not-used"));
    put!(out);
    put!(out, "{}", t!("guide-tables-columns"));
    put!(out, "|---|---|");
    for (file, why) in tables::not_used() {
        put!(out, "| `{file}` | {} |", cell(why));
    }
}

/// Text that cannot break a table.
fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

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
    /// `fidelity.md` or `fidelity/….svg`.
    pub name: String,
    /// Its text.
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

const HEAD: &str = "# The fidelity guide

What is claimed about the model stands here, each claim beside the reference it was held against, with
the condition, the tolerance and the result. A claim that is not here is not made. The appliance's own
plate and instructions, the local code and a licensed technician decide on real gas.

This page is written by the program itself:

```
cargo run --no-default-features --features cli -- fidelity --write docs
```

A test compares it with a fresh run, so it cannot go stale.

- **pass**: every row lies within the tolerance.
- **known miss**: a row lies outside, and the check says why and what was tried. Beside each stands a
  check of the bound that holds all the same (`.columns`, `.cells`, `.bound`); that one must pass.
- **FAIL**: a row lies outside and nobody knows why. The program then ends with exit code 1.

A printed figure is rounded; half a unit of its last digit is taken off the difference before it is
judged. `.memory` marks figures from memory: they guard against change and prove little.
";

fn guide(checks: &[Check], set_aside: &[SetAside], drawn: &[&plot::Figure]) -> String {
    let mut out = HEAD.to_owned();
    summary(&mut out, checks);
    for chapter in chapters(checks) {
        put!(out);
        put!(out, "## {chapter}");
        for (k, spec) in drawn.iter().enumerate() {
            let first = spec.checks.first().and_then(|id| checks.iter().find(|c| c.id == **id));
            if first.is_some_and(|check| check.chapter == chapter) {
                put!(out);
                put!(out, "![Fig. {}: {}](fidelity/{}.svg)", k + 1, spec.title, spec.file);
            }
        }
        for check in checks.iter().filter(|check| check.chapter == chapter) {
            entry(&mut out, check);
        }
    }
    misses(&mut out, checks);
    not_used(&mut out, set_aside);
    put!(out);
    put!(out, "## What the model leaves out");
    put!(out);
    put!(out, "As the head of each module says; the file is under `src`.");
    put!(out);
    put!(out, "| module | what it is | left out |");
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
    put!(out, "| chapter | checks | rows | pass | known miss | fail |");
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
    line("**all**", count(checks));
}

fn entry(out: &mut String, check: &Check) {
    put!(out);
    put!(out, "### `{}`: {}", check.id, verdict(check.verdict()));
    put!(out);
    put!(out, "{}", check.claim);
    put!(out);
    put!(out, "- source: {} ({})", check.source, truth(check.truth));
    put!(out, "- condition: {}", check.condition);
    put!(out, "- tolerance: {}, for {}", band(check.tolerance, check.unit), check.reason);
    match check.worst() {
        Some(worst) => {
            put!(out, "- worst of {} rows: {}", check.rows.len(), row(worst, check.unit));
        }
        None => {
            put!(out, "- there is no row");
        }
    }
}

fn misses(out: &mut String, checks: &[Check]) {
    put!(out);
    put!(out, "## Known misses");
    put!(out);
    put!(out, "| check | rows outside | why it is left standing |");
    put!(out, "|---|---:|---|");
    for check in checks.iter().filter(|check| check.verdict() == Verdict::KnownMiss) {
        let outside: Vec<_> = check.rows.iter().filter(|row| !check.holds(row)).collect();
        let few = if outside.len() <= 4 {
            let each = outside.iter().map(|row| {
                format!("{}: {} for {}", row.label, figure(row.result), figure(row.reference))
            });
            format!(" ({})", each.collect::<Vec<_>>().join("; "))
        } else {
            String::new()
        };
        let why = check.known_miss.as_deref().unwrap_or_default();
        put!(
            out,
            "| `{}` | {} of {}{few} | {} |",
            check.id,
            outside.len(),
            check.rows.len(),
            cell(why)
        );
    }
}

const CORRECTED: &str = "Used with a correction: the table for propane at 11 in. w.c. (IFGC 2018 Table
402.4(28)) skips 70 ft in its length labels, so that every label after 60 ft is wrong and the printed
capacities are 5 to 23 % too large for it; some rows of the transcribed first-stage table (402.4(25)) are
shifted too. The lengths used are those that the figures belong to; the column `length_ft_as_printed`
keeps the labels.";

fn not_used(out: &mut String, set_aside: &[SetAside]) {
    put!(out);
    put!(out, "## Rows not used");
    put!(out);
    put!(out, "| table | rows | why |");
    put!(out, "|---|---:|---|");
    for class in set_aside {
        put!(out, "| `{}` | {} | {} |", class.file, class.rows, cell(&class.reason));
    }
    put!(out);
    put!(out, "{CORRECTED}");
    put!(out);
    put!(out, "Tables of a known name that are not used at all:");
    put!(out);
    put!(out, "| table | why |");
    put!(out, "|---|---|");
    for (file, why) in tables::not_used() {
        put!(out, "| `{file}` | {} |", cell(why));
    }
}

/// Text that cannot break a table.
fn cell(text: &str) -> String {
    text.replace('|', "\\|")
}

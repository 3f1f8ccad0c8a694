//! Figures, bands and verdicts in words.

use super::check::{Check, Row, Tolerance, Truth, Verdict};
use crate::chart::figure;

/// A fraction in per cent, with its sign.
fn percent(fraction: f64) -> String {
    let value = 100.0 * fraction;
    let text = figure(value);
    if value > 0.0 { format!("+{text}") } else { text }
}

/// A band in words.
#[must_use]
pub fn band(tolerance: Tolerance, unit: &str) -> String {
    match tolerance {
        Tolerance::Absolute(band) => format!("±{} {unit}", figure(band)),
        Tolerance::Relative(below, above) if below == -above => {
            format!("±{} %", figure(100.0 * above))
        }
        Tolerance::Relative(below, above) => {
            format!("{} to {} %", percent(below), percent(above))
        }
        Tolerance::Either { absolute, relative } => {
            format!("±{} {unit} or ±{} %", figure(absolute), figure(100.0 * relative))
        }
        Tolerance::AtMost => "at most the reference".to_owned(),
        Tolerance::AtLeast => "at least the reference".to_owned(),
    }
}

/// A row in words: where, reference, result, and how far off once rounding is taken off.
#[must_use]
pub fn row(row: &Row, unit: &str) -> String {
    let off = if row.reference == 0.0 {
        String::new()
    } else {
        let off = row.judged() / row.reference - 1.0;
        // What is less than a thousandth of a per cent is nothing to tell.
        let off = (1e5 * off).round() / 1e5;
        let rounding = if row.rounding > 0.0 { " beyond rounding" } else { "" };
        format!(" ({} %{rounding})", percent(off + 0.0))
    };
    format!(
        "{}: reference {}, model {} {unit}{off}",
        row.label,
        figure(row.reference),
        figure(row.result)
    )
}

/// What kind of reference it is, in words.
#[must_use]
pub fn truth(truth: Truth) -> &'static str {
    match truth {
        Truth::Published => "published",
        Truth::ClosedForm => "closed form",
        Truth::Solver => "independent solver",
        Truth::Invariant => "invariant",
        Truth::Practice => "common practice",
        Truth::Memory => "from memory",
    }
}

/// A verdict in words.
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Pass => "pass",
        Verdict::KnownMiss => "known miss",
        Verdict::Fail => "FAIL",
    }
}

/// A check as text for a terminal.
#[must_use]
pub fn text(check: &Check) -> String {
    let outside = check.rows.iter().filter(|row| !check.holds(row)).count();
    let mut text = format!("{:<10} {}\n", verdict(check.verdict()), check.id);
    let mut add = |name: &str, value: &str| {
        text.push_str(&format!("           {name:<10} {value}\n"));
    };
    add("claim", &check.claim);
    add("source", &format!("{} ({})", check.source, truth(check.truth)));
    add("condition", &check.condition);
    add("tolerance", &format!("{}: {}", band(check.tolerance, check.unit), check.reason));
    match check.worst() {
        Some(worst) => add("worst", &row(worst, check.unit)),
        None => add("worst", "there is no row"),
    }
    add("rows", &format!("{}, {outside} outside", check.rows.len()));
    if let (Some(why), true) = (&check.known_miss, outside > 0) {
        add("known miss", why);
    }
    text
}

/// Counts of checks by verdict, and of rows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize)]
pub struct Count {
    /// Checks.
    pub checks: usize,
    /// Their rows.
    pub rows: usize,
    /// Checks that pass.
    pub pass: usize,
    /// Known misses.
    pub known_miss: usize,
    /// Checks that fail.
    pub fail: usize,
}

/// Counts checks.
#[must_use]
pub fn count<'a>(checks: impl IntoIterator<Item = &'a Check>) -> Count {
    let mut count = Count::default();
    for check in checks {
        count.checks += 1;
        count.rows += check.rows.len();
        match check.verdict() {
            Verdict::Pass => count.pass += 1,
            Verdict::KnownMiss => count.known_miss += 1,
            Verdict::Fail => count.fail += 1,
        }
    }
    count
}

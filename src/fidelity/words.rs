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
        Tolerance::Absolute(band) => t!("band-absolute", band = figure(band), unit = unit),
        Tolerance::Relative(below, above) if below == -above => {
            t!("band-relative", band = figure(100.0 * above))
        }
        Tolerance::Relative(below, above) => {
            t!("band-uneven", below = percent(below), above = percent(above))
        }
        Tolerance::Either { absolute, relative } => {
            t!(
                "band-either",
                absolute = figure(absolute),
                unit = unit,
                relative = figure(100.0 * relative)
            )
        }
        Tolerance::AtMost => t!("band-at-most").to_owned(),
        Tolerance::AtLeast => t!("band-at-least").to_owned(),
    }
}

/// A row in words: where, reference, result, and how far off once rounding is taken off.
#[must_use]
pub fn row(row: &Row, unit: &str) -> String {
    let told = t!(
        "guide-row",
        label = &row.label,
        reference = figure(row.reference),
        result = figure(row.result),
        unit = unit
    );
    if row.reference == 0.0 {
        return told;
    }
    let off = row.judged() / row.reference - 1.0;
    // What is less than a thousandth of a per cent is nothing to tell.
    let off = percent((1e5 * off).round() / 1e5 + 0.0);
    match row.rounding > 0.0 {
        true => t!("guide-row-off-rounded", row = told, off = off),
        false => t!("guide-row-off", row = told, off = off),
    }
}

/// What kind of reference it is, in words.
#[must_use]
pub fn truth(truth: Truth) -> &'static str {
    match truth {
        Truth::Published => t!("truth-published"),
        Truth::ClosedForm => t!("truth-closed-form"),
        Truth::Solver => t!("truth-solver"),
        Truth::Invariant => t!("truth-invariant"),
        Truth::Practice => t!("usual-common-practice"),
        Truth::Memory => t!("truth-memory"),
    }
}

/// A verdict in words.
#[must_use]
pub fn verdict(verdict: Verdict) -> &'static str {
    match verdict {
        Verdict::Pass => t!("verdict-pass"),
        Verdict::KnownMiss => t!("verdict-known-miss"),
        Verdict::Fail => t!("verdict-fail"),
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
    add(t!("check-claim"), &check.claim);
    add(t!("check-source"), &format!("{} ({})", check.source, truth(check.truth)));
    add(t!("check-condition"), &check.condition);
    let tolerance = band(check.tolerance, check.unit);
    add(t!("check-tolerance"), &format!("{tolerance}: {}", check.reason));
    match check.worst() {
        Some(worst) => add(t!("check-worst"), &row(worst, check.unit)),
        None => add(t!("check-worst"), t!("guide-no-row")),
    }
    add(t!("check-rows"), &t!("check-rows-outside", rows = check.rows.len(), outside = outside));
    if let (Some(why), true) = (&check.known_miss, outside > 0) {
        add(t!("verdict-known-miss"), why);
    }
    text
}

/// Counts of checks by verdict, and of rows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, serde::Serialize)]
pub struct Count {
    /// All checks, whatever their verdict.
    pub checks: usize,
    /// Rows of all these checks.
    pub rows: usize,
    /// Checks with every row in its band.
    pub pass: usize,
    /// Checks with a row outside the band for a cause that they name.
    pub known_miss: usize,
    /// Checks with a row outside the band and no such cause, or without any row.
    pub fail: usize,
}

/// Counts checks by verdict, and their rows.
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

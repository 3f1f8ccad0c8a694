//! Moments of a job and severities in words.

use crate::rules::Severity;
use crate::units::TICK_S;
use crate::words::whole;

/// A tick in seconds.
#[must_use]
pub fn seconds(tick: u64) -> f64 {
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let ticks = tick as f64;
    ticks * TICK_S
}

/// Seconds as minutes and seconds.
#[must_use]
pub fn clock(seconds: f64) -> String {
    let whole = seconds.max(0.0).floor();
    format!("{:.0}:{:02.0}", (whole / 60.0).floor(), whole % 60.0)
}

/// Parts per million, thousands set apart.
pub(super) fn ppm_words(ppm: f64) -> String {
    #[expect(clippy::cast_possible_truncation, reason = "a million at most")]
    let count = ppm.clamp(0.0, 1e6).round() as i64;
    whole(count)
}

/// A severity in a word.
#[must_use]
pub fn severity_word(severity: Severity) -> &'static str {
    match severity {
        Severity::Critical => t!("severity-critical"),
        Severity::Major => t!("severity-major"),
        Severity::Minor => t!("severity-minor"),
    }
}

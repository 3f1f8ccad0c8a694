//! What comes after a job: essentials, findings, what was done when; for the page and the terminal.

use core::fmt::Write as _;

use super::deed::describe;
use super::evaluate::{Marks, Standing};
use super::ledger::Ledger;
use super::trace::Trace;
use crate::hands::action::Action;
use crate::rules::Severity;
use crate::units::TICK_S;

/// Everything that the debrief shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Debrief {
    /// Title of the job.
    pub title: String,
    /// The marks.
    pub marks: Marks,
    /// Pressures over time.
    pub trace: Trace,
    /// What was done when: seconds and a few words.
    pub done: Vec<(f64, String)>,
}

/// Puts a debrief together.
#[must_use]
pub fn debrief(ledger: &Ledger, marks: Marks, trace: Trace) -> Debrief {
    Debrief {
        title: ledger.setup.card.title.clone(),
        marks,
        trace,
        done: ledger
            .did()
            .filter(|did| is_work(did.action))
            .map(|did| (seconds(did.tick), describe(did.action)))
            .collect(),
    }
}

/// Work that belongs on a time line; walking and tools do not.
fn is_work(action: &Action) -> bool {
    !matches!(action, Action::Go(_) | Action::Take(_) | Action::PutDown | Action::Look(_))
}

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

/// A severity in a word.
#[must_use]
pub fn severity_word(severity: Severity) -> &'static str {
    match severity {
        Severity::Critical => "serious",
        Severity::Major => "wrong",
        Severity::Minor => "slip",
    }
}

impl Debrief {
    /// The debrief for a terminal.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        let marks = &self.marks;
        let result = if marks.met { "essentials met" } else { "not yet met" };
        let _ = writeln!(
            out,
            "{}: {result}, {:.0} of 100 points, {} of simulated time",
            self.title,
            marks.points,
            clock(marks.seconds)
        );
        let _ = writeln!(out, "\nEssentials");
        for mark in &marks.essentials {
            let sign = match mark.standing {
                Standing::Met => "met    ",
                Standing::NotMet => "NOT MET",
                Standing::NotDue => "not due",
            };
            let _ = write!(out, "  {sign}  {}", mark.essential.label());
            if mark.because.is_empty() {
                let _ = writeln!(out);
            } else {
                let _ = writeln!(out, " ({})", mark.because.join(", "));
            }
        }
        if marks.findings.is_empty() {
            let _ = writeln!(out, "\nNothing to find fault with.");
        } else {
            let _ = writeln!(out, "\nFindings");
        }
        for finding in &marks.findings {
            let _ = writeln!(
                out,
                "  {} {} [{} v{}], at {}, −{:.0}",
                severity_word(finding.severity),
                finding.title,
                finding.rule,
                finding.version,
                clock(seconds(finding.tick)),
                finding.lost
            );
            let times = if finding.times > 1 {
                format!(" ({} times)", finding.times)
            } else {
                String::new()
            };
            let _ = writeln!(out, "      seen: {}{times}", finding.seen);
            let _ = writeln!(out, "      true: {}", finding.truth);
            let _ = writeln!(out, "      why: {}", finding.why);
            let _ = writeln!(out, "      next: {}", finding.practise);
        }
        let _ = writeln!(out, "\n{}", marks.standing);
        out
    }
}

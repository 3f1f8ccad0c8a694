//! What comes after a job: essentials, findings, what was done when; for the page and the terminal.

use core::fmt::Write as _;

use super::deed::describe;
use super::evaluate::{EssentialMark, Finding, Marks, Standing};
use super::ledger::Ledger;
use super::shown::Shown;
use super::trace::Trace;
use crate::hands::action::Action;
use crate::rules::{Severity, competency};
use crate::units::TICK_S;
use crate::words::decimal;

/// Everything that the debrief shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Debrief {
    /// Title of the job.
    pub title: String,
    /// Marks of the job, with findings and essentials.
    pub marks: Marks,
    /// Pressures over the time of the job.
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
        Severity::Critical => t!("severity-critical"),
        Severity::Major => t!("severity-major"),
        Severity::Minor => t!("severity-minor"),
    }
}

impl Debrief {
    /// The debrief for a terminal: the verdict first, then the essentials, what was found, and the
    /// points where there are any.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        let marks = &self.marks;
        let verdict = marks.verdict.words();
        let time = clock(marks.seconds);
        let result = t!("marks-result", job = &self.title, verdict = verdict, time = time);
        let _ = writeln!(out, "{result}");
        let _ = writeln!(out, "\n{}", t!("marks-essentials"));
        for mark in &marks.essentials {
            let _ = writeln!(out, "  {}", essential(mark));
        }
        let found = match marks.findings.is_empty() {
            true => t!("marks-nothing-found"),
            false => t!("marks-findings"),
        };
        let _ = writeln!(out, "\n{found}");
        for finding in &marks.findings {
            put_finding(&mut out, finding);
        }
        put_competencies(&mut out, marks);
        if let Some((points, of)) = marks.verdict.points() {
            let (points, of) = (decimal(points, 0), decimal(of, 0));
            let _ = writeln!(out, "\n{}", t!("marks-points", points = points, of = of));
        }
        let _ = writeln!(out, "\n{}", marks.standing);
        out
    }
}

/// What the job shows of each competency that it gave occasion for.
fn put_competencies(out: &mut String, marks: &Marks) {
    let named = |wanted: Shown| {
        let ids = marks.competencies.iter().filter(|(_, shown)| **shown == wanted);
        let name = |id: &String| match competency::find(id) {
            Some(one) => t!("marks-competency", id = id, name = one.name()),
            None => id.clone(),
        };
        ids.map(|(id, _)| name(id)).collect::<Vec<_>>().join(", ")
    };
    let [shown, not_shown] = [Shown::Shown, Shown::NotShown].map(named);
    if shown.is_empty() && not_shown.is_empty() {
        return;
    }
    let _ = writeln!(out, "\n{}", t!("marks-competencies"));
    let or_none = |ids: String| if ids.is_empty() { t!("marks-none").into() } else { ids };
    let _ = writeln!(out, "  {}", t!("marks-shown", ids = or_none(shown)));
    let _ = writeln!(out, "  {}", t!("marks-not-shown", ids = or_none(not_shown)));
}

fn essential(mark: &EssentialMark) -> String {
    let standing = match mark.standing {
        Standing::Met => t!("marks-met"),
        Standing::NotMet => t!("marks-not-met"),
        Standing::NotDue => t!("marks-not-due"),
        Standing::Open => t!("marks-open"),
    };
    let essential = mark.essential.label();
    if mark.because.is_empty() {
        return t!("marks-essential", standing = standing, essential = essential);
    }
    let rules = mark.because.join(", ");
    t!("marks-essential-because", standing = standing, essential = essential, rules = rules)
}

/// The first line of a finding.
fn headline(finding: &Finding) -> String {
    let (severity, time) = (severity_word(finding.severity), clock(seconds(finding.tick)));
    let version = finding.version.to_string();
    match finding.cost {
        Some(points) => t!(
            "marks-finding-points",
            severity = severity,
            title = &finding.title,
            rule = &finding.rule,
            version = version,
            time = time,
            points = decimal(points, 0)
        ),
        None => t!(
            "marks-finding",
            severity = severity,
            title = &finding.title,
            rule = &finding.rule,
            version = version,
            time = time
        ),
    }
}

fn put_finding(out: &mut String, finding: &Finding) {
    let seen = match finding.times {
        0 | 1 => t!("marks-seen", seen = &finding.seen),
        times => t!("marks-seen-often", seen = &finding.seen, times = times),
    };
    let fails = finding.fails.map(|it| t!("marks-fails", essential = it.label()));
    let _ = writeln!(out, "  {}", headline(finding));
    let told = [
        seen,
        t!("marks-true", truth = &finding.truth),
        t!("marks-why", why = &finding.why),
        t!("marks-practise", practise = &finding.practise),
    ];
    for line in fails.into_iter().chain(told) {
        let _ = writeln!(out, "      {line}");
    }
}

//! The debrief for a terminal.

use core::fmt::Write as _;

use super::super::evaluate::{EssentialMark, Finding, Marks, Standing};
use super::super::shown::Shown;
use super::account::{Account, Debrief};
use super::causes::CauseTold;
use super::moment::{clock, seconds, severity_word};
use super::sheet::Sheet;
use crate::rules::competency;
use crate::words::decimal;

impl Debrief {
    /// The debrief for a terminal: the verdict first, then what was wrong, what it would have done,
    /// what to practise next; then the author's note, the sheet and the findings.
    #[must_use]
    pub fn text(&self) -> String {
        let mut out = String::new();
        let (marks, account) = (&self.marks, &self.account);
        let verdict = marks.verdict.words();
        let time = clock(marks.seconds);
        let result = t!("marks-result", job = &account.title, verdict = verdict, time = time);
        let _ = writeln!(out, "{result}");
        put_causes(&mut out, account);
        put_lines(&mut out, t!("told-house"), &account.house);
        put_lines(&mut out, t!("told-night"), &account.night);
        if let Some(next) = &account.next {
            put_lines(&mut out, t!("told-next"), std::slice::from_ref(&next.words));
        }
        if let Some(note) = &account.note {
            put_lines(&mut out, t!("told-note"), std::slice::from_ref(note));
        }
        put_sheet(&mut out, &account.sheet);
        let _ = writeln!(out, "\n{}", t!("marks-essentials"));
        for mark in &marks.essentials {
            let _ = writeln!(out, "  {}", essential(mark));
        }
        put_findings(&mut out, marks);
        put_competencies(&mut out, marks);
        if let Some((points, of)) = marks.verdict.points() {
            let (points, of) = (decimal(points, 0), decimal(of, 0));
            let _ = writeln!(out, "\n{}", t!("marks-points", points = points, of = of));
        }
        let _ = writeln!(out, "\n{}", marks.standing);
        out
    }
}

fn put_lines(out: &mut String, title: &str, lines: &[String]) {
    if lines.is_empty() {
        return;
    }
    let _ = writeln!(out, "\n{title}");
    for line in lines {
        let _ = writeln!(out, "  {line}");
    }
}

fn put_causes(out: &mut String, account: &Account) {
    let _ = writeln!(out, "\n{}", t!("told-causes"));
    if account.causes.is_empty() {
        let _ = writeln!(out, "  {}", t!("told-no-cause"));
    }
    for cause in &account.causes {
        put_cause(out, cause);
    }
}

fn put_cause(out: &mut String, it: &CauseTold) {
    let _ = writeln!(out, "  {}", it.head());
    for line in it.lines() {
        let _ = writeln!(out, "      {line}");
    }
}

/// The sheet: what was written as found, what as left, and what was true at that moment.
fn put_sheet(out: &mut String, sheet: &Sheet) {
    let _ = writeln!(out, "\n{}", t!("told-sheet"));
    for line in &sheet.lines {
        let [found, left] = [&line.found, &line.left].map(|it| match it {
            None => t!("told-blank").to_owned(),
            Some(number) => number.told(),
        });
        let text = t!("told-line", line = line.name(), found = found, left = left);
        let _ = writeln!(out, "  {text}");
    }
    for note in sheet.notes() {
        let _ = writeln!(out, "  {note}");
    }
}

fn put_findings(out: &mut String, marks: &Marks) {
    let found = match marks.findings.is_empty() {
        true => t!("marks-nothing-found"),
        false => t!("marks-findings"),
    };
    let _ = writeln!(out, "\n{found}");
    for finding in &marks.findings {
        put_finding(out, finding);
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

//! The page's view of a debrief that the marking has put together.

use super::{
    CauseView, DebriefView, EssentialView, FindingView, SheetRow, TickView, TraceView, Verdict,
    Weight,
};
use crate::marking::Verdict as Judgment;
use crate::marking::debrief::{CauseTold, Debrief, Left, SheetLine, SheetNumber, clock, seconds};
use crate::marking::evaluate::{EssentialMark, Finding, Marks, Standing};
use crate::marking::trace::{CURVES, Trace};
use crate::rules::{Essential, Severity};

impl From<&Debrief> for DebriefView {
    fn from(debrief: &Debrief) -> Self {
        let (marks, account) = (&debrief.marks, &debrief.account);
        Self {
            title: account.title.clone(),
            result: result(marks),
            points: marks.verdict.points(),
            essentials: marks
                .essentials
                .iter()
                .map(|mark| essential(mark, &marks.findings))
                .collect(),
            findings: marks.findings.iter().map(|one| finding(one, marks)).collect(),
            traces: traces(&debrief.trace),
            ticks: account
                .done
                .iter()
                .map(|it| TickView { at_s: it.at_s, text: it.what.clone() })
                .collect(),
            causes: account.causes.iter().map(cause).collect(),
            house: account.house.clone(),
            aftermath: account.night.clone(),
            next: account.next.as_ref().map_or_else(String::new, |next| next.words.clone()),
            sheet: account.sheet.lines.iter().map(row).collect(),
            sheet_notes: account.sheet.notes(),
            in_this_job: None,
            note: account.note.clone().unwrap_or_default(),
            hints: String::new(),
            care: vec![marks.standing.clone()],
        }
    }
}

fn cause(it: &CauseTold) -> CauseView {
    CauseView { head: it.head(), is_right: it.left == Left::Right, lines: it.lines() }
}

fn row(line: &SheetLine) -> SheetRow {
    let told =
        |number: &Option<SheetNumber>| number.as_ref().map_or_else(String::new, SheetNumber::told);
    SheetRow { line: line.name(), found: told(&line.found), left: told(&line.left) }
}

/// The verdict first, and which essentials are missing.
fn result(marks: &Marks) -> String {
    let time = clock(marks.seconds);
    let named = |missing: &[Essential]| {
        missing.iter().map(|essential| essential.label()).collect::<Vec<_>>().join("; ")
    };
    match &marks.verdict {
        Judgment::Met { .. } => t!("result-met", time = time),
        Judgment::NotYetMet { missing } => {
            t!("result-not-met", missing = named(missing), time = time)
        }
        Judgment::EndedByItself => t!("result-ended-by-itself", time = time),
        Judgment::NotHandedOver { missing } if missing.is_empty() => {
            t!("result-not-handed-over", time = time)
        }
        Judgment::NotHandedOver { missing } => {
            t!("result-not-handed-over-missing", missing = named(missing), time = time)
        }
    }
}

fn essential(mark: &EssentialMark, findings: &[Finding]) -> EssentialView {
    let titles: Vec<&str> = mark
        .because
        .iter()
        .map(|rule| {
            let found = findings.iter().find(|finding| finding.rule == *rule);
            found.map_or(rule.as_str(), |finding| finding.title.as_str())
        })
        .collect();
    EssentialView {
        name: mark.essential.label().to_owned(),
        verdict: match mark.standing {
            Standing::Met => Verdict::Met,
            Standing::NotMet => Verdict::Missed,
            Standing::NotDue => Verdict::NotDue,
            Standing::Open => Verdict::Open,
        },
        why: titles.join("; "),
    }
}

/// The most that a finding's group can lose, where its findings together would lose more.
fn limit(of: &Finding, marks: &Marks) -> Option<f64> {
    let group = marks.findings.iter().filter(|finding| finding.family == of.family);
    let uncapped: f64 = group.filter_map(|finding| finding.cost).sum();
    marks.verdict.lost(of.family).filter(|counted| uncapped > counted + 0.01)
}

fn finding(finding: &Finding, marks: &Marks) -> FindingView {
    FindingView {
        rule: t!(
            "finding-rule-version",
            rule = &finding.rule,
            version = finding.version.to_string()
        ),
        title: finding.title.clone(),
        weight: match finding.severity {
            Severity::Critical => Weight::Serious,
            Severity::Major => Weight::Plain,
            Severity::Minor => Weight::Slight,
        },
        lost: finding.cost.unwrap_or_default(),
        limit: limit(finding, marks),
        at_s: Some(seconds(finding.tick)),
        seen: match finding.times {
            0 | 1 => finding.seen.clone(),
            times => t!("finding-often", seen = &finding.seen, times = times),
        },
        truth: finding.truth.clone(),
        why: finding.why.clone(),
        practise: finding.practise.clone(),
    }
}

/// Each curve; a stretch of time that holds more than one sample is drawn from its lowest to its
/// highest.
fn traces(trace: &Trace) -> Vec<TraceView> {
    CURVES
        .iter()
        .enumerate()
        .map(|(i, name)| TraceView {
            name: sentence_case(name.text()),
            points: trace
                .buckets()
                .iter()
                .filter_map(|bucket| bucket.span_pa.get(i).map(|span| (bucket.start_s, *span)))
                .flat_map(|(s, (lower, upper))| {
                    let top = (upper > lower).then_some((s, upper));
                    [Some((s, lower)), top].into_iter().flatten()
                })
                .collect(),
        })
        .collect()
}

fn sentence_case(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

//! What is written as wrong, spoiled; and how a spoiled run writes it otherwise.

use super::*;
use crate::parts::{Answer, Cause, WrittenFinding};

/// Ways of spoiling the findings.
pub(super) const SPOILS: &[Spoil] = &[
    Spoil {
        name: id!("spoil-what-was-wrong-not-written"),
        besides: any,
        trips: &["cause-not-named"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_finding(a)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-nothing-written-where-nothing-was-wrong"),
        besides: any,
        trips: &["no-finding-written"],
        heeds: Heeds::Faults,
        change: |_, a| drop_if(is_finding(a)),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-cause-too-many"),
        besides: names_something,
        trips: &["wrong-cause"],
        heeds: Heeds::Faults,
        change: |p, a| with_another(p, a, Cause::BlowerTooSlow),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-a-leak-too-many"),
        besides: names_something,
        trips: &["wrong-cause-harms"],
        heeds: Heeds::Faults,
        change: |p, a| with_another(p, a, Cause::UnionLeaks),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-an-answer-that-was-not-given"),
        besides: |g| g.in_use() && names_something(g),
        trips: &["answer-contradicts"],
        heeds: Heeds::Faults,
        change: |p, a| rewritten(p, a, |finding| finding.answer = Answer::ShutOff),
        hurry: never,
    },
    Spoil {
        name: id!("spoil-nothing-that-speaks-for-it"),
        besides: any,
        trips: &["finding-unbacked"],
        heeds: Heeds::Faults,
        change: |p, a| rewritten(p, a, |finding| finding.evidence.clear()),
        hurry: never,
    },
];

fn is_finding(action: &Action) -> bool {
    matches!(action, Action::WriteFinding(_))
}

/// Whether the good run names a cause, with room for another.
fn names_something(good: &Good) -> bool {
    let findings = || good.actions.iter().filter(|action| is_finding(action));
    let nothing = |action: &Action| matches!(action, Action::WriteFinding(it) if it.cause == Cause::NothingFound);
    (1..WrittenFinding::MOST).contains(&findings().count()) && !findings().any(nothing)
}

/// Another finding before the first one.
fn with_another(progress: &Progress, action: &Action, cause: Cause) -> Change {
    if !is_finding(action) || progress.done.iter().any(is_finding) {
        return Change::Keep;
    }
    let another = WrittenFinding { cause, answer: Answer::LeftAsItIs, evidence: Vec::new() };
    Change::Before(vec![Action::WriteFinding(another).into()])
}

/// The first finding otherwise.
fn rewritten(progress: &Progress, action: &Action, change: fn(&mut WrittenFinding)) -> Change {
    let Action::WriteFinding(finding) = action else { return Change::Keep };
    if progress.done.iter().any(is_finding) {
        return Change::Keep;
    }
    let mut finding = finding.clone();
    change(&mut finding);
    Change::Instead(vec![Action::WriteFinding(finding).into()])
}

impl Spoiled {
    /// A spoiled run writes what the good run wrote, whatever it misread on the way, backed by what
    /// its own sheet holds. None where the action is no finding.
    pub(super) fn written_as_in_the_good_run(
        &self,
        action: &Action,
        seen: &Seen,
    ) -> Option<Vec<Action>> {
        if !is_finding(action) {
            return None;
        }
        let good = &self.progress.good.actions;
        let is_done = |finding: &WrittenFinding| {
            self.progress
                .done
                .iter()
                .any(|done| matches!(done, Action::WriteFinding(one) if one.cause == finding.cause))
        };
        let missing = good.iter().filter_map(|action| {
            let Action::WriteFinding(finding) = action else { return None };
            let mut finding = finding.clone();
            finding.evidence.retain(|backing| seen.sheet.holds(*backing));
            (!is_done(&finding)).then_some(Action::WriteFinding(finding))
        });
        Some(missing.collect())
    }
}

//! From a finished attempt to the page after it: runs it again under the eyes of the marking.

use super::Finished;
use crate::bench::Bench;
use crate::bench::action::{Action, Ending};
use crate::bench::seen::Over;
use crate::bench::setup::Setup;
use crate::marking::debrief::{Debrief, debrief, seconds};
use crate::marking::evaluate::{CARE, Standing};
use crate::marking::trace::CURVES;
use crate::marking::{Brief, EssentialMark, Finding, Observer};
use crate::panels::debrief::{
    DebriefView, EssentialView, FindingView, TickView, TraceView, Verdict, Weight,
};
use crate::rules::{self, Severity};

/// Marks an attempt, given the endings that are right.
#[must_use]
pub fn marked(finished: &Finished<'_>, right_endings: Vec<Ending>) -> DebriefView {
    let title = finished.bench.setup().card.title.clone();
    let book = match rules::shared() {
        Ok(book) => book,
        Err(error) => {
            let result = format!("The rules cannot be read: {error}.");
            return DebriefView { title, result, ..DebriefView::default() };
        }
    };
    let observer = observed(finished.bench.setup().clone(), finished.done, finished.bench.tick());
    let marks = observer.marks(&book, &Brief { right_endings });
    let shown = debrief(&observer.ledger, marks, observer.trace);
    page(&shown, finished.bench.over())
}

/// The whole attempt as the marking sees it.
fn observed(setup: Setup, done: &[(u64, Action)], until: u64) -> Observer {
    let mut bench = Bench::new(setup);
    let mut observer = Observer::new(&bench);
    let mut next = done.iter().peekable();
    loop {
        while let Some((_, action)) = next.next_if(|(tick, _)| *tick <= bench.tick()) {
            // A refusal is among the events.
            let _refused = bench.apply(action);
        }
        let events = bench.take_events();
        observer.tick(&bench, events);
        if bench.tick() >= until || bench.over().is_some() {
            return observer;
        }
        bench.step();
    }
}

fn page(debrief: &Debrief, over: Option<Over>) -> DebriefView {
    let marks = &debrief.marks;
    let ended = match over {
        Some(Over::HandedOver(_)) => "",
        Some(Over::Ignition) => "Stopped: gas ignited where it must not. ",
        None => "Not ended. ",
    };
    let verdict = if marks.met { "Essentials met." } else { "Essentials not yet met." };
    DebriefView {
        title: debrief.title.clone(),
        result: format!("{ended}{verdict}"),
        points: Some((marks.points, 100.0)),
        essentials: marks.essentials.iter().map(essential).collect(),
        findings: marks.findings.iter().map(finding).collect(),
        traces: traces(debrief),
        ticks: debrief
            .done
            .iter()
            .map(|(at_s, text)| TickView { at_s: *at_s, text: text.clone() })
            .collect(),
        night_after: Vec::new(),
        care: vec![CARE.to_owned(), marks.standing.clone()],
    }
}

fn essential(mark: &EssentialMark) -> EssentialView {
    EssentialView {
        name: mark.essential.label().to_owned(),
        verdict: match mark.standing {
            Standing::Met => Verdict::Met,
            Standing::NotMet => Verdict::Missed,
            Standing::NotDue => Verdict::NotDue,
        },
        why: mark.because.join(", "),
    }
}

fn finding(found: &Finding) -> FindingView {
    FindingView {
        rule: format!("{} v{}", found.rule, found.version),
        title: found.title.clone(),
        weight: match found.severity {
            Severity::Critical => Weight::Serious,
            Severity::Major => Weight::Plain,
            Severity::Minor => Weight::Slight,
        },
        lost: found.lost,
        at_s: Some(seconds(found.tick)),
        seen: found.seen.clone(),
        truth: found.truth.clone(),
        why: found.why.clone(),
        practise: found.practise.clone(),
    }
}

/// Lowest and highest of each stretch, one after the other, so that nothing short is lost.
fn traces(debrief: &Debrief) -> Vec<TraceView> {
    CURVES
        .iter()
        .enumerate()
        .map(|(curve, name)| TraceView {
            name: (*name).to_owned(),
            points: debrief
                .trace
                .buckets()
                .iter()
                .filter_map(|bucket| Some((bucket.start_s, *bucket.span_pa.get(curve)?)))
                .flat_map(|(at_s, (low, high))| {
                    let both = [(at_s, low), (at_s, high)];
                    both.into_iter().take(if low == high { 1 } else { 2 })
                })
                .collect(),
        })
        .collect()
}

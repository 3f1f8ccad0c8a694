//! From a finished attempt to the page after it: runs it again under the eyes of the marking.

use super::Finished;
use crate::bench::Bench;
use crate::hands::action::Action;
use crate::marking::debrief::debrief;
use crate::marking::evaluate::Marks;
use crate::marking::{Brief, Observer};
use crate::panels::debrief::DebriefView;
use crate::scenario::{Scenario, in_this_job};
use crate::senses::seen::Over;
use crate::setup::Setup;

/// Marks an attempt by what its scenario says about marking: the page, and the marks unless the
/// rules cannot be read.
#[must_use]
pub fn marked(finished: &Finished<'_>, scenario: &Scenario) -> (DebriefView, Option<Marks>) {
    let book = match scenario.marking.rule_book() {
        Ok(book) => book,
        Err(error) => {
            let result = format!("The rules cannot be read: {error}.");
            let title = finished.bench.setup().card.title.clone();
            return (DebriefView { title, result, ..DebriefView::default() }, None);
        }
    };
    let observer = observed(finished.bench.setup().clone(), finished.done, finished.bench.tick());
    let brief = Brief { right_endings: scenario.right_endings(finished.seed) };
    let marks = observer.marks(&book, &brief);
    let shown = debrief(&observer.ledger, marks.clone(), observer.trace);
    let mut view = DebriefView::from(&shown);
    match finished.bench.over() {
        Some(Over::HandedOver(_)) => {}
        Some(Over::Ignition) => {
            view.result = format!("Stopped: gas ignited where it must not. {}", view.result);
        }
        None => view.result = format!("Not ended. {}", view.result),
    }
    view.in_this_job = Some(in_this_job(finished.bench.setup()));
    view.note = scenario.debrief.clone().unwrap_or_default();
    view.hints = match (finished.hints_taken, scenario.hints.len()) {
        (_, 0) => String::new(),
        (taken, all) => format!("{taken} of the {all} hints on this job taken."),
    };
    (view, Some(marks))
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

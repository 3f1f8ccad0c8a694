//! From a finished attempt to the page after it: runs it again under the eyes of the marking.

use super::Finished;
use crate::bench::Bench;
use crate::bench::run;
use crate::hands::action::Action;
use crate::marking::debrief::{Job, NIGHT_S, debrief};
use crate::marking::evaluate::Marks;
use crate::marking::{Brief, Observer};
use crate::model::aftermath::Stepping;
use crate::panels::debrief::DebriefView;
use crate::scenario::{Scenario, builtin, in_this_job};
use crate::senses::seen::Over;
use crate::setup::Setup;

/// Marks an attempt by what its scenario says about marking: the page, and the marks unless the
/// rules cannot be read.
#[must_use]
pub fn marked(finished: &Finished<'_>, scenario: &Scenario) -> (DebriefView, Option<Marks>) {
    let book = match scenario.marking.rule_book() {
        Ok(book) => book,
        Err(error) => {
            let result = t!("marked-no-rules", error = error.to_string());
            let title = finished.bench.setup().card.title.clone();
            return (DebriefView { title, result, ..DebriefView::default() }, None);
        }
    };
    let observer = observed(finished.bench.setup().clone(), finished.done, finished.bench.tick());
    let brief = Brief { right_endings: scenario.right_endings(finished.seed) };
    let marks = observer.marks(&book, &brief);
    let shipped = Some(finished.scenario).filter(|id| builtin::find(id).is_some());
    let night = finished.bench.aftermath(NIGHT_S, Stepping::Strides);
    let note = scenario.debrief.as_deref();
    let job = Job { brief: &brief, id: shipped, note, night: Some(&night) };
    let shown = debrief(&observer.ledger, marks.clone(), observer.trace, job);
    let mut view = DebriefView::from(&shown);
    match finished.bench.over() {
        Some(Over::HandedOver(_)) => {}
        Some(Over::Ignition) => {
            view.result = t!("marked-ignited", result = view.result);
        }
        None => view.result = t!("marked-not-ended", result = view.result),
    }
    view.in_this_job = Some(in_this_job(finished.bench.setup()));
    view.hints = match (finished.hints_taken, scenario.hints.len()) {
        (_, 0) => String::new(),
        (taken, all) => t!("marked-hints", taken = taken, all = all),
    };
    (view, Some(marks))
}

/// The whole attempt as the marking sees it.
fn observed(setup: Setup, done: &[(u64, Action)], until: u64) -> Observer {
    let mut bench = Bench::new(setup);
    let mut observer = Observer::new(&bench);
    run::play_again(&mut bench, done, until, &mut observer);
    run::tell(&mut bench, &mut observer);
    observer
}

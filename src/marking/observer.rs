//! Watches a job from its first tick, whoever plays it: collects events and pressure traces.

use super::brief::Brief;
use super::evaluate::{Marks, evaluate};
use super::ledger::Ledger;
use super::trace::Trace;
use crate::bench::Bench;
use crate::bench::run::Witness;
use crate::hands::event::Event;
use crate::rules::RuleBook;

/// Collects what marking and debrief need.
#[derive(Debug, Clone)]
pub struct Observer {
    /// Events of the job so far, in order.
    pub ledger: Ledger,
    /// Pressures over the time of the job so far.
    pub trace: Trace,
}

impl Observer {
    /// An observer of a bench that has just been set up.
    #[must_use]
    pub fn new(bench: &Bench) -> Self {
        Self { ledger: Ledger::new(bench.setup().clone()), trace: Trace::default() }
    }

    /// Takes in a tick: what happened, and a sample of the pressures when one is due. Call it once
    /// a tick, after the actions of the tick and before its step.
    pub fn tick(&mut self, bench: &Bench, events: Vec<Event>) {
        self.ledger.take(events);
        if Trace::is_due(bench.tick()) {
            self.trace.add(&bench.truth());
        }
    }

    /// The marks as they stand now.
    #[must_use]
    pub fn marks(&self, book: &RuleBook, brief: &Brief) -> Marks {
        evaluate(book, &self.ledger, brief)
    }
}

impl Witness for Observer {
    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        self.tick(bench, events);
    }
}

//! What a job left behind for judging: the events in order, the setup, the end.

use crate::appliance::plate::Plate;
use crate::catalogue::cause::TrueCause;
use crate::hands::action::{Action, HandOver};
use crate::hands::event::{Event, EventKind, ReadingFact};
use crate::measure::causes::Shown;
use crate::model::truth::Truth;
use crate::parts::Level;
use crate::parts::{Ending, Fitted};
use crate::rules::{Evidence, Grade};
use crate::setup::Setup;
use std::sync::Arc;

/// Everything that marking looks at.
#[derive(Debug, Clone)]
pub struct Ledger {
    /// What the job was built from.
    pub setup: Setup,
    /// What shows of it. A copy of the ledger shares it.
    shown: Arc<Shown>,
    /// What happened, in order.
    pub events: Vec<Event>,
}

/// Something that shows a slip.
#[derive(Debug, Clone, PartialEq)]
pub struct Hit {
    /// Moment of the slip, in ticks.
    pub tick: u64,
    /// What was seen or done.
    pub seen: String,
    /// State of the bench at that moment, in words.
    pub truth: String,
    /// Whether it was put right before gas flowed or before it could do harm.
    pub caught: Caught,
    /// How bad it was among the slips of its rule.
    pub grade: Grade,
    /// Evidence of the slip that this one only follows from: where that is charged, this is not.
    pub cause: Option<Evidence>,
}

/// Whether a slip was put right in time.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caught {
    /// Put right before it could do harm.
    InTime,
    /// Not put right, or too late.
    No,
}

impl Hit {
    /// A slip that was not put right.
    #[must_use]
    pub fn new(tick: u64, seen: impl Into<String>, truth: impl Into<String>) -> Self {
        Self {
            tick,
            seen: seen.into(),
            truth: truth.into(),
            caught: Caught::No,
            grade: Grade::Usual,
            cause: None,
        }
    }

    /// The same at its worst, where that is so.
    #[must_use]
    pub fn grave_if(self, grave: bool) -> Self {
        Self { grade: if grave { Grade::Grave } else { self.grade }, ..self }
    }

    /// The same, where it only follows from another slip, if there is one.
    #[must_use]
    pub fn following(self, cause: Option<Evidence>) -> Self {
        Self { cause, ..self }
    }
}

/// One action that was done, with what was true before.
#[derive(Debug, Clone, Copy)]
pub struct Did<'a> {
    /// Its place in the list of events.
    pub index: usize,
    /// Moment of the action, in ticks.
    pub tick: u64,
    /// The action as the bench took it.
    pub action: &'a Action,
    /// What was true right before.
    pub before: &'a Truth,
}

impl Ledger {
    /// An empty ledger of a job.
    #[must_use]
    pub fn new(setup: Setup) -> Self {
        Self { setup, shown: Arc::default(), events: Vec::new() }
    }

    /// Everything wrong on the bench that a finding has to name.
    pub(super) fn to_be_named(&self) -> &[TrueCause] {
        self.shown.to_be_named(&self.setup)
    }

    /// Whether the supply regulator, set higher, would put the bench right.
    pub(super) fn is_cured_by_setting(&self) -> bool {
        self.shown.is_cured_by_setting(&self.setup)
    }

    /// Takes in what happened.
    pub fn take(&mut self, events: impl IntoIterator<Item = Event>) {
        self.events.extend(events);
    }

    /// Every action that was done.
    pub fn did(&self) -> impl Iterator<Item = Did<'_>> {
        self.events.iter().enumerate().filter_map(|(index, event)| {
            let EventKind::Did { action, before } = &event.what else { return None };
            Some(Did { index, tick: event.tick, action, before })
        })
    }

    /// What was true once an event had happened, and before the next hand was laid on anything; none
    /// before the first action after it, or the end.
    #[must_use]
    pub fn state_after(&self, index: usize) -> Option<&Truth> {
        self.events.iter().skip(index + 1).find_map(|event| {
            if let EventKind::Did { before, .. } = &event.what {
                return Some(before.as_ref());
            }
            let EventKind::Ended { left, .. } = &event.what else { return None };
            Some(left.as_ref())
        })
    }

    /// Every reading that was written, with its place in the list.
    pub fn wrote(&self) -> impl Iterator<Item = (usize, u64, &ReadingFact)> {
        self.events.iter().enumerate().filter_map(|(index, event)| {
            let EventKind::Wrote(fact) = &event.what else { return None };
            Some((index, event.tick, fact))
        })
    }

    /// The furnace's firing levels, the weakest first.
    #[must_use]
    pub fn levels(&self) -> &'static [Level] {
        self.setup.furnace.plate.input.list()
    }

    /// Plate and label, as the last repair that changed them left them.
    #[must_use]
    pub fn plate(&self) -> &Plate {
        let changed = self.events.iter().rev().find_map(|event| {
            let EventKind::Mended { plate, .. } = &event.what else { return None };
            plate.as_deref()
        });
        changed.unwrap_or(&self.setup.furnace.plate)
    }

    /// How it was left, and what was said.
    #[must_use]
    pub fn end(&self) -> Option<(u64, Option<&HandOver>, &Truth)> {
        self.events.iter().rev().find_map(|event| {
            let EventKind::Ended { hand_over, left } = &event.what else { return None };
            Some((event.tick, hand_over.as_ref(), left.as_ref()))
        })
    }

    /// How the trainee said it ends.
    #[must_use]
    pub fn ending(&self) -> Option<Ending> {
        self.end().and_then(|(_, said, _)| said).map(|said| said.ending)
    }

    /// How a job that was handed over was left. A job that was stopped was not left at all.
    #[must_use]
    pub fn left(&self) -> Option<(u64, &HandOver, &Truth)> {
        self.end().and_then(|(tick, said, left)| Some((tick, said?, left)))
    }

    /// Whether it was handed over as shut off.
    #[must_use]
    pub fn said_shut_off(&self) -> bool {
        self.ending() == Some(Ending::ShutOff)
    }

    /// Whether it was really left shut off: said so, valve shut, tag on.
    #[must_use]
    pub fn left_shut_off(&self) -> bool {
        self.left().is_some_and(|(_, said, left)| {
            let shut = left.manual_valve.is_shut() && left.tag == Fitted::On;
            said.ending == Ending::ShutOff && shut
        })
    }

    /// Tick of the last event; 0 before any.
    #[must_use]
    pub fn last_tick(&self) -> u64 {
        self.events.last().map_or(0, |event| event.tick)
    }
}

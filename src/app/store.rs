//! What the window asks of the rest of the program: jobs to choose, attempts to begin and to go
//! on with, records to keep, results to show.

mod file_store;
mod journal;
mod marked;
mod results;

pub use file_store::FileStore;
pub use journal::RecordJournal;
pub use marked::marked;

use crate::bench::Bench;
use crate::hands::action::Action;
use crate::panels::debrief::DebriefView;
use crate::panels::settings::Settings;
use crate::panels::view::{Help, JobChoice, Unfinished};

/// Keeps scenarios, records and results; the window asks it for attempts.
pub trait Store: Send + Sync + 'static {
    /// Jobs to choose from, in their order.
    fn jobs(&self) -> Vec<JobChoice>;

    /// Attempts that can go on, newest first.
    fn unfinished(&self) -> Vec<Unfinished>;

    /// The seed to propose for the next start.
    fn seed(&mut self) -> u64;

    /// The trainee's choices as kept.
    fn settings(&self) -> Settings;

    /// Keeps the trainee's choices.
    fn keep_settings(&mut self, settings: &Settings);

    /// Begins a job.
    ///
    /// # Errors
    /// Why it cannot begin, in words.
    fn start(&mut self, scenario: &str, seed: u64, help: Help) -> Result<Attempt, String>;

    /// Goes on with an unfinished attempt.
    ///
    /// # Errors
    /// Why it cannot go on, in words.
    fn resume(&mut self, id: &str) -> Result<Attempt, String>;

    /// Marks a finished attempt by its actions.
    fn debrief(&mut self, finished: &Finished<'_>) -> DebriefView;
}

/// An attempt at work.
pub struct Attempt {
    /// Name of the scenario.
    pub scenario: String,
    /// The seed that the scenario's numbers were drawn with.
    pub seed: u64,
    /// How much help there is.
    pub help: Help,
    /// The bench, at the tick where the attempt stands.
    pub bench: Bench,
    /// What was done so far.
    pub done: Vec<(u64, Action)>,
    /// The author's hints on the job, in their order.
    pub hints: Vec<String>,
    /// How many of them were taken so far.
    pub hints_taken: usize,
    /// Where what is done from now on is written down.
    pub journal: Box<dyn Journal>,
}

/// An attempt that is over.
#[derive(Debug, Clone, Copy)]
pub struct Finished<'a> {
    /// Name of the scenario.
    pub scenario: &'a str,
    /// The seed that the scenario's numbers were drawn with.
    pub seed: u64,
    /// How much help there was.
    pub help: Help,
    /// Everything done, with its tick.
    pub done: &'a [(u64, Action)],
    /// The bench as it was left.
    pub bench: &'a Bench,
    /// How many of the author's hints were taken since the attempt was begun.
    pub hints_taken: usize,
}

/// Writes an attempt down as it goes. It must not block: the drawing thread calls it. A tick is
/// told as it is played: its actions, then the tick itself before its step.
pub trait Journal: Send + Sync {
    /// An action was tried on the bench, done or refused.
    fn acted(&mut self, bench: &Bench, action: &Action);

    /// A tick is about to pass; its actions have been done.
    fn ticked(&mut self, bench: &Bench);

    /// The job is over. Nothing more comes but, perhaps, a way back.
    fn ended(&mut self, bench: &Bench);

    /// A hint was asked for and shown.
    fn hinted(&mut self, bench: &Bench);

    /// The cutaway was opened.
    fn opened_cutaway(&mut self, bench: &Bench);

    /// The author's next hint on the job was taken.
    fn job_hinted(&mut self, bench: &Bench);

    /// After a stop for danger the attempt went back: `bench` stands there now, after `done`.
    fn went_back(&mut self, bench: &Bench, done: &[(u64, Action)]);

    /// Why nothing more is written down, if it is not.
    fn trouble(&self) -> Option<String>;
}

/// A journal that keeps nothing.
#[derive(Debug, Clone, Copy, Default)]
pub struct NoJournal;

impl Journal for NoJournal {
    fn acted(&mut self, _bench: &Bench, _action: &Action) {}

    fn ticked(&mut self, _bench: &Bench) {}

    fn ended(&mut self, _bench: &Bench) {}

    fn hinted(&mut self, _bench: &Bench) {}

    fn opened_cutaway(&mut self, _bench: &Bench) {}

    fn job_hinted(&mut self, _bench: &Bench) {}

    fn went_back(&mut self, _bench: &Bench, _done: &[(u64, Action)]) {}

    fn trouble(&self) -> Option<String> {
        None
    }
}

//! A debrief as data: beside the marks, everything that is told of a job.

use serde::{Deserialize, Serialize};

use super::super::evaluate::Marks;
use super::super::trace::Trace;
use super::causes::CauseTold;
use super::next::Next;
use super::sheet::Sheet;

/// Everything that the debrief shows.
#[derive(Debug, Clone, PartialEq)]
pub struct Debrief {
    /// Marks of the job, with findings and essentials.
    pub marks: Marks,
    /// What is told of it.
    pub account: Account,
    /// Pressures over the time of the job.
    pub trace: Trace,
}

/// What is told of a job beside its marks, in the order of telling.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Account {
    /// Title of the job.
    pub title: String,
    /// What was wrong, in the trainee's own numbers.
    pub causes: Vec<CauseTold>,
    /// What it would have done to the house, a sentence each.
    pub house: Vec<String>,
    /// What the night after brings by the model, a sentence each.
    pub night: Vec<String>,
    /// The one thing to practise next.
    pub next: Option<Next>,
    /// The job sheet, each number beside the true one.
    pub sheet: Sheet,
    /// The author's note for after the job.
    pub note: Option<String>,
    /// What was done when.
    pub done: Vec<Done>,
}

/// Something that was done.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct Done {
    /// Seconds since the start.
    pub at_s: f64,
    /// What it was, in a few words.
    pub what: String,
}

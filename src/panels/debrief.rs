//! The page after the job: essentials first, pressures over time, findings.

mod from_marking;
mod page;
pub mod trace;

pub use page::debrief_ui;

/// What the page shows. Plain data, filled from the marking.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct DebriefView {
    /// Title of the job.
    pub title: String,
    /// How it ended and what it came to, in a sentence.
    pub result: String,
    /// Points reached and possible.
    pub points: Option<(f64, f64)>,
    /// The short list that gates the result.
    pub essentials: Vec<EssentialView>,
    /// What was found, most serious first.
    pub findings: Vec<FindingView>,
    /// Pressures over time.
    pub traces: Vec<TraceView>,
    /// What was done when.
    pub ticks: Vec<TickView>,
    /// What was wrong in this job and what was found otherwise than it should be, a sentence each;
    /// none where it was not looked up.
    pub in_this_job: Option<Vec<String>>,
    /// The author's note for after the job; may be empty.
    pub note: String,
    /// How many of the author's hints were taken, in words; may be empty.
    pub hints: String,
    /// What would have happened in the night after, a sentence each.
    pub night_after: Vec<String>,
    /// What this result is and is not, a sentence each.
    pub care: Vec<String>,
}

/// How an essential stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// Met.
    Met,
    /// Not met.
    Missed,
    /// The job gave no occasion for it.
    NotDue,
    /// The job was not handed over: it cannot be said yet.
    Open,
}

/// One essential.
#[derive(Debug, Clone, PartialEq)]
pub struct EssentialView {
    /// What it asks.
    pub name: String,
    /// How it stands.
    pub verdict: Verdict,
    /// Why, in a sentence; may be empty.
    pub why: String,
}

/// How serious a finding is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Weight {
    /// Could have hurt somebody or left the job unsafe.
    Serious,
    /// Makes the result wrong or incomplete.
    Plain,
    /// A matter of good practice.
    Slight,
    /// Done well.
    Good,
}

/// One finding.
#[derive(Debug, Clone, PartialEq)]
pub struct FindingView {
    /// The rule's name.
    pub rule: String,
    /// What it says, in a few words.
    pub title: String,
    /// How serious it is.
    pub weight: Weight,
    /// Points lost, 0 if none.
    pub lost: f64,
    /// What all findings of its group cost together, where that is less than their sum.
    pub limit: Option<f64>,
    /// When, in seconds since the start.
    pub at_s: Option<f64>,
    /// What was seen.
    pub seen: String,
    /// What was true.
    pub truth: String,
    /// Why it matters.
    pub why: String,
    /// What to practise next.
    pub practise: String,
}

/// A pressure over time.
#[derive(Debug, Clone, PartialEq)]
pub struct TraceView {
    /// Where, such as `Inlet`.
    pub name: String,
    /// Seconds since the start and pascals, in order of time.
    pub points: Vec<(f64, f64)>,
}

/// Something done, as a tick on the time axis.
#[derive(Debug, Clone, PartialEq)]
pub struct TickView {
    /// Seconds since the start.
    pub at_s: f64,
    /// What, in words.
    pub text: String,
}

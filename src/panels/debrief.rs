//! The page after the job: the verdict, what was wrong, what it means for the house, what to practise
//! next; then essentials, sheet, pressures over time, findings.

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
    /// Supply, inlet, manifold and burner box over the job, a curve each.
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
    /// What was wrong, in the trainee's own numbers.
    pub causes: Vec<CauseView>,
    /// What it means for the house, a sentence each.
    pub house: Vec<String>,
    /// What happens in the night after, a sentence each.
    pub aftermath: Vec<String>,
    /// The one thing to practise next; may be empty.
    pub next: String,
    /// The lines of the job sheet.
    pub sheet: Vec<SheetRow>,
    /// What else stands on the sheet, or strikes its reader, a sentence each.
    pub sheet_notes: Vec<String>,
    /// What this result is and is not, a sentence each.
    pub care: Vec<String>,
}

/// Something that was wrong.
#[derive(Debug, Clone, PartialEq)]
pub struct CauseView {
    /// Its name, and how it was left.
    pub head: String,
    /// Whether it was put right.
    pub is_right: bool,
    /// What the trainee wrote and looked at of it, how it shows, what the sheet names.
    pub lines: Vec<String>,
}

/// A line of the job sheet.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SheetRow {
    /// Port and state of the furnace.
    pub line: String,
    /// Number as found, with what was true then; may be empty.
    pub found: String,
    /// Number as left, with what was true then; may be empty.
    pub left: String,
}

/// How an essential stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Verdict {
    /// Nothing found speaks against it.
    Met,
    /// A finding speaks against it.
    Missed,
    /// The job gave no occasion for it.
    NotDue,
    /// The job was not handed over: it cannot be said yet.
    Open,
}

/// A line of the list of essentials.
#[derive(Debug, Clone, PartialEq)]
pub struct EssentialView {
    /// What it asks, in a few words.
    pub name: String,
    /// Whether this attempt met it.
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
}

/// A finding with its evidence and its reason.
#[derive(Debug, Clone, PartialEq)]
pub struct FindingView {
    /// Id and version of the rule that found it.
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
    /// What the trainee could see then, in a sentence.
    pub seen: String,
    /// What was really so then, in a sentence.
    pub truth: String,
    /// Why it matters on a real job, in a sentence or two.
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
    /// What was done, as the axis names it.
    pub text: String,
}

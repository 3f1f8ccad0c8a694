//! What the panels are given: plain data, filled anew each frame by whoever shows them.

use egui::{Pos2, Rect};

use super::debrief::DebriefView;
use super::settings::Settings;
use crate::model::inside::Inside;
use crate::model::truth::Truth;
use crate::parts::{Duty, Place};
use crate::rules::competency::Competency;
use crate::scenario::Step;
use crate::senses::seen::Seen;
use crate::setup::SupplyRight;

/// Everything to show now.
#[derive(Debug, Clone, Copy)]
pub struct View<'a> {
    /// What the trainee chose; the panels ask for changes by a command.
    pub settings: &'a Settings,
    /// The page in front.
    pub page: Page<'a>,
}

/// A page of the window with what it shows.
#[derive(Debug, Clone, Copy)]
pub enum Page<'a> {
    /// Choosing a job. The caution comes before it, once a run.
    Opening(&'a Opening<'a>),
    /// A job being done, or stopped and not yet left.
    Job(&'a Job<'a>),
    /// What a finished job came to.
    Debrief(&'a DebriefView),
}

/// What the opening page offers.
#[derive(Debug, Clone, Copy)]
pub struct Opening<'a> {
    /// Jobs, in their order.
    pub jobs: &'a [JobChoice],
    /// Attempts that can go on, newest first.
    pub unfinished: &'a [Unfinished],
    /// The seed proposed for the next start.
    pub seed: u64,
    /// Something to say, such as a record that could not be read.
    pub notice: Option<&'a str>,
}

/// A job that can be chosen.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobChoice {
    /// Name of the scenario.
    pub id: String,
    /// Title of the job, a few words.
    pub title: String,
    /// What it is about, in a sentence or two.
    pub text: String,
    /// Name of the fuel on the plate.
    pub fuel: String,
    /// Its step of the ladder.
    pub step: Step,
    /// What it teaches, in a sentence; may be empty.
    pub aim: String,
    /// What it is practice for.
    pub competencies: Vec<&'static Competency>,
    /// What has become of it so far.
    pub standing: Tried,
}

/// What the attempts that were kept say of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Tried {
    /// There is no attempt.
    #[default]
    Never,
    /// So many attempts, none with the essentials met.
    Tried(u32),
    /// Once or more with the essentials met, of so many attempts.
    Passed(u32),
}

impl Tried {
    /// With its mark, in words.
    #[must_use]
    pub fn words(self) -> String {
        let times = |count: u32| t!("tried-times", count = count);
        match self {
            Self::Never => t!("tried-never").to_owned(),
            Self::Tried(count) => t!("tried-not-met", times = times(count)),
            Self::Passed(count) => t!("tried-met", times = times(count)),
        }
    }
}

/// An attempt that can go on.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unfinished {
    /// Whatever the shell needs to find it again.
    pub id: String,
    /// Title of its job.
    pub title: String,
    /// Where it stands, in words, such as `12 minutes in`.
    pub text: String,
}

/// How much help there is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum Help {
    /// Led step by step to the first reading, then from reading to reading.
    #[default]
    Coached,
    /// A hint when asked.
    Solo,
}

impl Help {
    /// Both, in their order on the page.
    pub const ALL: [Self; 2] = [Self::Coached, Self::Solo];

    /// Whether the cutaway may be looked at: while learning, never where somebody shows what they can
    /// do.
    #[must_use]
    pub fn opens_cutaway(self) -> bool {
        match self {
            Self::Coached => true,
            Self::Solo => false,
        }
    }

    /// The word on the page.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Coached => t!("help-coached"),
            Self::Solo => t!("help-solo"),
        }
    }
}

/// A job at work.
#[derive(Debug, Clone, Copy)]
pub struct Job<'a> {
    /// What the person perceives.
    pub seen: &'a Seen,
    /// The paper that came with the job.
    pub card: Card<'a>,
    /// How much help there is.
    pub help: Help,
    /// The seed, shown on the sheet.
    pub seed: u64,
    /// Whether and how fast time runs.
    pub pace: Pace,
    /// Time of day in the house, in seconds after midnight.
    pub clock_s: f64,
    /// Boxes of everything the drawing shows now.
    pub parts: &'a [PartBox],
    /// Why the last action was refused, while that should be shown.
    pub refusal: Option<&'a str>,
    /// Short events to caption beside the lasting sounds, such as `valve clicks`.
    pub captions: &'a [String],
    /// What stands behind the sheet steel; none where that must not be shown.
    pub behind: Option<Behind<'a>>,
    /// Set when practice can go back to the step before a stop for danger.
    pub second_chance: SecondChance,
}

/// The model's own state, for the cutaway.
#[derive(Debug, Clone, Copy)]
pub struct Behind<'a> {
    /// What is really so.
    pub truth: &'a Truth,
    /// The inside of pipes, regulators and control.
    pub inside: &'a Inside,
}

/// Whether a stopped job can go back a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default)]
pub enum SecondChance {
    /// Nothing to go back from, or no step to go back to.
    #[default]
    None,
    /// The page offers to go back one step.
    Offered,
}

/// The paper that came with the job.
#[derive(Debug, Clone, Copy)]
pub struct Card<'a> {
    /// Title of the job, a few words.
    pub title: &'a str,
    /// What the author asks for and tells, some sentences.
    pub text: &'a str,
    /// Who owns the supply.
    pub supply_owner: &'a str,
    /// Whether the trainee may set the supply regulator.
    pub supply: SupplyRight,
    /// Seconds that a hold without flow must last.
    pub hold_s: f64,
    /// Seconds after a change before a reading counts.
    pub settle_s: f64,
    /// Work beyond the pressures that is asked for.
    pub required: &'a [Duty],
    /// The author's hints that were taken so far, in their order.
    pub hints: &'a [String],
    /// How many more there are.
    pub hints_left: usize,
}

/// Whether and how fast time runs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub struct Pace {
    /// Whether the trainee let it run or paused it.
    pub running: Running,
    /// How many times faster than a clock: 1, 5 or 20.
    pub speed: u32,
}

/// Whether the bench is stepped.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Running {
    /// The bench is stepped fifty times a second, times the speed.
    Running,
    /// The bench stands at its tick; actions wait until it runs again.
    Paused,
}

/// The box of a part, or of a piece of one, in window points.
#[derive(Debug, Clone, PartialEq)]
pub struct PartBox {
    /// Element id in the drawing: `PART`, or `PART.PIECE` for places the panels write into
    /// (`meter.display`, `thermostat.display`, `meter-index.display`). A state's id
    /// (`PART@STATE`) is taken as its part's.
    pub id: String,
    /// The box around it, in window points.
    pub rect: Rect,
    /// What a handle, a lever or a slot of it turns about, in window points, where the drawing names
    /// it.
    pub pivot: Option<Pos2>,
}

/// How far a part is turned by the hand, for the eye: what has come of it is in the drawing already.
#[derive(Debug, Clone, PartialEq)]
pub struct Turned {
    /// Id of the part.
    pub part: String,
    /// How far it is turned clockwise, in degrees.
    pub deg: f32,
}

/// What was laid out this frame.
#[derive(Debug, Clone, PartialEq)]
pub struct Layout {
    /// What is left for the drawing, in window points. Empty on pages without one.
    pub scene: Rect,
    /// Which place to draw, at work.
    pub place: Option<Place>,
    /// The chosen part, to be marked in the drawing, as an index into `Job::parts`.
    pub marked: Option<usize>,
    /// The part that a hand turns, and how far beyond what has come of it.
    pub turned: Option<Turned>,
    /// Where the pointer is over the drawing, with what is in the hand.
    pub hand: Option<Pos2>,
}

impl Layout {
    /// A page without a drawing.
    #[must_use]
    pub fn nothing() -> Self {
        Self { scene: Rect::NOTHING, place: None, marked: None, turned: None, hand: None }
    }
}

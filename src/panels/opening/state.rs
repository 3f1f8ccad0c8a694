//! What the opening pages remember, and the job and seed that it stands for.

use crate::panels::view::{Help, JobChoice, Opening, Tried};
use crate::scenario::Step;

/// What the opening pages remember.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct OpeningState {
    /// Whether the caution was read in this run.
    pub caution: Caution,
    /// The job that is chosen; none is the next one on the ladder.
    pub job: Option<String>,
    /// The seed as typed; none until changed.
    pub seed: Option<String>,
    /// How much help the next start will have.
    pub help: Help,
    /// Which step of the ladder is unfolded; none until changed is that of the chosen job.
    pub(super) step: Option<Unfold>,
    /// Whether the keyboard goes to the chosen job in the list.
    pub(super) to_chosen: ToChosen,
}

/// What of the ladder is unfolded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Unfold {
    /// No step: all are folded.
    Nothing,
    /// The jobs of this step.
    This(Step),
}

/// Whether the keyboard goes to the chosen job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub(super) enum ToChosen {
    /// The keyboard stays where it is.
    #[default]
    No,
    /// The keyboard goes to the chosen job in this frame.
    Yes,
}

/// Whether the caution was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Caution {
    /// The caution stands before everything else.
    #[default]
    Unread,
    /// The caution was read; the jobs show.
    Read,
}

impl OpeningState {
    /// The step whose jobs show.
    pub(super) fn unfolded(&self, opening: &Opening<'_>) -> Option<Step> {
        match self.step {
            Some(Unfold::Nothing) => None,
            Some(Unfold::This(step)) => Some(step),
            None => chosen(opening, self).map(|job| job.step),
        }
    }
}

/// The next job on the ladder: by step the first whose essentials were not yet met.
pub(super) fn suggested<'a>(opening: &Opening<'a>) -> Option<&'a JobChoice> {
    let open = opening.jobs.iter().filter(|job| !matches!(job.standing, Tried::Passed(_)));
    open.min_by_key(|job| job.step).or_else(|| opening.jobs.first())
}

pub(super) fn chosen<'a>(opening: &Opening<'a>, state: &OpeningState) -> Option<&'a JobChoice> {
    let wanted = state.job.as_deref();
    let found = opening.jobs.iter().find(|job| Some(job.id.as_str()) == wanted);
    found.or_else(|| suggested(opening))
}

pub(super) fn seed_of(opening: &Opening<'_>, state: &OpeningState) -> Result<u64, ()> {
    match &state.seed {
        Some(text) => text.trim().parse().map_err(|_| ()),
        None => Ok(opening.seed),
    }
}

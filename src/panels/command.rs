//! What a trainee wants done; the program around the panels does it.

use super::settings::Settings;
use super::view::Help;
use crate::hands::action::Action;

/// A command out of the panels, in the order it was made.
#[derive(Debug, Clone, PartialEq)]
pub enum Command {
    /// Do something at the bench, at the current tick.
    Act(Action),
    /// Let time stand until [`Self::Resume`].
    Pause,
    /// Let time run again.
    Resume,
    /// Let it run this much faster than a clock: 1, 5 or 20.
    Speed(u32),
    /// Begin a job at its first tick.
    Start {
        /// Id of the scenario.
        scenario: String,
        /// The seed that its numbers are drawn with.
        seed: u64,
        /// With how much help.
        help: Help,
    },
    /// Go on with an unfinished attempt.
    ResumeAttempt(String),
    /// Change the settings to these.
    Settings(Settings),
    /// Leave the job or the debrief for the opening page; an unfinished attempt stays.
    Leave,
    /// After a stop for danger: go back to the step before.
    StepBack,
    /// After the end of a job: show the debrief.
    ShowDebrief,
    /// Do the same job again, same seed.
    Again,
    /// Do the same job again with another seed.
    AgainOtherSeed,
    /// A hint was asked for and shown.
    HintShown,
    /// The cutaway was opened.
    CutawayOpened,
    /// The author's next hint on this job.
    NextHint,
    /// The refusal was read; it need not be shown any longer.
    RefusalRead,
    /// Close the window and end the program.
    Quit,
}

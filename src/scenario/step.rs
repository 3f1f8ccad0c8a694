//! The ladder of jobs: four steps, by what is asked.

use super::format::Scenario;
use super::value::whole;

/// A step of the ladder.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
pub enum Step {
    /// Nothing is hidden: read, write down, hand over.
    Read,
    /// A reading is off and its setting is in plain sight.
    Set,
    /// The readings point to a cause that must be found.
    Find,
    /// Several things at once, or work that must not be finished.
    Judge,
}

impl Step {
    /// All, from the first.
    pub const ALL: [Self; 4] = [Self::Read, Self::Set, Self::Find, Self::Judge];

    /// Its number and name.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Read => t!("step-read"),
            Self::Set => t!("step-set"),
            Self::Find => t!("step-find"),
            Self::Judge => t!("step-judge"),
        }
    }

    /// What is asked on it.
    #[must_use]
    pub fn asks(self) -> &'static str {
        match self {
            Self::Read => {
                t!("step-read-asks")
            }
            Self::Set => t!("step-set-asks"),
            Self::Find => t!("step-find-asks"),
            Self::Judge => {
                t!("step-judge-asks")
            }
        }
    }
}

impl Scenario {
    /// Its step of the ladder.
    #[must_use]
    pub fn step_of_ladder(&self) -> Step {
        match whole(self.step.least()) {
            0 | 1 => Step::Read,
            2 => Step::Set,
            3 => Step::Find,
            4.. => Step::Judge,
        }
    }
}

//! What a plan is made of: goals to reach, things to do, things to wait for, and decisions on what
//! was seen.

use std::sync::Arc;

use crate::bench::action::Action;
use crate::bench::seen::Seen;
use crate::procedure::{Goal, Pursuit, Until, Wait};

/// A decision on what is seen: what comes next.
pub type Decide<T> = Arc<dyn Fn(&mut T, &Seen) -> Vec<Task<T>> + Send + Sync>;

/// One piece of a plan.
#[derive(Clone)]
pub enum Task<T> {
    /// Reach a goal; when it cannot be reached, the plan goes on and the decision that follows sees
    /// it.
    Reach(Pursuit),
    /// Do something.
    Do(Action),
    /// Wait for something; when it does not come, the plan goes on and the decision that follows
    /// sees it.
    Wait(Wait),
    /// Decide.
    Think(Decide<T>),
}

impl<T> core::fmt::Debug for Task<T> {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Reach(pursuit) => f.debug_tuple("Reach").field(pursuit).finish(),
            Self::Do(action) => f.debug_tuple("Do").field(action).finish(),
            Self::Wait(wait) => f.debug_tuple("Wait").field(wait).finish(),
            Self::Think(_) => f.write_str("Think"),
        }
    }
}

/// A goal.
#[must_use]
pub fn reach<T>(goal: Goal) -> Task<T> {
    Task::Reach(Pursuit::new(goal))
}

/// A wait of so many seconds.
#[must_use]
pub fn pause<T>(seconds: f64) -> Task<T> {
    Task::Wait(Wait::new(Until::Seconds(seconds), seconds + 1.0))
}

/// A wait for something, at most so many seconds.
#[must_use]
pub fn wait<T>(until: Until, limit_s: f64) -> Task<T> {
    Task::Wait(Wait::new(until, limit_s))
}

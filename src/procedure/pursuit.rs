//! Pursuing a goal: its steps one after the other, with time for walking and waiting.

use super::{Awaited, Goal, Memory, Step};
use crate::hands::action::Action;
use crate::senses::seen::Seen;
use crate::units::{TICK_S, TICKS_PER_S};

/// How long a walk from one place to another takes, in ticks.
const WALK_TICKS: u64 = 2 * TICKS_PER_S;

/// A goal that is pursued, from tick to tick.
#[derive(Debug, Clone, PartialEq)]
pub struct Pursuit {
    goal: Goal,
    began: bool,
    walks_ticks: u64,
    waited: Option<(Awaited, f64)>,
    /// What is waited for longer than usual, in seconds.
    patience: Option<(Awaited, f64)>,
    /// What was waited for in vain.
    late: Option<Awaited>,
    last: Option<Action>,
}

/// What a pursuit wants now.
#[derive(Debug, Clone, PartialEq)]
pub enum Move {
    /// This is to be done.
    Act(Action),
    /// Let a tick pass, with nothing done.
    LetPass,
    /// The goal is reached.
    Reached,
    /// It is gone through, but what was waited for did not come.
    TooLong(Awaited),
}

impl Pursuit {
    /// Begins to pursue a goal, with nothing tried yet.
    #[must_use]
    pub fn new(goal: Goal) -> Self {
        Self {
            goal,
            began: false,
            walks_ticks: 0,
            waited: None,
            patience: None,
            late: None,
            last: None,
        }
    }

    /// The same with one thing waited for as long as this, in seconds, where it does not come.
    #[must_use]
    pub fn patient(self, awaited: Awaited, at_most_s: f64) -> Self {
        Self { patience: Some((awaited, at_most_s)), ..self }
    }

    /// The goal that is pursued.
    #[must_use]
    pub fn goal(&self) -> Goal {
        self.goal
    }

    /// Whether its first step was asked for already.
    #[must_use]
    pub fn has_begun(&self) -> bool {
        self.began
    }

    /// What to do now. An action that was done and changed nothing is not repeated: the pursuit
    /// goes on as if it had worked.
    pub fn next(&mut self, seen: &Seen, memory: &mut Memory) -> Move {
        if !self.began {
            self.began = true;
            memory.start_anew();
        }
        if self.walks_ticks > 0 {
            self.walks_ticks -= 1;
            return Move::LetPass;
        }
        loop {
            match self.goal.step(seen, memory) {
                Step::Met => {
                    memory.start_anew();
                    return self.late.map_or(Move::Reached, Move::TooLong);
                }
                Step::Do(action) if self.last.as_ref() == Some(&action) => {
                    memory.left_out.push(action);
                }
                Step::Do(action) => {
                    self.waited = None;
                    if matches!(action, Action::Go(_)) {
                        self.walks_ticks = WALK_TICKS;
                    }
                    self.last = Some(action.clone());
                    return Move::Act(action);
                }
                Step::Wait(awaited) => {
                    if !self.has_waited(awaited) {
                        return Move::LetPass;
                    }
                    memory.waited_out.push(awaited);
                    self.late = Some(awaited);
                }
            }
        }
    }

    /// Whether this was waited for long enough; else a tick more.
    fn has_waited(&mut self, awaited: Awaited) -> bool {
        let waited_s = match self.waited {
            Some((one, waited_s)) if one == awaited => waited_s,
            Some(_) | None => 0.0,
        };
        self.waited = Some((awaited, waited_s + TICK_S));
        let patience = self.patience.filter(|(one, _)| *one == awaited);
        waited_s >= patience.map_or(awaited.at_most_s(), |(_, at_most_s)| at_most_s)
    }
}

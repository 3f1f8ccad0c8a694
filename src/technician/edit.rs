//! Edits of good work. What a plan comes to is a goal that it begins, or a step towards one; an edit
//! names it, and leaves it out, swaps it, cuts the wait before it, or puts something before or after it.

use super::step::{Step, act, reach};
use crate::hands::action::Action;
use crate::parts::{Phase, Port, Screw, Stage};
use crate::procedure::Goal;

/// What a plan comes to.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Deed {
    /// A goal is begun.
    Begins(Goal),
    /// An action is due: a step towards a goal of the plan, or planned by itself.
    Does(Option<Goal>, Action),
}

impl Deed {
    /// The action that is due.
    pub(super) fn action(&self) -> Option<&Action> {
        match self {
            Self::Begins(_) => None,
            Self::Does(_, action) => Some(action),
        }
    }

    /// The same, to be done after all.
    fn as_step(&self) -> Step {
        match self {
            Self::Begins(goal) => reach(*goal),
            Self::Does(_, action) => act(action.clone()),
        }
    }
}

/// The deeds that an edit is about.
#[derive(Debug, Clone)]
pub(super) enum What {
    /// A goal of the plan as a whole.
    Goal(Goal),
    /// An action, whatever it leads to.
    Step(Action),
    /// An action as a step towards this goal of the plan.
    StepTo(Goal, Action),
    /// Any turn of a screw.
    Turn(Screw),
    /// Any reading of a port in a state, before or after work.
    Write(Port, Stage, Phase),
    /// Any action of a kind.
    Such(fn(&Action) -> bool),
    /// Any action of a kind that is planned by itself, towards no goal.
    Planned(fn(&Action) -> bool),
}

impl From<Goal> for What {
    fn from(goal: Goal) -> Self {
        Self::Goal(goal)
    }
}

impl From<Action> for What {
    fn from(action: Action) -> Self {
        Self::Step(action)
    }
}

impl What {
    /// Whether a deed is such a one.
    pub(super) fn is(&self, deed: &Deed) -> bool {
        match (self, deed) {
            (Self::Goal(wanted), Deed::Begins(goal)) => wanted == goal,
            (Self::StepTo(to, wanted), Deed::Does(goal, action)) => {
                *goal == Some(*to) && wanted == action
            }
            (Self::Step(wanted), Deed::Does(_, action)) => wanted == action,
            (Self::Turn(wanted), Deed::Does(_, action)) => {
                matches!(action, Action::Turn { screw, .. } if screw == wanted)
            }
            (Self::Write(port, stage, phase), Deed::Does(_, action)) => {
                matches!(action, Action::Write(it)
                    if (it.port, it.stage, it.phase) == (*port, *stage, *phase))
            }
            (Self::Such(when), Deed::Does(_, action))
            | (Self::Planned(when), Deed::Does(None, action)) => when(action),
            (Self::Goal(_), Deed::Does(..))
            | (Self::Planned(_), Deed::Does(Some(_), _) | Deed::Begins(_))
            | (
                Self::StepTo(..) | Self::Step(_) | Self::Turn(_) | Self::Write(..) | Self::Such(_),
                Deed::Begins(_),
            ) => false,
        }
    }
}

/// What becomes of a deed.
#[derive(Debug, Clone)]
enum How {
    /// It is left out, however often it is due.
    LeaveOut,
    /// It is done once with these before it.
    Before(Vec<Step>),
    /// It is done once with these after it.
    After(Vec<Step>),
    /// These are done once in its place.
    Instead(Vec<Step>),
    /// The wait until it is due passes so many times faster.
    Hurry(u32),
}

/// An edit of good work.
#[derive(Debug, Clone)]
pub(super) struct Edit {
    what: What,
    how: How,
}

/// Leaves it out, however often it is due.
pub(super) fn leave_out(what: impl Into<What>) -> Edit {
    Edit { what: what.into(), how: How::LeaveOut }
}

/// Does these before it, the first time.
pub(super) fn before(what: impl Into<What>, steps: Vec<Step>) -> Edit {
    Edit { what: what.into(), how: How::Before(steps) }
}

/// Does these after it, the first time.
pub(super) fn after(what: impl Into<What>, steps: Vec<Step>) -> Edit {
    Edit { what: what.into(), how: How::After(steps) }
}

/// Does these in its place, the first time.
pub(super) fn instead(what: impl Into<What>, steps: Vec<Step>) -> Edit {
    Edit { what: what.into(), how: How::Instead(steps) }
}

/// Lets the wait until it is due pass so many times faster.
pub(super) fn hurry(what: impl Into<What>, times: u32) -> Edit {
    Edit { what: what.into(), how: How::Hurry(times) }
}

impl Edit {
    /// The deeds that it is about.
    pub(super) fn what(&self) -> &What {
        &self.what
    }

    /// Whether it makes a difference before its deed is due.
    pub(super) fn hurries(&self) -> bool {
        matches!(self.how, How::Hurry(_))
    }
}

/// The edits of a plan that are still to be made.
#[derive(Debug, Clone, Default)]
pub(super) struct Edits(pub Vec<Edit>);

impl Edits {
    /// What is done in place of a deed; none where it is done as it stands.
    pub(super) fn in_place_of(&mut self, deed: &Deed) -> Option<Vec<Step>> {
        let place = self.0.iter().position(|edit| edit.what.is(deed))?;
        let Edit { what, how } = self.0.remove(place);
        match how {
            How::LeaveOut => {
                self.0.insert(place, Edit { what, how });
                Some(Vec::new())
            }
            How::Before(mut steps) => {
                steps.push(deed.as_step());
                Some(steps)
            }
            How::After(steps) => Some([vec![deed.as_step()], steps].concat()),
            How::Instead(steps) => Some(steps),
            How::Hurry(_) => None,
        }
    }

    /// How many more looks a tick is worth to who waits.
    pub(super) fn looks(&self) -> u32 {
        let times = self.0.iter().map(|edit| match edit.how {
            How::Hurry(times) => times,
            How::LeaveOut | How::Before(_) | How::After(_) | How::Instead(_) => 0,
        });
        times.max().unwrap_or(0)
    }
}

//! What a player does beside the plan of the technician that it follows.

use std::collections::VecDeque;
use std::sync::Arc;

use super::super::plan::Technician;
use crate::hands::action::Action;
use crate::procedure::{Goal, Move, Pursuit};
use crate::senses::seen::Seen;
use crate::units::TICKS_PER_S;

/// A decision on what is seen once the pieces before it are done.
pub(super) type Decide = Arc<dyn Fn(&Seen) -> Vec<Piece> + Send + Sync>;

/// One piece of a detour.
#[derive(Clone)]
pub(super) enum Piece {
    /// An action, taken as it stands.
    Do(Action),
    /// A goal of the procedure, reached as the technician reaches it.
    Reach(Pursuit),
    /// So many ticks pass.
    Wait(u64),
    /// What comes next hangs on what is seen then.
    Decide(Decide),
}

impl From<Action> for Piece {
    fn from(action: Action) -> Self {
        Self::Do(action)
    }
}

impl From<Goal> for Piece {
    fn from(goal: Goal) -> Self {
        Self::Reach(Pursuit::new(goal))
    }
}

/// So many seconds pass.
pub(super) fn wait(seconds: u64) -> Piece {
    Piece::Wait(seconds * TICKS_PER_S)
}

/// A decision on what is seen.
pub(super) fn decide(decide: impl Fn(&Seen) -> Vec<Piece> + Send + Sync + 'static) -> Piece {
    Piece::Decide(Arc::new(decide))
}

/// What a detour wants now.
pub(super) enum Next {
    /// An action is to be taken now.
    Act(Action),
    /// Nothing is done for a tick.
    LetPass,
    /// It is gone through.
    Done,
}

/// Pieces that are still to be done.
#[derive(Clone, Default)]
pub(super) struct Detour(VecDeque<Piece>);

impl Detour {
    /// Lines up more pieces behind those that are left.
    pub(super) fn extend(&mut self, pieces: impl IntoIterator<Item = Piece>) {
        self.0.extend(pieces);
    }

    /// Whether nothing is left.
    pub(super) fn is_empty(&self) -> bool {
        self.0.is_empty()
    }

    /// The next step, with what the technician remembers.
    pub(super) fn next(&mut self, technician: &mut Technician, seen: &Seen) -> Next {
        loop {
            match self.0.pop_front() {
                None => return Next::Done,
                Some(Piece::Do(action)) => return Next::Act(action),
                Some(Piece::Wait(0)) => {}
                Some(Piece::Wait(ticks)) => {
                    self.0.push_front(Piece::Wait(ticks - 1));
                    return Next::LetPass;
                }
                Some(Piece::Decide(decide)) => {
                    for piece in decide(seen).into_iter().rev() {
                        self.0.push_front(piece);
                    }
                }
                Some(Piece::Reach(mut pursuit)) => match technician.pursue(&mut pursuit, seen) {
                    Move::Reached | Move::TooLong(_) => {}
                    Move::LetPass => {
                        self.0.push_front(Piece::Reach(pursuit));
                        return Next::LetPass;
                    }
                    Move::Act(action) => {
                        self.0.push_front(Piece::Reach(pursuit));
                        return Next::Act(action);
                    }
                },
            }
        }
    }
}

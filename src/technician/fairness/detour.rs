//! What a player does beside the plan of the technician that it follows.

use std::borrow::Cow;
use std::collections::VecDeque;
use std::sync::Arc;

use super::super::plan::Technician;
use crate::hands::action::Action;
use crate::parts::Reading;
use crate::procedure::{Goal, Move, Pursuit};
use crate::senses::seen::{Seen, Sound};
use crate::units::TICKS_PER_S;

/// A decision on what is seen once the pieces before it are done.
pub(super) type Decide = Arc<dyn Fn(&Seen) -> Vec<Piece> + Send + Sync>;

/// One piece of a detour.
#[derive(Clone)]
pub(super) enum Piece {
    /// An action, taken as it stands.
    Do(Action),
    /// A number written by a slip of the pencil, that is struck out.
    Slip(Reading),
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

/// Pieces that are still to be done, and the numbers that were struck out so far.
#[derive(Clone, Default)]
pub(super) struct Detour {
    left: VecDeque<Piece>,
    struck: Vec<Reading>,
    alarm: Alarm,
}

/// Whether the alarm was heard at the last look.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
enum Alarm {
    #[default]
    Silent,
    Sounds,
}

impl Detour {
    /// Lines up more pieces behind those that are left.
    pub(super) fn extend(&mut self, pieces: impl IntoIterator<Item = Piece>) {
        self.left.extend(pieces);
    }

    /// Whether nothing is left.
    pub(super) fn is_empty(&self) -> bool {
        self.left.is_empty()
    }

    /// The sight without the numbers that were struck out: nobody takes them for readings.
    pub(super) fn without_struck<'a>(&self, seen: &'a Seen) -> Cow<'a, Seen> {
        if self.struck.is_empty() {
            return Cow::Borrowed(seen);
        }
        let mut seen = seen.clone();
        Arc::make_mut(&mut seen.sheet).readings.retain(|it| !self.struck.contains(it));
        Cow::Owned(seen)
    }

    /// The next step, with what the technician remembers. Eyes and ears stay open meanwhile.
    /// Whatever was about to be done is dropped when the alarm begins: it is thought over anew.
    pub(super) fn next(&mut self, technician: &mut Technician, seen: &Seen) -> Next {
        let now = if seen.sounds.contains(&Sound::Alarm) { Alarm::Sounds } else { Alarm::Silent };
        if core::mem::replace(&mut self.alarm, now) == Alarm::Silent && now == Alarm::Sounds {
            self.left.clear();
        }
        if !self.is_empty() {
            technician.keep_watch(seen);
        }
        loop {
            match self.left.pop_front() {
                None => return Next::Done,
                Some(Piece::Do(action)) => {
                    technician.does(&action);
                    return Next::Act(action);
                }
                Some(Piece::Slip(reading)) => {
                    self.struck.push(reading);
                    return Next::Act(Action::Write(reading));
                }
                Some(Piece::Wait(0)) => {}
                Some(Piece::Wait(ticks)) => {
                    self.left.push_front(Piece::Wait(ticks - 1));
                    return Next::LetPass;
                }
                Some(Piece::Decide(decide)) => {
                    for piece in decide(seen).into_iter().rev() {
                        self.left.push_front(piece);
                    }
                }
                Some(Piece::Reach(mut pursuit)) => match technician.pursue(&mut pursuit, seen) {
                    Move::Reached | Move::TooLong(_) => {}
                    Move::LetPass => {
                        self.left.push_front(Piece::Reach(pursuit));
                        return Next::LetPass;
                    }
                    Move::Act(action) => {
                        self.left.push_front(Piece::Reach(pursuit));
                        return Next::Act(action);
                    }
                },
            }
        }
    }
}

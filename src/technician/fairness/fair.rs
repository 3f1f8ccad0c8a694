//! A fair run: the technician's work in other manners and sequences, composed at random.

use super::super::drive::Player;
use super::super::plan::Technician;
use super::super::sequence::Sequence;
use super::detour::{Detour, Next};
use super::manner::Manner;
use crate::hands::action::Action;
use crate::hands::refusal::Refusal;
use crate::rng::{Stream, stream};
use crate::senses::seen::Seen;
use crate::setup::JobCard;

/// Manners of one run, at most: more of them at once is nobody's way to work.
const MOST_MANNERS: u32 = 6;
/// Sequences of one run, at most.
const MOST_SEQUENCES: u32 = 6;

/// Technician that works in other manners and sequences.
pub struct Fair {
    good: Technician,
    manners: Vec<Manner>,
    sequences: Vec<Sequence>,
    chance: Stream,
    detour: Detour,
    refused: Vec<(Action, Refusal)>,
}

impl Fair {
    /// The run of this number on the job of this card, with manners and sequences of its own: the same
    /// number draws the same ones there, and others on another job.
    #[must_use]
    pub fn new(card: &JobCard, run: u64) -> Self {
        let mut chance = stream(run, &format!("fair-run:{}", card.title));
        let count = 1 + chance.below(MOST_MANNERS);
        let manners = some_of(Manner::ALL, count, &mut chance);
        let count = 1 + chance.below(MOST_SEQUENCES);
        let sequences = some_of(Sequence::ALL, count, &mut chance);
        Self::with(card, manners, sequences, chance)
    }

    /// A run with these manners and sequences.
    #[must_use]
    pub fn with(
        card: &JobCard,
        manners: Vec<Manner>,
        sequences: Vec<Sequence>,
        chance: Stream,
    ) -> Self {
        let good = Technician::new(card).in_sequence(sequences.clone());
        Self { good, manners, sequences, chance, detour: Detour::default(), refused: Vec::new() }
    }

    /// Manners that were drawn for it.
    #[must_use]
    pub fn manners(&self) -> &[Manner] {
        &self.manners
    }

    /// Sequences that were drawn for it.
    #[must_use]
    pub fn sequences(&self) -> &[Sequence] {
        &self.sequences
    }

    /// What was refused, to it or to the technician whose plan it follows.
    #[must_use]
    pub fn refused(&self) -> &[(Action, Refusal)] {
        &self.refused
    }
}

/// So many of all, each once, in the order in which they are drawn.
fn some_of<T: Copy>(all: &[T], count: u32, chance: &mut Stream) -> Vec<T> {
    let mut left = all.to_vec();
    let mut drawn = Vec::new();
    for _ in 0..count {
        let Ok(among) = u32::try_from(left.len()) else { break };
        if among == 0 {
            break;
        }
        let Ok(at) = usize::try_from(chance.below(among)) else { break };
        drawn.push(left.remove(at));
    }
    drawn
}

impl Player for Fair {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        let seen = &*self.detour.without_struck(seen);
        loop {
            match self.detour.next(&mut self.good, seen) {
                Next::Act(action) => return Some(action),
                Next::LetPass => return None,
                Next::Done => {}
            }
            let action = self.good.propose(seen)?;
            let chance = &mut self.chance;
            let another = self.manners.iter().find_map(|it| it.carry_out(&action, seen, chance));
            match another {
                Some(pieces) => self.detour.extend(pieces),
                None => {
                    self.good.does(&action);
                    return Some(action);
                }
            }
        }
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        self.refused.push((action.clone(), why));
    }

    fn finished(&self) -> bool {
        self.detour.is_empty() && self.good.finished()
    }
}

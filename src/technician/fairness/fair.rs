//! A fair run: the technician's work in other manners, composed at random.

use super::super::drive::Player;
use super::super::plan::Technician;
use super::detour::{Detour, Next};
use super::manner::Manner;
use crate::hands::action::Action;
use crate::hands::refusal::Refusal;
use crate::rng::{Stream, stream};
use crate::senses::seen::Seen;
use crate::setup::JobCard;

/// Manners of one run, at most: more of them at once is nobody's way to work.
const MOST_MANNERS: u32 = 6;

/// Technician that works in other manners.
pub struct Fair {
    good: Technician,
    manners: Vec<Manner>,
    chance: Stream,
    detour: Detour,
    refused: Vec<(Action, Refusal)>,
}

impl Fair {
    /// The run of this number, with manners of its own: the same number draws the same ones.
    #[must_use]
    pub fn new(card: &JobCard, run: u64) -> Self {
        let mut chance = stream(run, "fair-run");
        let mut left: Vec<Manner> = Manner::ALL.to_vec();
        let count = 1 + chance.below(MOST_MANNERS);
        let mut manners = Vec::new();
        for _ in 0..count {
            let Ok(among) = u32::try_from(left.len()) else { break };
            let Ok(at) = usize::try_from(chance.below(among)) else { break };
            manners.push(left.remove(at));
        }
        Self::with(card, manners, chance)
    }

    /// A run with these manners.
    #[must_use]
    pub fn with(card: &JobCard, manners: Vec<Manner>, chance: Stream) -> Self {
        let good = Technician::new(card);
        Self { good, manners, chance, detour: Detour::default(), refused: Vec::new() }
    }

    /// Manners that were drawn for it.
    #[must_use]
    pub fn manners(&self) -> &[Manner] {
        &self.manners
    }

    /// What was refused, to it or to the technician whose plan it follows.
    #[must_use]
    pub fn refused(&self) -> &[(Action, Refusal)] {
        &self.refused
    }
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

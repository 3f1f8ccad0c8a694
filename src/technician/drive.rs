//! Letting a player loose on a bench, at a tick's pace.

use crate::bench::Bench;
use crate::bench::run;
use crate::hands::action::Action;
use crate::hands::refusal::Refusal;
use crate::senses::seen::Seen;
use crate::units::TICKS_PER_S;

pub use crate::bench::run::{Nobody, Witness};

/// Most actions at one tick: a player that never lets time pass is stopped.
const MOST_ACTIONS_AT_ONCE: u32 = 10_000;

/// Whoever decides what to do, on what is seen.
pub trait Player {
    /// What to do now; `None` lets a tick pass.
    fn next(&mut self, seen: &Seen) -> Option<Action>;

    /// Told when an action was refused.
    fn refused(&mut self, action: &Action, why: Refusal);

    /// Whether it has nothing more to do.
    fn finished(&self) -> bool;
}

/// Why a player stopped playing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stopped {
    /// The job is over.
    Over,
    /// The player has no more to do, but the job is not over.
    PlayerFinished,
    /// The time limit passed.
    TimeUp,
}

/// Plays until the job is over, the player has finished or `limit_s` of simulated time passed.
pub fn play(
    bench: &mut Bench,
    player: &mut dyn Player,
    limit_s: u64,
    witness: &mut dyn Witness,
) -> Stopped {
    let end = bench.tick() + limit_s * TICKS_PER_S;
    loop {
        let mut at_once = 0;
        while let Some(action) = player.next(&bench.seen()) {
            if let Err(why) = run::act(bench, &action, witness) {
                player.refused(&action, why);
            }
            at_once += 1;
            if bench.over().is_some() || at_once >= MOST_ACTIONS_AT_ONCE {
                break;
            }
        }
        let stopped = if bench.over().is_some() {
            Some(Stopped::Over)
        } else if player.finished() {
            Some(Stopped::PlayerFinished)
        } else if bench.tick() >= end {
            Some(Stopped::TimeUp)
        } else {
            None
        };
        match stopped {
            Some(why) => {
                run::tell(bench, witness);
                return why;
            }
            None => run::pass(bench, witness),
        }
    }
}

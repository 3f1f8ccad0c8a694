//! Letting a player loose on a bench, at a tick's pace.

use crate::bench::Bench;
use crate::hands::action::Action;
use crate::hands::event::Event;
use crate::hands::refusal::Refusal;
use crate::senses::seen::Seen;
use crate::units::TICKS_PER_S;

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

/// Why playing ended.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stopped {
    /// The job is over.
    Over,
    /// The player has no more to do, but the job is not over.
    PlayerFinished,
    /// The time limit passed.
    TimeUp,
}

/// What is told while playing.
pub trait Witness {
    /// An action was tried at this tick.
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>);
    /// A tick is about to pass, after these events.
    fn ticked(&mut self, bench: &Bench, events: Vec<Event>);
}

/// A witness that looks away.
pub struct Nobody;

impl Witness for Nobody {
    fn acted(&mut self, _: &Bench, _: &Action, _: Result<(), Refusal>) {}
    fn ticked(&mut self, _: &Bench, _: Vec<Event>) {}
}

impl Witness for crate::marking::Observer {
    fn acted(&mut self, _: &Bench, _: &Action, _: Result<(), Refusal>) {}
    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        self.tick(bench, events);
    }
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
            let result = bench.apply(&action);
            witness.acted(bench, &action, result);
            if let Err(why) = result {
                player.refused(&action, why);
            }
            at_once += 1;
            if bench.over().is_some() || at_once >= MOST_ACTIONS_AT_ONCE {
                break;
            }
        }
        let events = bench.take_events();
        witness.ticked(bench, events);
        if bench.over().is_some() {
            return Stopped::Over;
        }
        if player.finished() {
            return Stopped::PlayerFinished;
        }
        if bench.tick() >= end {
            return Stopped::TimeUp;
        }
        bench.step();
    }
}

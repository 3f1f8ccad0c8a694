//! The one loop: the actions of a tick first, then it is told what happened, then one step.
//!
//! Everything that runs a bench runs it through these functions, so that an attempt that is played
//! again passes through the same states in the same order as when it was played.

use super::Bench;
use crate::hands::action::Action;
use crate::hands::event::Event;
use crate::hands::refusal::Refusal;

/// Is told what goes on while a bench runs.
pub trait Witness {
    /// An action was tried at this tick, done or refused.
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>) {
        let _ = (bench, action, result);
    }

    /// The actions of this tick have been tried and its step is still to come. The events are all
    /// since the last time.
    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        let _ = (bench, events);
    }
}

/// A witness that looks away: the events are dropped.
#[derive(Debug, Clone, Copy, Default)]
pub struct Nobody;

impl Witness for Nobody {}

/// A function that is told the ticks.
impl<F: FnMut(&Bench, Vec<Event>)> Witness for F {
    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        self(bench, events);
    }
}

/// Tries one action at the present tick.
///
/// # Errors
/// The reason why it cannot be done; nothing changed then but the list of events.
pub fn act(bench: &mut Bench, action: &Action, witness: &mut dyn Witness) -> Result<(), Refusal> {
    let result = bench.apply(action);
    witness.acted(bench, action, result);
    result
}

/// Tells the witness of the present tick without letting it pass: where a run ends or stands.
pub fn tell(bench: &mut Bench, witness: &mut dyn Witness) {
    let events = bench.take_events();
    witness.ticked(bench, events);
}

/// Lets the present tick pass: tells it, then makes one step (20 ms).
pub fn pass(bench: &mut Bench, witness: &mut dyn Witness) {
    tell(bench, witness);
    bench.step();
}

/// Lets so many ticks pass with no action (50 a second).
pub fn wait(bench: &mut Bench, ticks: u64, witness: &mut dyn Witness) {
    for _ in 0..ticks {
        pass(bench, witness);
    }
}

/// Plays actions again, each at the tick that stands beside it, up to tick `until` with the actions of
/// that tick; stops earlier where the job is over. The last tick is not told: [`tell`] it, or go on.
pub fn play_again(
    bench: &mut Bench,
    done: &[(u64, Action)],
    until: u64,
    witness: &mut dyn Witness,
) {
    let mut next = done.iter().peekable();
    loop {
        while let Some((_, action)) = next.next_if(|(tick, _)| *tick <= bench.tick()) {
            // A refusal is among the events, as it was the first time.
            let _refused = act(bench, action, witness);
        }
        if bench.tick() >= until || bench.over().is_some() {
            return;
        }
        pass(bench, witness);
    }
}

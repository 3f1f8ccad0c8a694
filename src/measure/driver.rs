//! A person at a bench who reaches goals of the procedure, one after the other, and waits.
//!
//! What a tool measures on a furnace it measures between goals: how a furnace is brought to a stage,
//! a port opened or something looked at stands in the procedure alone.

use crate::bench::Bench;
use crate::bench::run::{self, Witness};
use crate::procedure::{Goal, Memory, Move, Pursuit};
use crate::units::TICKS_PER_S;

/// A bench with somebody at it.
#[derive(Debug, Clone)]
pub struct Driver {
    bench: Bench,
    memory: Memory,
}

impl Driver {
    /// Somebody who comes to the bench and knows nothing of it.
    #[must_use]
    pub fn new(bench: Bench) -> Self {
        Self { bench, memory: Memory::default() }
    }

    /// The bench as it stands.
    #[must_use]
    pub fn bench(&self) -> &Bench {
        &self.bench
    }

    /// The bench as it was left.
    #[must_use]
    pub fn leave(self) -> Bench {
        self.bench
    }

    /// Reaches goals in their order; what cannot be done is gone past. Tells whether all that was
    /// waited for came.
    pub fn reach(&mut self, goals: &[Goal], witness: &mut dyn Witness) -> bool {
        let mut came = true;
        for &goal in goals {
            came &= self.pursue(Pursuit::new(goal), witness);
        }
        came
    }

    /// The same with one goal, as it is pursued.
    pub fn pursue(&mut self, mut pursuit: Pursuit, witness: &mut dyn Witness) -> bool {
        loop {
            let seen = self.bench.seen();
            self.memory.notice(&seen);
            match pursuit.next(&seen, &mut self.memory) {
                Move::Act(action) => {
                    self.memory.did(&action);
                    // What is refused is gone past; the witness is told of it.
                    let _refused = run::act(&mut self.bench, &action, witness);
                }
                Move::LetPass => run::pass(&mut self.bench, witness),
                Move::Reached => return true,
                Move::TooLong(_) => return false,
            }
        }
    }

    /// Lets time pass, in seconds, with a glance around each second.
    pub fn wait(&mut self, seconds: u64, witness: &mut dyn Witness) {
        for _ in 0..seconds {
            run::wait(&mut self.bench, TICKS_PER_S, witness);
            self.memory.notice(&self.bench.seen());
        }
    }
}

//! Where the pressures will be at the end of a step, guessed from how they moved before.
//!
//! Between two disturbances they move smoothly, and a guess that is a third difference off leaves
//! little or nothing to solve. After one it would mislead, the more the further back it looks. So
//! after each step that it left something to solve, it learns which guess would have been best, and
//! the next step begins with that.
//!
//! **Source.** No physical figures. Extrapolation through the last three or four values.
//! **Checked.** `any_shape_balances()` in `tests/core/physics/network_shapes.rs` and
//! `twenty_thousand_blows()` in `tests/core/physics/network_storm.rs`: a guess changes the way to a
//! balance, never whether there is one.

use super::slots::{Head, Slots};
use serde::Serialize;

/// A guess must halve the expected error to be preferred to a simpler one.
const WORTH: f64 = 0.5;

/// How the pressures are expected to move on.
#[derive(Debug, Clone)]
pub(super) struct Guess {
    /// How far each pressure moved in the last three steps, the last first, in Pa.
    pub moved_pa: [Box<Slots<f64>>; 3],
    /// What would have been best last time.
    pub kind: GuessKind,
}

/// What to expect of a step.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub(super) enum GuessKind {
    /// The pressures stay where they are.
    Rest,
    /// Moves that change as they changed last.
    Straight,
    /// Moves whose change changes as it did last.
    Bent,
}

impl Guess {
    /// How far each pressure is expected to move in this step, in Pa; says whether any is.
    pub(super) fn moves(&self, moves_pa: &mut [f64]) -> bool {
        let [last, second, third] = &self.moved_pa;
        match self.kind {
            GuessKind::Rest => return false,
            GuessKind::Straight => {
                for ((moves, last), second) in moves_pa.iter_mut().zip(&**last).zip(&**second) {
                    *moves = straight(*last, *second);
                }
            }
            GuessKind::Bent => {
                let moved = last.iter().zip(&**second).zip(&**third);
                for (moves, ((last, second), third)) in moves_pa.iter_mut().zip(moved) {
                    *moves = bent(*last, *second, *third);
                }
            }
        }
        true
    }

    /// Learns how the first `free` pressures moved from `start`, and, where the guess `left`
    /// something to solve, which one would have been best.
    pub(super) fn learn(
        &mut self,
        heads: &Slots<Head>,
        start: &Slots<Head>,
        free: usize,
        left: bool,
    ) {
        let [last, second, third] = &mut self.moved_pa;
        let paths = heads[..free].iter().zip(&start[..free]);
        if left {
            let moved = last.iter().zip(&**second).zip(third.iter_mut());
            let (mut rest_off, mut straight_off, mut bent_off) = (0.0, 0.0, 0.0);
            for ((now, then), ((last, second), third)) in paths.zip(moved) {
                let moved = moved_pa(now, then);
                rest_off += moved.abs();
                straight_off += (moved - straight(*last, *second)).abs();
                bent_off += (moved - bent(*last, *second, *third)).abs();
                *third = moved;
            }
            self.kind = if bent_off < WORTH * straight_off.min(rest_off) {
                GuessKind::Bent
            } else if straight_off < WORTH * rest_off {
                GuessKind::Straight
            } else {
                GuessKind::Rest
            };
        } else {
            for (third, (now, then)) in third.iter_mut().zip(paths) {
                *third = moved_pa(now, then);
            }
        }
        // What stood third is written over with the newest, which comes first.
        self.moved_pa.rotate_right(1);
    }

    /// Expects rest: something happened that the past says nothing about.
    pub(super) fn forget(&mut self) {
        self.moved_pa.iter_mut().for_each(|moved| moved.fill(0.0));
        self.kind = GuessKind::Rest;
    }
}

#[inline(always)]
fn moved_pa(now: &Head, then: &Head) -> f64 {
    (now.pa - then.pa) + (now.rest_pa - then.rest_pa)
}

/// The next move when moves go on changing as they did.
#[inline(always)]
fn straight(last: f64, second: f64) -> f64 {
    last + (last - second)
}

/// The next move when their change goes on changing as it did.
#[inline(always)]
fn bent(last: f64, second: f64, third: f64) -> f64 {
    let change = last - second;
    last + change + (change - (second - third))
}

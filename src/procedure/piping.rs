//! The whole piping checked for leaks with the gas in it: shut in, watched, written down.
//!
//! **Source.** Leak check with a gauge: appliances off, the supply shut, three minutes at least and no
//! drop (NFPA 54 annex C, from memory). The shut-off stands behind the supply regulator here, so none is
//! left in the shut-in line that would have to be unlocked first.

use super::goal::{Goal, Step, at_furnace};
use super::{Awaited, Memory};
use crate::hands::action::Action;
use crate::parts::{HandValve, JointVerdict, OnOff, Opening, Port};
use crate::senses::seen::Seen;
use crate::units::PA_PER_INWC;

/// How long the shut-in line is watched, in seconds: three minutes, and a breath.
const WATCHES_S: f64 = 190.0;
/// Fall from which it leaks, in pascals (0.1 in. w.c.: more than a zero drifts in that time; from
/// memory).
const FALLS_PA: f64 = 0.1 * PA_PER_INWC;

/// Nothing burning, the line open to the gauge and shut off from its supply, then watched; once it is
/// written, gas given back.
pub(super) fn checked(memory: &Memory) -> Vec<Goal> {
    let gas = |to| Goal::Valve(HandValve::Supply, to);
    if memory.piping_checked {
        return vec![gas(Opening::Open)];
    }
    let mut goals = vec![Goal::HoseOn(Port::Inlet), Goal::Stopped];
    // In the yard nobody hears the burners: there it rests on what was heard last.
    if memory.burns_at_all() {
        goals.push(Goal::Standing);
    }
    goals.extend([
        Goal::Others(OnOff::Off),
        Goal::Valve(HandValve::Furnace, Opening::Open),
        gas(Opening::Closed),
        Goal::PipingWatched,
    ]);
    goals
}

/// Watched from the furnace, where the gauge hangs, since the last hand on a valve; then written.
pub(super) fn watched(seen: &Seen, memory: &Memory) -> Step {
    at_furnace(seen).then(memory, || {
        let watched = memory.since_s(memory.valve_tick) >= WATCHES_S;
        let holds = if watched { Step::Met } else { Step::Wait(Awaited::LineHolds) };
        holds.then(memory, || Step::Do(Action::WritePiping(verdict(memory))))
    })
}

/// What the number tells: whether it has fallen since the line was shut in.
fn verdict(memory: &Memory) -> JointVerdict {
    let falls = memory
        .number_since
        .zip(memory.number_now)
        .is_some_and(|(since, now)| f64::from(since - now) >= FALLS_PA);
    if falls { JointVerdict::Leaking } else { JointVerdict::Tight }
}

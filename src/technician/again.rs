//! Mending in the middle of the readings, and reading again.

use super::close::{close_open, prove, shut_port};
use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::{check_opened, check_piping, mend_all, mend_open};
use super::mind::Mind;
use super::run_furnace::{inlet_again, inlet_series, manifold_found};
use super::step::{
    Step, give_gas, give_up, go, hose_off, isolate, reach, start_over, stop, take, think,
    until_at_rest,
};
use super::{after_flow, judge, set};
use crate::parts::{Phase, Place, Port};
use crate::procedure::Goal;

/// Most times that the readings are begun anew.
const MOST_ROUNDS: u32 = 14;

/// What waits is mended where the hose is, and read again from the beginning.
pub(super) fn mend_and_read_again(me: &Mind, waits_for_open_line: bool) -> Vec<Step> {
    match me.memory.hose() {
        Some((Port::Manifold, _)) => take(Course::MendAtManifold),
        Some((Port::Inlet, _)) if waits_for_open_line => take(Course::MendInOpenLine),
        Some((Port::Inlet, _)) => {
            let mut steps = isolate();
            steps.push(mend_all());
            steps.extend(give_gas());
            steps.push(check_opened());
            steps.extend(take(Course::ReadAgain));
            steps
        }
        // All is closed up already.
        None => take(Course::MendClosed),
    }
}

/// With the hose on the manifold port: mended, and the manifold read again from the beginning.
pub(super) fn mend_at_manifold(waits_for_open_line: bool) -> Vec<Step> {
    let mut steps = vec![reach(Goal::HandEmpty)];
    steps.extend(stop());
    if waits_for_open_line {
        // The line has to be without pressure: that takes an open inlet port. A valve that does not
        // shut is fired no more, not even to prove a joint that the new one brings anew.
        steps.push(go(Place::GasValve));
        steps.push(think(|me, seen| {
            if me.know.since_call.stays_on() { shut_port(Port::Manifold) } else { close_open(seen) }
        }));
        steps.extend(isolate());
        steps.extend(take(Course::InletAsFound));
    } else {
        steps.extend(isolate());
        steps.push(mend_all());
        steps.extend(give_gas());
        steps.push(check_opened());
        steps.extend(take(Course::ManifoldAsFound));
    }
    start_over(steps)
}

/// What needs the line without pressure is mended with the inlet port open; then from the beginning.
pub(super) fn mend_in_open_line() -> Vec<Step> {
    let mut steps = stop();
    steps.extend(isolate());
    steps.push(go(Place::GasValve));
    steps.extend(hose_off());
    steps.push(mend_open());
    steps.extend(take(Course::InletAsFound));
    start_over(steps)
}

/// With both ports closed already: mended, the manifold joint proven again, and the last cycle.
pub(super) fn mend_closed(finish_again: Vec<Step>) -> Vec<Step> {
    let mut steps = stop();
    steps.push(until_at_rest());
    steps.push(mend_all());
    steps.extend(give_gas());
    steps.push(check_opened());
    steps.extend(prove(Port::Manifold));
    steps.extend(finish_again);
    start_over(steps)
}

/// The series from its beginning, with the hose where it is.
pub(super) fn read_again() -> Step {
    think(|me, _| {
        me.know.rounds += 1;
        if me.know.rounds > MOST_ROUNDS {
            return give_up(me, Diagnosis::NoEnd);
        }
        let mut steps = stop();
        match me.memory.hose() {
            Some((Port::Inlet, _)) => steps.extend(inlet(Phase::Found)),
            Some((Port::Manifold, _)) => steps.extend(manifold_as_found()),
            None => steps.extend(take(Course::MendClosed)),
        }
        start_over(steps)
    })
}

/// The inlet read in every state, then the supply judged.
pub(super) fn inlet(phase: Phase) -> Vec<Step> {
    let mut steps = vec![check_piping()];
    steps.extend(inlet_series(phase));
    steps.push(think(judge::supply));
    steps
}

/// The inlet read at rest again with everything out, then the supply's lock-up judged.
pub(super) fn lock_up(me: &Mind) -> Vec<Step> {
    let mut steps = inlet_again(me.know.read.phase.unwrap_or(Phase::Found));
    steps.push(think(after_flow::judge));
    steps
}

/// The manifold read on each level, then the levels judged and set.
pub(super) fn manifold_as_found() -> Vec<Step> {
    let mut steps = manifold_found();
    steps.push(think(set::set_stages));
    steps
}

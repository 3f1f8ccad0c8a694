//! Steps that many ways of spoiling edit or put in.

use super::super::step::{Step, act, go, reach};
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Port, Push, Screw, Spot};
use crate::procedure::Goal;

/// Times faster at which there is no wait at all.
pub(super) const AT_ONCE: u32 = 20_000;

/// A step with a port's plug.
pub(super) fn plug(port: Port, step: PlugStep) -> Action {
    Action::Plug { port, step }
}

/// The hose pushed fully onto a port.
pub(super) fn hose_on(port: Port) -> Action {
    Action::HoseOn { port, push: Push::Fully }
}

/// A turn of a screw with its cap off.
pub(super) fn turn(screw: Screw, eighths: i16) -> Step {
    act(Action::Turn { screw, eighths })
}

/// A screw turned out of turn: its cap off, these turns, its cap on.
pub(super) fn turned(screw: Screw, eighths: &[i16]) -> Vec<Step> {
    let turns = eighths.iter().map(|&eighths| turn(screw, eighths));
    [reach(Goal::Uncapped(screw))]
        .into_iter()
        .chain(turns)
        .chain([reach(Goal::Capped(screw)), reach(Goal::HandEmpty)])
        .collect()
}

/// Something measured where its instrument is held, and written.
pub(super) fn measured(spot: Spot, meanwhile: Vec<Step>) -> Vec<Step> {
    let mut steps = vec![reach(Goal::HandEmpty)];
    steps.extend(spot.places().first().map(|&place| go(place)));
    steps.extend([act(Action::Take(spot.tool())), act(Action::Measure(spot))]);
    steps.extend(meanwhile);
    steps.extend([act(Action::WriteMeasured(spot)), reach(Goal::HandEmpty)]);
    steps
}

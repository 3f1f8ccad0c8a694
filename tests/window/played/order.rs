//! The plain order of a job: what was done, without how finely a hand did it.

use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::parts::{Place, Push};

/// What was done, without how finely: a lever or a thermostat counts where it ends, turns of one
/// screw add up, a hose pushed on in two goes is on, and getting up from the gas valve and kneeling
/// down again is no walk.
pub fn plain(done: &[Action]) -> Vec<Action> {
    let mut plain: Vec<Action> = Vec::new();
    let mut at_furnace = false;
    for action in done {
        if let Action::Go(place) = action {
            let to_furnace = matches!(place, Place::PlantRoom | Place::GasValve);
            if !(to_furnace && at_furnace) {
                let place = if to_furnace { Place::PlantRoom } else { *place };
                plain.push(Action::Go(place));
            }
            at_furnace = to_furnace;
            continue;
        }
        match plain.last_mut().and_then(|last| joined(last, action)) {
            Some(Joined::Into(one)) => {
                plain.pop();
                plain.push(one);
            }
            Some(Joined::Away) => {
                plain.pop();
            }
            None => plain.push(action.clone()),
        }
    }
    plain
}

/// What two that follow each other come to.
enum Joined {
    /// One action.
    Into(Action),
    /// Nothing: there and back.
    Away,
}

fn joined(last: &Action, next: &Action) -> Option<Joined> {
    match (last, next) {
        (Action::HandValve { hand_valve: a, .. }, Action::HandValve { hand_valve: b, .. })
            if a == b =>
        {
            Some(Joined::Into(next.clone()))
        }
        (Action::Setpoint(_), Action::Setpoint(_)) => Some(Joined::Into(next.clone())),
        (
            Action::HoseOn { port: a, push: Push::Halfway },
            Action::HoseOn { port: b, push: Push::Fully },
        ) if a == b => Some(Joined::Into(next.clone())),
        (Action::Turn { screw: a, eighths: x }, Action::Turn { screw: b, eighths: y })
            if a == b =>
        {
            let eighths = x + y;
            Some(match eighths {
                0 => Joined::Away,
                _ => Joined::Into(Action::Turn { screw: *a, eighths }),
            })
        }
        (
            Action::Plug { port: a, step: PlugStep::Tighten(x) },
            Action::Plug { port: b, step: PlugStep::Tighten(y) },
        ) if a == b => Some(match x + y {
            0 => Joined::Away,
            sum => Joined::Into(Action::Plug { port: *a, step: PlugStep::Tighten(sum) }),
        }),
        _ => None,
    }
}

//! To one reading: the hose on its port, the furnace in its state, the number at rest.

use super::elsewhere::{gave_up, stays_on_low};
use super::hint::{CardAsks, Hint};
use super::lead;
use super::memory::Remembered;
use super::paper::look_inside;
use crate::appliance::test_point::{Port, Stage};
use crate::panels::sheet::Cell;
use crate::parts::{Joint, Level, OnOff, Place};
use crate::procedure::{Awaited, Called, Goal, Means, Step};
use crate::senses::seen::Seen;
use crate::words::decimal;

/// Least patience before a reading while it burns, in seconds (common practice: until it stands
/// still).
const SETTLE_S: f64 = 45.0;
/// Patience before the reading at rest after flow, in seconds: a minute at least (common practice: one
/// to three).
const AGAIN_S: f64 = 60.0;
/// Patience beyond what the card asks, in seconds: a hold that is a breath too short does not count.
const MARGIN_S: f64 = 5.0;
/// Longest patience, in seconds: a card cannot ask for more than a day.
const DAY_S: f64 = 86_400.0;

/// The next step towards a reading. Its joint is proven on the way.
pub(super) fn lead(
    seen: &Seen,
    remembered: &Remembered,
    asks: CardAsks<'_>,
    cell: Cell,
) -> Option<Hint> {
    let Cell { port, stage, phase: _ } = cell;
    let at_its_pressure = match port {
        Port::Inlet => true,
        Port::Manifold => matches!(stage, Stage::Firing(level) if level.is_top()),
    };
    let job = &remembered.job;
    let checked = job.is_proven(port) && !job.is_wet(port.joint());
    let joint = (at_its_pressure && !checked).then(|| port.joint());
    hook_up(seen, remembered, port)
        .or_else(|| bring(seen, remembered, stage))
        .or_else(|| joint.and_then(|joint| check(seen, remembered, joint)))
        .or_else(|| Some(write(asks, cell)))
}

fn check(seen: &Seen, remembered: &Remembered, joint: Joint) -> Option<Hint> {
    lead::towards(Goal::JointChecked(joint), seen, remembered)
}

/// The hose on a port, isolated for it; what is looked at behind the door comes before.
pub(super) fn hook_up(seen: &Seen, remembered: &Remembered, port: Port) -> Option<Hint> {
    let here = remembered.job.hose().is_some_and(|(on, _)| on == port);
    if here {
        return lead::towards(Goal::HoseOn(port), seen, remembered);
    }
    lead::towards(Goal::Isolated, seen, remembered)
        .or_else(|| look_inside(seen, remembered))
        .or_else(|| lead::towards(Goal::HoseOn(port), seen, remembered))
}

/// The next step towards a state of the furnace; none once it is there and seen from the valve.
pub(super) fn bring(seen: &Seen, remembered: &Remembered, stage: Stage) -> Option<Hint> {
    // A lock-up after flow needs flow before it, with the meter on.
    let flow = stage == Stage::RestAgain && !remembered.flowed;
    let level = if flow { seen.levels.last().copied() } else { stage.level(seen.levels) };
    if level.is_none() {
        let goals = [
            Goal::Stopped,
            Goal::Standing,
            Goal::Others(OnOff::Off),
            Goal::GasOn,
            Goal::At(Place::GasValve),
        ];
        return lead::first(&goals, seen, remembered);
    }
    let mut goals = vec![Goal::GasOn];
    if stage == Stage::FullLoad {
        goals.push(Goal::Others(OnOff::On));
    }
    goals.extend([Goal::Called(level, Means::Thermostat), Goal::At(Place::GasValve)]);
    lead::first(&goals, seen, remembered)
        .map(|hint| never_called(seen, remembered, level, hint))
        .or_else(|| light(seen, remembered, level))
}

/// The thermostat is set far above the room and does not call the second stage.
fn never_called(seen: &Seen, remembered: &Remembered, level: Option<Level>, hint: Hint) -> Hint {
    let goal = Goal::Called(level, Means::Thermostat);
    let waits = goal.step(seen, &remembered.job) == Step::Wait(Awaited::Call);
    let above = level.is_some_and(|level| !level.is_first());
    let first_only = seen.hall.as_ref().is_some_and(|hall| hall.call != level);
    if above && waits && first_only {
        return Hint::say(t!("coach-second-not-called"));
    }
    hint
}

/// Watches it light on the level that is called.
fn light(seen: &Seen, remembered: &Remembered, level: Option<Level>) -> Option<Hint> {
    let hint = lead::towards(Goal::Lit(level), seen, remembered)?;
    let burners = seen.furnace.as_ref().and_then(|it| it.burners.as_ref());
    let lit = burners.is_some_and(|it| it.flames.iter().any(|flame| flame.height > 0.0));
    let wanted = level.or(seen.levels.first().copied());
    let above = level.is_some_and(|level| !level.is_first());
    match (lit, remembered.job.called(wanted)) {
        (true, Called::LongSince) if above => Some(stays_on_low(seen, remembered)),
        (true, Called::JustNow | Called::NotKnown) if above => {
            Some(Hint::wait(t!("coach-second-follows"), "burners"))
        }
        (true, _) => Some(Hint::wait(t!("coach-second-lets-go"), "burners")),
        (false, Called::NotKnown) => Some(Hint::go(lead::ask_for_heat(level, seen), Place::Hall)),
        (false, Called::JustNow | Called::LongSince) => {
            Some(gave_up(seen, remembered).unwrap_or(hint))
        }
    }
}

fn write(asks: CardAsks<'_>, cell: Cell) -> Hint {
    let settle_s = SETTLE_S.max(asks.settle_s + MARGIN_S);
    let name = cell.name();
    let (text, patience_s) = match cell.stage {
        Stage::Rest => {
            let hold = decimal(asks.hold_s, 0);
            (t!("coach-write-rest", seconds = hold, cell = name), asks.hold_s + MARGIN_S)
        }
        Stage::Firing(_) => {
            (t!("coach-write-burning", seconds = decimal(settle_s, 0), cell = name), settle_s)
        }
        Stage::RestAgain => {
            let hold_s = asks.hold_s.min(AGAIN_S);
            let text = t!("coach-write-again", seconds = decimal(hold_s, 0), cell = name);
            (text, hold_s + MARGIN_S)
        }
        Stage::FullLoad => {
            (t!("coach-write-loaded", seconds = decimal(settle_s, 0), cell = name), settle_s)
        }
    };
    Hint::write(text, cell, whole_s(patience_s))
}

/// Whole seconds, a day at most.
fn whole_s(seconds: f64) -> u32 {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to a day")]
    let whole = seconds.clamp(0.0, DAY_S).ceil() as u32;
    whole
}

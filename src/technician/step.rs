//! What a plan is made of: goals to reach, things to do, things to wait for, decisions on what was
//! seen, and courses to take. And the few steps that every part of the plan uses.

use std::sync::Arc;

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mind::Mind;
use super::sequence::Sequence;
use crate::hands::action::Action;
use crate::parts::{Door, Fitted, HandValve, Height, OnOff, Opening, OtherAppliance, Place, Tool};
use crate::procedure::{self, Goal, Pursuit, Until, Wait};
use crate::senses::seen::Seen;

/// A decision on what is seen: what comes next.
pub(super) type Decide = Arc<dyn Fn(&mut Mind, &Seen) -> Vec<Step> + Send + Sync>;

/// One piece of a plan.
#[derive(Clone)]
pub(super) enum Step {
    /// Reach a goal; when it cannot be reached, the plan goes on and the decision that follows sees
    /// it.
    Reach(Pursuit),
    /// An action to take.
    Do(Action),
    /// Wait for something; when it does not come, the plan goes on and the decision that follows
    /// sees it.
    Wait(Wait),
    /// A decision from what is seen.
    Think(Decide),
    /// Go on by a course.
    Take(Course),
    /// These steps instead of the rest of the plan.
    Instead(Vec<Step>),
}

impl core::fmt::Debug for Step {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Reach(pursuit) => f.debug_tuple("Reach").field(pursuit).finish(),
            Self::Do(action) => f.debug_tuple("Do").field(action).finish(),
            Self::Wait(wait) => f.debug_tuple("Wait").field(wait).finish(),
            Self::Think(_) => f.write_str("Think"),
            Self::Take(course) => f.debug_tuple("Take").field(course).finish(),
            Self::Instead(steps) => f.debug_tuple("Instead").field(steps).finish(),
        }
    }
}

/// A step that is one action.
pub(super) fn act(action: Action) -> Step {
    Step::Do(action)
}

/// A step that is a decision on what is seen.
pub(super) fn think(
    decide: impl Fn(&mut Mind, &Seen) -> Vec<Step> + Send + Sync + 'static,
) -> Step {
    Step::Think(Arc::new(decide))
}

/// A step that is a goal, with nothing tried yet.
pub(super) fn reach(goal: Goal) -> Step {
    Step::Reach(Pursuit::new(goal))
}

/// A wait of so many seconds.
pub(super) fn pause(seconds: f64) -> Step {
    Step::Wait(Wait::new(Until::Seconds(seconds), seconds + 1.0))
}

/// A wait for something, at most so many seconds.
pub(super) fn wait(until: Until, limit_s: f64) -> Step {
    Step::Wait(Wait::new(until, limit_s))
}

/// A course, after what is planned already is done.
pub(super) fn take(course: Course) -> Vec<Step> {
    vec![Step::Take(course)]
}

/// These steps instead of the rest of the plan.
pub(super) fn start_over(steps: Vec<Step>) -> Vec<Step> {
    vec![Step::Instead(steps)]
}

/// The furnace is left shut off: nothing more can be done here.
pub(super) fn give_up(me: &mut Mind, diagnosis: Diagnosis) -> Vec<Step> {
    me.know.note(diagnosis);
    me.know.leave_shut_off = true;
    start_over(take(Course::CloseAndLeave))
}

/// Walks somewhere unless there already.
pub(super) fn go(place: Place) -> Step {
    reach(Goal::At(place))
}

/// Takes a tool, does something with it, puts it down.
pub(super) fn with(tool: Tool, steps: Vec<Step>) -> Vec<Step> {
    let mut all = vec![act(Action::Take(tool))];
    all.extend(steps);
    all.push(reach(Goal::HandEmpty));
    all
}

/// Furnace still and shut off by three barriers.
pub(super) fn isolate() -> Vec<Step> {
    vec![think(|me, seen| {
        let is_done = Goal::Isolated.step(seen, &me.memory) == procedure::Step::Met;
        let mut steps = Vec::new();
        if me.works(Sequence::GasBeforePower) && !is_done {
            steps.extend(GAS_BARRED.map(reach));
        }
        steps.push(reach(Goal::Isolated));
        steps
    })]
}

/// The furnace still, and the gas barred twice.
const GAS_BARRED: [Goal; 5] = [
    Goal::HeatOff,
    Goal::Standing,
    Goal::Valve(HandValve::Furnace, Opening::Closed),
    Goal::Door(Door::Burner, Fitted::Off),
    Goal::ValveSwitch(OnOff::Off),
];

/// Gas and power given back, and the air smelt.
pub(super) fn give_gas() -> Vec<Step> {
    vec![
        go(Place::GasValve),
        think(|me, _| {
            let mut steps = Vec::new();
            if me.works(Sequence::SwitchBeforeValve) {
                steps.push(reach(Goal::ValveSwitch(OnOff::On)));
            }
            steps.push(reach(Goal::GasOn));
            steps
        }),
        act(Action::Sniff(Height::Floor)),
    ]
}

/// The forced level and the call ended.
pub(super) fn stop() -> Vec<Step> {
    vec![reach(Goal::Stopped)]
}

/// All other appliances on or off.
pub(super) fn others(to: OnOff) -> Vec<Step> {
    vec![think(move |me, _| {
        let mut steps = Vec::new();
        if me.works(Sequence::RangeFirst) {
            steps.push(reach(Goal::Other(OtherAppliance::Range, to)));
        }
        steps.push(reach(Goal::Others(to)));
        steps
    })]
}

/// The leak fluid in the hand, where it is fetched before there is gas to check.
pub(super) fn fluid_first() -> Step {
    think(|me, _| {
        if me.works(Sequence::FluidFirst) {
            vec![reach(Goal::InHand(Tool::LeakFluid))]
        } else {
            Vec::new()
        }
    })
}

/// The gas trapped in the hose bled at a barb that is only half on, and the hose off.
pub(super) fn hose_off() -> Vec<Step> {
    vec![reach(Goal::HoseOff), reach(Goal::HandEmpty)]
}

/// Waits until no burner is heard and the fans have stopped.
pub(super) fn until_at_rest() -> Step {
    reach(Goal::Standing)
}

/// Waits until the manometer has come to rest, in front of it.
pub(super) fn until_steady(settle_s: f64) -> Vec<Step> {
    let steady = Until::MeterSteady { within_pa: 4.0, for_s: 15.0 };
    vec![reach(Goal::MeterInSight), pause(settle_s), wait(steady, 180.0)]
}

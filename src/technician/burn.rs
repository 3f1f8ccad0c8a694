//! What the burners and the shut valve tell, with the hose on the manifold port.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mind::Mind;
use super::step::{
    Step, act, give_up, go, isolate, pause, reach, start_over, take, think, until_at_rest, with,
};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{HandValve, Height, Joint, JointVerdict, Opening, Place, Port, Subject, Tool};
use crate::procedure::{Goal, number};
use crate::senses::seen::{FlamesLook, Observation, Seen};
use crate::units::PA_PER_INWC;

/// Manifold pressure at rest from which a valve lets gas by, in pascals (0.2 in. w.c.; from memory).
const LETS_BY_PA: f64 = 0.2 * PA_PER_INWC;
/// Gas in front of the burners at rest that tells of a valve that lets by, in per cent of the lower
/// flammable limit (the first digit of an ordinary detector).
const GAS_LEL: f64 = 1.0;
/// How long the room airs before a new valve is judged, in seconds: what the old one let by is gone
/// then (from memory).
const AIRS_S: f64 = 900.0;

/// A look at the flames while high burns.
pub(super) fn look_at_flames() -> Vec<Step> {
    vec![go(Place::GasValve), act(Action::Look(Subject::Flames)), think(judge_flames)]
}

fn judge_flames(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    if me.careless {
        return Vec::new();
    }
    // Flames that change with the blower tell of an open exchanger: no size of it is left burning.
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    if burners.is_some_and(|burners| burners.signs.flames_lean()) {
        return give_up(me, Diagnosis::ExchangerHoled);
    }
    // Where all of them burn, but yellow, the flue gas says more, once the stages are set.
    let Some(Observation::Flames(FlamesLook::SomeLit { .. })) =
        seen.sheet.note(Subject::Flames).map(|note| &note.finding)
    else {
        return Vec::new();
    };
    match me.know.next_of(&[Repair::CleanOrifices, Repair::CleanBurners]) {
        Some(repair) => {
            me.plan_repair(Diagnosis::BurnerDark, repair);
            take(Course::MendAtManifold)
        }
        None => give_up(me, Diagnosis::FlamesStayWrong),
    }
}

/// At rest, with the manual valve open: the manifold must be without pressure.
pub(super) fn valve_shuts() -> Vec<Step> {
    let mut steps = vec![until_at_rest(), go(Place::GasValve)];
    steps.push(think(|me, seen| {
        let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
        me.know.since_call.stray |=
            burners.is_some_and(|it| it.flames.iter().any(|one| one.height > 0.0));
        stays_on(me).unwrap_or_default()
    }));
    steps.extend(with(
        Tool::GasDetector,
        vec![act(Action::Probe(Height::Head)), pause(20.0), think(judge_valve)],
    ));
    steps
}

fn judge_valve(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    if me.careless {
        return Vec::new();
    }
    // Joints are tight and burners are out: gas in front of them comes through the valve.
    let last = |joint| seen.sheet.joints.iter().rev().find(|(at, _)| *at == joint);
    let leaks = Joint::ALL
        .iter()
        .any(|&joint| last(joint).is_some_and(|(_, verdict)| *verdict == JointVerdict::Leaking));
    let gas = !leaks && seen.detector.is_some_and(|it| it.percent_lel >= GAS_LEL);
    let lets_by = gas || number(seen).is_some_and(|pa| pa > LETS_BY_PA);
    if !lets_by {
        return Vec::new();
    }
    if me.know.has_mended(Repair::ReplaceGasValve) {
        if me.know.alarm.aired {
            return give_up(me, Diagnosis::ValveLetsGasBy);
        }
        me.know.alarm.aired = true;
        let mut steps = vec![reach(Goal::HandEmpty)];
        steps.extend(air_and_probe());
        return steps;
    }
    me.plan_repair(Diagnosis::ValveLetsGasBy, Repair::ReplaceGasValve);
    take(Course::MendAtManifold)
}

/// The flames stayed on after a call, or the control felt one with the gas shut: the manual valve
/// shut at once, and another gas valve.
pub(super) fn stays_on(me: &mut Mind) -> Option<Vec<Step>> {
    if me.careless || !me.know.since_call.stays_on() {
        return None;
    }
    if me.know.has_mended(Repair::ReplaceGasValve) {
        return Some(give_up(me, Diagnosis::ValveDoesNotShut));
    }
    me.plan_repair(Diagnosis::ValveDoesNotShut, Repair::ReplaceGasValve);
    Some(vec![
        go(Place::PlantRoom),
        reach(Goal::Valve(HandValve::Furnace, Opening::Closed)),
        think(|me, _| match me.memory.hose() {
            Some((Port::Inlet, _)) => take(Course::MendInOpenLine),
            Some((Port::Manifold, _)) => take(Course::MendAtManifold),
            None => {
                let mut steps = isolate();
                steps.extend(take(Course::InletAsFound));
                start_over(steps)
            }
        }),
    ])
}

/// The window open for a while, and the valve probed again.
fn air_and_probe() -> Vec<Step> {
    let mut steps = vec![go(Place::PlantRoom), reach(Goal::Aired(Opening::Open)), pause(AIRS_S)];
    steps.extend(valve_shuts());
    steps
}

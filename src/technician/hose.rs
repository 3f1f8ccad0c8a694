//! Whether hose and tap can be trusted: a number that comes at once, and goes back to zero.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::{another_hose, hose_back_on, mend};
use super::mind::Mind;
use super::step::{
    Step, act, give_up, go, hose_off, isolate, pause, reach, start_over, stop, take, think, wait,
};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{HandValve, Place, Port, Stage};
use crate::procedure::{Goal, Until, number};
use crate::senses::seen::{Display, Seen, Sound};
use crate::units::PA_PER_INWC;

/// Longest time in which a number comes to rest through a free tap and a dry hose, in seconds (from
/// memory).
const QUICK_S: f64 = 14.0;
/// What the meter shows at least while burners burn, in pascals (0.1 in. w.c.).
const NOTHING_PA: f64 = 0.1 * PA_PER_INWC;
/// By how much a number may move in a shut line within eight seconds and still stand, in pascals.
const STANDS_PA: f64 = 4.0;
/// What a meter may show in open air after a reading, in pascals (0.06 in. w.c.; from memory).
const ZERO_PA: f64 = 0.06 * PA_PER_INWC;

/// Gas given back and a hiss that stays: the manual valve shut at once, another hose.
pub(super) fn hisses(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let hiss = seen.sounds.contains(&Sound::Hiss);
    if !hiss || me.careless || me.know.has_mended(Repair::SwapMeterHose) {
        return Vec::new();
    }
    me.know.note(Diagnosis::MeterHoseLeaks);
    let mut steps = vec![act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 })];
    steps.extend(another_hose(me, Port::Inlet));
    steps
}

/// The number must come to rest at once.
pub(super) fn quick(port: Port) -> Vec<Step> {
    vec![
        reach(Goal::MeterInSight),
        wait(Until::MeterSteady { within_pa: 8.0, for_s: 6.0 }, QUICK_S),
        think(move |me, seen| judge(me, seen, port)),
    ]
}

fn judge(me: &mut Mind, seen: &Seen, port: Port) -> Vec<Step> {
    let slow = me.too_long;
    me.too_long = false;
    let shows = matches!(seen.display(), Some(Display::Number(_)));
    if !slow || !shows || me.careless {
        return Vec::new();
    }
    if port == Port::Inlet && me.know.read.supply_moves {
        return Vec::new();
    }
    // At the inlet it may be the supply that moves: that stops with the manual valve shut.
    match port {
        Port::Inlet => shut_and_look(),
        Port::Manifold => mend_slow(me, port),
    }
}

/// After a long wait the number still swings.
pub(super) fn never_rests(me: &mut Mind, seen: &Seen, port: Port) -> Option<Vec<Step>> {
    let swings = me.too_long && matches!(seen.display(), Some(Display::Number(_)));
    me.too_long = false;
    (swings && !me.careless).then(|| mend_slow(me, port))
}

/// The manual valve shut behind a number that moves: what goes on moving comes late through hose or
/// hole; what stands still was the supply.
fn shut_and_look() -> Vec<Step> {
    vec![
        act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 }),
        pause(4.0),
        think(|me, seen| {
            me.know.read.looked_at = number(seen);
            Vec::new()
        }),
        pause(8.0),
        think(|me, seen| {
            let (Some(before), Some(now)) = (me.know.read.looked_at.take(), number(seen)) else {
                return Vec::new();
            };
            let hand_valve =
                |degrees| act(Action::HandValve { hand_valve: HandValve::Furnace, degrees });
            let mut steps = vec![hand_valve(20), pause(3.0), hand_valve(90)];
            if (now - before).abs() > STANDS_PA {
                steps.push(think(|me, _| mend_slow(me, Port::Inlet)));
            } else {
                me.know.read.supply_moves = true;
            }
            steps
        }),
    ]
}

/// What lets a number through slowly, from what does no harm to the part.
fn mend_slow(me: &mut Mind, port: Port) -> Vec<Step> {
    let tap = match port {
        Port::Inlet => Repair::CleanInletTap,
        Port::Manifold => Repair::CleanManifoldTap,
    };
    // At the inlet, what goes on moving is the supply's own pressure.
    let next = match port {
        Port::Inlet => me.know.next_of(&[Repair::SwapMeterHose, tap]),
        Port::Manifold => me.know.next_of(&[Repair::SwapMeterHose, tap, Repair::ReplaceGasValve]),
    };
    let Some(repair) = next else {
        return match port {
            Port::Inlet => Vec::new(),
            Port::Manifold => give_up(me, Diagnosis::NeverSteady),
        };
    };
    if repair == tap {
        me.know.note(Diagnosis::NumberSlowAtPort);
        return clean_tap(me, port, tap);
    }
    if repair == Repair::SwapMeterHose {
        me.know.note(Diagnosis::NumberSlow);
        let mut steps = stop();
        steps.extend(another_hose(me, port));
        steps.extend(again(port));
        return steps;
    }
    me.plan_repair(Diagnosis::PressureSwings, repair);
    take(Course::MendAtManifold)
}

/// Burners burn and the meter shows next to nothing there: the hole is stopped up.
pub(super) fn shows_nothing(
    me: &mut Mind,
    seen: &Seen,
    stage: Stage,
    port: Port,
) -> Option<Vec<Step>> {
    let tap = match port {
        Port::Inlet => Repair::CleanInletTap,
        Port::Manifold => Repair::CleanManifoldTap,
    };
    let nothing = number(seen).is_some_and(|pa| pa < NOTHING_PA);
    let at_rest = stage.level(seen.levels).is_none();
    if !nothing || at_rest || me.careless || me.know.has_mended(tap) {
        return None;
    }
    me.know.note(Diagnosis::MeterShowsNothing);
    Some(clean_tap(me, port, tap))
}

/// Hose and adapter off, the hole cleaned, and on again.
fn clean_tap(me: &mut Mind, port: Port, tap: Repair) -> Vec<Step> {
    let mut steps = stop();
    steps.extend(isolate());
    steps.push(go(Place::GasValve));
    steps.extend(hose_off());
    steps.extend([reach(Goal::AdapterOut(port)), reach(Goal::HandEmpty)]);
    steps.extend(mend(me, tap));
    steps.extend(hose_back_on(port));
    steps.extend(again(port));
    steps
}

/// The series of a port from its beginning.
fn again(port: Port) -> Vec<Step> {
    match port {
        Port::Inlet => {
            let mut steps = quick(port);
            steps.extend(take(Course::ReadAgain));
            steps
        }
        Port::Manifold => start_over(take(Course::ManifoldAsFound)),
    }
}

/// After the hose came off: the meter shows nothing, or the numbers were wrong.
pub(super) fn back_to_zero(port: Port) -> Vec<Step> {
    vec![pause(6.0), think(move |me, seen| judge_zero(me, seen, port))]
}

fn judge_zero(me: &mut Mind, seen: &Seen, port: Port) -> Vec<Step> {
    let off = number(seen).is_some_and(|pa| pa.abs() > ZERO_PA);
    if !off || me.careless || me.know.has_mended(Repair::SwapMeterHose) {
        return Vec::new();
    }
    me.know.note(Diagnosis::ZeroDoesNotComeBack);
    me.know.repairs.done.push(Repair::SwapMeterHose);
    let mut steps = vec![act(Action::Mend(Repair::SwapMeterHose))];
    steps.extend(hose_back_on(port));
    steps.extend(again(port));
    steps
}

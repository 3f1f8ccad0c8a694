//! What the burners and the shut valve tell, with the hose on the manifold port.

use super::close::close_open;
use super::mend::{hands_free, mend_all};
use super::no_fire::give_up;
use super::open::{give_gas, isolate};
use super::plan::{Step, Technician, act, go, inlet_as_found, think, until_at_rest, with};
use super::run_furnace::{manifold_found, stop};
use super::set::set_stages;
use super::task::{number, pause};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{
    Cock, Height, Joint, JointVerdict, Opening, Place, Port, Subject, Tool, Window,
};
use crate::senses::seen::{Condition, Finding, Seen};
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

fn judge_flames(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let bad = Finding::Condition(Condition::Bad);
    if me.careless {
        return Vec::new();
    }
    let Some(note) = seen.sheet.note(Subject::Flames).filter(|note| note.finding == bad) else {
        return Vec::new();
    };
    if !note.text.contains("burners lit") {
        // All of them burn, but yellow: the flue gas says more, once the stages are set.
        return Vec::new();
    }
    match me.know.next_of(&[Repair::CleanOrifices, Repair::CleanBurners]) {
        Some(repair) => {
            me.plan_repair("a burner is dark", repair);
            mend_at_manifold()
        }
        None => give_up(me, "flames stay wrong"),
    }
}

/// Mends, and reads the manifold again from the beginning.
pub(super) fn mend_at_manifold() -> Vec<Step> {
    vec![think(|me, _| {
        if me.know.to_mend_open.is_empty() {
            let mut steps = vec![think(hands_free)];
            steps.extend(stop());
            steps.extend(isolate());
            steps.push(mend_all());
            steps.extend(give_gas());
            steps.push(super::mend::check_opened());
            steps.extend(manifold_found());
            steps.push(think(set_stages));
            me.start_over(steps);
        } else {
            // The line has to be without pressure: that takes an open inlet port.
            let mut steps = vec![think(hands_free)];
            steps.extend(stop());
            steps.extend([go(Place::GasValve), think(close_open)]);
            steps.extend(isolate());
            steps.push(think(|_, _| inlet_as_found()));
            me.start_over(steps);
        }
        Vec::new()
    })]
}

/// At rest, with the manual valve open: the manifold must be without pressure.
pub(super) fn valve_shuts() -> Vec<Step> {
    let mut steps = vec![until_at_rest(), go(Place::GasValve)];
    steps.extend(with(
        Tool::GasDetector,
        vec![act(Action::Probe(Height::Head)), pause(20.0), think(judge_valve)],
    ));
    steps
}

fn judge_valve(me: &mut Technician, seen: &Seen) -> Vec<Step> {
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
        if me.know.aired {
            return give_up(me, "gas valve lets gas by");
        }
        me.know.aired = true;
        let mut steps = vec![think(hands_free)];
        steps.extend(air_and_probe());
        return steps;
    }
    me.plan_repair("gas valve lets gas by", Repair::ReplaceGasValve);
    mend_at_manifold()
}

/// The flames stayed on after a call, or the control felt one with the gas shut: the manual valve
/// shut at once, and another gas valve.
pub(super) fn stays_on(me: &mut Technician) -> Option<Vec<Step>> {
    let watch = &me.know.watch;
    if me.careless || !(watch.stray || watch.burns_on()) {
        return None;
    }
    if me.know.has_mended(Repair::ReplaceGasValve) {
        return Some(give_up(me, "gas valve does not shut"));
    }
    me.plan_repair("gas valve does not shut", Repair::ReplaceGasValve);
    Some(vec![
        go(Place::PlantRoom),
        think(|_, seen| {
            let open = seen.furnace.as_ref().is_some_and(|furnace| furnace.cock_deg != 0);
            let shut = act(Action::Cock { cock: Cock::Furnace, degrees: 0 });
            if open { vec![shut] } else { Vec::new() }
        }),
        think(|me, seen| match seen.meter.hose {
            Some((Port::Inlet, _)) => super::hose::mend_in_open_line(),
            Some((Port::Manifold, _)) => mend_at_manifold(),
            None => {
                let mut steps = isolate();
                steps.push(think(|_, _| inlet_as_found()));
                me.start_over(steps);
                Vec::new()
            }
        }),
    ])
}

/// The window open for a while, and the valve probed again.
fn air_and_probe() -> Vec<Step> {
    let mut steps = vec![
        go(Place::PlantRoom),
        think(|_, seen| match &seen.furnace {
            Some(furnace) if furnace.window == Opening::Closed => {
                vec![act(Action::Window { window: Window::PlantRoom, to: Opening::Open })]
            }
            Some(_) | None => Vec::new(),
        }),
        pause(AIRS_S),
    ];
    steps.extend(valve_shuts());
    steps
}

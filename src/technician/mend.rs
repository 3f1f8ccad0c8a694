//! Mending: what has to be so first, the repair, the joint that it opened checked afterwards.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mind::Mind;
use super::step::{
    Step, act, give_gas, give_up, go, hose_off, isolate, others, pause, reach, start_over, take,
    think,
};
use crate::catalogue::repair::{Need, Repair};
use crate::hands::action::Action;
use crate::parts::{
    Door, Duty, Fitted, HandValve, Joint, JointVerdict, OnOff, Opening, Place, Port,
};
use crate::procedure::Goal;
use crate::senses::seen::Seen;

/// How long what is left in an opened line takes to blow off, in seconds (common practice: until
/// nothing is heard any more).
const BLOWN_S: f64 = 3.0;
/// How long the other appliances burn until the new regulator holds the line, in seconds (from
/// memory).
const BURNT_OFF_S: f64 = 15.0;

/// Does every repair on the list that can be done with the furnace isolated.
pub(super) fn mend_all() -> Step {
    think(next_isolated)
}

/// Does every repair on the list that waits for the open inlet port.
pub(super) fn mend_open() -> Step {
    think(next_open)
}

fn next_isolated(me: &mut Mind, _: &Seen) -> Vec<Step> {
    let Some(repair) = me.know.repairs.isolated.pop_front() else { return Vec::new() };
    let mut steps = mend(me, repair);
    if repair == Repair::ReplaceSupplyRegulator {
        steps.extend(burn_off());
    }
    steps.push(think(next_isolated));
    steps
}

/// What the old regulator has let into the line stands there until something burns it.
fn burn_off() -> Vec<Step> {
    let mut steps = others(OnOff::On);
    steps.push(pause(BURNT_OFF_S));
    steps.extend(others(OnOff::Off));
    steps
}

fn next_open(me: &mut Mind, _: &Seen) -> Vec<Step> {
    let Some(repair) = me.know.repairs.in_open_line.pop_front() else {
        return vec![go(Place::GasValve)];
    };
    let mut steps = mend(me, repair);
    steps.push(think(next_open));
    steps
}

/// One repair with what it needs before and leaves to be put back.
pub(super) fn mend(me: &mut Mind, repair: Repair) -> Vec<Step> {
    me.know.repairs.done.push(repair);
    me.know.repairs.to_check.extend(repair.disturbs());
    me.know.repairs.piping_opened |= repair.is_on_piping();
    if repair == Repair::ReplaceGasValve {
        // What was seen of the old one says nothing of the new.
        me.know.since_call.stray = false;
        me.know.since_call.burning_on_ticks = 0;
    }
    let mut steps = vec![reach(Goal::HandEmpty)];
    for need in repair.needs() {
        steps.extend(prepare(*need).map(reach));
    }
    steps.push(go(repair.place()));
    if repair.needs().contains(&Need::NoPressure) {
        steps.push(pause(BLOWN_S));
    }
    steps.push(act(Action::Mend(repair)));
    if repair.needs().contains(&Need::BlowerDoorOff) {
        steps.push(reach(Goal::Door(Door::Blower, Fitted::On)));
    }
    if repair.needs().contains(&Need::Shut(HandValve::Supply)) {
        steps.push(reach(Goal::Valve(HandValve::Supply, Opening::Open)));
    }
    steps
}

/// What has to be so before a repair.
fn prepare(need: Need) -> Option<Goal> {
    match need {
        Need::PowerOff => Some(Goal::Power(OnOff::Off)),
        Need::BurnerDoorOff => Some(Goal::Door(Door::Burner, Fitted::Off)),
        Need::BlowerDoorOff => Some(Goal::Door(Door::Blower, Fitted::Off)),
        Need::Shut(HandValve::Supply) => Some(Goal::Valve(HandValve::Supply, Opening::Closed)),
        Need::Shut(HandValve::Furnace | HandValve::WaterHeater | HandValve::Range) => {
            Some(Goal::Valve(HandValve::Furnace, Opening::Closed))
        }
        // What these ask for is so where the repair is called for.
        Need::NoPressure | Need::Open(_) | Need::HoseFree => None,
    }
}

/// Checks every joint that a repair has opened; gas stands on them.
pub(super) fn check_opened() -> Step {
    think(next_check)
}

fn next_check(me: &mut Mind, _: &Seen) -> Vec<Step> {
    let Some(joint) = me.know.repairs.to_check.pop() else { return Vec::new() };
    let mut steps = check(joint);
    steps.push(think(next_check));
    steps
}

/// Checks the piping where a repair has opened it or the card asks for it, the manometer on the inlet
/// port. What leaks is looked for, and the piping is checked again with the next readings.
pub(super) fn check_piping() -> Step {
    think(|me, _| {
        let asked = me.card.required.contains(&Duty::PipingLeakCheck);
        let due = me.know.repairs.piping_opened || (asked && !me.memory.has_checked_piping());
        if !due {
            return Vec::new();
        }
        let judged = think(|me, seen| {
            me.know.repairs.piping_opened = seen.sheet.piping != Some(JointVerdict::Tight);
            Vec::new()
        });
        vec![check_opened(), reach(Goal::PipingChecked), judged]
    })
}

/// Leak fluid on a joint, long enough to judge, written down, wiped; and what follows when it leaks.
pub(super) fn check(joint: Joint) -> Vec<Step> {
    vec![
        think(|me, _| {
            me.know.since_call.cracked = None;
            Vec::new()
        }),
        reach(Goal::JointChecked(joint)),
        think(move |me, seen| if_it_leaks(me, seen, joint)),
    ]
}

fn if_it_leaks(me: &mut Mind, seen: &Seen, joint: Joint) -> Vec<Step> {
    let written = seen.sheet.joints.iter().rev().find(|(at, _)| *at == joint);
    let leaks = written.is_some_and(|(_, verdict)| *verdict == JointVerdict::Leaking);
    let port = Port::ALL.iter().copied().find(|port| port.joint() == joint);
    let Some(port) = port.filter(|_| leaks && !me.careless) else { return Vec::new() };
    if me.know.since_call.cracked == Some(port) {
        return boss_leaks(me, port);
    }
    match me.memory.hose() {
        // With the hose on, what leaks is hose, barb or boss.
        Some((on, _)) if port == on => leaks_with_hose(me, port),
        Some(_) | None => Vec::new(),
    }
}

/// No plug and no hose makes a cracked boss tight: the gas valve is replaced.
fn boss_leaks(me: &mut Mind, port: Port) -> Vec<Step> {
    if me.know.has_mended(Repair::ReplaceGasValve) {
        return give_up(me, Diagnosis::BossLeaksAgain);
    }
    me.plan_repair(Diagnosis::BossCracked, Repair::ReplaceGasValve);
    match (port, me.memory.hose()) {
        (Port::Inlet, Some((Port::Inlet, _))) => take(Course::MendInOpenLine),
        (Port::Inlet, Some((Port::Manifold, _)) | None) => {
            let mut steps = isolate();
            steps.extend(take(Course::InletAsFound));
            start_over(steps)
        }
        (Port::Manifold, _) => take(Course::MendAtManifold),
    }
}

/// The manual valve shut at once, another hose, and the joint checked again.
fn leaks_with_hose(me: &mut Mind, port: Port) -> Vec<Step> {
    let repair = Repair::SwapMeterHose;
    if me.know.has_mended(repair) {
        return Vec::new();
    }
    me.know.note(Diagnosis::MeterHoseLeaks);
    let mut steps = vec![reach(Goal::Valve(HandValve::Furnace, Opening::Closed))];
    steps.extend(another_hose(me, port));
    match port {
        Port::Inlet => steps,
        Port::Manifold => {
            steps.extend(take(Course::ManifoldAsFound));
            start_over(steps)
        }
    }
}

/// Another hose on the manometer: off, swapped, zeroed, on again; the furnace is isolated.
pub(super) fn another_hose(me: &mut Mind, port: Port) -> Vec<Step> {
    me.know.repairs.done.push(Repair::SwapMeterHose);
    let mut steps = isolate();
    steps.push(go(Place::GasValve));
    steps.extend(hose_off());
    steps.push(act(Action::Mend(Repair::SwapMeterHose)));
    steps.extend(hose_back_on(port));
    steps
}

/// Zeroes the meter again and puts its hose back on the adapter, with the furnace isolated. The inlet
/// joint is checked at once; gas stands behind the manifold's only once it burns.
pub(super) fn hose_back_on(port: Port) -> Vec<Step> {
    let mut steps = vec![reach(Goal::MeterWarm), reach(Goal::HoseOn(port))];
    steps.extend(give_gas());
    if port == Port::Inlet {
        steps.extend(check(port.joint()));
    }
    steps
}

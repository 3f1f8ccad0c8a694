//! Evidence of ports and joints as they were left.

use super::deed::lower;
use super::ledger::{Did, Hit, Ledger};
use super::repairs::mended;
use crate::hands::action::Action;
use crate::hands::event::{Event, EventKind};
use crate::parts::{Joint, JointVerdict, Level, LowSide, Port, PortFill, Stage};
use crate::physics::valve::HandleAngle;
use crate::rules::Evidence;
use crate::rules::evidence::Sealing;
use crate::units::{TICK_S, inwc};
use crate::words::decimal;

/// Shortest time that fluid must be on, in seconds. It is watched from the tick after the hand's.
const DWELL_S: f64 = 10.0 - 1.5 * TICK_S;
/// Least share of the working pressure behind the joint.
const WORKING_SHARE: f64 = 0.8;
/// Supply pressure below which there is no gas to check with, in pascals (1 in. w.c.).
const NO_SUPPLY_PA: f64 = crate::units::PA_PER_INWC;

/// Ports as they were left, where something is wrong with them.
fn left(l: &Ledger, when: fn(PortFill) -> bool, seen: fn(String) -> String) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    Port::ALL
        .iter()
        .filter(|&&port| when(end.port(port).fill))
        .map(|&port| Hit::new(tick, seen(lower(port.label())), t!("true-port-open")))
        .collect()
}

pub(super) fn port_left_open(l: &Ledger) -> Vec<Hit> {
    let mut hits =
        left(l, |fill| fill == PortFill::Open, |port| t!("seen-port-no-plug", port = port));
    let loosened = |fill| fill == PortFill::TapOpen;
    hits.extend(left(l, loosened, |port| t!("seen-tap-open", port = port)));
    hits
}

pub(super) fn adapter_left(l: &Ledger) -> Vec<Hit> {
    let fitted = |fill| matches!(fill, PortFill::BareAdapter | PortFill::Hose(_));
    let mut hits = left(l, fitted, |port| t!("seen-port-adapter", port = port));
    let hose = |fill: PortFill| fill.is_tap() && fill.hose().is_some();
    hits.extend(left(l, hose, |port| t!("seen-tap-hose", port = port)));
    if let Some((tick, _, end)) = l.left()
        && end.low_side == LowSide::BurnerBox
    {
        hits.push(Hit::new(tick, t!("seen-low-side-left"), t!("true-low-side-left")));
    }
    hits
}

pub(super) fn plug_loose(l: &Ledger) -> Vec<Hit> {
    let Some((tick, _, end)) = l.left() else { return Vec::new() };
    Port::ALL
        .iter()
        .filter(|&&port| {
            let port = end.port(port);
            let plugged = matches!(
                port.fill,
                PortFill::Snug
                    | PortFill::HandTight
                    | PortFill::Started
                    | PortFill::TapSnug
                    | PortFill::TapLoose
            );
            plugged && port.leak_area_m2 > 0.0 && !port.cross_threaded && !port.cracked
        })
        .map(|&port| {
            let turns = decimal(end.port(port).past_hand_turns, 2);
            let seen = match end.port(port).fill.is_tap() {
                true => t!("seen-screw-loose", port = lower(port.label()), turns = turns),
                false => t!("seen-plug-loose", port = lower(port.label()), turns = turns),
            };
            let hit = Hit::new(tick, seen, t!("true-plug-loose"));
            // Bubbles that were seen and left say it already.
            hit.following(
                leaves_bubbles(l, port.joint()).then_some(Evidence::Sealing(Sealing::BubblesLeft)),
            )
        })
        .collect()
}

/// Whether a joint leaks by the hand that worked on it, at the moment of an event.
pub(super) fn is_loosened(l: &Ledger, joint: Joint, index: usize) -> bool {
    let Some(port) = Port::ALL.iter().copied().find(|port| port.joint() == joint) else {
        return false;
    };
    let worked = l.did().any(|did| did.index < index && is_work_at(did.action, joint));
    let cracked = l.events[..index].iter().any(|event| event.what == EventKind::Cracked { port });
    let loose = l.state_after(index).is_some_and(|then| {
        let port = then.port(port);
        port.cross_threaded || (port.leak_area_m2 > 0.0 && !port.cracked)
    });
    worked && (cracked || loose)
}

fn is_work_at(action: &Action, joint: Joint) -> bool {
    matches!(action, Action::Plug { port, .. } | Action::Adapter { port, .. }
        if port.joint() == joint)
}

/// Place of the last action that disturbed a joint: work at its port, the hose off its tap, or a repair
/// that opened it.
fn disturbed(l: &Ledger, joint: Joint) -> Option<usize> {
    let parts_tap = |did: &Did<'_>| {
        let on = |port: &&Port| port.joint() == joint && did.before.port(**port).fill.is_tap();
        *did.action == Action::HoseOff
            && Port::ALL
                .iter()
                .find(on)
                .is_some_and(|port| did.before.port(*port).fill.hose().is_some())
    };
    let at_port = l
        .did()
        .filter(|did| is_work_at(did.action, joint) || parts_tap(did))
        .map(|did| did.index)
        .last();
    let repaired =
        mended(l).filter(|it| it.repair.disturbs().contains(&joint)).map(|it| it.index).last();
    at_port.max(repaired)
}

/// Whether any joint was disturbed.
pub(super) fn any_disturbed(l: &Ledger) -> bool {
    Joint::ALL.iter().any(|&joint| disturbed(l, joint).is_some())
}

/// A leak check of a joint.
struct Check {
    tick: u64,
    lowest_pa: f64,
    dwell_s: f64,
    firing: Option<Level>,
    bubbles: bool,
    manual_valve: HandleAngle,
}

fn checks(l: &Ledger, joint: Joint, after: usize) -> Vec<Check> {
    l.events[after..]
        .iter()
        .filter_map(|event| {
            let EventKind::FluidJudged {
                joint: at,
                lowest_pa,
                dwell_s,
                firing,
                bubbles,
                manual_valve,
            } = event.what
            else {
                return None;
            };
            let tick = event.tick;
            (at == joint).then_some(Check {
                tick,
                lowest_pa,
                dwell_s,
                firing,
                bubbles,
                manual_valve,
            })
        })
        .collect()
}

fn at_working_pressure(l: &Ledger, joint: Joint, check: &Check) -> bool {
    match joint {
        Joint::InletPort | Joint::Union | Joint::Connector => {
            check.manual_valve.feeds() && is_working(l, check.lowest_pa)
        }
        Joint::SupplyRegulator | Joint::FirstRegulator | Joint::TankValve | Joint::Riser => {
            is_working(l, check.lowest_pa)
        }
        Joint::ManifoldPort => check.firing.is_some_and(Level::is_top),
    }
}

/// Whether a pressure before the gas valve is near enough to what the line works at: as found, or as
/// it was set here.
pub(super) fn is_working(l: &Ledger, pa: f64) -> bool {
    let set = l.end().map_or(f64::INFINITY, |(_, _, end)| end.supply_set_pa);
    let found = l.setup.supply.set_pa;
    // A supply that gives less than its spring says is worked at by what it gives.
    let gives = l
        .end()
        .filter(|(_, _, end)| end.supply_valve.is_open())
        .map_or(f64::INFINITY, |(_, _, end)| end.supply_pa);
    let most = l.plate().figures().allows(Port::Inlet, Stage::Rest, None).most_pa;
    pa >= WORKING_SHARE * found.min(set).min(gives).min(most)
}

/// Whether a joint was worked on last after gas was in the air, and the furnace then left shut off
/// with the supply shut too: there is no gas to check it with, and none may be let in.
fn closed_after_alarm(l: &Ledger, last: usize) -> bool {
    let shut = l.left().is_some_and(|(_, _, left)| left.supply_valve.is_shut());
    shut && l.said_shut_off() && super::safety::alarm_before(l, last)
}

/// Joints that were opened and never checked after they were closed; and those that were checked
/// only wrongly.
pub(super) fn unchecked(l: &Ledger) -> (Vec<Hit>, Vec<Hit>) {
    let mut none = Vec::new();
    let mut wrongly = Vec::new();
    for &joint in Joint::ALL {
        let Some(last) = disturbed(l, joint) else { continue };
        // Rightly shut off, it is not lit any more to try a joint behind the closed valve.
        if joint == Joint::ManifoldPort && l.left_shut_off() {
            continue;
        }
        if closed_after_alarm(l, last) {
            continue;
        }
        let checks = checks(l, joint, last);
        let good = checks
            .iter()
            .any(|check| check.dwell_s >= DWELL_S && at_working_pressure(l, joint, check));
        // With no gas left in the supply there is nothing to check with; whoever fills it does.
        let empty = l.left().is_some_and(|(_, _, left)| left.supply_pa < NO_SUPPLY_PA);
        if good || (empty && l.said_shut_off() && !checks.is_empty()) {
            continue;
        }
        let Some(check) = checks.last() else {
            let tick = l.last_tick();
            let seen = t!("seen-joint-unchecked", joint = lower(joint.label()));
            none.push(Hit::new(tick, seen, t!("true-joint-unchecked")));
            continue;
        };
        let needs = match joint {
            _ if at_working_pressure(l, joint, check) => {
                t!("true-joint-brief", seconds = decimal(DWELL_S, 0))
            }
            Joint::InletPort | Joint::Union | Joint::Connector => t!("true-joint-line").to_owned(),
            Joint::SupplyRegulator | Joint::FirstRegulator | Joint::TankValve | Joint::Riser => {
                t!("true-joint-yard").to_owned()
            }
            Joint::ManifoldPort => t!("true-joint-manifold").to_owned(),
        };
        let seen = t!(
            "seen-joint-wrongly",
            joint = lower(joint.label()),
            seconds = decimal(check.dwell_s, 1),
            pressure = inwc(check.lowest_pa)
        );
        wrongly.push(Hit::new(check.tick, seen, needs));
    }
    (none, wrongly)
}

/// The last check of a joint since it was disturbed, where bubbles grew in it.
fn bubbles(l: &Ledger, joint: Joint) -> Option<Check> {
    let last = disturbed(l, joint)?;
    checks(l, joint, last).into_iter().last().filter(|check| check.bubbles)
}

/// Whether bubbles grew at a joint and it was left in use.
fn leaves_bubbles(l: &Ledger, joint: Joint) -> bool {
    l.left().is_some() && !l.left_shut_off() && bubbles(l, joint).is_some()
}

pub(super) fn bubbles_left(l: &Ledger) -> Vec<Hit> {
    Joint::ALL
        .iter()
        .filter(|&&joint| leaves_bubbles(l, joint))
        .filter_map(|&joint| {
            let seen = t!("seen-bubbles", joint = lower(joint.label()));
            Some(Hit::new(bubbles(l, joint)?.tick, seen, t!("true-bubbles")))
        })
        .collect()
}

/// The last verdict on a joint that stands on the sheet, with its place among the events.
fn verdict(l: &Ledger, joint: Joint) -> Option<(usize, u64, JointVerdict)> {
    l.did()
        .filter_map(|did| {
            let Action::WriteJoint { joint: at, verdict } = did.action else { return None };
            (*at == joint).then_some((did.index, did.tick, *verdict))
        })
        .last()
}

/// Verdicts on the sheet that do not fit what was seen or done: leaking, and left in use; tight, where
/// bubbles grew.
pub(super) fn verdicts(l: &Ledger) -> Vec<Hit> {
    let in_use = l.left().is_some() && !l.left_shut_off();
    Joint::ALL
        .iter()
        .filter_map(|&joint| {
            let (index, tick, verdict) = verdict(l, joint)?;
            let name = lower(joint.label());
            match verdict {
                // With bubbles in it, it is the leak that was left.
                JointVerdict::Leaking if in_use && !leaves_bubbles(l, joint) => {
                    let seen = t!("seen-written-leaking", joint = name);
                    Some(Hit::new(tick, seen, t!("true-written-leaking")))
                }
                JointVerdict::Tight if bubbles_when_written(l, joint, index) => {
                    let seen = t!("seen-written-tight", joint = name);
                    Some(Hit::new(tick, seen, t!("true-written-tight")))
                }
                JointVerdict::Leaking | JointVerdict::Tight => None,
            }
        })
        .collect()
}

/// Whether the check that a verdict was written on showed bubbles: the one that its writing told, or
/// the last before it.
fn bubbles_when_written(l: &Ledger, joint: Joint, index: usize) -> bool {
    let judged = |event: &Event| {
        let EventKind::FluidJudged { joint: at, bubbles, .. } = event.what else { return None };
        (at == joint).then_some(bubbles)
    };
    let told = l.events.get(index + 1).and_then(judged);
    told.or_else(|| l.events[..index].iter().rev().find_map(judged)).unwrap_or(false)
}

/// Joints with fluid on them that nobody judged: nothing was written of them and nothing was wiped off
/// after the last time.
pub(super) fn not_judged(l: &Ledger) -> Vec<Hit> {
    Joint::ALL
        .iter()
        .filter_map(|&joint| {
            let brushed = l.did().filter(|did| *did.action == Action::LeakFluid(joint)).last()?;
            let judges = |action: &Action| {
                let written =
                    matches!(action, Action::WriteJoint { joint: at, .. } if *at == joint);
                written || *action == Action::Wipe(joint)
            };
            let judged = l.did().any(|did| did.index > brushed.index && judges(did.action));
            // Who leaves at an alarm leaves it as it is.
            let after = &l.events[brushed.index..];
            let judged = judged || after.iter().any(|event| event.what == EventKind::Alarm);
            let seen = t!("seen-not-judged", joint = lower(joint.label()));
            (!judged).then(|| Hit::new(brushed.tick, seen, t!("true-not-judged")))
        })
        .collect()
}

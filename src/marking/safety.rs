//! Evidence of hazards, isolation and gas at open ports.

use super::deed::{describe, lower};
use super::ledger::{Caught, Did, Hit, Ledger};
use super::repairs::mended;
use crate::appliance::ignition::ControlState;
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, PlugStep, Topic};
use crate::hands::event::EventKind;
use crate::model::truth::Truth;
use crate::parts::{Door, Fitted, HandValve, Height, OnOff, Place, Port, PortFill};
use crate::units::inwc;

/// A hand on anything that matters.
fn touches(action: &Action) -> bool {
    turns_a_stage(action)
        || matches!(
            action,
            Action::FurnaceSwitch(_)
                | Action::HandValve {
                    hand_valve: HandValve::Furnace | HandValve::WaterHeater | HandValve::Range,
                    ..
                }
                | Action::ThermostatMode(_)
                | Action::Setpoint(_)
                | Action::ValveSwitch(_)
                | Action::Plug { .. }
                | Action::OtherAppliance { .. }
                | Action::StageJumper(_)
                | Action::Door { .. }
                | Action::Mend(_)
        )
}

/// Work that may let gas meet a flame.
fn gas_work(action: &Action) -> bool {
    turns_a_stage(action)
        || matches!(
            action,
            Action::Plug { .. }
                | Action::FurnaceSwitch(OnOff::On)
                | Action::ThermostatMode(OnOff::On)
        )
}

/// A turn of a firing level's screw.
fn turns_a_stage(action: &Action) -> bool {
    matches!(action, Action::Turn { screw, .. } if screw.level().is_some())
}

pub(super) fn worked_on_after_alarm(l: &Ledger) -> Vec<Hit> {
    let mut inside_alarm = false;
    let mut answer = Answer::default();
    let mut hits = Vec::new();
    for event in &l.events {
        if event.what == EventKind::Alarm {
            inside_alarm = true;
            answer = Answer::default();
        }
        let EventKind::Did { action, before } = &event.what else { continue };
        if let Action::Go(Place::Yard | Place::Away) = action {
            answer.out |= inside_alarm;
            inside_alarm = false;
        } else if *action == Action::Tell(Topic::GetOut) {
            answer.told = true;
        } else if let Action::Call(_) = action {
            // The telephone inside is a switch like any other.
            if inside_alarm {
                hits.push(worked(event.tick, action));
            }
            answer.called = true;
        } else if action.shuts() == Some(HandValve::Supply) {
            answer.shut = true;
        } else if let (Action::Go(_), Some(missing)) = (action, answer.missing(l, before)) {
            hits.push(Hit::new(event.tick, t!("seen-back-in"), missing));
            answer = Answer::default();
        } else if inside_alarm && !allowed_in_alarm(action) {
            hits.push(worked(event.tick, action));
        }
    }
    hits
}

/// Work done inside while the alarm stood.
fn worked(tick: u64, action: &Action) -> Hit {
    let seen = t!("seen-after-alarm", done = describe(action));
    Hit::new(tick, seen, t!("true-after-alarm"))
}

/// How an alarm was answered.
#[derive(Debug, Clone, Copy, Default)]
struct Answer {
    out: bool,
    told: bool,
    called: bool,
    shut: bool,
}

impl Answer {
    /// What is missing before anybody may go in again; none before everybody went out.
    fn missing(self, l: &Ledger, now: &Truth) -> Option<&'static str> {
        let shut = self.shut || now.supply_valve.is_shut();
        match (self.out, self.told, shut, self.called) {
            (false, _, _, _) => None,
            (true, false, _, _) => Some(t!("true-back-in-not-told")),
            (true, true, false, _) => Some(t!("true-back-in-not-shut")),
            (true, true, true, false) => Some(t!("true-back-in-not-called")),
            (true, true, true, true) => {
                let least = lower_limit(l.setup.fuel) * ALARM_SHARE;
                let gas = now.gas_fraction.iter().any(|there| there >= least);
                gas.then(|| t!("true-back-in-gas"))
            }
        }
    }
}

/// Share of the lower flammable limit at which a detector calls, and below which nobody need stay
/// out (a tenth; common practice).
const ALARM_SHARE: f64 = 0.1;

/// The lower flammable limit of a gas in air, as a fraction (NFPA 325).
fn lower_limit(fuel: Fuel) -> f64 {
    match fuel {
        Fuel::Natural => 0.05,
        Fuel::Propane => 0.021,
    }
}

/// Whether the alarm was on before an event.
pub(super) fn alarm_before(l: &Ledger, index: usize) -> bool {
    l.events[..index].iter().any(|event| matches!(event.what, EventKind::Alarm))
}

fn allowed_in_alarm(action: &Action) -> bool {
    let goes = matches!(
        action,
        Action::Go(_)
            | Action::Tell(Topic::GetOut)
            | Action::Window { .. }
            | Action::PutDown
            | Action::Probe(_)
            | Action::Sniff(_)
    );
    goes || action.shuts().is_some()
}

pub(super) fn ignition(l: &Ledger) -> Vec<Hit> {
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| {
            let EventKind::Ignition { port } = &event.what else { return None };
            if port.is_some_and(|port| came_by_itself(l, index, port)) {
                return None;
            }
            Some(match port {
                Some(port) => Hit::new(
                    event.tick,
                    t!("seen-flash-port"),
                    t!("true-flash-port", port = lower(port.label())),
                ),
                None => Hit::new(event.tick, t!("seen-flash-burners"), t!("true-flash-burners")),
            })
        })
        .collect()
}

/// Whether the job was over by gas that lit at a port where it came out by itself.
pub(super) fn is_ended_by_itself(l: &Ledger) -> bool {
    let lit = l.events.iter().any(|event| matches!(event.what, EventKind::Ignition { .. }));
    lit && ignition(l).is_empty()
}

/// Whether nose or detector were used inside the house before an event, and where.
fn smelt_inside(l: &Ledger, before: usize, when: fn(&Action) -> bool) -> bool {
    let mut inside = false;
    for did in l.did().take_while(|did| did.index < before) {
        if let Action::Go(place) = did.action {
            inside = !matches!(place, Place::Yard | Place::Away);
        }
        if inside && when(did.action) {
            return true;
        }
    }
    false
}

/// The first hand on anything that matters.
pub(super) fn first_hand(l: &Ledger) -> Option<Did<'_>> {
    l.did().find(|did| touches(did.action))
}

pub(super) fn no_sniff_on_arrival(l: &Ledger) -> Vec<Hit> {
    let Some(first) = first_hand(l) else { return Vec::new() };
    let nose = |action: &Action| matches!(action, Action::Sniff(_) | Action::Probe(_));
    let smelt = smelt_inside(l, first.index, nose);
    // An alarm on the way in is more than nose and detector would tell.
    if smelt || alarm_before(l, first.index) {
        return Vec::new();
    }
    let seen = t!("seen-no-sniff", done = describe(first.action));
    vec![Hit::new(first.tick, seen, t!("true-no-sniff"))]
}

pub(super) fn head_height_only(l: &Ledger) -> Vec<Hit> {
    if l.setup.fuel == Fuel::Natural {
        return Vec::new();
    }
    let Some(first) = l.did().find(|did| gas_work(did.action)) else { return Vec::new() };
    let lower = smelt_inside(l, first.index, |action| {
        matches!(action, Action::Sniff(Height::Floor) | Action::Probe(Height::Floor))
    });
    if lower {
        return Vec::new();
    }
    vec![Hit::new(first.tick, t!("seen-floor-not-smelt"), t!("true-floor-not-smelt"))]
}

/// The action that came right before an event at the same tick.
fn cause(l: &Ledger, index: usize) -> Option<Did<'_>> {
    l.did().take_while(|did| did.index < index).last()
}

fn opened(l: &Ledger, port: Port, when: impl Fn(usize, &Truth) -> bool) -> Vec<Hit> {
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| {
            let EventKind::OpenedUnderGas { port: at, pa } = event.what else { return None };
            let before = cause(l, index).filter(|_| at == port)?.before;
            when(index, before).then(|| {
                Hit::new(
                    event.tick,
                    t!("seen-port-opened", port = lower(port.label())),
                    t!(
                        "true-port-opened",
                        pressure = inwc(pa),
                        angle = before.manual_valve.to_string()
                    ),
                )
            })
        })
        .collect()
}

/// Widest hole through which gas comes out of a port without a sound, in metres: at the pressures of
/// a house that is a fiftieth of the flow that hisses, and nobody could tell that it still comes.
const UNHEARD_M: f64 = 1.0e-4;

/// Whether nothing that could be heard comes out of a port that stands under pressure: its hole was
/// found stopped up, or all but so, and has not been cleaned or drilled yet.
fn is_stopped_up(l: &Ledger, before: usize, port: Port) -> bool {
    let tap_free_m = l.setup.condition.ports[port].tap_free_m;
    let found = tap_free_m.is_some_and(|free_m| free_m <= UNHEARD_M);
    let frees = |repair: Repair| {
        repair == Repair::ReplaceGasValve
            || match port {
                Port::Inlet => matches!(repair, Repair::CleanInletTap | Repair::DrillInletTap),
                Port::Manifold => {
                    matches!(repair, Repair::CleanManifoldTap | Repair::DrillManifoldTap)
                }
            }
    };
    found && !mended(l).any(|it| it.index < before && frees(it.repair))
}

fn hand_valves_open(truth: &Truth) -> bool {
    truth.manual_valve.feeds() && truth.supply_valve.feeds()
}

pub(super) fn opened_inlet_under_gas(l: &Ledger) -> Vec<Hit> {
    opened(l, Port::Inlet, |_, before| hand_valves_open(before))
}

pub(super) fn opened_on_trapped_gas(l: &Ledger) -> Vec<Hit> {
    // Out of a hole that is stopped up nothing is heard to come; that the valve was shut is asked all the same.
    let mut hits = opened(l, Port::Inlet, |index, before| {
        !hand_valves_open(before) && !is_stopped_up(l, index, Port::Inlet)
    });
    hits.extend(opened(l, Port::Manifold, |index, before| {
        before.firing.is_none() && !is_stopped_up(l, index, Port::Manifold)
    }));
    hits
}

/// Gas behind a plug that still stands there when it is out, in pascals (0.5 in. w.c.; less is gone by
/// then).
const TRAPPED_PA: f64 = 0.5 * crate::units::PA_PER_INWC;

/// Whether gas stood behind the inlet plug, and could be heard to come out, when it was broken loose
/// first.
pub(super) fn traps_gas(l: &Ledger) -> bool {
    let loosened = Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose };
    let first = l.did().find(|did| *did.action == loosened);
    first.is_some_and(|did| {
        did.before.inlet_pa > TRAPPED_PA && !is_stopped_up(l, did.index, Port::Inlet)
    })
}

pub(super) fn opened_manifold_firing(l: &Ledger) -> Vec<Hit> {
    l.did()
        .filter(|did| {
            let opens = matches!(
                did.action,
                Action::Plug { port: Port::Manifold, step: PlugStep::SpinOut }
                    | Action::Adapter { port: Port::Manifold, to: Fitted::Off }
            ) || (*did.action == Action::HoseOff
                && matches!(
                    did.before.port(Port::Manifold).fill,
                    PortFill::Hose(_) | PortFill::HoseOnTap(_)
                ));
            opens && did.before.firing.is_some()
        })
        .map(|did| {
            Hit::new(
                did.tick,
                describe(did.action),
                t!("true-opened-firing", pressure = inwc(did.before.manifold_pa)),
            )
        })
        .collect()
}

pub(super) fn gas_from_open_port(l: &Ledger) -> Vec<Hit> {
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| {
            let EventKind::GasFromPort { port } = &event.what else { return None };
            if came_by_itself(l, index, *port) {
                return None;
            }
            Some(Hit::new(
                event.tick,
                t!("seen-gas-from-port"),
                t!("true-gas-from-port", port = lower(port.label())),
            ))
        })
        .collect()
}

/// Whether gas came out of a port that stood open on arrival, by a call or a valve that stood so too:
/// nobody here has worked on the port, and nobody has let gas on.
fn came_by_itself(l: &Ledger, before: usize, port: Port) -> bool {
    !l.did().any(|did| did.index < before && (works_on(did.action, port) || feeds(did.action)))
}

/// Whether an action may let gas on to the ports, or call for it.
fn feeds(action: &Action) -> bool {
    use HandValve::{Furnace, Supply};
    matches!(
        action,
        Action::HandValve { hand_valve: Furnace | Supply, degrees: 1.. }
            | Action::ValveSwitch(OnOff::On)
            | Action::FurnaceSwitch(OnOff::On)
            | Action::ThermostatMode(OnOff::On)
            | Action::Setpoint(_)
            | Action::StageJumper(Fitted::On)
            | Action::Door { door: Door::Blower, to: Fitted::On }
            | Action::Mend(_)
    )
}

/// The control came to rest again.
fn ends_call(what: &EventKind) -> bool {
    matches!(what, EventKind::Control { to: ControlState::Standby, .. })
}

pub(super) fn called_with_port_open(l: &Ledger) -> Vec<Hit> {
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| {
            let EventKind::CalledOnOpenPort { port, barred } = &event.what else { return None };
            // A port that stood open on arrival was called on by whoever left it so.
            if !l.did().any(|did| did.index < index && works_on(did.action, *port)) {
                return None;
            }
            let mut hit = Hit::new(
                event.tick,
                t!("seen-called-open"),
                t!("true-called-open", port = lower(port.label())),
            );
            // No gas could come yet, or the call was ended before any came.
            let later = &l.events[index + 1..];
            let came = later
                .iter()
                .take_while(|event| !ends_call(&event.what))
                .any(|event| matches!(event.what, EventKind::GasFromPort { .. }));
            if *barred || !came {
                hit.caught = Caught::InTime;
            }
            Some(hit)
        })
        .collect()
}

fn works_on(action: &Action, wanted: Port) -> bool {
    matches!(action, Action::Plug { port, .. } | Action::Adapter { port, .. } if *port == wanted)
}

pub(super) fn loosened_with_valve_open(l: &Ledger) -> Vec<Hit> {
    let loosens = |step: PlugStep| match step {
        PlugStep::BreakLoose | PlugStep::SpinOut => true,
        PlugStep::Tighten(eighths) => eighths <= -4,
        PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn => false,
    };
    // A plug on its way in that is taken out again to start it anew lets nothing new out.
    let seated = |truth: &Truth, port: Port| truth.port(port).past_hand_turns > 0.0;
    l.did()
        .filter(|did| {
            let Action::Plug { port, step } = did.action else { return false };
            let first = *step != PlugStep::SpinOut || !seated_since(l, did, *port);
            loosens(*step)
                && hand_valves_open(did.before)
                && (seated(did.before, *port) || *step == PlugStep::SpinOut && first)
        })
        .map(|did| Hit::new(did.tick, describe(did.action), t!("true-valve-open")))
        .collect()
}

/// Whether a plug has been started anew in a port before this, so that it is not sealing yet.
fn seated_since(l: &Ledger, at: &Did<'_>, port: Port) -> bool {
    let last = l.did().take_while(|did| did.index < at.index).filter_map(|did| {
        let Action::Plug { port: on, step } = did.action else { return None };
        (*on == port).then_some(*step)
    });
    matches!(last.last(), Some(PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn))
}

pub(super) fn power_left_on(l: &Ledger) -> Vec<Hit> {
    plug_out(
        l,
        PlugStep::SpinOut,
        |truth| truth.furnace_switch == OnOff::On && truth.doors[Door::Blower] == Fitted::On,
        t!("true-power-on"),
    )
}

fn plug_out(l: &Ledger, wanted: PlugStep, when: fn(&Truth) -> bool, truth: &str) -> Vec<Hit> {
    l.did()
        .filter(|did| {
            matches!(did.action, Action::Plug { step, .. } if *step == wanted && when(did.before))
        })
        .map(|did| Hit::new(did.tick, describe(did.action), truth))
        .collect()
}

pub(super) fn cross_threads(l: &Ledger) -> (Vec<Hit>, Vec<Hit>) {
    let mut left = Vec::new();
    let mut caught = Vec::new();
    let end = l.end();
    for event in &l.events {
        let EventKind::CrossThreaded { port } = event.what else { continue };
        let stays = end.is_some_and(|(_, _, truth)| truth.port(port).cross_threaded);
        let seen = t!("seen-cross-thread", port = lower(port.label()));
        let hit = Hit::new(event.tick, seen, t!("true-cross-thread"));
        if stays {
            left.push(hit);
        } else {
            caught.push(hit);
        }
    }
    left.truncate(1);
    (left, caught)
}

pub(super) fn boss_cracked(l: &Ledger) -> Vec<Hit> {
    let renewed =
        |after: usize| mended(l).any(|it| it.index > after && it.repair == Repair::ReplaceGasValve);
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| {
            let EventKind::Cracked { port } = event.what else { return None };
            let truth = t!("true-cracked", port = lower(port.label()));
            let mut hit = Hit::new(event.tick, t!("seen-cracked"), truth);
            if renewed(index) {
                hit.caught = Caught::InTime;
            }
            Some(hit)
        })
        .collect()
}

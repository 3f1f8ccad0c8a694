//! Evidence of hazards, isolation and gas at open ports.

use super::deed::describe;
use super::ledger::{Caught, Did, Hit, Ledger};
use crate::appliance::ignition::ControlState;
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, PlugStep, Topic};
use crate::hands::event::Happening;
use crate::model::truth::Truth;
use crate::parts::{Cock, Door, Firing, Fitted, Height, OnOff, Place, Port, PortFill, Screw};
use crate::units::inwc;

/// A hand on anything that matters.
fn touches(action: &Action) -> bool {
    matches!(
        action,
        Action::FurnaceSwitch(_)
            | Action::Cock { cock: Cock::Furnace | Cock::WaterHeater | Cock::Range, .. }
            | Action::ThermostatMode(_)
            | Action::Setpoint(_)
            | Action::ValveSwitch(_)
            | Action::Plug { .. }
            | Action::Neighbor { .. }
            | Action::StageJumper(_)
            | Action::Turn { screw: Screw::Low | Screw::High, .. }
            | Action::Door { .. }
            | Action::Mend(_)
    )
}

/// Work that may let gas meet a flame.
fn gas_work(action: &Action) -> bool {
    matches!(
        action,
        Action::Plug { .. }
            | Action::Turn { screw: Screw::Low | Screw::High, .. }
            | Action::FurnaceSwitch(OnOff::On)
            | Action::ThermostatMode(OnOff::On)
    )
}

pub(super) fn worked_on_after_alarm(l: &Ledger) -> Vec<Hit> {
    let mut inside_alarm = false;
    let mut answer = Answer::default();
    let mut hits = Vec::new();
    for event in &l.events {
        match &event.what {
            Happening::Alarm => {
                inside_alarm = true;
                answer = Answer::default();
            }
            Happening::Did { action: Action::Go(Place::Yard | Place::Away), .. } => {
                answer.out |= inside_alarm;
                inside_alarm = false;
            }
            Happening::Did { action: Action::Tell(Topic::GetOut), .. } => answer.told = true,
            Happening::Did { action: Action::Call(_), .. } => answer.called = true,
            Happening::Did { action, .. } if action.shuts() == Some(Cock::Supply) => {
                answer.shut = true;
            }
            Happening::Did { action: Action::Go(_), .. } if answer.missing().is_some() => {
                let missing = answer.missing().unwrap_or_default();
                hits.push(Hit::new(
                    event.tick,
                    "went back in after the alarm",
                    format!("gas had stood in the air, and {missing}"),
                ));
                answer = Answer::default();
            }
            Happening::Did { action, .. } if inside_alarm && !allowed_in_alarm(action) => {
                hits.push(Hit::new(
                    event.tick,
                    format!("after the alarm: {}", describe(action)),
                    "gas stood in the air inside",
                ));
            }
            _ => {}
        }
    }
    hits
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
    fn missing(self) -> Option<&'static str> {
        match (self.out, self.told, self.called || self.shut) {
            (false, _, _) | (true, true, true) => None,
            (true, false, _) => Some("nobody was told to get out"),
            (true, true, false) => Some("neither the supply was shut nor anybody called"),
        }
    }
}

/// Whether the alarm was on before an event.
pub(super) fn alarm_before(l: &Ledger, index: usize) -> bool {
    l.events[..index].iter().any(|event| matches!(event.what, Happening::Alarm))
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
        .filter_map(|event| match &event.what {
            Happening::Ignition { port: Some(port) } => Some(Hit::new(
                event.tick,
                "a flash at the gas valve",
                format!("gas from the {} met a flame or the igniter", port.label().to_lowercase()),
            )),
            Happening::Ignition { port: None } => Some(Hit::new(
                event.tick,
                "a flash in the burner compartment",
                "gas that had gathered met a flame or the igniter",
            )),
            _ => None,
        })
        .collect()
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
    let did = describe(first.action);
    vec![Hit::new(
        first.tick,
        format!("first act: {did}"),
        "inside, nose and detector had not been used yet",
    )]
}

pub(super) fn head_height_only(l: &Ledger) -> Vec<Hit> {
    if l.setup.fuel == Fuel::Natural {
        return Vec::new();
    }
    let Some(first) = l.did().find(|did| gas_work(did.action)) else { return Vec::new() };
    let low = smelt_inside(l, first.index, |action| {
        matches!(action, Action::Sniff(Height::Floor) | Action::Probe(Height::Floor))
    });
    if low {
        return Vec::new();
    }
    vec![Hit::new(
        first.tick,
        "nothing was smelt or probed at the floor",
        "the fuel is propane, which pools there",
    )]
}

/// The action that came right before an event at the same tick.
fn cause(l: &Ledger, index: usize) -> Option<Did<'_>> {
    l.did().take_while(|did| did.index < index).last()
}

fn opened(l: &Ledger, port: Port, when: impl Fn(usize, &Truth) -> bool) -> Vec<Hit> {
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| match event.what {
            Happening::OpenedUnderGas { port: at, pa } if at == port => {
                let before = cause(l, index)?.before;
                when(index, before).then(|| {
                    Hit::new(
                        event.tick,
                        format!("the {} was opened", port.label().to_lowercase()),
                        format!(
                            "{} stood behind it, manual valve at {}",
                            inwc(pa),
                            before.manual_valve
                        ),
                    )
                })
            }
            _ => None,
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
    found && !super::repairs::mended(l).any(|it| it.index < before && frees(it.repair))
}

fn cock_open(truth: &Truth) -> bool {
    truth.manual_valve.feeds() && truth.supply_valve.feeds()
}

pub(super) fn opened_inlet_under_gas(l: &Ledger) -> Vec<Hit> {
    opened(l, Port::Inlet, |_, before| cock_open(before))
}

pub(super) fn opened_on_trapped_gas(l: &Ledger) -> Vec<Hit> {
    // Out of a hole that is stopped up nothing is heard to come; that the valve was shut is asked all the same.
    let mut hits = opened(l, Port::Inlet, |index, before| {
        !cock_open(before) && !is_stopped_up(l, index, Port::Inlet)
    });
    hits.extend(opened(l, Port::Manifold, |index, before| {
        before.firing == Firing::Out && !is_stopped_up(l, index, Port::Manifold)
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
                && matches!(did.before.port(Port::Manifold).fill, PortFill::Hose(_)));
            opens && did.before.firing != Firing::Out
        })
        .map(|did| {
            Hit::new(
                did.tick,
                describe(did.action),
                format!("the burners fired, {} at the port", inwc(did.before.manifold_pa)),
            )
        })
        .collect()
}

pub(super) fn gas_from_open_port(l: &Ledger) -> Vec<Hit> {
    l.events
        .iter()
        .filter_map(|event| match &event.what {
            Happening::GasFromPort { port } => Some(Hit::new(
                event.tick,
                "gas hisses at the gas valve",
                format!("the {} was open and gas came to it", port.label().to_lowercase()),
            )),
            _ => None,
        })
        .collect()
}

/// The control came to rest again.
fn ends_call(what: &Happening) -> bool {
    matches!(what, Happening::Control { to: ControlState::Standby, .. })
}

pub(super) fn called_with_port_open(l: &Ledger) -> Vec<Hit> {
    l.events
        .iter()
        .enumerate()
        .filter_map(|(index, event)| match &event.what {
            // A port that stood open on arrival was called on by whoever left it so.
            Happening::CalledOnOpenPort { port, .. }
                if !l.did().any(|did| did.index < index && works_on(did.action, *port)) =>
            {
                None
            }
            Happening::CalledOnOpenPort { port, barred } => {
                let mut hit = Hit::new(
                    event.tick,
                    "heat was called",
                    format!("the {} stood open with nothing on it", port.label().to_lowercase()),
                );
                // No gas could come yet, or the call was ended before any came.
                let later = &l.events[index + 1..];
                let came = later
                    .iter()
                    .take_while(|event| !ends_call(&event.what))
                    .any(|event| matches!(event.what, Happening::GasFromPort { .. }));
                if *barred || !came {
                    hit.caught = Caught::InTime;
                }
                Some(hit)
            }
            _ => None,
        })
        .collect()
}

fn works_on(action: &Action, wanted: Port) -> bool {
    match action {
        Action::Plug { port, .. } | Action::Adapter { port, .. } => *port == wanted,
        _ => false,
    }
}

pub(super) fn loosened_with_cock_open(l: &Ledger) -> Vec<Hit> {
    let loosens = |step: PlugStep| match step {
        PlugStep::BreakLoose | PlugStep::SpinOut => true,
        PlugStep::Tighten(eighths) => eighths <= -4,
        PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn => false,
    };
    // A plug on its way in that is taken out again to start it anew lets nothing new out.
    let seated = |truth: &Truth, port: Port| truth.port(port).past_hand_turns > 0.0;
    l.did()
        .filter(|did| match did.action {
            Action::Plug { port, step } => {
                let first = *step != PlugStep::SpinOut || !seated_since(l, did, *port);
                loosens(*step)
                    && cock_open(did.before)
                    && (seated(did.before, *port) || *step == PlugStep::SpinOut && first)
            }
            _ => false,
        })
        .map(|did| Hit::new(did.tick, describe(did.action), "the manual valve was open"))
        .collect()
}

/// Whether a plug has been started anew in a port before this, so that it is not sealing yet.
fn seated_since(l: &Ledger, at: &Did<'_>, port: Port) -> bool {
    let last = l.did().take_while(|did| did.index < at.index).filter_map(|did| match did.action {
        Action::Plug { port: on, step } if *on == port => Some(*step),
        _ => None,
    });
    matches!(last.last(), Some(PlugStep::StartByHand | PlugStep::StartByKey | PlugStep::SpinIn))
}

pub(super) fn power_left_on(l: &Ledger) -> Vec<Hit> {
    plug_out(
        l,
        PlugStep::SpinOut,
        |truth| truth.furnace_switch == OnOff::On && truth.doors[Door::Blower] == Fitted::On,
        "the furnace had power",
    )
}

fn plug_out(l: &Ledger, wanted: PlugStep, when: fn(&Truth) -> bool, truth: &str) -> Vec<Hit> {
    l.did()
        .filter(|did| match did.action {
            Action::Plug { step, .. } => *step == wanted && when(did.before),
            _ => false,
        })
        .map(|did| Hit::new(did.tick, describe(did.action), truth))
        .collect()
}

pub(super) fn cross_threads(l: &Ledger) -> (Vec<Hit>, Vec<Hit>) {
    let mut left = Vec::new();
    let mut caught = Vec::new();
    let end = l.end();
    for event in &l.events {
        let Happening::CrossThreaded { port } = event.what else { continue };
        let stays = end.is_some_and(|(_, _, truth)| truth.port(port).cross_threaded);
        let name = port.label().to_lowercase();
        let hit = Hit::new(
            event.tick,
            format!("the plug of the {name} leaned in its thread"),
            "it was started with the key",
        );
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
    l.events
        .iter()
        .filter_map(|event| match event.what {
            Happening::Cracked { port } => Some(Hit::new(
                event.tick,
                "the key suddenly turned easily",
                format!("the boss of the {} is cracked", port.label().to_lowercase()),
            )),
            _ => None,
        })
        .collect()
}

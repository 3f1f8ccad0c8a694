//! Plugs, captive screws, adapter and hose at the ports of the gas valve.

use super::action::PlugStep;
use super::done::{Done, plain};
use super::event::EventKind;
use super::reach;
use super::refusal::Refusal;
use crate::model::{CRACK_TURNS, Fill, LEANING_STOP_TURNS, LOOSENED_TURNS, Model, PortState};
use crate::parts::{Fitted, Port, Push, Tool};

/// Pressure from which an opened port is felt to be under gas, in pascals (0.1 in. w.c.).
const FELT_PA: f64 = 25.0;

/// What a step with a plug or a captive screw did beside moving it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum PlugResult {
    Moved,
    /// The port is open now.
    Opened,
    /// The plug went in across its thread.
    CrossThreaded,
    Cracked,
}

pub(super) fn plug(model: &mut Model, port: Port, step: PlugStep) -> Done {
    reach::valve(model)?;
    let tap = matches!(model.things.ports[port].fill, Fill::Tap { .. });
    if tap {
        screw_tool(step, model.person.hand)?;
    } else {
        plug_tool(step, model.person.hand)?;
    }
    let gauge_pa = model.gas.pressure_pa(port);
    let state = &mut model.things.ports[port];
    let result = if tap { step_screw(state, step)? } else { step_plug(state, step)? };
    // What the fluid showed before the joint was moved says nothing about it afterwards.
    model.things.fluid[port.joint()] = None;
    Ok(match result {
        PlugResult::Moved => Vec::new(),
        PlugResult::Opened => opened(port, gauge_pa),
        PlugResult::CrossThreaded => vec![EventKind::CrossThreaded { port }],
        PlugResult::Cracked => vec![EventKind::Cracked { port }],
    })
}

pub(super) fn set_adapter(model: &mut Model, port: Port, to: Fitted) -> Done {
    reach::valve(model)?;
    let wet = port.joint();
    match to {
        Fitted::On => {
            reach::tool(model, Tool::Adapter)?;
            fit_adapter(&mut model.things.ports[port])?;
            model.things.fluid[wet] = None;
            model.person.hand = None;
            plain()
        }
        Fitted::Off => {
            if model.person.hand.is_some() {
                return Err(Refusal::HandFull);
            }
            let gauge_pa = model.gas.pressure_pa(port);
            remove_adapter(&mut model.things.ports[port])?;
            model.things.fluid[wet] = None;
            model.person.hand = Some(Tool::Adapter);
            Ok(opened(port, gauge_pa))
        }
    }
}

pub(super) fn hose_on(model: &mut Model, port: Port, push: Push) -> Done {
    reach::meter(model)?;
    reach::valve(model)?;
    match model.things.hose_port() {
        // A hose that is on can be pushed further.
        Some((on, how)) if on == port => {
            if how == push {
                return Err(Refusal::AlreadySo);
            }
            set_hose(&mut model.things.ports[port], Some(push))?;
            plain()
        }
        Some(_) => Err(Refusal::HoseInUse),
        None => {
            reach::tool(model, Tool::Hose)?;
            set_hose(&mut model.things.ports[port], Some(push))?;
            model.person.hand = None;
            plain()
        }
    }
}

pub(super) fn hose_off(model: &mut Model) -> Done {
    reach::meter(model)?;
    reach::valve(model)?;
    let Some((port, _)) = model.things.hose_port() else { return Err(Refusal::HoseFree) };
    if model.person.hand.is_some() {
        return Err(Refusal::HandFull);
    }
    let gauge_pa = model.gas.pressure_pa(port);
    set_hose(&mut model.things.ports[port], None)?;
    model.person.hand = Some(Tool::Hose);
    let open = model.things.ports[port].is_wide_open();
    if matches!(model.things.ports[port].fill, Fill::Tap { .. }) {
        // The hose was the joint.
        model.things.fluid[port.joint()] = None;
    }
    if open { Ok(opened(port, gauge_pa)) } else { plain() }
}

fn opened(port: Port, gauge_pa: f64) -> Vec<EventKind> {
    if gauge_pa > FELT_PA {
        vec![EventKind::OpenedUnderGas { port, pa: gauge_pa }]
    } else {
        Vec::new()
    }
}

/// One step with the plug.
fn step_plug(port: &mut PortState, step: PlugStep) -> Result<PlugResult, Refusal> {
    match (step, port.fill) {
        (PlugStep::Tighten(eighths), fill) => tighten(port, fill, eighths),
        (PlugStep::BreakLoose, Fill::Seated(past)) if past > 0.0 => {
            port.fill = Fill::Seated(0.0);
            Ok(PlugResult::Moved)
        }
        (PlugStep::BreakLoose, Fill::Leaning(past)) if past > 0.0 => {
            port.fill = Fill::Leaning(0.0);
            Ok(PlugResult::Moved)
        }
        (PlugStep::BreakLoose, Fill::Seated(_) | Fill::Started | Fill::Leaning(_)) => {
            Err(Refusal::AlreadyLoose)
        }
        (PlugStep::SpinOut, Fill::Seated(past) | Fill::Leaning(past)) if past > 0.0 => {
            Err(Refusal::TooTight)
        }
        (PlugStep::SpinOut, Fill::Seated(_) | Fill::Started | Fill::Leaning(_)) => {
            port.fill = Fill::Open;
            Ok(PlugResult::Opened)
        }
        (PlugStep::StartByHand, Fill::Open) => {
            port.fill = Fill::Started;
            Ok(PlugResult::Moved)
        }
        (PlugStep::StartByKey, Fill::Open) => {
            port.fill = Fill::Leaning(0.0);
            Ok(PlugResult::CrossThreaded)
        }
        (PlugStep::SpinIn, Fill::Started) => {
            port.fill = Fill::Seated(0.0);
            Ok(PlugResult::Moved)
        }
        (PlugStep::SpinIn, Fill::Seated(_) | Fill::Leaning(_)) => Err(Refusal::AlreadySo),
        (_, Fill::Tap { .. }) => Err(Refusal::CaptiveScrew),
        (PlugStep::StartByHand | PlugStep::StartByKey, _) => Err(Refusal::PortNotOpen),
        (PlugStep::SpinIn, Fill::Open) => Err(Refusal::NotStarted),
        (PlugStep::BreakLoose | PlugStep::SpinOut, Fill::Open | Fill::Adapter(_))
        | (PlugStep::SpinIn, Fill::Adapter(_)) => Err(Refusal::NoPlug),
    }
}

/// One step with the captive screw of a tap. The hose over the tap covers it.
fn step_screw(port: &mut PortState, step: PlugStep) -> Result<PlugResult, Refusal> {
    let Fill::Tap { past, hose } = port.fill else { return Err(Refusal::NoPlug) };
    if hose.is_some() {
        return Err(Refusal::HoseInTheWay);
    }
    let (past, result) = match step {
        PlugStep::BreakLoose if past > 0.0 => (0.0, PlugResult::Moved),
        PlugStep::BreakLoose => return Err(Refusal::AlreadyLoose),
        PlugStep::SpinOut if past > 0.0 => return Err(Refusal::ScrewTight),
        PlugStep::SpinOut if past < 0.0 => return Err(Refusal::AlreadySo),
        PlugStep::SpinOut => (LOOSENED_TURNS, PlugResult::Opened),
        PlugStep::SpinIn if past < 0.0 => (0.0, PlugResult::Moved),
        PlugStep::SpinIn => return Err(Refusal::AlreadySo),
        PlugStep::StartByHand | PlugStep::StartByKey => return Err(Refusal::CaptiveScrew),
        PlugStep::Tighten(_) if past < 0.0 => return Err(Refusal::ScrewNotSeated),
        PlugStep::Tighten(eighths) => {
            let now = (past + turns(eighths)?).max(0.0);
            let cracks = now > CRACK_TURNS && !port.cracked;
            port.cracked |= cracks;
            (now, if cracks { PlugResult::Cracked } else { PlugResult::Moved })
        }
    };
    port.fill = Fill::Tap { past, hose };
    Ok(result)
}

/// So many eighths as turns, where a hand turns that far at once.
fn turns(eighths: i16) -> Result<f64, Refusal> {
    if eighths == 0 || !(-8..=8).contains(&eighths) {
        return Err(Refusal::Absurd);
    }
    Ok(f64::from(eighths) / 8.0)
}

fn tighten(port: &mut PortState, fill: Fill, eighths: i16) -> Result<PlugResult, Refusal> {
    let by = turns(eighths)?;
    match fill {
        Fill::Seated(past) => {
            let now = (past + by).max(0.0);
            port.fill = Fill::Seated(now);
            if now > CRACK_TURNS && !port.cracked {
                port.cracked = true;
                return Ok(PlugResult::Cracked);
            }
            Ok(PlugResult::Moved)
        }
        Fill::Leaning(past) => {
            port.fill = Fill::Leaning((past + by).clamp(0.0, LEANING_STOP_TURNS));
            Ok(PlugResult::Moved)
        }
        Fill::Started => Err(Refusal::NotStarted),
        Fill::Tap { .. } => Err(Refusal::CaptiveScrew),
        Fill::Open | Fill::Adapter(_) => Err(Refusal::NoPlug),
    }
}

/// Screws the adapter in.
fn fit_adapter(port: &mut PortState) -> Result<(), Refusal> {
    match port.fill {
        Fill::Open => {
            port.fill = Fill::Adapter(None);
            Ok(())
        }
        Fill::Adapter(_) => Err(Refusal::AlreadySo),
        Fill::Tap { .. } => Err(Refusal::CaptiveScrew),
        Fill::Seated(_) | Fill::Started | Fill::Leaning(_) => Err(Refusal::PortNotOpen),
    }
}

/// Takes the adapter out; the port is open then.
fn remove_adapter(port: &mut PortState) -> Result<(), Refusal> {
    match port.fill {
        Fill::Adapter(None) => {
            port.fill = Fill::Open;
            Ok(())
        }
        Fill::Adapter(Some(_)) => Err(Refusal::HoseInTheWay),
        Fill::Tap { .. } => Err(Refusal::CaptiveScrew),
        Fill::Seated(_) | Fill::Started | Fill::Leaning(_) | Fill::Open => Err(Refusal::NoAdapter),
    }
}

/// Puts the hose on the adapter or over the tap, or takes it off.
fn set_hose(port: &mut PortState, push: Option<Push>) -> Result<(), Refusal> {
    match port.fill {
        Fill::Adapter(_) => {
            port.fill = Fill::Adapter(push);
            Ok(())
        }
        Fill::Tap { past, .. } => {
            port.fill = Fill::Tap { past, hose: push };
            Ok(())
        }
        Fill::Seated(_) | Fill::Started | Fill::Leaning(_) | Fill::Open => Err(Refusal::NoAdapter),
    }
}

/// The tool a plug step needs; the fingers' part needs free fingers or the key.
fn plug_tool(step: PlugStep, hand: Option<Tool>) -> Result<(), Refusal> {
    match (step, hand) {
        (_, Some(Tool::HexKey)) | (PlugStep::StartByHand, None) => Ok(()),
        (PlugStep::StartByHand, Some(_)) => Err(Refusal::HandFull),
        (
            PlugStep::BreakLoose
            | PlugStep::SpinOut
            | PlugStep::StartByKey
            | PlugStep::SpinIn
            | PlugStep::Tighten(_),
            _,
        ) => Err(Refusal::NeedsTool(Tool::HexKey)),
    }
}

/// A captive screw is turned with the slotted driver.
fn screw_tool(step: PlugStep, hand: Option<Tool>) -> Result<(), Refusal> {
    match step {
        PlugStep::StartByHand | PlugStep::StartByKey => Err(Refusal::CaptiveScrew),
        PlugStep::BreakLoose | PlugStep::SpinOut | PlugStep::SpinIn | PlugStep::Tighten(_) => {
            let held = hand == Some(Tool::SlottedDriver);
            held.then_some(()).ok_or(Refusal::NeedsTool(Tool::SlottedDriver))
        }
    }
}

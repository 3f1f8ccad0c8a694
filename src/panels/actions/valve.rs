//! The gas valve close up: switch, ports, plugs, adapter, hose, caps and screws.

use super::at_hand;
use super::furnace::{door, joint};
use super::list::List;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Door, Fitted, OnOff, Port, PortFill, Push, Screw, Tool, part};
use crate::senses::seen::{BurnersSeen, Seen};

/// The port that a part belongs to.
pub(in crate::panels) fn port_of(id: &str) -> Option<Port> {
    part(id)?.port
}

/// The screw that a part belongs to.
pub(in crate::panels) fn screw_of(id: &str) -> Option<Screw> {
    part(id)?.screw
}

pub(super) fn add(id: &str, seen: &Seen, list: &mut List) {
    let Some(furnace) = seen.furnace.as_ref() else { return };
    let port = port_of(id);
    let level = screw_of(id).and_then(Screw::level);
    let switch = matches!(id, "valve-switch" | "gas-valve");
    let near = port.is_some() || level.is_some() || switch;
    let close_up = near
        || matches!(
            id,
            "orifices"
                | "spring-mark"
                | "low-gas-switch"
                | "box-hose"
                | "flame-rod"
                | "ground-wire"
                | "igniter"
                | "high-coil"
        );
    let Some(burners) = furnace.burners.as_ref() else {
        if close_up {
            door(Door::Burner, furnace.burner_door, list);
        }
        return;
    };
    if switch {
        valve_switch(burners, list);
    }
    if let Some(port) = port {
        port_ways(port, seen, list);
    }
    if let Some(level) = level {
        screw_ways(level.screw(), burners.caps[level], seen, list);
    }
    if id == "box-hose" {
        at_hand::add("meter-minus", seen, list);
    }
}

fn valve_switch(burners: &BurnersSeen, list: &mut List) {
    match burners.valve_switch {
        OnOff::On => list.add(t!("gas-valve-off"), Action::ValveSwitch(OnOff::Off)),
        OnOff::Off => list.add(t!("gas-valve-on"), Action::ValveSwitch(OnOff::On)),
    }
}

fn port_ways(port: Port, seen: &Seen, list: &mut List) {
    let Some(fill) = seen.fill(port) else { return };
    let plug = |step| Action::Plug { port, step };
    match fill {
        PortFill::Snug => {
            list.need(Tool::HexKey, seen);
            list.add(t!("plug-break-loose"), plug(PlugStep::BreakLoose));
            list.add(t!("plug-spin-out"), plug(PlugStep::SpinOut));
            list.add(t!("plug-tighten"), plug(PlugStep::Tighten(1)));
        }
        PortFill::HandTight => {
            list.need(Tool::HexKey, seen);
            list.add(t!("plug-spin-out"), plug(PlugStep::SpinOut));
            list.add(t!("plug-tighten"), plug(PlugStep::Tighten(1)));
        }
        PortFill::Started => {
            list.need(Tool::HexKey, seen);
            list.add(t!("plug-spin-in"), plug(PlugStep::SpinIn));
            list.add(t!("plug-spin-out-again"), plug(PlugStep::SpinOut));
        }
        PortFill::Leaning => {
            list.need(Tool::HexKey, seen);
            list.add(t!("plug-break-loose"), plug(PlugStep::BreakLoose));
            list.add(t!("plug-spin-out-again"), plug(PlugStep::SpinOut));
            list.add(t!("plug-tighten"), plug(PlugStep::Tighten(1)));
        }
        PortFill::Open => {
            list.need(Tool::Adapter, seen);
            list.add(t!("adapter-in"), Action::Adapter { port, to: Fitted::On });
            list.add(t!("plug-start-fingers"), plug(PlugStep::StartByHand));
            list.add(t!("plug-start-key"), plug(PlugStep::StartByKey));
        }
        PortFill::BareAdapter => {
            list.need(Tool::Hose, seen);
            list.add(t!("hose-on"), Action::HoseOn { port, push: Push::Fully });
            list.add(t!("hose-on-halfway"), Action::HoseOn { port, push: Push::Halfway });
            list.add(t!("adapter-out"), Action::Adapter { port, to: Fitted::Off });
        }
        PortFill::TapSnug => {
            list.need(Tool::SlottedDriver, seen);
            list.add(t!("screw-break-loose"), plug(PlugStep::BreakLoose));
            list.add(t!("screw-loosen"), plug(PlugStep::SpinOut));
            list.add(t!("screw-tighten"), plug(PlugStep::Tighten(1)));
            onto_tap(port, list);
        }
        PortFill::TapLoose => {
            list.need(Tool::SlottedDriver, seen);
            list.add(t!("screw-loosen"), plug(PlugStep::SpinOut));
            list.add(t!("screw-tighten"), plug(PlugStep::Tighten(1)));
            onto_tap(port, list);
        }
        PortFill::TapOpen => {
            onto_tap(port, list);
            list.add(t!("screw-turn-in"), plug(PlugStep::SpinIn));
        }
        PortFill::Hose(push) | PortFill::HoseOnTap(push) | PortFill::HoseOnShutTap(push) => {
            list.need_free_hand(seen);
            match push {
                Push::Halfway => {
                    list.add(t!("hose-on"), Action::HoseOn { port, push: Push::Fully });
                }
                Push::Fully => {
                    list.add(t!("hose-bleed"), Action::HoseOn { port, push: Push::Halfway })
                }
            }
            list.add(t!("hose-off"), Action::HoseOff);
        }
    }
    joint(port.joint(), seen, list);
}

/// The hose straight over a tap.
fn onto_tap(port: Port, list: &mut List) {
    list.add(t!("hose-on-tap"), Action::HoseOn { port, push: Push::Fully });
    list.add(t!("hose-on-tap-halfway"), Action::HoseOn { port, push: Push::Halfway });
}

/// A cap and the screw under it.
pub(super) fn screw_ways(screw: Screw, cap: Fitted, seen: &Seen, list: &mut List) {
    list.need(Tool::SlottedDriver, seen);
    match cap {
        Fitted::On => list.add(t!("cap-off"), Action::Cap { screw, to: Fitted::Off }),
        Fitted::Off => {
            list.add(t!("screw-in"), Action::Turn { screw, eighths: 1 });
            list.add(t!("screw-out"), Action::Turn { screw, eighths: -1 });
            list.add(t!("cap-on"), Action::Cap { screw, to: Fitted::On });
        }
    }
}

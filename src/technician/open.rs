//! Isolating, and opening a port.

use super::mend::{check, check_opened, mend_open};
use super::plan::{Step, Technician, act, go, think, until_at_rest, with};
use super::task::{Until, pause, wait};
use super::{hose, run_furnace};
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Cock, Door, Fitted, Height, Joint, OnOff, Place, Port, PortFill, Push, Tool};
use crate::senses::seen::{Display, Seen, Sound};
use crate::units::PressureUnit;

/// Thermostat off, furnace at rest, power off, manual valve shut, burner door off, valve switch
/// off: three barriers, each tried.
pub(super) fn isolate() -> Vec<Step> {
    vec![
        think(thermostat_off),
        until_at_rest(),
        go(Place::PlantRoom),
        think(|_, seen| {
            let Some(furnace) = &seen.furnace else { return Vec::new() };
            let mut steps = Vec::new();
            if furnace.stage_jumper == Fitted::On {
                steps.push(act(Action::StageJumper(Fitted::Off)));
            }
            if furnace.switch == OnOff::On {
                steps.push(act(Action::FurnaceSwitch(OnOff::Off)));
            }
            if furnace.cock_deg != 0 {
                steps.push(act(Action::Cock { cock: Cock::Furnace, degrees: 0 }));
            }
            if furnace.burner_door == Fitted::On {
                steps.push(act(Action::Door { door: Door::Burner, to: Fitted::Off }));
            }
            steps
        }),
        go(Place::GasValve),
        think(|_, seen| switch(seen, OnOff::Off)),
    ]
}

fn thermostat_off(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    match &seen.hall {
        Some(_) => run_furnace::call_off(seen),
        None => vec![go(Place::Hall), think(|_, seen| run_furnace::call_off(seen))],
    }
}

/// The valve switch, unless it stands so.
pub(super) fn switch(seen: &Seen, to: OnOff) -> Vec<Step> {
    let stands = seen.furnace.as_ref().and_then(|f| f.burners.as_ref()).map(|b| b.valve_switch);
    if stands == Some(to) { Vec::new() } else { vec![act(Action::ValveSwitch(to))] }
}

/// Zero the meter in open air, open the isolated port, mend what waits for that, put adapter and
/// hose on, give gas back.
pub(super) fn open_port(port: Port) -> Vec<Step> {
    let mut steps = meter_ready();
    steps.push(go(Place::GasValve));
    steps.push(think(match port {
        Port::Inlet => |_, seen| plug_out(seen, Port::Inlet),
        Port::Manifold => |_, seen| plug_out(seen, Port::Manifold),
    }));
    if port == Port::Inlet {
        steps.push(mend_open());
        // A new gas valve brings a plug of its own.
        steps.push(think(|_, seen| plug_out(seen, Port::Inlet)));
    }
    steps.extend([
        think(match port {
            Port::Inlet => |_, seen| adapter_in(seen, Port::Inlet),
            Port::Manifold => |_, seen| adapter_in(seen, Port::Manifold),
        }),
        act(Action::Take(Tool::Hose)),
        act(Action::HoseOn { port, push: Push::Fully }),
        pause(3.0),
    ]);
    steps.extend(give_gas());
    if port == Port::Inlet {
        steps.push(think(hose::hisses));
        steps.extend(check_joint(port));
        steps.push(check_opened());
        steps.extend(hose::quick(port));
    }
    steps
}

/// On, in inches of water, warm, and zeroed in open air.
fn meter_ready() -> Vec<Step> {
    vec![
        think(|_, seen| match seen.meter.display {
            Display::Dark => vec![act(Action::MeterPower(OnOff::On)), pause(20.0)],
            Display::Number(_) | Display::OverRange => Vec::new(),
        }),
        think(flat_battery),
        think(|_, seen| {
            if seen.meter.unit == PressureUnit::InWc {
                Vec::new()
            } else {
                vec![act(Action::MeterUnit(PressureUnit::InWc))]
            }
        }),
        pause(4.0),
        // A zero that still drifts is no zero.
        think(|me, _| {
            if me.know.meter_warm {
                return Vec::new();
            }
            me.know.meter_warm = true;
            vec![wait(Until::MeterSteady { within_pa: 2.6, for_s: 300.0 }, 3600.0)]
        }),
        think(flat_battery),
        act(Action::MeterZero),
        pause(2.0),
    ]
}

/// Switched on and dark: a fresh battery, before anything is measured.
fn flat_battery(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let repair = Repair::ReplaceMeterBattery;
    if seen.meter.display != Display::Dark || me.careless || me.know.has_mended(repair) {
        return Vec::new();
    }
    me.know.note("manometer's battery flat");
    me.know.mended.push(repair);
    vec![
        go(Place::PlantRoom),
        act(Action::Mend(repair)),
        think(|_, seen| match seen.meter.display {
            Display::Dark => vec![act(Action::MeterPower(OnOff::On))],
            Display::Number(_) | Display::OverRange => Vec::new(),
        }),
        pause(20.0),
    ]
}

/// What is in a port.
fn fill(seen: &Seen, port: Port) -> Option<PortFill> {
    let burners = seen.furnace.as_ref()?.burners.as_ref()?;
    Some(burners.ports[port].fill)
}

/// The plug out, as it stands.
fn plug_out(seen: &Seen, port: Port) -> Vec<Step> {
    let loose = match fill(seen, port) {
        None | Some(PortFill::Open | PortFill::BareAdapter | PortFill::Hose(_)) => {
            return Vec::new();
        }
        Some(PortFill::Started) => true,
        Some(PortFill::HandTight | PortFill::Snug | PortFill::Leaning) => false,
    };
    let mut turns = Vec::new();
    if fill(seen, port) == Some(PortFill::HandTight) {
        // Nipped up first, so that it is felt coming loose.
        turns.push(act(Action::Plug { port, step: PlugStep::Tighten(1) }));
    }
    if !loose {
        turns.push(act(Action::Plug { port, step: PlugStep::BreakLoose }));
    }
    // Let what is trapped behind the plug seep away before it comes out.
    turns.push(pause(90.0));
    turns.push(wait(Until::Quiet(vec![Sound::Hiss]), 600.0));
    turns.push(act(Action::Plug { port, step: PlugStep::SpinOut }));
    with(Tool::HexKey, turns)
}

/// An adapter that somebody has left in the manifold port: out, and a plug in.
pub(super) fn bare_adapter_out(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    let port = Port::Manifold;
    if fill(seen, port) != Some(PortFill::BareAdapter) {
        return Vec::new();
    }
    let mut steps = vec![act(Action::Adapter { port, to: Fitted::Off }), act(Action::PutDown)];
    steps.extend(with(
        Tool::HexKey,
        vec![
            act(Action::Plug { port, step: PlugStep::StartByHand }),
            act(Action::Plug { port, step: PlugStep::SpinIn }),
            act(Action::Plug { port, step: PlugStep::Tighten(6) }),
        ],
    ));
    steps
}

fn adapter_in(seen: &Seen, port: Port) -> Vec<Step> {
    if fill(seen, port) == Some(PortFill::BareAdapter) {
        return Vec::new();
    }
    vec![act(Action::Take(Tool::Adapter)), act(Action::Adapter { port, to: Fitted::On })]
}

/// Manual valve slowly on, valve switch on, power on.
pub(super) fn give_gas() -> Vec<Step> {
    vec![
        go(Place::GasValve),
        think(|_, seen| {
            if seen.furnace.as_ref().is_some_and(|f| f.cock_deg == 90) {
                return Vec::new();
            }
            let cock = |degrees| act(Action::Cock { cock: Cock::Furnace, degrees });
            vec![cock(20), pause(3.0), cock(90)]
        }),
        think(|_, seen| switch(seen, OnOff::On)),
        think(|_, seen| {
            let off = seen.furnace.as_ref().is_some_and(|f| f.switch == OnOff::Off);
            if off { vec![act(Action::FurnaceSwitch(OnOff::On))] } else { Vec::new() }
        }),
        act(Action::Sniff(Height::Floor)),
    ]
}

/// Leak fluid on a port's joint, long enough to judge, wiped, written down.
pub(super) fn check_joint(port: Port) -> Vec<Step> {
    vec![think(match port {
        Port::Inlet => |me, _| check(me, Joint::InletPort),
        Port::Manifold => |me, _| check(me, Joint::ManifoldPort),
    })]
}

/// Zeroes the meter again and puts its hose back on the adapter, with the furnace isolated.
pub(super) fn hose_back_on(port: Port) -> Vec<Step> {
    let mut steps = meter_ready();
    steps.extend([
        go(Place::GasValve),
        act(Action::Take(Tool::Hose)),
        act(Action::HoseOn { port, push: Push::Fully }),
        pause(3.0),
    ]);
    steps.extend(give_gas());
    steps.extend(check_joint(port));
    steps
}

/// Lets the gas trapped in the hose seep out at a barb that is only half on, then takes it off.
pub(super) fn hose_off(port: Port) -> Vec<Step> {
    vec![
        act(Action::HoseOn { port, push: Push::Halfway }),
        wait(Until::MeterBetween(-40.0, 20.0), 240.0),
        act(Action::HoseOff),
        act(Action::PutDown),
    ]
}

//! Getting the hose onto a port: isolate, zero, open, adapter, hose; and closing the other port.

use super::{Hint, Remembered, STILL, end, to_plant_room};
use crate::appliance::ignition::ControlStatus;
use crate::hands::action::{Action, PlugStep};
use crate::parts::{Cock, Door, Fitted, JointVerdict, OnOff, Place, Port, PortFill, Push, Tool};
use crate::senses::seen::{BurnersSeen, Display, FluidSeen, FurnaceSeen, Seen, Sound};

/// Snug for a plug started by hand, in eighths past hand-tight: the middle of the band.
const SNUG_EIGHTHS: i16 = 6;
/// Pressure that counts as none when a hose comes off, in pascals (a tenth of an inch of water is
/// 25).
const NO_PRESSURE_PA: f64 = 20.0;
/// How long leak fluid is watched, in seconds (common practice: ten at least).
const DWELL_S: f64 = 15.0;

fn part(port: Port) -> &'static str {
    port.id()
}

fn fill(burners: &BurnersSeen, port: Port) -> PortFill {
    burners.ports[port].fill
}

fn other(port: Port) -> Port {
    match port {
        Port::Inlet => Port::Manifold,
        Port::Manifold => Port::Inlet,
    }
}

/// A hose that is on, but not fully.
pub(super) fn push_fully(port: Port, push: Push) -> Option<Hint> {
    match push {
        Push::Fully => None,
        Push::Halfway => Some(Hint::act(
            "The hose sits on the first barb only: it will leak and read low. Push it fully on.",
            part(port),
            Action::HoseOn { port, push: Push::Fully },
        )),
    }
}

/// The next step towards a hose on `port`.
pub(super) fn connect(seen: &Seen, remembered: &Remembered, port: Port) -> Option<Hint> {
    shut(seen).or_else(|| {
        let burners = seen.furnace.as_ref()?.burners.as_ref()?;
        end::look_inside(seen, remembered)
            .or_else(|| close(seen, burners, other(port)))
            .or_else(|| zero(seen))
            .or_else(|| open(seen, burners, port))
    })
}

/// Furnace at rest, power off, gas shut, kneeling at the valve.
pub(super) fn shut(seen: &Seen) -> Option<Hint> {
    let thermostat = seen.hall.as_ref().filter(|hall| hall.mode == OnOff::On);
    if thermostat.is_some() {
        return Some(Hint::act(
            "Switch heat off at the thermostat: the furnace must stand while it is worked on.",
            "thermostat-mode",
            Action::ThermostatMode(OnOff::Off),
        ));
    }
    let Some(furnace) = seen.furnace.as_ref() else {
        return Some(to_plant_room("Next is the gas valve."));
    };
    stop(seen, furnace)
        .or_else(|| isolate(furnace))
        .or_else(|| kneel(seen, furnace))
        .or_else(|| valve_off(furnace.burners.as_ref()?))
}

/// Furnace at rest, power off, gas shut, as far as it can be done without opening the door again.
pub(super) fn off(seen: &Seen, furnace: &FurnaceSeen) -> Option<Hint> {
    stop(seen, furnace)
        .or_else(|| isolate(furnace))
        .or_else(|| valve_off(furnace.burners.as_ref()?))
}

/// Both ports closed, with the gas shut; none when both plugs are in, or out of sight with the hose
/// off.
pub(super) fn close_both(seen: &Seen) -> Option<Hint> {
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    let snug = burners.is_none_or(|it| it.ports.values().all(|port| port.fill == PortFill::Snug));
    if snug && seen.meter.hose.is_none() {
        return None;
    }
    shut(seen).or_else(|| {
        let burners = burners?;
        Port::ALL.iter().find_map(|&port| close(seen, burners, port))
    })
}

/// Leak fluid on a joint that was disturbed, the gas behind it being at its pressure.
pub(super) fn prove(seen: &Seen, remembered: &Remembered, port: Port) -> Option<Hint> {
    if remembered.is_proven(port) {
        return None;
    }
    let joint = port.joint();
    let fluid = &seen.furnace.as_ref()?.burners.as_ref()?.fluid[joint];
    let name = joint.label().to_lowercase();
    match fluid {
        FluidSeen::Dry => want(seen, Tool::LeakFluid, "each joint you made is brushed under gas")
            .or_else(|| {
                Some(Hint::act(
                    format!("Brush the {name}, gas at its pressure behind it."),
                    part(port),
                    Action::LeakFluid(joint),
                ))
            }),
        FluidSeen::Quiet(since_s) if *since_s < DWELL_S => {
            Some(Hint::wait("Watch the fluid: growing bubbles are a leak.", part(port)))
        }
        FluidSeen::Quiet(_) => Some(Hint::act(
            format!("No bubbles grow. Write on the sheet that the {name} is tight."),
            part(port),
            Action::WriteJoint { joint, verdict: JointVerdict::Tight },
        )),
        FluidSeen::Bubbles(_) => None,
    }
}

/// Whether the control stands in the middle of a try to light.
fn tries_to_light(status: ControlStatus) -> bool {
    matches!(
        status,
        ControlStatus::InducerStarting
            | ControlStatus::AwaitsPressureSwitch
            | ControlStatus::AwaitsGasPressure
            | ControlStatus::Retry(_)
    )
}

/// A furnace that runs is stopped by its thermostat, so that it purges and cools.
fn stop(seen: &Seen, furnace: &FurnaceSeen) -> Option<Hint> {
    let fires = seen.sounds.iter().any(|s| matches!(s, Sound::BurnersLow | Sound::BurnersHigh));
    let turns = furnace.inducer > STILL || furnace.blower > STILL;
    if furnace.switch == OnOff::Off {
        None
    } else if fires {
        Some(Hint::go(
            "It fires. Stop it by its thermostat, so that it purges and cools: go to the hall.",
            Place::Hall,
        ))
    } else if turns && tries_to_light(furnace.status) {
        // It tries on as long as it is called.
        Some(Hint::go(
            "It is called and tries to light. Switch heat off at the thermostat first: go to the hall.",
            Place::Hall,
        ))
    } else {
        turns.then(|| {
            Hint::wait(
                "Let it purge and cool until inducer and blower stand. If it lights instead, the \
                 thermostat still calls. You may speed time up.",
                "status-lamp",
            )
        })
    }
}

/// Power off and gas shut before a port is opened.
fn isolate(furnace: &FurnaceSeen) -> Option<Hint> {
    if furnace.switch == OnOff::On {
        return Some(Hint::act(
            "No gas may flow while a port is open. First the furnace's power: switch it off.",
            "furnace-switch",
            Action::FurnaceSwitch(OnOff::Off),
        ));
    }
    if furnace.manual_valve.feeds() {
        return Some(Hint::act(
            "Shut the manual valve: its handle across the pipe.",
            "manual-valve",
            Action::Cock { cock: Cock::Furnace, degrees: 0 },
        ));
    }
    None
}

pub(super) fn kneel(seen: &Seen, furnace: &FurnaceSeen) -> Option<Hint> {
    if furnace.burner_door == Fitted::On {
        return Some(Hint::act(
            "Take the burner door off. The blower door stays on: its switch matters.",
            "burner-door",
            Action::Door { door: Door::Burner, to: Fitted::Off },
        ));
    }
    (seen.place != Place::GasValve)
        .then(|| Hint::act("Kneel at the gas valve.", "gas-valve", Action::Go(Place::GasValve)))
}

fn valve_off(burners: &BurnersSeen) -> Option<Hint> {
    (burners.valve_switch == OnOff::On).then(|| {
        Hint::act(
            "Switch the gas valve off too. Remember the three you closed: power, manual valve, \
             this switch.",
            "valve-switch",
            Action::ValveSwitch(OnOff::Off),
        )
    })
}

/// The meter on and zeroed, its hose in the air.
fn zero(seen: &Seen) -> Option<Hint> {
    match seen.meter.display {
        Display::Dark => Some(Hint::act(
            "Switch the manometer on.",
            "meter-power",
            Action::MeterPower(OnOff::On),
        )),
        Display::Number(shown) if shown.value != 0.0 && seen.meter.hose.is_none() => {
            Some(Hint::act(
                "Nothing presses on it, and it does not show zero. Zero it now, hose in the air: \
                 zeroed under pressure it would learn a wrong zero.",
                "meter-zero",
                Action::MeterZero,
            ))
        }
        Display::Number(_) | Display::OverRange => None,
    }
}

/// Taking a tool into an empty hand, or emptying the hand.
fn want(seen: &Seen, tool: Tool, why: &str) -> Option<Hint> {
    match seen.hand {
        Some(held) if held == tool => None,
        Some(held) => Some(empty(held)),
        None => Some(Hint::act(
            format!("Take the {}: {why}.", tool.label().to_lowercase()),
            tool.id(),
            Action::Take(tool),
        )),
    }
}

pub(super) fn empty(held: Tool) -> Hint {
    let text = format!("Put down the {} first.", held.label().to_lowercase());
    Hint::act(text, held.id(), Action::PutDown)
}

/// Opens a port and puts the hose on.
fn open(seen: &Seen, burners: &BurnersSeen, port: Port) -> Option<Hint> {
    let name = port.label().to_lowercase();
    let plug = |text: String, step| Hint::act(text, part(port), Action::Plug { port, step });
    match fill(burners, port) {
        PortFill::Snug => want(seen, Tool::HexKey, "the port plugs take it").or_else(|| {
            Some(plug(
                format!("At the {name}: break the plug loose with the short arm."),
                PlugStep::BreakLoose,
            ))
        }),
        PortFill::HandTight | PortFill::Started | PortFill::Leaning => {
            want(seen, Tool::HexKey, "the port plugs take it").or_else(|| {
                let out = plug(seep_text(port).into(), PlugStep::SpinOut);
                Some(Hint { patience_s: seep_s(port), ..out })
            })
        }
        PortFill::Open => want(seen, Tool::Adapter, "the hose needs a barb").or_else(|| {
            Some(Hint::act(
                format!("Screw the adapter into the {name}."),
                part(port),
                Action::Adapter { port, to: Fitted::On },
            ))
        }),
        PortFill::BareAdapter => want(seen, Tool::Hose, "it goes onto the adapter").or_else(|| {
            Some(Hint::act(
                "Push the hose on, over all the barbs.",
                part(port),
                Action::HoseOn { port, push: Push::Fully },
            ))
        }),
        PortFill::Hose(_) => None,
    }
}

/// The hose comes off when nothing presses in it any longer.
fn hose_off(seen: &Seen, port: Port, push: Push) -> Hint {
    match push {
        Push::Fully if feels_pressure(seen) => Hint::act(
            "The hose moves to the other port; this one is closed first. Gas is trapped in it: ease \
             it back to the first barb and let it seep.",
            part(port),
            Action::HoseOn { port, push: Push::Halfway },
        ),
        Push::Halfway if feels_pressure(seen) => {
            Hint::wait("Let it seep until the manometer shows next to nothing.", "meter")
        }
        Push::Fully | Push::Halfway => {
            Hint::act("Nothing presses any longer: pull the hose off.", part(port), Action::HoseOff)
        }
    }
}

/// What to wait for before a loose plug comes out.
fn seep_text(port: Port) -> &'static str {
    match port {
        Port::Inlet => {
            "Gas is trapped between the shut valve and here. The plug is loose: let it seep away, \
             a minute and a half, before you spin the plug out."
        }
        Port::Manifold => "Now spin it out with the long arm.",
    }
}

/// How long trapped gas takes to seep past a loose plug, in seconds; the manifold has emptied
/// itself through its orifices.
fn seep_s(port: Port) -> u32 {
    match port {
        Port::Inlet => 95,
        Port::Manifold => 0,
    }
}

/// Whether the manometer feels pressure, more than the tenth of an inch of water that counts as
/// none.
fn feels_pressure(seen: &Seen) -> bool {
    match seen.meter.display {
        Display::Dark => false,
        Display::Number(shown) => shown.pa() > NO_PRESSURE_PA,
        Display::OverRange => true,
    }
}

/// Closes a port: hose and adapter out, plug in, by hand first.
fn close(seen: &Seen, burners: &BurnersSeen, port: Port) -> Option<Hint> {
    let plug = |text: &str, step| Some(Hint::act(text, part(port), Action::Plug { port, step }));
    match fill(burners, port) {
        PortFill::Snug => None,
        PortFill::Hose(push) => match seen.hand {
            Some(held) => Some(empty(held)),
            None => Some(hose_off(seen, port, push)),
        },
        PortFill::BareAdapter => match seen.hand {
            Some(held) => Some(empty(held)),
            None => Some(Hint::act(
                "Take the adapter out.",
                part(port),
                Action::Adapter { port, to: Fitted::Off },
            )),
        },
        PortFill::Open => match seen.hand {
            None | Some(Tool::HexKey) => plug(
                "Start the plug with the fingers: started with the key it goes in across its \
                 thread.",
                PlugStep::StartByHand,
            ),
            Some(held) => Some(empty(held)),
        },
        PortFill::Started => want(seen, Tool::HexKey, "the plug takes it").or_else(|| {
            plug("Spin it in, the key between the fingers, until it stops.", PlugStep::SpinIn)
        }),
        PortFill::HandTight => want(seen, Tool::HexKey, "the plug takes it").or_else(|| {
            plug(
                "Snug it with the short arm, a good half turn; much more cracks the boss.",
                PlugStep::Tighten(SNUG_EIGHTHS),
            )
        }),
        PortFill::Leaning => want(seen, Tool::HexKey, "the plug takes it").or_else(|| {
            plug(
                "It leans: it is across its thread. Take it out and start again.",
                PlugStep::SpinOut,
            )
        }),
    }
}

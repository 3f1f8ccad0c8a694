//! How a part answers to the hand, as it is seen.

use super::lever::{across, lever_of};
use super::port::port_fill;
use super::turn::{Turning, cap_of, turning};
use crate::hands::action::{Action, PlugStep};
use crate::panels::actions::port_of;
use crate::panels::parts::canonical;
use crate::parts::{
    Door, Fitted, HandValve, Height, Joint, LowSide, OnOff, Opening, Place, Port, PortFill, Push,
    Screw, Spot, Tool, Window, part as part_row,
};
use crate::senses::seen::{Display, FluidSeen, HallSeen, Seen};
use crate::units::PressureUnit;

/// Half degrees Fahrenheit that one press of a thermostat button changes.
const PRESS_HALF_F: i16 = 1;

/// How a part answers to the hand, as it is seen now. Several may hold at once: an adapter is
/// pressed with the hose in hand and turned without.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Handling {
    /// What one press does, in this order; nothing where a press opens the list.
    pub press: Vec<Action>,
    /// How it turns, about its middle.
    pub turning: Turning,
    /// The hand valve whose lever it is.
    pub lever: Option<HandValve>,
    /// What strokes over it do.
    pub stroke: Option<Action>,
    /// What happens when one stays there for a moment.
    pub hold: Option<Action>,
    /// What a pull away from it does.
    pub pull: Option<Action>,
}

impl Handling {
    /// Whether the hand can do nothing here but open the list.
    #[must_use]
    pub fn is_none(&self) -> bool {
        *self == Self::default()
    }

    /// What Space does on a part: the press, else the strokes, the hold, the pull.
    #[must_use]
    pub fn at_once(&self) -> Vec<Action> {
        if !self.press.is_empty() {
            return self.press.clone();
        }
        [&self.stroke, &self.hold, &self.pull].into_iter().flatten().take(1).cloned().collect()
    }
}

/// How `part` answers to the hand. `height` is where on it the hand is, for air at two heights.
#[must_use]
pub fn handling(part: &str, height: Height, seen: &Seen) -> Handling {
    let id = canonical(part);
    if let Some(tool) = Tool::from_id(id) {
        return Handling { press: tool_from_roll(tool, seen), ..Handling::default() };
    }
    let mut it = Handling {
        press: press(id, seen).into_iter().collect(),
        turning: turning(id, seen),
        lever: lever_of(id),
        stroke: stroke(id, seen),
        hold: hold(id, height, seen),
        pull: pull(id, seen),
    };
    if let Some(hand_valve) = it.lever {
        it.press = across(hand_valve, seen).into_iter().collect();
    }
    if it.is_none() {
        it.press = measured(id, seen).or_else(|| looked(id)).into_iter().collect();
    }
    it
}

/// A tool goes into the hand, or back to the roll; what was in the hand goes back first.
fn tool_from_roll(tool: Tool, seen: &Seen) -> Vec<Action> {
    match seen.hand {
        Some(held) if held == tool => vec![Action::PutDown],
        Some(_) => vec![Action::PutDown, Action::Take(tool)],
        None => vec![Action::Take(tool)],
    }
}

fn flipped(now: OnOff) -> OnOff {
    match now {
        OnOff::On => OnOff::Off,
        OnOff::Off => OnOff::On,
    }
}

fn changed(now: Fitted) -> Fitted {
    match now {
        Fitted::On => Fitted::Off,
        Fitted::Off => Fitted::On,
    }
}

fn moved(now: Opening) -> Opening {
    match now {
        Opening::Open => Opening::Closed,
        Opening::Closed => Opening::Open,
    }
}

/// What one press does: switches, keys, doors, a part set to its hole.
fn press(id: &str, seen: &Seen) -> Option<Action> {
    meter_key(id, seen)
        .or_else(|| seen.hall.as_ref().and_then(|hall| in_hall(id, hall)))
        .or_else(|| at_furnace(id, seen))
        .or_else(|| set_to_port(id, seen))
        .or_else(|| cap_back(id, seen))
}

fn meter_key(id: &str, seen: &Seen) -> Option<Action> {
    match id {
        "meter-power" => Some(Action::MeterPower(match seen.meter.display {
            Display::Dark => OnOff::On,
            Display::Number(_) | Display::OverRange => OnOff::Off,
        })),
        "meter-zero" => Some(Action::MeterZero),
        "meter-unit" => {
            let all = PressureUnit::ALL;
            let at = all.iter().position(|unit| *unit == seen.meter.unit)?;
            let next = all.iter().cycle().nth(at + 1)?;
            Some(Action::MeterUnit(*next))
        }
        "meter-minus" => Some(Action::MeterLowSide(match seen.meter.low_side {
            LowSide::Air => LowSide::BurnerBox,
            LowSide::BurnerBox => LowSide::Air,
        })),
        _ => None,
    }
}

fn in_hall(id: &str, hall: &HallSeen) -> Option<Action> {
    match id {
        "thermostat-mode" => Some(Action::ThermostatMode(flipped(hall.mode))),
        "thermostat-up" => {
            Some(Action::Setpoint(hall.setpoint_half_f.saturating_add(PRESS_HALF_F)))
        }
        "thermostat-down" => {
            Some(Action::Setpoint(hall.setpoint_half_f.saturating_sub(PRESS_HALF_F)))
        }
        "hall-window" => Some(Action::Window { window: Window::Hall, to: moved(hall.window) }),
        _ => None,
    }
}

fn at_furnace(id: &str, seen: &Seen) -> Option<Action> {
    let furnace = seen.furnace.as_ref()?;
    let off = furnace.burner_door == Fitted::Off;
    match id {
        "burner-door" => {
            Some(Action::Door { door: Door::Burner, to: changed(furnace.burner_door) })
        }
        "blower-door" => {
            Some(Action::Door { door: Door::Blower, to: changed(furnace.blower_door) })
        }
        "furnace-switch" => Some(Action::FurnaceSwitch(flipped(furnace.switch))),
        "plant-window" => {
            Some(Action::Window { window: Window::PlantRoom, to: moved(furnace.window) })
        }
        "stage-jumper" if off => Some(Action::StageJumper(changed(furnace.stage_jumper))),
        "rollout-1" | "rollout-2" if off => Some(Action::ResetRollout),
        "tag" => Some(Action::Tag(changed(furnace.tag))),
        "valve-switch" => {
            let burners = furnace.burners.as_ref()?;
            Some(Action::ValveSwitch(flipped(burners.valve_switch)))
        }
        // Seen from across the room, they are gone to first.
        "gas-valve" | "burners" | "orifices" | "igniter" | "flame-rod" | "manifold"
            if off && seen.place == Place::PlantRoom =>
        {
            Some(Action::Go(Place::GasValve))
        }
        _ => None,
    }
}

/// What is set to a port by hand: plug, adapter or hose.
fn set_to_port(id: &str, seen: &Seen) -> Option<Action> {
    let (port, fill) = port_fill(id, seen)?;
    match (fill, seen.hand) {
        (PortFill::Open, Some(Tool::Adapter)) => Some(Action::Adapter { port, to: Fitted::On }),
        (PortFill::Open, Some(Tool::HexKey)) => {
            Some(Action::Plug { port, step: PlugStep::StartByKey })
        }
        (PortFill::Open, None) => Some(Action::Plug { port, step: PlugStep::StartByHand }),
        // The first barb, then the second.
        (PortFill::BareAdapter, Some(Tool::Hose)) => {
            Some(Action::HoseOn { port, push: Push::Halfway })
        }
        (PortFill::Hose(Push::Halfway), None) => Some(Action::HoseOn { port, push: Push::Fully }),
        (
            PortFill::Open
            | PortFill::BareAdapter
            | PortFill::Hose(_)
            | PortFill::Snug
            | PortFill::HandTight
            | PortFill::Started
            | PortFill::Leaning,
            _,
        ) => None,
    }
}

/// A cap that lies beside goes back on its screw.
pub(super) fn cap_back(id: &str, seen: &Seen) -> Option<Action> {
    let screw = Screw::from_id(&id.replace("-cap", "-screw")).filter(|_| id.ends_with("-cap"))?;
    (cap_of(screw, seen)? == Fitted::Off).then_some(Action::Cap { screw, to: Fitted::On })
}

/// The joint that fluid can be brushed on at a part.
fn joint_of(id: &str) -> Option<Joint> {
    port_of(id).map(Port::joint).or_else(|| Joint::from_id(id))
}

/// Strokes: fluid with the bottle in hand, a cloth over what is wet with nothing in hand.
fn stroke(id: &str, seen: &Seen) -> Option<Action> {
    let joint = joint_of(id)?;
    if seen.hand == Some(Tool::LeakFluid) {
        return Some(Action::LeakFluid(joint));
    }
    (seen.hand.is_none() && is_wet(joint, seen)).then_some(Action::Wipe(joint))
}

fn is_wet(joint: Joint, seen: &Seen) -> bool {
    let burners = seen.furnace.as_ref().and_then(|furnace| furnace.burners.as_ref());
    let fluid = match joint.is_in_yard() {
        true => seen.yard.as_ref().map(|yard| yard.fluid[joint]),
        false => burners.map(|burners| burners.fluid[joint]),
    };
    fluid.is_some_and(|fluid| fluid != FluidSeen::Dry)
}

/// The nose or the detector, held to the air of a place for a moment.
fn hold(id: &str, height: Height, seen: &Seen) -> Option<Action> {
    let height = match id {
        "breathing-zone" => Height::Head,
        "floor-zone" => Height::Floor,
        "yard-air" => height,
        _ => return None,
    };
    let probes = seen.hand == Some(Tool::GasDetector);
    Some(if probes { Action::Probe(height) } else { Action::Sniff(height) })
}

fn pull(id: &str, seen: &Seen) -> Option<Action> {
    let (_, fill) = port_fill(id, seen)?;
    match fill {
        PortFill::Hose(_) if seen.hand.is_none() => Some(Action::HoseOff),
        PortFill::Hose(_)
        | PortFill::Snug
        | PortFill::HandTight
        | PortFill::Started
        | PortFill::Leaning
        | PortFill::Open
        | PortFill::BareAdapter => None,
    }
}

/// The instrument in hand, held to the one spot that a part has for it.
fn measured(id: &str, seen: &Seen) -> Option<Action> {
    let held = seen.hand?;
    let mut spots =
        Spot::at(id).filter(|spot| spot.tool() == held && spot.places().contains(&seen.place));
    let spot = spots.next()?;
    spots.next().is_none().then_some(Action::Measure(spot))
}

fn looked(id: &str) -> Option<Action> {
    part_row(id)?.subject.map(Action::Look)
}

//! How a part answers to the hand, as it is seen.

use super::lever::{across, lever_of};
use super::port::port_fill;
use super::turn::{Turning, turning};
use crate::hands::action::{Action, PlugStep};
use crate::panels::actions::{self, port_of};
use crate::panels::parts::canonical;
use crate::parts::{
    Fitted, HandValve, Height, Joint, Place, Port, PortFill, Push, Screw, Spot, Tool,
    part as part_row,
};
use crate::senses::seen::{FluidSeen, Seen};

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

/// What one press does: switches, keys, doors, a part set to its hole.
fn press(id: &str, seen: &Seen) -> Option<Action> {
    flipped(id, seen)
        .or_else(|| approached(id, seen))
        .or_else(|| set_to_port(id, seen))
        .or_else(|| cap_back(id, seen))
}

/// Switches, keys, doors and the like: what their list has of that kind.
fn flipped(id: &str, seen: &Seen) -> Option<Action> {
    match id {
        "meter-unit" => return seen.meter().map(|meter| Action::MeterUnit(meter.unit.next())),
        "burner-door" | "blower-door" | "furnace-switch" | "valve-switch" | "tag"
        | "plant-window" | "hall-window" | "thermostat-mode" | "thermostat-up"
        | "thermostat-down" | "meter-power" | "meter-zero" | "meter-minus" => {}
        "stage-jumper" | "rollout-1" | "rollout-2" if is_open(seen) => {}
        _ => return None,
    }
    let of_that_kind = |action: &Action| {
        matches!(
            action,
            Action::Door { .. }
                | Action::FurnaceSwitch(_)
                | Action::ValveSwitch(_)
                | Action::Tag(_)
                | Action::Window { .. }
                | Action::ThermostatMode(_)
                | Action::Setpoint(_)
                | Action::MeterPower(_)
                | Action::MeterZero
                | Action::MeterLowSide(_)
                | Action::StageJumper(_)
                | Action::ResetRollout
        )
    };
    actions::choices(id, seen).into_iter().map(|choice| choice.action).find(of_that_kind)
}

/// Whether the burner door is off.
fn is_open(seen: &Seen) -> bool {
    seen.furnace.as_ref().is_some_and(|furnace| furnace.burner_door == Fitted::Off)
}

/// What is seen from across the room is gone to first.
fn approached(id: &str, seen: &Seen) -> Option<Action> {
    let close_up =
        matches!(id, "gas-valve" | "burners" | "orifices" | "igniter" | "flame-rod" | "manifold");
    let across = seen.place == Place::PlantRoom && is_open(seen);
    (close_up && across).then_some(Action::Go(Place::GasValve))
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
        (
            PortFill::BareAdapter | PortFill::TapSnug | PortFill::TapLoose | PortFill::TapOpen,
            Some(Tool::Hose),
        ) => Some(Action::HoseOn { port, push: Push::Halfway }),
        (
            PortFill::Hose(Push::Halfway)
            | PortFill::HoseOnTap(Push::Halfway)
            | PortFill::HoseOnShutTap(Push::Halfway),
            None,
        ) => Some(Action::HoseOn { port, push: Push::Fully }),
        (
            PortFill::Open
            | PortFill::BareAdapter
            | PortFill::Hose(_)
            | PortFill::Snug
            | PortFill::HandTight
            | PortFill::Started
            | PortFill::Leaning
            | PortFill::TapSnug
            | PortFill::TapLoose
            | PortFill::TapOpen
            | PortFill::HoseOnTap(_)
            | PortFill::HoseOnShutTap(_),
            _,
        ) => None,
    }
}

/// A cap that lies beside goes back on its screw.
pub(super) fn cap_back(id: &str, seen: &Seen) -> Option<Action> {
    let screw = Screw::from_id(&id.replace("-cap", "-screw")).filter(|_| id.ends_with("-cap"))?;
    (seen.cap(screw)? == Fitted::Off).then_some(Action::Cap { screw, to: Fitted::On })
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
    let wet = seen.fluid(joint).is_some_and(|fluid| fluid != FluidSeen::Dry);
    (seen.hand.is_none() && wet).then_some(Action::Wipe(joint))
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
        PortFill::Hose(_) | PortFill::HoseOnTap(_) | PortFill::HoseOnShutTap(_)
            if seen.hand.is_none() =>
        {
            Some(Action::HoseOff)
        }
        PortFill::Hose(_)
        | PortFill::HoseOnTap(_)
        | PortFill::HoseOnShutTap(_)
        | PortFill::TapSnug
        | PortFill::TapLoose
        | PortFill::TapOpen
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

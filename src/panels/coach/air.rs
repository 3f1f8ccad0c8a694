//! Gas where it does not belong comes before everything else.

use super::hint::Hint;
use super::lead::zone;
use super::memory::Remembered;
use super::paper::{fuel, supply};
use crate::appliance::plate::Fuel;
use crate::hands::action::Action;
use crate::parts::{HandValve, Height, Joint, JointVerdict, Opening, Place, Push, Window};
use crate::senses::seen::{FluidSeen, FurnaceSeen, Seen, Smell, Sound};

/// How long a room is aired before the nose tries again, in seconds (common practice: some
/// minutes).
const AIR_S: u32 = 120;

/// Strong gas or an alarm: out.
pub(super) fn danger(seen: &Seen) -> Option<Hint> {
    let alarm = seen.sounds.contains(&Sound::Alarm);
    if smell(seen) < Smell::Strong && !alarm {
        return None;
    }
    Some(match seen.place {
        Place::Away => Hint::say(t!("coach-out")),
        Place::Yard | Place::PlantRoom | Place::GasValve | Place::Hall => {
            Hint::go(t!("coach-get-out"), Place::Away)
        }
    })
}

/// What the nose got last, from breathing or from sniffing on purpose.
fn smell(seen: &Seen) -> Smell {
    seen.smell.max(seen.sniffed.map_or(Smell::None, |(_, smell)| smell))
}

/// Hissing, growing bubbles or a clear smell: the gas is shut first, then the air cleared.
pub(super) fn leak(seen: &Seen) -> Option<Hint> {
    let furnace = seen.furnace.as_ref()?;
    let hiss = seen.sounds.contains(&Sound::Hiss);
    let clear = smell(seen) >= Smell::Clear;
    let bubbling = bubbling(furnace);
    let signs = [
        (hiss, t!("coach-hisses")),
        (bubbling.is_some(), t!("coach-bubbles")),
        (clear, t!("coach-smells")),
    ];
    if furnace.manual_valve.feeds()
        && let Some((_, sign)) = signs.iter().find(|(there, _)| *there)
    {
        return Some(Hint::act(
            *sign,
            "manual-valve",
            Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 },
        ));
    }
    if clear {
        return Some(air(seen, furnace));
    }
    // A hose eased back to let trapped gas seep is no leak.
    let eased = match seen.hose() {
        Some((port, Push::Halfway)) => Some(port.joint()),
        Some((_, Push::Fully)) | None => None,
    };
    bubbling.filter(|joint| Some(*joint) != eased).map(|joint| write_leak(seen, joint))
}

fn bubbling(furnace: &FurnaceSeen) -> Option<Joint> {
    let fluid = &furnace.burners.as_ref()?.fluid;
    let mut growing = fluid.iter().filter(|(_, fluid)| matches!(fluid, FluidSeen::Bubbles(_)));
    growing.next().map(|(joint, _)| joint)
}

/// The window, time, and the nose again.
fn air(seen: &Seen, furnace: &FurnaceSeen) -> Hint {
    if furnace.window == Opening::Closed {
        return Hint::act(
            t!("coach-air-window"),
            "plant-window",
            Action::Window { window: Window::PlantRoom, to: Opening::Open },
        );
    }
    match seen.sniffed {
        Some((height, noticed)) if noticed >= Smell::Clear => Hint {
            patience_s: AIR_S,
            ..Hint::act(t!("coach-air-wait"), zone(height), Action::Sniff(height))
        },
        Some(_) | None => Hint::wait(t!("coach-air-until"), "plant-window"),
    }
}

fn write_leak(seen: &Seen, joint: Joint) -> Hint {
    let last = seen.sheet.joints.iter().rev().find(|(at, _)| *at == joint);
    let name = joint.label().to_lowercase();
    if last.is_some_and(|(_, verdict)| *verdict == JointVerdict::Leaking) {
        return Hint::act(t!("coach-leak-written", joint = name), joint.id(), Action::Wipe(joint));
    }
    Hint::act(
        t!("coach-leak-write", joint = name),
        joint.id(),
        Action::WriteJoint { joint, verdict: JointVerdict::Leaking },
    )
}

/// Into the house, nose first.
pub(super) fn arrive(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    if seen.sniffed.is_some() || seen.detector.is_some() {
        return None;
    }
    let yard = supply(seen, remembered).is_some();
    let (lies, height) = match fuel(seen, remembered) {
        Some(Fuel::Propane) if yard => (t!("coach-nose-tank"), Height::Floor),
        Some(Fuel::Natural) if yard => (t!("coach-nose-meter"), Height::Head),
        Some(Fuel::Propane) => (t!("coach-nose-propane"), Height::Floor),
        Some(Fuel::Natural) => (t!("coach-nose-natural"), Height::Head),
        None => (t!("coach-nose-unknown"), Height::Floor),
    };
    Some(match seen.place {
        Place::PlantRoom => Hint::act(lies, zone(height), Action::Sniff(height)),
        Place::Yard | Place::GasValve | Place::Hall | Place::Away => {
            Hint::go(t!("coach-arrived"), Place::PlantRoom)
        }
    })
}

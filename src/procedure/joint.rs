//! Leak fluid on a joint: brushed, watched, written down, wiped.

use super::goal::{after, at, at_furnace, at_valve, in_hand};
use super::{Awaited, Memory, Step, isolate};
use crate::hands::action::Action;
use crate::parts::{Door, Fitted, Joint, JointVerdict, Place, Tool};
use crate::senses::seen::{FluidSeen, Seen};

/// How long leak fluid is watched, in seconds (common practice: ten at least).
pub(super) const DWELL_S: f64 = 15.0;

/// The fluid on a joint, where it can be seen.
fn fluid(seen: &Seen, joint: Joint) -> FluidSeen {
    let burners = seen.furnace.as_ref().and_then(|it| it.burners.as_ref());
    let at_furnace = burners.map(|it| it.fluid[joint]);
    at_furnace.or(seen.yard.as_ref().map(|it| it.fluid[joint])).unwrap_or_default()
}

/// Checked with whatever pressure is on it now.
pub(super) fn checked(seen: &Seen, memory: &Memory, joint: Joint) -> Step {
    let brushed = memory.brushed.filter(|(one, _)| *one == joint);
    if memory.checked == Some(joint) {
        return match brushed {
            Some(_) => Step::Do(Action::Wipe(joint)),
            None if seen.hand == Some(Tool::LeakFluid) => Step::Do(Action::PutDown),
            None => Step::Met,
        };
    }
    let there = match joint {
        Joint::InletPort | Joint::ManifoldPort => {
            at_valve(seen).then(memory, || isolate::door(seen, memory, Door::Burner, Fitted::Off))
        }
        Joint::Union | Joint::Connector => at_furnace(seen),
        Joint::SupplyRegulator | Joint::FirstRegulator | Joint::TankValve | Joint::Riser => {
            at(seen, &[Place::Yard])
        }
    };
    there.then(memory, || match brushed {
        None => after(memory, || in_hand(seen, Tool::LeakFluid), Action::LeakFluid(joint)),
        Some((_, tick)) => {
            let watched = memory.since_s(tick) >= DWELL_S;
            let dwell = if watched { Step::Met } else { Step::Wait(Awaited::Dwell) };
            let verdict = match fluid(seen, joint) {
                FluidSeen::Bubbles(_) => JointVerdict::Leaking,
                FluidSeen::Quiet(_) | FluidSeen::Dry => JointVerdict::Tight,
            };
            dwell.then(memory, || Step::Do(Action::WriteJoint { joint, verdict }))
        }
    })
}

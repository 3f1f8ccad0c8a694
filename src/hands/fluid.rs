//! Leak fluid: brushed on, wiped off, judged.

use super::done::Done;
use super::event::EventKind;
use super::reach;
use super::refusal::Refusal;
use crate::model::{Brushed, Model};
use crate::parts::{Joint, Port, Tool};

pub(super) fn brush(model: &mut Model, joint: Joint) -> Done {
    reach::joint(model, joint)?;
    reach::tool(model, Tool::LeakFluid)?;
    let open = Port::ALL
        .iter()
        .any(|port| port.joint() == joint && model.things.ports[*port].is_wide_open());
    if open {
        return Err(Refusal::NothingToBrush);
    }
    let judged = judge_fluid(model, joint);
    model.things.fluid[joint] = Some(Brushed::fresh(model.stretch(joint)));
    Ok(judged.into_iter().collect())
}

pub(super) fn wipe(model: &mut Model, joint: Joint) -> Done {
    reach::joint(model, joint)?;
    match judge_fluid(model, joint) {
        Some(judged) => Ok(vec![judged]),
        None => Err(Refusal::NotWet),
    }
}

/// Takes the fluid off a joint and says what it could show.
fn judge_fluid(model: &mut Model, joint: Joint) -> Option<EventKind> {
    let judged = look_at_fluid(model, joint);
    model.things.fluid[joint] = None;
    judged
}

/// What the fluid on a joint could show so far, from the best stretch of watching.
pub(super) fn look_at_fluid(model: &Model, joint: Joint) -> Option<EventKind> {
    let brushed = model.things.fluid[joint]?;
    let it = brushed.best();
    Some(EventKind::FluidJudged {
        joint,
        lowest_pa: it.lowest_pa,
        dwell_s: it.dwell_s,
        firing: it.firing,
        bubbles: brushed.fluid.shows(),
        manual_valve: it.manual_valve,
    })
}

/// Takes the fluid off everywhere and says what it could show.
pub(crate) fn judge_all_fluid(model: &mut Model) -> Vec<EventKind> {
    Joint::ALL.iter().filter_map(|&joint| judge_fluid(model, joint)).collect()
}

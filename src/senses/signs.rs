//! Signs of wear in plain view, from the condition that the model works with.

use super::seen::{HoseLook, Note, Rod, Signs, Water};
use crate::model::Model;
use crate::parts::{Fitted, Subject, Tool};
use crate::setup::HoseState;

/// Share of the flame current held back from which the film on the rod shows.
pub(crate) const FILM_SHOWS: f64 = 0.2;
/// Share of the current lost to ground from which the wire is seen to be loose.
const GROUND_SHOWS: f64 = 0.2;
/// Head of water that fills a hose from wall to wall, in pascals (0.02 in. w.c.).
const WATER_SHOWS_PA: f64 = 5.0;
/// Width of an orifice beside the widest below which something sits in it.
const PLUGGED: f64 = 0.9;

/// What is plain to see at the open burner compartment.
pub(super) fn plain_signs(model: &Model, notes: &[Note]) -> Signs {
    let condition = &model.setup.condition;
    let looked = notes.iter().any(|note| note.subject == Subject::Orifices);
    Signs {
        box_hose: match condition.valve.box_hose {
            HoseState::On => Fitted::On,
            HoseState::Off => Fitted::Off,
        },
        draft_hose: condition.sensing.hose,
        draft_water: water(condition.sensing.water_pa),
        rod: if condition.burners.rod_dirty > FILM_SHOWS { Rod::Filmed } else { Rod::Bright },
        ground: if condition.burners.ground_poor > GROUND_SHOWS { Fitted::Off } else { Fitted::On },
        blown: condition.burners.exchanger_hole * model.furnace.blower(),
        plugged: narrowest(model).filter(|_| looked),
    }
}

/// The orifice in which something sits, by its place in the row.
pub(super) fn narrowest(model: &Model) -> Option<usize> {
    let holes_m = &model.setup.furnace.orifices_m;
    let widest_m = holes_m.iter().copied().fold(0.0, f64::max);
    holes_m.iter().position(|&hole_m| hole_m < PLUGGED * widest_m)
}

/// How the manometer's hose looks: nothing is seen of it while it lies rolled up.
pub(super) fn hose_look(model: &Model) -> HoseLook {
    let out = model.person.hand == Some(Tool::Hose) || model.things.hose_port().is_some();
    let sound_lag_s = model.setup.sound.as_ref().map_or(model.setup.meter.lag_s, |s| s.meter.lag_s);
    if !out {
        HoseLook::Clear
    } else if water(model.setup.condition.meter.wear.water_pa) == Water::Stands {
        HoseLook::Wet
    } else if model.setup.meter.lag_s > sound_lag_s {
        HoseLook::Pinched
    } else {
        HoseLook::Clear
    }
}

fn water(head_pa: f64) -> Water {
    if head_pa > WATER_SHOWS_PA { Water::Stands } else { Water::None }
}

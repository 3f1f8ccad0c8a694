//! Signs of wear in plain view, from the condition that the model works with.

use crate::bench::Bench;
use crate::parts::{Fitted, Subject, Tool};
use crate::senses::seen::{HoseLook, Rod, Signs, Water};
use crate::setup::HoseState;

/// Share of the flame current held back from which the film on the rod shows.
pub(crate) const FILM_SHOWS: f64 = 0.2;
/// Share of the current lost to ground from which the wire is seen to be loose.
const GROUND_SHOWS: f64 = 0.2;
/// Head of water that fills a hose from wall to wall, in pascals (0.02 in. w.c.).
const WATER_SHOWS_PA: f64 = 5.0;
/// Width of an orifice beside the widest below which something sits in it.
const PLUGGED: f64 = 0.9;

impl Bench {
    /// What is plain to see at the open burner compartment.
    pub(crate) fn plain_signs(&self) -> Signs {
        let condition = &self.setup.condition;
        let looked = self.sheet.notes.iter().any(|note| note.subject == Subject::Orifices);
        Signs {
            box_hose: match condition.valve.box_hose {
                HoseState::On => Fitted::On,
                HoseState::Off => Fitted::Off,
            },
            draft_hose: condition.sensing.hose,
            draft_water: water(condition.sensing.water_pa),
            rod: if condition.burners.rod_dirty > FILM_SHOWS { Rod::Filmed } else { Rod::Bright },
            ground: if condition.burners.ground_poor > GROUND_SHOWS {
                Fitted::Off
            } else {
                Fitted::On
            },
            blown: condition.burners.exchanger_hole * self.furnace.blower(),
            plugged: self.narrowest().filter(|_| looked),
        }
    }

    /// The orifice in which something sits, by its place in the row.
    pub(crate) fn narrowest(&self) -> Option<usize> {
        let holes_m = &self.setup.furnace.orifices_m;
        let widest_m = holes_m.iter().copied().fold(0.0, f64::max);
        holes_m.iter().position(|&hole_m| hole_m < PLUGGED * widest_m)
    }

    /// How the manometer's hose looks: nothing is seen of it while it lies rolled up.
    pub(crate) fn hose_look(&self) -> HoseLook {
        let out = self.person.hand == Some(Tool::Hose) || self.hose_port().is_some();
        let sound_lag_s =
            self.setup.sound.as_ref().map_or(self.setup.meter.lag_s, |s| s.meter.lag_s);
        if !out {
            HoseLook::Clear
        } else if water(self.setup.condition.meter.wear.water_pa) == Water::Stands {
            HoseLook::Wet
        } else if self.setup.meter.lag_s > sound_lag_s {
            HoseLook::Pinched
        } else {
            HoseLook::Clear
        }
    }
}

fn water(head_pa: f64) -> Water {
    if head_pa > WATER_SHOWS_PA { Water::Stands } else { Water::None }
}

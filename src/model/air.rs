//! Gas in the air where the person stands: what the nose breathes and a detector would show.

use super::state::Model;
use crate::parts::{Height, Place};
use crate::physics::room::Strength;

/// Air that passes a supply regulator outdoors, in m³/s (light air in a sheltered corner, from
/// memory).
const OUTDOOR_AIR_M3_S: f64 = 0.05;
/// Share of the plant room's gas that is in the hall's air (our own house).
const IN_HALL: f64 = 0.3;

impl Model {
    fn fraction_at(&self, height: Height) -> f64 {
        let [vestibule, floor, head] = self.room.fractions();
        match (self.person.place, height) {
            (Place::PlantRoom | Place::GasValve, Height::Floor) => floor,
            (Place::PlantRoom, Height::Head) => head,
            // Kneeling at the valve the nose is in front of the vestibule.
            (Place::GasValve, Height::Head) => vestibule,
            (Place::Hall, Height::Floor | Height::Head) => IN_HALL * head,
            (Place::Yard, Height::Floor | Height::Head) => {
                let vented = self.gas.vented();
                vented / (vented + OUTDOOR_AIR_M3_S)
            }
            (Place::Away, Height::Floor | Height::Head) => 0.0,
        }
    }

    /// How strongly gas smells at a height here.
    pub(crate) fn smell_at(&self, height: Height) -> Strength {
        let share = self.room.of_lower_limit(self.fraction_at(height));
        self.person.nose.smells(share, &self.setup.condition.odorant)
    }

    /// The nose breathes for `dt_s` what is at its height, and tires.
    pub(super) fn breathe(&mut self, dt_s: f64) {
        let share = self.room.of_lower_limit(self.fraction_at(Height::Head));
        self.person.nose.breathe(dt_s, share, &self.setup.condition.odorant);
    }

    /// What the detector shows at a height here, in per cent of the lower limit.
    pub(crate) fn percent_lel_at(&self, height: Height) -> f64 {
        let percent = 100.0 * self.room.of_lower_limit(self.fraction_at(height));
        percent.clamp(0.0, 100.0).round()
    }

    /// Temperature of the air where the person stands, in kelvins.
    pub(crate) fn air_here_k(&self) -> f64 {
        match self.person.place {
            Place::Yard | Place::Away => self.setup.outside_k,
            Place::PlantRoom | Place::GasValve | Place::Hall => self.house.inside_k(),
        }
    }
}

//! Judging how the supply regulator locks up after flow: the inlet at rest again against where it stood at
//! rest before the first light-up.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::judge::{CREEPS_PA, give_up_supply, mend_and_read_left};
use super::mind::Mind;
use super::step::{Step, take};
use crate::catalogue::repair::Repair;
use crate::parts::Stage;
use crate::senses::seen::Seen;
use crate::units::PA_PER_INWC;

/// What the inlet may stand higher at rest after flow than before it where both are within limits, in
/// pascals (0.5 in. w.c., from memory; a sound seat comes back to where it stood).
const AFTER_FLOW_PA: f64 = 0.5 * PA_PER_INWC;

impl Mind {
    /// Whether the inlet stands higher at rest after flow than it did before: above its limits, or by
    /// more than a sound seat ever does. What a blocked vent does is told by the vent.
    pub(super) fn locks_up_late(&self) -> bool {
        let inlet = &self.know.read.inlet;
        let (Some(band), Some(before), Some(after)) =
            (self.inlet_allowed(Stage::RestAgain), inlet[Stage::Rest], inlet[Stage::RestAgain])
        else {
            return false;
        };
        let most_pa = if band.is_above(after) { CREEPS_PA } else { AFTER_FLOW_PA };
        after - before > most_pa && !self.know.diagnosis.contains(&Diagnosis::VentBlocked)
    }
}

/// After the inlet was read at rest again: a seat that shuts badly after flow creeps, and nothing burns on
/// more than the plate allows, whatever shut it in.
pub(super) fn judge(me: &mut Mind, _: &Seen) -> Vec<Step> {
    if me.careless {
        return take(Course::OnToManifold);
    }
    let late = me.locks_up_late();
    if late {
        let again = me.know.supply.turned || me.know.has_mended(Repair::ReplaceSupplyRegulator);
        if me.may_set_supply() && !again {
            me.plan_repair(Diagnosis::SupplyCreeps, Repair::ReplaceSupplyRegulator);
            return mend_and_read_left();
        }
        me.know.note(Diagnosis::SupplyCreeps);
    }
    let vent = me.know.diagnosis.contains(&Diagnosis::VentBlocked) && !me.may_set_supply();
    if !late && !vent {
        return take(Course::OnToManifold);
    }
    me.know.supply.owner_needed = true;
    let band = me.inlet_allowed(Stage::RestAgain).zip(me.know.read.inlet[Stage::RestAgain]);
    if band.is_some_and(|(band, pa)| band.is_above(pa)) {
        return give_up_supply(me);
    }
    take(Course::OnToManifold)
}

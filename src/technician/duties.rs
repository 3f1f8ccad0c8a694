//! Work beyond the pressures that the card asks for, with everything closed up: temperature rise,
//! flue and gas rate, level by level.

use super::step::{Step, reach, stop, think, until_at_rest};
use crate::procedure::{Goal, to_measure};

/// What the card asks for and does not stand on the sheet yet is measured. A level that does not come
/// is left to the last cycle, which finds out why.
pub(super) fn measure() -> Vec<Step> {
    vec![think(|me, seen| {
        let goals = to_measure(&me.card.required, seen.levels, &me.memory);
        if goals.is_empty() {
            return Vec::new();
        }
        let mut steps: Vec<Step> = goals.into_iter().map(towards).collect();
        steps.push(reach(Goal::HandEmpty));
        steps.extend(stop());
        steps.extend([until_at_rest(), reach(Goal::ClosedUp)]);
        steps
    })]
}

/// A goal of the work; one that comes to be measured only while its level burns.
fn towards(goal: Goal) -> Step {
    let Goal::Measured(_, level) = goal else { return reach(goal) };
    think(move |me, _| if me.memory.burns(level) { vec![reach(goal)] } else { Vec::new() })
}

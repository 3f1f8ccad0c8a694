//! A screw turned a little at a time, and what that moves.

use super::mind::Mind;
use super::step::{Step, act, pause};
use crate::hands::action::Action;
use crate::parts::Screw;
use crate::units::PA_PER_INWC;

/// Most turns of the driver for one setting.
pub(super) const MOST_TRIES: u32 = 40;
/// Eighths of a turn after which a screw must have moved something, and what it must have moved, in
/// pascals (0.03 in. w.c.: the softest spring moves more in a whole turn).
const WHOLE_TURN: i16 = 8;
const EFFECT_PA: f64 = 0.03 * PA_PER_INWC;

impl Mind {
    /// Counts a turn of a screw whose effect is watched.
    pub(super) fn count_turn(&mut self, eighths: i16) {
        if let Some((_, turned)) = &mut self.know.screws.start {
            *turned += eighths;
        }
    }

    /// Whether a whole turn has moved nothing; `pa` is the number now.
    pub(super) fn turns_in_vain(&mut self, pa: f64) -> bool {
        let (start_pa, turned) = *self.know.screws.start.get_or_insert((pa, 0));
        turned.abs() >= WHOLE_TURN && (pa - start_pa).abs() < EFFECT_PA
    }
}

/// Back to where the screw stood, a quarter turn at a time.
pub(super) fn turn_back(me: &mut Mind, screw: Screw) -> Vec<Step> {
    let Some((_, turned)) = me.know.screws.start.take() else { return Vec::new() };
    let mut left = -turned;
    let mut steps = Vec::new();
    while left != 0 {
        let eighths = left.clamp(-2, 2);
        steps.extend([act(Action::Turn { screw, eighths }), pause(6.0)]);
        left -= eighths;
    }
    steps
}

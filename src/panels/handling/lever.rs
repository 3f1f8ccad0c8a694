//! Levers of hand valves: they follow the hand between two stops.

use crate::hands::action::Action;
use crate::panels::parts::canonical;
use crate::parts::HandValve;
use crate::physics::valve::HandleAngle;
use crate::senses::seen::Seen;

/// How finely a lever that is dragged is told to the bench, in degrees.
pub(super) const LEVER_STEP_DEG: i16 = 15;

/// The hand valve whose lever a part is.
pub(super) fn lever_of(part: &str) -> Option<HandValve> {
    HandValve::from_id(canonical(part))
}

/// One press: across where it stands open or aslant, in line where it is shut.
pub(super) fn across(hand_valve: HandValve, seen: &Seen) -> Option<Action> {
    let now = seen.handle(hand_valve)?;
    let degrees = if now.is_shut() { HandleAngle::OPEN } else { HandleAngle::SHUT }.deg();
    Some(Action::HandValve { hand_valve, degrees })
}

/// Where a lever stands that stood at `from_deg` and was turned clockwise by so much: at one of its
/// steps, at a stop where it was turned further. Clockwise shuts it.
pub(super) fn swung(from_deg: i16, clockwise_deg: f32) -> i16 {
    let to = (f32::from(from_deg) - clockwise_deg).clamp(0.0, f32::from(HandleAngle::OPEN.deg()));
    let step = f32::from(LEVER_STEP_DEG);
    #[expect(clippy::cast_possible_truncation, reason = "0 to 90")]
    let snapped = ((to / step).round() * step) as i16;
    snapped
}

//! After pipe work: leak fluid on the joints that it opened, then the whole piping shut in and watched,
//! before the ports are closed.

use super::hint::{CardAsks, Hint};
use super::memory::Remembered;
use super::{lead, reading};
use crate::parts::{Duty, Joint, Port};
use crate::procedure::Goal;
use crate::senses::seen::Seen;

/// The next step of it; none where no repair opened the piping and the card does not ask for it, or all
/// is done.
pub(super) fn prove(seen: &Seen, remembered: &Remembered, asks: CardAsks<'_>) -> Option<Hint> {
    let opened = seen.sheet.done.iter().any(|done| done.repair.is_on_piping());
    if !opened && !asks.required.contains(&Duty::PipingLeakCheck) {
        return None;
    }
    let hook_up = || match remembered.job.has_checked_piping() {
        true => None,
        false => reading::hook_up(seen, remembered, Port::Inlet),
    };
    joint(seen, remembered)
        .or_else(hook_up)
        .or_else(|| lead::towards(Goal::PipingChecked, seen, remembered))
}

/// A joint that a repair opened and that stands on no line of the sheet, or is still wet.
fn joint(seen: &Seen, remembered: &Remembered) -> Option<Hint> {
    let written = |joint: Joint| seen.sheet.joints.iter().any(|(one, _)| *one == joint);
    let mut opened = seen.sheet.done.iter().flat_map(|done| done.repair.disturbs());
    let next = opened.find(|joint| !written(**joint) || remembered.job.is_wet(**joint))?;
    lead::towards(Goal::JointChecked(*next), seen, remembered)
}

//! What the hand does on a part for an action, found by asking every part that is drawn.

use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::panels::handling::{Handling, handling};
use quarterturn::parts::Height;
use quarterturn::senses::seen::Seen;

use super::Way;
use crate::rig::Rig;

/// An eighth of a turn, in degrees.
pub const EIGHTH_DEG: f32 = 45.0;

/// What the hand does on a part.
#[derive(Debug, Clone, PartialEq)]
pub enum Deed {
    /// One press.
    Press,
    /// Turning by so many degrees, clockwise positive.
    Turn(f32),
    /// A lever, by so many degrees clockwise.
    Lever(f32),
    /// Strokes over it.
    Strokes,
    /// Staying in its upper or its lower half.
    Stay(Height),
    /// A pull away from it.
    Pull,
}

/// Where a list stands.
#[derive(Debug, Clone, PartialEq)]
pub enum Where {
    /// At a part.
    Part(String),
    /// On the sheet: what can be done here.
    Here,
}

/// The part and what the hand does there, if there is such a way.
pub fn deed(rig: &Rig, way: &dyn Way, seen: &Seen, action: &Action) -> Option<(String, Deed)> {
    let spots = rig.spots();
    let mut found = None;
    for spot in spots.iter().rev() {
        for &height in way.heights() {
            let it = handling(&spot.part, height, seen);
            let deed = of(&it, height, seen, action);
            if let Some(deed) = deed.filter(|deed| way.can(&it, deed, action)) {
                // A lever that is seen beside its valve is one with it: the nearest to the name wins.
                found.get_or_insert((spot.part.clone(), deed));
            }
        }
    }
    found
}

fn of(it: &Handling, height: Height, seen: &Seen, action: &Action) -> Option<Deed> {
    if let (Some(lever), Action::HandValve { hand_valve, degrees }) = (it.lever, action)
        && lever == *hand_valve
    {
        let now = seen.handle(lever)?.deg();
        return Some(Deed::Lever(f32::from(now - degrees)));
    }
    if it.press.as_slice() == core::slice::from_ref(action) {
        return Some(Deed::Press);
    }
    let ways = [(&it.turning.clockwise, 1.0), (&it.turning.back, -1.0)];
    for (detent, way) in ways {
        let Some(detent) = detent else { continue };
        match (&detent.action, action) {
            (Action::Turn { screw: a, .. }, Action::Turn { screw: b, eighths }) if a == b => {
                return Some(Deed::Turn(f32::from(*eighths) * EIGHTH_DEG));
            }
            (
                Action::Plug { port: a, step: PlugStep::Tighten(_) },
                Action::Plug { port: b, step: PlugStep::Tighten(eighths) },
            ) if a == b && *eighths > 0 => {
                return Some(Deed::Turn(f32::from(*eighths) * EIGHTH_DEG));
            }
            (offered, wanted) if offered == wanted => return Some(Deed::Turn(way * detent.deg)),
            _ => {}
        }
    }
    if it.stroke.as_ref() == Some(action) {
        return Some(Deed::Strokes);
    }
    if it.hold.as_ref() == Some(action) {
        return Some(Deed::Stay(height));
    }
    (it.pull.as_ref() == Some(action)).then_some(Deed::Pull)
}

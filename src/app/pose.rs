//! How each named group of a drawing stands, as a pure function of what is seen.
//!
//! `PART@STATE` groups are shown one at a time, `PART.PIECE` groups turn, scale or fade. A group
//! that this module does not know stays as drawn.

mod appearance;
mod found;
mod piece;
mod state;

pub use appearance::{Pose, Shown};

use super::drawings::{furnace_room, gas_valve};
use crate::parts::Place;
use crate::senses::seen::Seen;

/// How the group `id` stands; `None` when it stays as drawn.
#[must_use]
pub fn pose(id: &str, seen: &Seen) -> Option<Pose> {
    if let Some((part, state)) = id.split_once('@') {
        return state::holds(part, state, seen).map(Pose::when);
    }
    match id.split_once('.') {
        Some((part, piece)) => piece::pose(part, piece, seen),
        None => state::whole(id, seen).map(Pose::when),
    }
}

/// Whether a group with this id can be posed at all; all others are painted once and stay.
#[must_use]
pub fn moves(id: &str) -> bool {
    if id.contains('@') || state::comes_and_goes(id) {
        return true;
    }
    id.split_once('.').is_some_and(|(_, piece)| PIECES.contains(&piece))
}

/// Whether a group is ground that a place stands on: it comes and goes with the job and the weather,
/// and cannot be pointed at.
#[must_use]
pub fn is_ground(id: &str) -> bool {
    id == "backdrop" || id.split_once('@').is_some_and(|(part, _)| state::GROUND.contains(&part))
}

/// Whether this furnace has nothing like the part that a group draws: it belongs to another firing
/// level.
#[must_use]
pub fn is_absent(id: &str, seen: &Seen) -> bool {
    let part = id.split(['@', '.']).next().unwrap_or_default();
    state::of_levels(part, seen) == Some(false)
}

/// Whether a part is an adapter that is not in its port: there is nothing to point at.
#[must_use]
pub fn is_not_fitted(id: &str, seen: &Seen) -> bool {
    let part = id.split(['@', '.']).next().unwrap_or_default();
    state::is_bare_of_adapter(part, seen)
}

/// Pieces that move, or come and go.
const PIECES: [&str; 18] = [
    "sign", "handle", "lever", "slot", "wheel", "glow", "body", "core", "tip", "soot", "bubbles",
    "needle", "hand", "flame", "knob", "lamp", "shimmer", "dust",
];

/// Whether a group fades in and out, or is colored by what it shows.
#[must_use]
pub fn fades(id: &str) -> bool {
    [".glow", "@frost", ".shimmer", ".dust"].iter().any(|end| id.ends_with(end))
}

/// Which drawing shows a place; none where there is nothing to draw.
#[must_use]
pub fn drawing_of(seen: &Seen) -> Option<&'static str> {
    match seen.place {
        Place::Yard => Some(match &seen.yard {
            Some(yard) if yard.tank_percent.is_some() => "yard_propane",
            Some(_) | None => "yard_natural",
        }),
        Place::PlantRoom => Some(furnace_room(seen.scene.room)),
        Place::GasValve => Some(match seen.furnace.as_ref().and_then(|f| f.burners.as_ref()) {
            Some(_) => gas_valve(seen.scene.valve),
            // Kneeling in front of a closed door, one sees the door.
            None => furnace_room(seen.scene.room),
        }),
        Place::Hall => Some("hall"),
        Place::Away => None,
    }
}

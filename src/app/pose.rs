//! How each named group of a drawing stands, as a pure function of what is seen.
//!
//! `PART@STATE` groups are shown one at a time, `PART.PIECE` groups turn, scale or fade. A group
//! that this module does not know stays as drawn.

mod found;
mod piece;
mod state;

use crate::parts::{Neighbor, Place, Tool};
use crate::senses::seen::Seen;

/// How a group stands.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Pose {
    /// Whether it is shown.
    pub shown: Shown,
    /// Turned about its pivot, in degrees, clockwise.
    pub turn_deg: f32,
    /// Turns a second that it keeps turning by itself.
    pub spin_rev_s: f32,
    /// Scaled about its pivot.
    pub scale: [f32; 2],
    /// Its opacity, 0–1.
    pub alpha: f32,
    /// Its colour is multiplied by this.
    pub tint: [f32; 3],
    /// How far it flickers, as a fraction of its height.
    pub flicker: f32,
}

/// Whether a group is shown.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Shown {
    /// It is.
    Yes,
    /// It is not.
    No,
}

impl Shown {
    fn when(condition: bool) -> Self {
        if condition { Self::Yes } else { Self::No }
    }
}

impl Default for Pose {
    fn default() -> Self {
        Self {
            shown: Shown::Yes,
            turn_deg: 0.0,
            spin_rev_s: 0.0,
            scale: [1.0, 1.0],
            alpha: 1.0,
            tint: [1.0; 3],
            flicker: 0.0,
        }
    }
}

impl Pose {
    /// Hidden.
    pub const HIDDEN: Self = Self {
        shown: Shown::No,
        turn_deg: 0.0,
        spin_rev_s: 0.0,
        scale: [1.0, 1.0],
        alpha: 1.0,
        tint: [1.0; 3],
        flicker: 0.0,
    };

    /// Turned clockwise.
    fn turned(turn_deg: f32) -> Self {
        Self { turn_deg, ..Self::default() }
    }

    /// Shown as drawn, or hidden.
    fn when(condition: bool) -> Self {
        Self { shown: Shown::when(condition), ..Self::default() }
    }

    /// Faded; hidden when nothing is left.
    fn faded(alpha: f64) -> Self {
        Self { shown: Shown::when(alpha > 0.01), alpha: narrow(alpha), ..Self::default() }
    }
}

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
    if id.contains('@') || Tool::from_id(id).is_some() || id == "low-gas-switch" {
        return true;
    }
    id.split_once('.').is_some_and(|(_, piece)| PIECES.contains(&piece))
}

/// Pieces that move.
const PIECES: [&str; 15] = [
    "handle", "lever", "slot", "wheel", "glow", "body", "core", "tip", "soot", "bubbles", "needle",
    "hand", "flame", "knob", "lamp",
];

/// Which drawing shows a place; none where there is nothing to draw.
#[must_use]
pub fn drawing_of(seen: &Seen) -> Option<&'static str> {
    match seen.place {
        Place::Yard => Some(match &seen.yard {
            Some(yard) if yard.tank_percent.is_some() => "yard_propane",
            Some(_) | None => "yard_natural",
        }),
        Place::PlantRoom => Some("plant_room"),
        Place::GasValve => Some(match seen.furnace.as_ref().and_then(|f| f.burners.as_ref()) {
            Some(_) => "gas_valve",
            // Kneeling in front of a closed door, one sees the door.
            None => "plant_room",
        }),
        Place::Hall => Some("hall"),
        Place::Away => None,
    }
}

/// What a neighbour's burner does, where it is seen.
fn burning(neighbor: Neighbor, seen: &Seen) -> Option<crate::senses::seen::Burning> {
    match neighbor {
        Neighbor::WaterHeater => seen.furnace.as_ref().map(|f| f.water_heater.burning),
        Neighbor::Range => seen.hall.as_ref().map(|h| h.range.burning),
    }
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "what is drawn needs no more than single precision"
)]
fn narrow(value: f64) -> f32 {
    value as f32
}

//! Surroundings that cannot be together.

use super::context::Cross;
use crate::parts::{Position, Room};
use crate::scenario::format::Scene;

/// Every room that can be drawn must be one for every position that can be drawn.
pub(super) fn check(scene: &Scene, cross: &mut Cross<'_, '_>) {
    let (Some(position), Some(rooms)) = (&scene.position, &scene.room) else { return };
    let fits = |room: Room| position.words().all(|position| room.position() == position);
    if let Some(room) = rooms.words().find(|room| !fits(*room)) {
        cross.error("scene.room", misfit(room.position()).into());
    }
}

fn misfit(needed: Position) -> &'static str {
    match needed {
        Position::Upright => t!("problem-room-upright"),
        Position::Horizontal => t!("problem-room-horizontal"),
    }
}

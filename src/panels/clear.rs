//! Room for what is said over the drawing: off the manometer and the tools.

use egui::{Pos2, Rect, Vec2, vec2};

use super::view::PartBox;
use crate::parts::at_hand;

/// Step in which room is looked for, in points.
const STEP: f32 = 10.0;

/// Boxes that nothing said may cover: the manometer, the tool roll and what lies on it, the
/// tray of loose parts.
pub(super) fn kept_clear(parts: &[PartBox]) -> Vec<Rect> {
    let is_kept =
        |id: &str| ["meter", "tool-roll", "tray"].contains(&id) || at_hand().contains(&id);
    let kept = parts.iter().filter(|it| is_kept(&it.id) && it.rect.is_positive());
    kept.map(|it| it.rect).collect()
}

/// The first of some places, by their upper left corner, at which a slip lies inside `scene` and
/// covers none of `kept`.
pub(super) fn first_clear(
    scene: Rect,
    size: Vec2,
    places: impl IntoIterator<Item = Pos2>,
    kept: &[Rect],
) -> Option<Rect> {
    let slips = places.into_iter().map(|at| Rect::from_min_size(at, size));
    let inside = scene.shrink(2.0);
    let mut clear = slips.filter(|slip| inside.contains_rect(*slip));
    clear.find(|slip| !kept.iter().any(|other| other.expand(2.0).intersects(*slip)))
}

/// A slip as low in `scene` as it can lie, off everything kept.
pub(super) fn lowest(scene: Rect, size: Vec2, kept: &[Rect]) -> Option<Rect> {
    let room = scene.size() - size - vec2(8.0, 8.0);
    if room.x < 0.0 || room.y < 0.0 {
        return None;
    }
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "within a window")]
    let rows = (room.y / STEP) as u16;
    let columns = [0.5, 0.35, 0.65, 0.2, 0.8, 0.0, 1.0_f32];
    let places = (0..=rows).flat_map(|row| {
        let y = scene.bottom() - 4.0 - size.y - STEP * f32::from(row);
        columns.map(|share| Pos2::new(scene.left() + 4.0 + room.x * share, y))
    });
    first_clear(scene, size, places, kept)
}

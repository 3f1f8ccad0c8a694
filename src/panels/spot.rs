//! Where each part of the drawing can be pressed.

use egui::{Pos2, Rect, vec2};

use super::parts;
use super::view::PartBox;
use super::widgets;
use crate::parts::Place;

/// Parts of the drawing that are there to look at only.
const NOT_TOUCHED: &[&str] = &["backdrop", "tray", "tool-roll", "grid"];

/// The place in the window where a part can be pressed.
#[derive(Debug, Clone, PartialEq)]
pub struct Spot {
    /// The part's id, without piece or state.
    pub part: String,
    /// Index of its box.
    pub index: usize,
    /// Where it is drawn, inside the drawing's rectangle.
    pub drawn: Rect,
    /// Where it can be pressed: as drawn, at least 26 points either way.
    pub rect: Rect,
    /// What it turns about.
    pub middle: Pos2,
}

/// The hot-spots of a drawing, in the order of the job.
#[must_use]
pub fn spots(scene: Rect, place: Place, boxes: &[PartBox]) -> Vec<Spot> {
    let mut spots: Vec<Spot> = Vec::new();
    for (index, part) in boxes.iter().enumerate() {
        let name = parts::canonical(&part.id);
        let drawn = part.rect.intersect(scene);
        let is_known = spots.iter().any(|spot| spot.part == name);
        if parts::is_piece(&part.id)
            || is_known
            || NOT_TOUCHED.contains(&name)
            || !drawn.is_positive()
        {
            continue;
        }
        let side = vec2(drawn.width().max(widgets::TARGET), drawn.height().max(widgets::TARGET));
        let rect = inside(Rect::from_center_size(drawn.center(), side), scene);
        let middle = part.pivot.unwrap_or(drawn.center());
        spots.push(Spot { part: name.to_owned(), index, drawn, rect, middle });
    }
    spots.sort_by_key(|spot| parts::rank(place, &spot.part));
    spots
}

/// Moves a box into the drawing, if it is not larger.
fn inside(rect: Rect, scene: Rect) -> Rect {
    let shift = vec2(
        (scene.left() - rect.left()).max(0.0) - (rect.right() - scene.right()).max(0.0),
        (scene.top() - rect.top()).max(0.0) - (rect.bottom() - scene.bottom()).max(0.0),
    );
    rect.translate(shift).intersect(scene)
}

/// The part under a point: the smallest that is there, as the pointer takes it.
#[must_use]
pub fn top_spot(spots: &[Spot], at: Pos2) -> Option<&Spot> {
    spots
        .iter()
        .filter(|spot| spot.rect.contains(at))
        .min_by(|a, b| a.rect.area().total_cmp(&b.rect.area()))
}

//! The plate grid behind pages.

use egui::{Painter, Rect, Stroke};

use super::theme;

/// Side of a square of the grid, in points.
const SIDE: f32 = 24.0;

/// Paints the faint grid of a manual's plate.
pub fn grid(painter: &Painter, rect: Rect) {
    let rect = rect.intersect(painter.clip_rect());
    if !rect.is_positive() || !rect.is_finite() {
        return;
    }
    let stroke = Stroke::new(1.0, theme::GRID);
    let mut x = (rect.left() / SIDE).ceil() * SIDE;
    while x < rect.right() {
        painter.vline(x, rect.y_range(), stroke);
        x += SIDE;
    }
    let mut y = (rect.top() / SIDE).ceil() * SIDE;
    while y < rect.bottom() {
        painter.hline(rect.x_range(), y, stroke);
        y += SIDE;
    }
}

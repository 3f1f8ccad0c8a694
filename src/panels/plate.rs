//! A plate of a service manual, drawn at its own size and scaled to where it stands: ink outlines,
//! flat tints.

use egui::{Align2, Color32, FontId, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, Vec2, vec2};

use super::theme;

/// Brass of caps, screws and fittings.
pub(crate) const BRASS: Color32 = Color32::from_rgb(0xc9, 0xa2, 0x4b);
/// Black iron of gas pipes.
pub(crate) const IRON: Color32 = Color32::from_rgb(0x54, 0x5c, 0x63);

/// A painter that takes places of the plate.
pub(crate) struct Plate<'a> {
    pub(crate) painter: &'a Painter,
    origin: Pos2,
    pub(crate) scale: f32,
}

impl<'a> Plate<'a> {
    /// A plate drawn for `size`, scaled into the middle of `rect`.
    pub(crate) fn within(painter: &'a Painter, rect: Rect, size: Vec2) -> Self {
        let scale = (rect.width() / size.x).min(rect.height() / size.y);
        Self { painter, origin: rect.center() - size * scale / 2.0, scale }
    }

    pub(crate) fn at(&self, x: f32, y: f32) -> Pos2 {
        self.origin + vec2(x, y) * self.scale
    }

    pub(crate) fn ink(&self, width: f32) -> Stroke {
        Stroke::new((width * self.scale).max(1.0), theme::INK)
    }

    pub(crate) fn block(&self, (x, y): (f32, f32), (w, h): (f32, f32), round: f32, fill: Color32) {
        let rect = Rect::from_min_size(self.at(x, y), vec2(w, h) * self.scale);
        self.painter.rect(rect, round * self.scale, fill, self.ink(2.5), StrokeKind::Middle);
    }

    pub(crate) fn disc(&self, (x, y): (f32, f32), radius: f32, fill: Color32) {
        self.painter.circle(self.at(x, y), radius * self.scale, fill, self.ink(2.5));
    }

    /// A tube through these places: an ink line with a narrower one of its color over it.
    pub(crate) fn tube(&self, places: &[(f32, f32)], width: f32, fill: Color32) {
        let line = || places.iter().map(|&(x, y)| self.at(x, y)).collect::<Vec<_>>();
        let ink = Stroke::new((width + 4.5) * self.scale, theme::INK);
        self.painter.add(Shape::line(line(), ink));
        self.painter.add(Shape::line(line(), Stroke::new(width * self.scale, fill)));
    }

    pub(crate) fn line(&self, from: (f32, f32), to: (f32, f32), width: f32) {
        self.painter.line_segment([self.at(from.0, from.1), self.at(to.0, to.1)], self.ink(width));
    }

    pub(crate) fn text(&self, (x, y): (f32, f32), text: &str, size: f32, color: Color32) {
        let font = FontId::new(size * self.scale, theme::semibold());
        self.painter.text(self.at(x, y), Align2::CENTER_CENTER, text, font, color);
    }

    pub(crate) fn bend(&self, from: (f32, f32), by: (f32, f32), to: (f32, f32)) -> Vec<(f32, f32)> {
        let mix = |a: f32, b: f32, t: f32| a + (b - a) * t;
        let of = |t: f32| {
            let one = (mix(from.0, by.0, t), mix(from.1, by.1, t));
            let two = (mix(by.0, to.0, t), mix(by.1, to.1, t));
            (mix(one.0, two.0, t), mix(one.1, two.1, t))
        };
        (0..=16_u8).map(|step| of(f32::from(step) / 16.0)).collect()
    }
}

//! Names beside the parts of the drawing, without collisions.

use egui::{Align2, FontId, Painter, Pos2, Rect, Stroke, TextStyle, Ui, Vec2, pos2, vec2};

use super::clear;
use super::theme;
use super::widgets;

/// A name to be placed beside its part.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Wanted {
    /// Box of the part, in window points.
    pub part: Rect,
    /// Size of its name.
    pub size: Vec2,
}

/// Room between a part and its name.
const GAP: f32 = 6.0;

/// Places names inside `scene`: right, left, below or above their part, the first place that
/// touches no other name and nothing in `taken` but the part itself and what encloses it. `None` where
/// there is no room: such a name shows when its part is pointed at.
#[must_use]
pub fn place(scene: Rect, wanted: &[Wanted], taken: &[Rect]) -> Vec<Option<Rect>> {
    let mut placed: Vec<Rect> = Vec::new();
    let mut answers = Vec::with_capacity(wanted.len());
    for want in wanted {
        let spot = candidates(want).into_iter().find(|spot| {
            scene.shrink(2.0).contains_rect(*spot)
                && !placed.iter().any(|other| other.expand(2.0).intersects(*spot))
                && !taken.iter().any(|other| blocks(*other, want.part, *spot))
        });
        placed.extend(spot);
        answers.push(spot);
    }
    answers
}

/// Whether a box stands in the way of a name: it overlaps it and does not hold the whole part (a
/// cabinet holds what is in it, and its names).
fn blocks(other: Rect, part: Rect, spot: Rect) -> bool {
    other != part && !other.expand(1.0).contains_rect(part) && other.intersects(spot)
}

fn candidates(want: &Wanted) -> [Rect; 4] {
    let (part, size) = (want.part, want.size);
    let middle = part.center();
    [
        Rect::from_min_size(pos2(part.right() + GAP, middle.y - size.y / 2.0), size),
        Rect::from_min_size(pos2(part.left() - GAP - size.x, middle.y - size.y / 2.0), size),
        Rect::from_min_size(pos2(middle.x - size.x / 2.0, part.bottom() + GAP), size),
        Rect::from_min_size(pos2(middle.x - size.x / 2.0, part.top() - GAP - size.y), size),
    ]
}

/// Paints names where they have room.
pub fn labels_ui(ui: &Ui, scene: Rect, names: &[(String, Rect)], taken: &[Rect]) {
    let font = TextStyle::Small.resolve(ui.style());
    let painter = ui.painter().with_clip_rect(scene);
    let wanted: Vec<Wanted> = names
        .iter()
        .map(|(name, part)| Wanted { part: *part, size: size_of(&painter, name, &font) })
        .collect();
    for (spot, (name, _)) in place(scene, &wanted, taken).into_iter().zip(names) {
        if let Some(spot) = spot {
            painter.rect_filled(spot, 3.0, theme::PAPER.gamma_multiply(0.85));
            painter.text(spot.center(), Align2::CENTER_CENTER, name, font.clone(), theme::INK);
        }
    }
}

fn size_of(painter: &Painter, text: &str, font: &FontId) -> Vec2 {
    painter.layout_no_wrap(text.to_owned(), font.clone(), theme::INK).size() + vec2(6.0, 2.0)
}

/// Paints one name with a leader from its part, over everything.
pub fn leader_ui(painter: &Painter, scene: Rect, part: Rect, text: &str, font: &FontId) {
    let galley = painter.layout(text.to_owned(), font.clone(), theme::INK, 260.0);
    let size = galley.size() + vec2(14.0, 8.0);
    let want = Wanted { part, size };
    let fits = |spot: &Rect| scene.contains_rect(*spot);
    let spot = candidates(&want).into_iter().map(|spot| away(spot, part)).find(fits);
    let spot = spot.unwrap_or_else(|| {
        let low = scene.max - size;
        let at = pos2(
            part.left().min(low.x).max(scene.left()),
            (part.bottom() + GAP).min(low.y).max(scene.top()),
        );
        Rect::from_min_size(at, size)
    });
    let from = nearest(part, spot.center());
    painter.line_segment([from, nearest(spot, from)], Stroke::new(1.5, theme::INK));
    painter.circle_filled(from, 3.0, theme::INK);
    painter.rect(spot, 4.0, theme::SHEET, Stroke::new(1.5, theme::INK), egui::StrokeKind::Middle);
    painter.galley(spot.min + vec2(7.0, 4.0), galley, theme::INK);
}

/// A slip with a text beside a part, which a screen reader is told of.
pub fn beside_ui(ui: &Ui, scene: Rect, part: Rect, kept: &[Rect], text: &str) {
    let width = 320.0 * theme::factor_of(ui);
    let font = FontId::new(15.0 * theme::factor_of(ui), theme::semibold());
    let galley = ui.painter().layout(text.to_owned(), font, theme::INK, width - 28.0);
    let size = galley.size() + vec2(28.0, 20.0);
    let places = candidates(&Wanted { part, size }).map(|spot| spot.min);
    let spot = clear::first_clear(scene, size, places, kept)
        .or_else(|| clear::lowest(scene, size, kept))
        .unwrap_or_else(|| Rect::from_center_size(part.center(), size));
    egui::Area::new(widgets::id("beside"))
        .order(egui::Order::Middle)
        .fixed_pos(spot.min)
        .constrain_to(scene)
        .interactable(false)
        .show(ui.ctx(), |ui| {
            ui.set_max_width(width);
            widgets::slip().show(ui, |ui| {
                let text = egui::RichText::new(text).family(theme::semibold()).color(theme::INK);
                widgets::live(&ui.label(text));
            });
        });
}

/// A little further out, so that the leader shows.
fn away(spot: Rect, part: Rect) -> Rect {
    let way = spot.center() - part.center();
    let step = if way.x.abs() > way.y.abs() {
        vec2(way.x.signum(), 0.0)
    } else {
        vec2(0.0, way.y.signum())
    };
    spot.translate(step * 12.0)
}

fn nearest(rect: Rect, to: Pos2) -> Pos2 {
    rect.clamp(to)
}

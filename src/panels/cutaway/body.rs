//! What the leaves share: tints by pressure, springs, values with a name for those who hear them.

use egui::{Align2, Color32, FontId, Rect, Sense, Stroke, Ui, Vec2, WidgetType, vec2};

use crate::panels::entry::pressure;
use crate::panels::plate::{BRASS, Plate};
use crate::panels::theme;
use crate::panels::widgets;
use crate::units::{M3_S_PER_CFH, PA_PER_INWC, PA_PER_PSI, PressureUnit};
use crate::words::decimal;

/// Pressure from which a tank or a main is told in psi, in pascals.
const IN_PSI_PA: f64 = 40.0 * PA_PER_INWC;

/// Steps of tint from no pressure to the fullest.
const TINTS: f32 = 8.0;
const PALE: Color32 = Color32::from_rgb(0xf1, 0xf6, 0xfb);
const DEEP: Color32 = Color32::from_rgb(0x3d, 0x86, 0xe0);

/// A pressure with its unit, in psi where it is a tank's.
#[must_use]
pub fn shown(pa: f64, unit: PressureUnit) -> String {
    if pa > IN_PSI_PA {
        return t!("cutaway-psi", pressure = decimal(pa / PA_PER_PSI, 1));
    }
    t!("cutaway-pressure", pressure = pressure(pa, unit, 2), unit = unit.label())
}

/// What is lost from one place to the next, in words.
#[must_use]
pub fn loss(pa: f64, unit: PressureUnit) -> String {
    t!("cutaway-loss", pressure = shown(pa.max(0.0), unit))
}

/// A flow of gas in cubic feet an hour.
#[must_use]
pub fn flow(m3_s: f64) -> String {
    t!("cutaway-flow", flow = decimal(m3_s.max(0.0) / M3_S_PER_CFH, 1))
}

/// How full a pressure is, 0–1 of the fullest that is drawn.
pub(super) fn share(pa: f64, full_pa: f64) -> f32 {
    #[expect(clippy::cast_possible_truncation, reason = "a share is drawn")]
    let share = (pa / full_pa.max(1.0)).clamp(0.0, 1.0) as f32;
    share
}

/// The flat tint of a pressure.
pub(super) fn tint(share: f32) -> Color32 {
    PALE.lerp_to_gamma(DEEP, (share * TINTS).round() / TINTS)
}

/// Room for a figure drawn for `size`, as large as the width allows.
pub(super) fn figure(ui: &mut Ui, size: Vec2) -> Rect {
    let width = ui.available_width().min(1.5 * size.x);
    let (rect, _) = ui.allocate_exact_size(vec2(width, width * size.y / size.x), Sense::hover());
    rect
}

/// Writes at a place of a plate in the panel's own size of type, and says it to those who hear.
pub(super) fn write(ui: &Ui, plate: &Plate<'_>, at: (f32, f32), text: &str, style: Type) -> Rect {
    let points = match style {
        Type::Value => 17.0,
        Type::Name => 15.0,
        Type::Small => 13.0,
    };
    let font = match style {
        Type::Value | Type::Name => FontId::new(points * theme::factor_of(ui), theme::semibold()),
        Type::Small => FontId::proportional(points * theme::factor_of(ui)),
    };
    let color = match style {
        Type::Value | Type::Name => theme::INK,
        Type::Small => theme::QUIET,
    };
    plate.painter.text(plate.at(at.0, at.1), Align2::LEFT_CENTER, text, font, color)
}

/// A value on a slip of paper of its own: it is read on any tint.
pub(super) fn chip(ui: &Ui, plate: &Plate<'_>, at: (f32, f32), text: &str) {
    let font = FontId::new(15.0 * theme::factor_of(ui), theme::semibold());
    let galley = plate.painter.layout_no_wrap(text.to_owned(), font, theme::INK);
    let left = plate.at(at.0, at.1);
    let rect = Rect::from_min_size(left, galley.size() + vec2(8.0, 2.0));
    let line = Stroke::new(1.2, theme::INK);
    plate.painter.rect(rect, 2.0, theme::SHEET, line, egui::StrokeKind::Middle);
    plate.painter.galley(left + vec2(4.0, 1.0), galley, theme::INK);
}

/// How something is written.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Type {
    /// A value, larger than the rest.
    Value,
    /// The name of a place.
    Name,
    /// Something of second rank.
    Small,
}

/// A place of a figure with what it says, for those who hear it.
pub(super) fn say(ui: &mut Ui, rect: Rect, salt: &str, text: &str) {
    let response = ui.interact(rect, widgets::id("cutaway-say").with(salt), Sense::hover());
    widgets::named(&response, WidgetType::Label, text);
}

/// A coil spring between two heights of a plate; pale where it does not press.
pub(super) fn spring(plate: &Plate<'_>, x: f32, (top, foot): (f32, f32), pressing: bool) {
    let turns = 7_u8;
    let rise = (foot - top) / f32::from(turns);
    let half = 14.0;
    let (width, color) = if pressing { (4.0, BRASS) } else { (2.0, theme::STEEL) };
    for turn in 0..turns {
        let y = top + rise * f32::from(turn);
        let ends = [plate.at(x - half, y), plate.at(x + half, y + rise)];
        plate.painter.line_segment(ends, plate.ink(width + 3.0));
        let inside = Stroke::new(width * plate.scale, color);
        plate.painter.line_segment(ends, inside);
    }
}

/// A screw at the top of a spring, its plate at a height.
pub(super) fn screw(plate: &Plate<'_>, x: f32, top: f32, height: f32) {
    plate.block((x - 4.0, top), (8.0, height - top), 0.0, theme::STEEL_LIGHT);
    let mut y = top + 5.0;
    while y < height - 2.0 {
        plate.line((x - 4.0, y), (x + 4.0, y - 2.5), 1.2);
        y += 5.0;
    }
    plate.block((x - 18.0, height - 5.0), (36.0, 6.0), 1.0, BRASS);
}

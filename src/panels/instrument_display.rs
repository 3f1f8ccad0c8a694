//! Displays of instruments beside the manometer: digits, a water column's legs, a needle.

use egui::{Align2, Area, Color32, FontId, Order, Painter, Rect, RichText, Stroke, Ui, pos2, vec2};

use super::theme;
use super::view::Job;
use super::widgets;
use crate::instrument::water_column::Legs;
use crate::senses::seen::{GaugeSeen, Measured};
use crate::words::decimal;

/// Inches of water that the column's scale shows either way, and the spring gauge in all.
const COLUMN_IN: f32 = 8.0;
const DIAL_IN: f32 = 35.0;

/// What an instrument shows, in one line: for lists, notes and screen readers.
#[must_use]
pub fn line(measured: &Measured) -> String {
    let figures: Vec<String> = match measured.figures.as_slice() {
        [one] => vec![one.to_string()],
        all => all.iter().map(|figure| format!("{} {figure}", figure.quantity.label())).collect(),
    };
    format!("{} {}", measured.spot.label(), figures.join(", "))
}

/// What the gauge at the hose shows, in words; nothing for the manometer, which speaks for itself.
#[must_use]
pub fn gauge_line(gauge: GaugeSeen) -> Option<String> {
    let inches = |tenths: i32| decimal(f64::from(tenths) / 10.0, 1).replace('-', "−");
    Some(match gauge {
        GaugeSeen::Digital => return None,
        GaugeSeen::WaterColumn(Legs::Empty) => t!("face-column-empty").into(),
        GaugeSeen::WaterColumn(Legs::Water { lower_tenths, upper_tenths }) => {
            t!("face-column", lower = inches(lower_tenths), upper = inches(upper_tenths))
        }
        GaugeSeen::Spring(None) => t!("face-dial-past").into(),
        GaugeSeen::Spring(Some(tenths)) => {
            t!("face-dial", inches = inches(tenths))
        }
    })
}

/// Shows the display of what is in use, above the manometer.
pub fn instrument_display_ui(ui: &Ui, scene: Rect, job: &Job<'_>) {
    let shown = job.seen.meter().map_or(GaugeSeen::Digital, |meter| meter.gauge);
    let gauge = gauge_line(shown);
    if gauge.is_none() && job.seen.measured.is_none() {
        return;
    }
    let meter = job.parts.iter().find(|part| part.id == "meter").map(|part| part.rect);
    let corner = scene.right_bottom() - vec2(8.0, 8.0);
    let at = meter.map_or(corner, |rect| pos2(rect.right(), rect.top() - 6.0));
    Area::new(widgets::id("face"))
        .order(Order::Middle)
        .pivot(Align2::RIGHT_BOTTOM)
        .fixed_pos(at)
        .constrain_to(scene)
        .interactable(false)
        .show(ui.ctx(), |ui| {
            widgets::slip().show(ui, |ui| {
                ui.set_max_width((scene.width() * 0.3).max(180.0));
                if let Some(measured) = &job.seen.measured {
                    digits_ui(ui, measured);
                }
                if let Some(words) = gauge {
                    gauge_ui(ui, shown);
                    widgets::quiet(ui, words);
                }
            });
        });
}

/// A name and its figures, the first one large.
fn digits_ui(ui: &mut Ui, measured: &Measured) {
    widgets::quiet(ui, format!("{}: {}", measured.spot.tool().label(), measured.spot.label()));
    for (i, figure) in measured.figures.iter().enumerate() {
        let text = figure.to_string().replace('-', "−");
        ui.horizontal(|ui| {
            if measured.figures.len() > 1 {
                ui.label(figure.quantity.label());
            }
            let text = RichText::new(text).family(theme::semibold()).color(theme::INK);
            ui.label(if i == 0 { text.size(24.0) } else { text });
        });
    }
}

fn gauge_ui(ui: &mut Ui, gauge: GaugeSeen) {
    match gauge {
        GaugeSeen::Digital => {}
        GaugeSeen::WaterColumn(legs) => {
            let (rect, _) = ui.allocate_exact_size(vec2(96.0, 190.0), egui::Sense::hover());
            column(ui.painter(), rect, legs);
        }
        GaugeSeen::Spring(tenths) => {
            let (rect, _) = ui.allocate_exact_size(vec2(132.0, 132.0), egui::Sense::hover());
            dial(ui.painter(), rect, tenths);
        }
    }
}

/// A tube bent to a U with a scale of inches between its legs.
fn column(painter: &Painter, rect: Rect, legs: Legs) {
    let bend = 18.0;
    let left = rect.left() + 14.0;
    let right = rect.right() - 14.0;
    let middle = rect.center().y - bend / 2.0;
    let inch = (rect.height() - bend - 16.0) / (2.0 * COLUMN_IN);
    let lower = middle + inch * COLUMN_IN;
    let glass = Stroke::new(10.0, theme::STEEL_LIGHT);
    let bottom = lower + bend;
    for x in [left, right] {
        painter.line_segment([pos2(x, rect.top() + 4.0), pos2(x, bottom)], glass);
    }
    painter.line_segment([pos2(left, bottom), pos2(right, bottom)], glass);
    if let Legs::Water { lower_tenths, upper_tenths } = legs {
        let water = Stroke::new(6.0, theme::PEN);
        #[expect(clippy::cast_precision_loss, reason = "tenths of a few inches")]
        let tenths = |tenths: i32| inch * tenths as f32 / 10.0;
        let tops = [(left, middle + tenths(lower_tenths)), (right, middle - tenths(upper_tenths))];
        for (x, top) in tops {
            let top = top.clamp(rect.top() + 4.0, bottom);
            painter.line_segment([pos2(x, top), pos2(x, bottom)], water);
        }
        painter.line_segment([pos2(left, bottom), pos2(right, bottom)], water);
    }
    let font = FontId::new(9.0, egui::FontFamily::Proportional);
    let mut mark = -COLUMN_IN;
    while mark <= COLUMN_IN {
        let y = middle - mark * inch;
        let even = (mark % 2.0).abs() < 0.1;
        let half = if even { 9.0 } else { 5.0 };
        let x = rect.center().x;
        for (from, to) in [(left + 7.0, left + 7.0 + half), (right - 7.0 - half, right - 7.0)] {
            painter.line_segment([pos2(from, y), pos2(to, y)], Stroke::new(1.0, theme::INK));
        }
        if even {
            let text = format!("{:.0}", mark.abs());
            painter.text(pos2(x, y), Align2::CENTER_CENTER, text, font.clone(), theme::INK);
        }
        mark += 1.0;
    }
}

/// A round dial from 0 to 35 over three quarters of a turn.
fn dial(painter: &Painter, rect: Rect, tenths: Option<i32>) {
    let middle = rect.center();
    let radius = rect.width() * 0.5 - 4.0;
    painter.circle(middle, radius, Color32::WHITE, Stroke::new(3.0, theme::INK));
    let at = |inches: f32, share: f32| {
        let angle = core::f32::consts::PI * (0.75 + 1.5 * inches / DIAL_IN);
        middle + radius * share * egui::Vec2::angled(angle)
    };
    let font = FontId::new(10.0, egui::FontFamily::Proportional);
    let mut mark: u8 = 0;
    while f32::from(mark) <= DIAL_IN {
        let inches = f32::from(mark);
        let long = mark.is_multiple_of(5);
        let inner = if long { 0.8 } else { 0.88 };
        let width = if long { 2.0 } else { 1.0 };
        painter.line_segment([at(inches, inner), at(inches, 0.95)], Stroke::new(width, theme::INK));
        if long {
            let text = mark.to_string();
            painter.text(at(inches, 0.64), Align2::CENTER_CENTER, text, font.clone(), theme::INK);
        }
        mark += 1;
    }
    #[expect(clippy::cast_precision_loss, reason = "tenths of a few inches")]
    let inches = tenths.map_or(DIAL_IN + 2.0, |tenths| tenths as f32 / 10.0);
    painter.line_segment([middle, at(inches, 0.85)], Stroke::new(3.0, theme::DANGER));
    painter.circle_filled(middle, 5.0, theme::INK);
}

//! Pressures over time, with what was done as ticks under them.

use egui::{
    Align2, Color32, FontId, Painter, Pos2, Rect, Sense, Shape, Stroke, StrokeKind, TextStyle, Ui,
    WidgetInfo, WidgetType, pos2, vec2,
};

use super::{DebriefView, TickView, TraceView};
use crate::panels::entry::pressure;
use crate::panels::theme;
use crate::units::{PressureUnit, full_stop};

/// What the traces remember.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct TraceState {
    /// A time that was asked for from a finding, in seconds.
    pub marked_s: Option<f64>,
}

/// Colour and dash of each trace, so that they differ without colour.
const LINES: [(Color32, &[f32], &[f32]); 4] = [
    (theme::PEN, &[], &[]),
    (theme::DANGER, &[9.0], &[4.0]),
    (theme::SETTLED, &[2.5], &[3.5]),
    (theme::BRASS_DARK, &[10.0, 2.0], &[3.0, 3.0]),
];

/// The part of time and pressure that is drawn.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Window {
    /// Where on the page.
    pub rect: Rect,
    /// Last moment, in seconds; the first is 0.
    pub last_s: f64,
    /// Highest pressure, in pascals; the lowest is 0.
    pub most_pa: f64,
}

impl Window {
    /// Where a moment and a pressure lie on the page.
    #[must_use]
    pub fn at(&self, s: f64, pa: f64) -> Pos2 {
        #[expect(clippy::cast_possible_truncation, reason = "page coordinates")]
        let share = |value: f64, most: f64| (value / most.max(1e-9)).clamp(0.0, 1.0) as f32;
        pos2(
            self.rect.left() + self.rect.width() * share(s, self.last_s),
            self.rect.bottom() - self.rect.height() * share(pa, self.most_pa),
        )
    }

    /// The moment at a place on the page.
    #[must_use]
    pub fn moment(&self, x: f32) -> f64 {
        let share = f64::from((x - self.rect.left()) / self.rect.width().max(1.0));
        share.clamp(0.0, 1.0) * self.last_s
    }
}

/// Seconds as minutes and seconds.
#[must_use]
pub fn minutes(s: f64) -> String {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped")]
    let s = s.clamp(0.0, 4e9) as u64;
    format!("{}:{:02}", s / 60, s % 60)
}

/// The value of a trace at a moment: that of the last point before it.
#[must_use]
pub fn value_at(trace: &TraceView, s: f64) -> Option<f64> {
    let after = trace.points.partition_point(|&(t, _)| t <= s);
    let at = after.checked_sub(1)?;
    trace.points.get(at).map(|&(_, pa)| pa)
}

/// Shows the traces; the pointer reads them off, and so do the arrow keys.
pub fn trace_ui(ui: &mut Ui, debrief: &DebriefView, unit: PressureUnit, state: &mut TraceState) {
    let width = ui.available_width().max(120.0);
    let (area, response) = ui.allocate_exact_size(vec2(width, 300.0), Sense::click());
    let summary = summary(debrief, unit);
    response.widget_info(|| WidgetInfo::labeled(WidgetType::Image, true, &summary));
    let font = TextStyle::Small.resolve(ui.style());
    let window = window(area, debrief, &font);
    let painter = ui.painter().with_clip_rect(area.intersect(ui.clip_rect()));
    axes(&painter, &window, unit, &font);
    for (i, trace) in debrief.traces.iter().enumerate() {
        line(&painter, &window, trace, i);
    }
    for tick in &debrief.ticks {
        let foot = window.at(tick.at_s, 0.0);
        painter.vline(foot.x, foot.y..=foot.y + 7.0, Stroke::new(1.5, theme::INK));
    }
    keys(ui, &response, &window, state);
    let read_s = response.hover_pos().map(|pos| window.moment(pos.x)).or(state.marked_s);
    if let Some(s) = read_s {
        let foot = window.at(s, 0.0);
        painter.vline(foot.x, window.rect.y_range(), Stroke::new(1.5, theme::INK));
    }
    if response.has_focus() {
        painter.rect_stroke(
            area.shrink(1.0),
            3.0,
            Stroke::new(3.0, theme::PEN),
            StrokeKind::Inside,
        );
    }
    legend_ui(ui, debrief, unit, read_s, &window);
}

/// Arrow keys move the mark, with the traces in focus.
fn keys(ui: &Ui, response: &egui::Response, window: &Window, state: &mut TraceState) {
    if response.clicked()
        && let Some(pos) = response.interact_pointer_pos()
    {
        state.marked_s = Some(window.moment(pos.x));
    }
    if !response.has_focus() {
        return;
    }
    ui.memory_mut(|memory| {
        let filter = egui::EventFilter { horizontal_arrows: true, ..Default::default() };
        memory.set_focus_lock_filter(response.id, filter);
    });
    let step = window.last_s / 100.0;
    let by = ui.input(|input| {
        let pressed = |key| if input.key_pressed(key) { 1.0 } else { 0.0 };
        pressed(egui::Key::ArrowRight) - pressed(egui::Key::ArrowLeft)
    });
    if by != 0.0 {
        let from = state.marked_s.unwrap_or(0.0);
        state.marked_s = Some((from + by * step).clamp(0.0, window.last_s));
    }
}

fn window(area: Rect, debrief: &DebriefView, font: &FontId) -> Window {
    let points = debrief.traces.iter().flat_map(|trace| trace.points.iter());
    let (mut last_s, mut most_pa) = (60.0_f64, 500.0_f64);
    for &(s, pa) in points {
        last_s = last_s.max(s);
        most_pa = most_pa.max(pa);
    }
    let rect = Rect::from_min_max(
        area.min + vec2(font.size * 3.4, font.size * 1.6),
        area.max - vec2(font.size, font.size * 2.2),
    );
    Window { rect, last_s, most_pa: most_pa * 1.05 }
}

/// A round step that cuts `most` into about `parts` parts: 1, 2 or 5 times a power of ten.
#[must_use]
pub fn round_step(most: f64, parts: f64) -> f64 {
    let rough = (most / parts).max(1e-9);
    let power = libm::pow(10.0, libm::floor(libm::log10(rough)));
    let share = rough / power;
    let step = match share {
        small if small <= 1.0 => 1.0,
        small if small <= 2.0 => 2.0,
        small if small <= 5.0 => 5.0,
        _ => 10.0,
    };
    step * power
}

fn axes(painter: &Painter, window: &Window, unit: PressureUnit, font: &FontId) {
    let faint = Stroke::new(1.0, theme::GRID);
    let line = Stroke::new(1.5, theme::INK);
    let step = round_step(window.most_pa / unit.pa(), 5.0);
    let mut value = 0.0;
    while value * unit.pa() <= window.most_pa {
        let at = window.at(0.0, value * unit.pa());
        painter.hline(window.rect.x_range(), at.y, faint);
        let text = format!("{value:.*}", if step < 0.1 { 2 } else { usize::from(step < 1.0) });
        painter.text(at - vec2(5.0, 0.0), Align2::RIGHT_CENTER, text, font.clone(), theme::INK);
        value += step;
    }
    let minute_step = round_step(window.last_s / 60.0, 6.0).max(0.5);
    let mut minute = 0.0;
    while minute * 60.0 <= window.last_s {
        let at = window.at(minute * 60.0, 0.0);
        painter.vline(at.x, window.rect.y_range(), faint);
        let text = t!("trace-minutes", minutes = minute.to_string());
        painter.text(at + vec2(0.0, 9.0), Align2::CENTER_TOP, text, font.clone(), theme::INK);
        minute += minute_step;
    }
    painter.line_segment([window.rect.left_top(), window.rect.left_bottom()], line);
    painter.line_segment([window.rect.left_bottom(), window.rect.right_bottom()], line);
    painter.text(
        window.rect.left_top() - vec2(4.0, 3.0),
        Align2::LEFT_BOTTOM,
        unit.label(),
        font.clone(),
        theme::INK,
    );
}

fn line(painter: &Painter, window: &Window, trace: &TraceView, i: usize) {
    let path: Vec<Pos2> = trace.points.iter().map(|&(s, pa)| window.at(s, pa)).collect();
    let Some((color, dashes, gaps)) = LINES.get(i % LINES.len()) else { return };
    let stroke = Stroke::new(2.0, *color);
    if dashes.is_empty() {
        painter.add(Shape::line(path, stroke));
    } else {
        painter.extend(Shape::dashed_line_with_offset(&path, stroke, dashes, gaps, 0.0));
    }
}

/// The traces with their line, their value where they are read, and what was done then.
fn legend_ui(
    ui: &mut Ui,
    debrief: &DebriefView,
    unit: PressureUnit,
    read_s: Option<f64>,
    window: &Window,
) {
    ui.horizontal_wrapped(|ui| {
        for (i, trace) in debrief.traces.iter().enumerate() {
            let (sample, _) = ui.allocate_exact_size(vec2(34.0, 12.0), Sense::hover());
            let flat = TraceView { name: String::new(), points: vec![(0.0, 0.5), (1.0, 0.5)] };
            let small = Window { rect: sample, last_s: 1.0, most_pa: 1.0 };
            line(ui.painter(), &small, &flat, i);
            let value = read_s.and_then(|s| value_at(trace, s));
            ui.label(match value {
                Some(pa) => format!("{} {} {}", trace.name, pressure(pa, unit, 2), unit.label()),
                None => trace.name.clone(),
            });
        }
    });
    match read_s {
        Some(s) => {
            let near = nearest(&debrief.ticks, s, window.last_s / 60.0);
            ui.label(match near {
                Some(tick) => t!("trace-at-done", time = minutes(s), done = &tick.text),
                None => t!("trace-at", time = minutes(s)),
            });
        }
        None => drop(ui.label(t!("trace-point"))),
    }
}

/// The tick nearest to a moment, if one is near.
#[must_use]
pub fn nearest(ticks: &[TickView], s: f64, within_s: f64) -> Option<&TickView> {
    ticks
        .iter()
        .filter(|tick| (tick.at_s - s).abs() <= within_s)
        .min_by(|a, b| (a.at_s - s).abs().total_cmp(&(b.at_s - s).abs()))
}

fn summary(debrief: &DebriefView, unit: PressureUnit) -> String {
    let mut text = String::from(t!("trace-summary"));
    for trace in &debrief.traces {
        let values = trace.points.iter().map(|&(_, pa)| pa);
        let lower = values.clone().fold(f64::INFINITY, f64::min);
        let upper = values.fold(f64::NEG_INFINITY, f64::max);
        if lower <= upper {
            let (lower, upper) = (pressure(lower, unit, 2), pressure(upper, unit, 2));
            text.push(' ');
            text.push_str(&full_stop(t!(
                "trace-span",
                trace = &trace.name,
                lower = lower,
                upper = upper,
                unit = unit.label()
            )));
        }
    }
    text
}

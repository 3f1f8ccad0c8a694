//! The coach's line under the top bar.

use egui::text::LayoutJob;
use egui::{
    Button, Frame, Margin, Panel, Rect, RichText, Stroke, TextStyle, Ui, WidgetType, pos2, vec2,
};

use super::coach::Hint;
use super::command::Command;
use super::parts;
use super::theme;
use super::widgets;

/// What was pressed in the line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LineAfter {
    /// No button that the caller must act on.
    Stay,
    /// Show me: choose the part.
    Show,
    /// Hide the hints until one is asked for.
    Skip,
}

/// Height of the line: two lines of text, so that nothing below it moves with a hint.
const HEIGHT: f32 = 46.0;
/// Widths of its buttons, in their order. Each keeps its place, whatever the hint: a
/// second press on one never falls on another.
const WIDTHS: [f32; 3] = [96.0, 92.0, 124.0];

/// Shows the hint. A press of `Do it` does what is meant, so that the first job can be watched;
/// `left_s` are the seconds to wait before, `by_hand` is how the hand goes about it at the part.
pub fn coach_line_ui(
    root: &mut Ui,
    hint: &Hint,
    by_hand: Option<&str>,
    left_s: u32,
    out: &mut Vec<Command>,
) -> LineAfter {
    let frame = Frame::new()
        .fill(theme::SHADE)
        .stroke(Stroke::new(1.0, theme::RULE))
        .inner_margin(Margin::symmetric(12, 4));
    let factor = theme::factor_of(root);
    let mut after = LineAfter::Stay;
    Panel::top(widgets::id("coach"))
        .frame(frame)
        .exact_size(HEIGHT * factor)
        .show_separator_line(false)
        .resizable(false)
        .show(root, |ui| {
            let whole = ui.max_rect();
            let buttons = (WIDTHS.iter().sum::<f32>() + 28.0) * factor;
            let (text, buttons) = whole.split_left_right_at_x(whole.right() - buttons);
            text_ui(ui, text, hint, by_hand);
            after = buttons_ui(ui, buttons, factor, hint, left_s, out);
        });
    after
}

/// The step, and under it, where there is room, how the hand goes about it.
fn text_ui(ui: &mut Ui, rect: Rect, hint: &Hint, by_hand: Option<&str>) {
    let layout = egui::Layout::left_to_right(egui::Align::Center);
    let mut ui = ui.new_child(egui::UiBuilder::new().max_rect(rect).layout(layout));
    let next = RichText::new(t!("coach-line-next")).family(theme::semibold()).color(theme::PEN);
    ui.label(next);
    // Two lines have room; what is longer is written smaller.
    let font = TextStyle::Body.resolve(ui.style());
    let width = ui.available_width();
    let galley = ui.painter().layout(hint.text.clone(), font, theme::INK, width);
    if let Some(by_hand) = by_hand.filter(|_| galley.rows.len() == 1) {
        ui.vertical(|ui| {
            ui.spacing_mut().item_spacing.y = 0.0;
            let line = ui.label(RichText::new(&hint.text));
            widgets::live(&line);
            widgets::quiet(ui, by_hand);
        });
        return;
    }
    let line = if galley.rows.len() > 2 {
        // A long note in it may need more: its end is said to those who point at the line.
        let small = TextStyle::Small.resolve(ui.style());
        let mut job = LayoutJob::simple(hint.text.clone(), small, theme::INK, width);
        job.wrap.max_rows = 2;
        ui.label(job).on_hover_text(&hint.text)
    } else {
        ui.add(egui::Label::new(RichText::new(&hint.text)).wrap())
    };
    widgets::named(&line, WidgetType::Label, &hint.text);
    widgets::live(&line);
}

fn buttons_ui(
    ui: &mut Ui,
    rect: Rect,
    factor: f32,
    hint: &Hint,
    left_s: u32,
    out: &mut Vec<Command>,
) -> LineAfter {
    let mut after = LineAfter::Stay;
    let mut left = rect.left() + 4.0 * factor;
    let [own, shown, no_more] = WIDTHS.map(|width| {
        let size = vec2(width, 30.0) * factor;
        let at = Rect::from_center_size(pos2(left + size.x / 2.0, rect.center().y), size);
        left = at.right() + 8.0 * factor;
        at
    });
    let (label, name) = if left_s > 0 {
        let wait = t!("coach-line-wait", seconds = left_s.to_string());
        (wait.clone(), wait)
    } else if hint.action.is_some() {
        (t!("coach-line-do").into(), t!("coach-line-do-next").into())
    } else {
        (t!("coach-line-yours").into(), t!("coach-line-yours-name").into())
    };
    let go = ui.put(own, Button::new(label));
    widgets::named(&go, WidgetType::Button, name);
    if let Some(action) = hint.action.as_ref().filter(|_| left_s == 0 && go.clicked()) {
        out.push(Command::Act(action.clone()));
    }
    let about = hint.cell.map(|cell| cell.name()).or(hint.part.map(parts::name));
    let show = ui.put(shown, Button::new(t!("coach-line-show")));
    let name = match &about {
        Some(about) => t!("coach-line-show-part", part = about),
        None => t!("coach-line-show-nothing").into(),
    };
    widgets::named(&show, WidgetType::Button, name);
    if show.clicked() && about.is_some() {
        after = LineAfter::Show;
    }
    if ui.put(no_more, Button::new(t!("coach-line-no-more"))).clicked() {
        after = LineAfter::Skip;
    }
    after
}

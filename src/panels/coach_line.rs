//! The coach's line under the top bar.

use egui::{Frame, Margin, Panel, RichText, Stroke, Ui};

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

/// Shows the hint. A press of `Do it` does what is meant, so that the first job can be watched;
/// `left_s` are the seconds to wait before.
pub fn coach_line_ui(root: &mut Ui, hint: &Hint, left_s: u32, out: &mut Vec<Command>) -> LineAfter {
    let mut after = LineAfter::Stay;
    let frame = Frame::new()
        .fill(theme::SHADE)
        .stroke(Stroke::new(1.0, theme::RULE))
        .inner_margin(Margin::symmetric(12, 6));
    Panel::top(widgets::id("coach")).frame(frame).show_separator_line(false).resizable(false).show(
        root,
        |ui| {
            ui.horizontal_wrapped(|ui| {
                ui.label(
                    RichText::new(t!("coach-line-next"))
                        .family(theme::semibold())
                        .color(theme::PEN),
                );
                widgets::live(&ui.label(&hint.text));
                let about = hint.cell.map(|cell| cell.name()).or(hint.part.map(parts::name));
                if let Some(about) = about {
                    let show = ui.button(t!("coach-line-show"));
                    let name = t!("coach-line-show-part", part = about);
                    widgets::named(&show, egui::WidgetType::Button, name);
                    if show.clicked() {
                        after = LineAfter::Show;
                    }
                }
                if left_s > 0 {
                    ui.label(
                        RichText::new(t!("coach-line-wait", seconds = left_s.to_string()))
                            .color(theme::PEN),
                    );
                } else if let Some(action) = &hint.action {
                    let go = ui.button(t!("coach-line-do"));
                    widgets::named(&go, egui::WidgetType::Button, t!("coach-line-do-next"));
                    if go.clicked() {
                        out.push(Command::Act(action.clone()));
                    }
                }
                let skip = ui.button(t!("coach-line-no-more"));
                if skip.clicked() {
                    after = LineAfter::Skip;
                }
            });
        },
    );
    after
}

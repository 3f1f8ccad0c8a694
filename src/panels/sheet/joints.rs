//! Leak checks on the sheet.

use egui::{Button, RichText, Ui, WidgetInfo, WidgetType, vec2};

use crate::hands::action::Action;
use crate::panels::command::Command;
use crate::panels::theme;
use crate::panels::widgets;
use crate::parts::{Joint, JointVerdict};
use crate::senses::seen::SheetSeen;

/// Shows each joint with what was written, and writes what is pressed.
pub(super) fn joints_ui(ui: &mut Ui, sheet: &SheetSeen, out: &mut Vec<Command>) {
    widgets::section(ui, t!("joints-title"));
    egui::Grid::new("joints").num_columns(3).spacing(vec2(6.0, 3.0)).show(ui, |ui| {
        for &joint in Joint::ALL {
            ui.label(joint.label());
            let written = sheet.joints.iter().rev().find(|(one, _)| *one == joint);
            for (verdict, word, mark) in [
                (JointVerdict::Tight, t!("joints-tight"), "✓"),
                (JointVerdict::Leaking, t!("joints-leaking"), "✗"),
            ] {
                let now = written.is_some_and(|(_, one)| *one == verdict);
                if verdict_button(ui, joint, word, mark, now).clicked() {
                    out.push(Command::Act(Action::WriteJoint { joint, verdict }));
                }
            }
            ui.end_row();
        }
    });
}

fn verdict_button(ui: &mut Ui, joint: Joint, word: &str, mark: &str, now: bool) -> egui::Response {
    let text = if now {
        RichText::new(format!("{mark} {word}")).color(theme::PEN).family(theme::semibold())
    } else {
        RichText::new(word).color(theme::INK)
    };
    let button =
        widgets::seen_when_focused(ui.add(Button::new(text).min_size(vec2(68.0, widgets::TARGET))));
    let name = t!("joints-said", joint = joint.label(), verdict = word);
    button.widget_info(|| WidgetInfo::selected(WidgetType::Button, true, now, &name));
    button
}

//! Leak checks on the sheet.

use egui::{Button, RichText, Ui, WidgetInfo, WidgetType, vec2};

use crate::hands::action::Action;
use crate::panels::command::Command;
use crate::panels::theme;
use crate::panels::view::Job;
use crate::panels::widgets;
use crate::parts::{Duty, Joint, JointVerdict};
use crate::senses::seen::SheetSeen;

/// Shows each joint with what was written, and writes what is pressed. Joints in the yard stand there
/// once they were worked on, the whole piping where it was, or the card asks for it.
pub(super) fn joints_ui(ui: &mut Ui, job: &Job<'_>, out: &mut Vec<Command>) {
    let sheet = &job.seen.sheet;
    widgets::section(ui, t!("joints-title"));
    egui::Grid::new("joints").num_columns(3).spacing(vec2(6.0, 3.0)).show(ui, |ui| {
        for &joint in Joint::ALL.iter().filter(|joint| sheet.has_line_for(**joint)) {
            let written = sheet.joints.iter().rev().find(|(one, _)| *one == joint);
            let written = written.map(|(_, verdict)| *verdict);
            let write = |verdict| Action::WriteJoint { joint, verdict };
            line_ui(ui, joint.label(), written, write, out);
        }
        if asks_for_piping(sheet, job.card.required) {
            line_ui(ui, t!("joints-piping"), sheet.piping, Action::WritePiping, out);
        }
    });
}

/// Whether the whole piping is to be checked, or was.
fn asks_for_piping(sheet: &SheetSeen, required: &[Duty]) -> bool {
    let opened = sheet.done.iter().any(|done| done.repair.is_on_piping());
    opened || sheet.piping.is_some() || required.contains(&Duty::PipingLeakCheck)
}

/// One thing that was checked, with both verdicts.
fn line_ui(
    ui: &mut Ui,
    label: &str,
    written: Option<JointVerdict>,
    write: impl Fn(JointVerdict) -> Action,
    out: &mut Vec<Command>,
) {
    ui.label(label);
    for (verdict, word, mark) in [
        (JointVerdict::Tight, t!("joints-tight"), "✓"),
        (JointVerdict::Leaking, t!("joints-leaking"), "✗"),
    ] {
        let now = written == Some(verdict);
        if verdict_button(ui, label, word, mark, now).clicked() {
            out.push(Command::Act(write(verdict)));
        }
    }
    ui.end_row();
}

fn verdict_button(ui: &mut Ui, label: &str, word: &str, mark: &str, now: bool) -> egui::Response {
    let text = if now {
        RichText::new(format!("{mark} {word}")).color(theme::PEN).family(theme::semibold())
    } else {
        RichText::new(word).color(theme::INK)
    };
    let button =
        widgets::seen_when_focused(ui.add(Button::new(text).min_size(vec2(58.0, widgets::TARGET))));
    let name = t!("joints-said", joint = label, verdict = word);
    button.widget_info(|| WidgetInfo::selected(WidgetType::Button, true, now, &name));
    button
}

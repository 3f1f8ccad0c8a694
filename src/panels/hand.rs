//! What is in hand, and what can be done here.

use egui::Ui;

use super::actions;
use super::command::Command;
use super::forms::{FormState, form_ui};
use super::menu::{Group, MenuItem, heading};
use super::parts;
use super::widgets;
use super::words;
use crate::hands::action::Action;
use crate::parts::Place;
use crate::senses::seen::Seen;

/// Shows what is in hand and the list of what can be done, with its keys and forms.
pub fn hand_ui(
    ui: &mut Ui,
    seen: &Seen,
    chosen: Option<&str>,
    menu: &[MenuItem],
    forms: &mut FormState,
    out: &mut Vec<Command>,
) {
    ui.horizontal_wrapped(|ui| {
        widgets::section(ui, t!("hand-title"));
        match seen.hand {
            Some(tool) => ui.label(widgets::pen(tool.label())),
            None => ui.label(t!("hand-nothing")),
        };
    });
    for group in [Group::Part, Group::Hand, Group::Here] {
        let any = menu.iter().any(|item| item.group == group);
        if !any && (group != Group::Part || chosen.is_none()) {
            continue;
        }
        ui.add_space(4.0);
        widgets::section(ui, &heading(group, chosen));
        if group == Group::Part {
            part_ui(ui, seen, chosen, menu, forms, out);
        } else {
            group_ui(ui, group, menu, out);
        }
    }
    ui.add_space(4.0);
    ui.collapsing(t!("hand-finding"), |ui| {
        form_ui(ui, actions::Form::Finding, seen, forms, out);
    });
    if seen.place != Place::GasValve {
        ui.add_space(4.0);
        ui.collapsing(t!("hand-end"), |ui| {
            form_ui(ui, actions::Form::HandOver, seen, forms, out);
        });
    }
}

/// The chosen part: how it stands, what can be done, its forms.
pub(crate) fn part_ui(
    ui: &mut Ui,
    seen: &Seen,
    chosen: Option<&str>,
    menu: &[MenuItem],
    forms: &mut FormState,
    out: &mut Vec<Command>,
) -> Option<egui::Response> {
    let part = chosen?;
    if let Some(value) = words::value(part, seen) {
        widgets::live(&ui.label(value));
    }
    let first = group_ui(ui, Group::Part, menu, out);
    let list = actions::forms(part, seen);
    if first.is_none() && list.is_empty() {
        widgets::quiet(ui, t!("hand-no-ways", part = parts::name(part)));
    }
    for form in list {
        form_ui(ui, form, seen, forms, out);
    }
    first
}

/// The items of a group; gives the first button.
fn group_ui(
    ui: &mut Ui,
    group: Group,
    menu: &[MenuItem],
    out: &mut Vec<Command>,
) -> Option<egui::Response> {
    let mut first = None;
    for item in menu.iter().filter(|item| item.group == group) {
        let button = widgets::list_button(ui, &item.choice.label, item.key);
        // A double click is no answer to whether a repair shall be done.
        let mend = matches!(item.choice.action, Action::Mend(_));
        if button.clicked() && !(mend && button.double_clicked()) {
            out.push(Command::Act(item.choice.action.clone()));
        }
        first.get_or_insert(button);
    }
    first
}

//! What is in hand, and what can be done here.

use egui::Ui;

use super::forms::{FormState, form_ui};
use super::kit;
use super::offers::{Group, Offer, heading};
use super::parts;
use super::ways;
use super::wish::Wish;
use super::words;
use crate::hands::action::Action;
use crate::parts::Place;
use crate::senses::seen::Seen;

/// Shows what is in hand and the list of what can be done, with its keys and forms.
pub fn hand_ui(
    ui: &mut Ui,
    seen: &Seen,
    chosen: Option<&str>,
    offers: &[Offer],
    forms: &mut FormState,
    out: &mut Vec<Wish>,
) {
    ui.horizontal_wrapped(|ui| {
        kit::section(ui, t!("hand-title"));
        match seen.hand {
            Some(tool) => ui.label(kit::pen(tool.label())),
            None => ui.label(t!("hand-nothing")),
        };
    });
    for group in [Group::Part, Group::Hand, Group::Here] {
        let any = offers.iter().any(|offer| offer.group == group);
        if !any && (group != Group::Part || chosen.is_none()) {
            continue;
        }
        ui.add_space(4.0);
        kit::section(ui, &heading(group, chosen));
        if group == Group::Part {
            part_ui(ui, seen, chosen, offers, forms, out);
        } else {
            group_ui(ui, group, offers, out);
        }
    }
    ui.add_space(4.0);
    ui.collapsing(t!("hand-finding"), |ui| {
        form_ui(ui, ways::Form::Finding, seen, forms, out);
    });
    if seen.place != Place::GasValve {
        ui.add_space(4.0);
        ui.collapsing(t!("hand-end"), |ui| {
            form_ui(ui, ways::Form::HandOver, seen, forms, out);
        });
    }
}

/// The chosen part: how it stands, what can be done, its forms.
pub(crate) fn part_ui(
    ui: &mut Ui,
    seen: &Seen,
    chosen: Option<&str>,
    offers: &[Offer],
    forms: &mut FormState,
    out: &mut Vec<Wish>,
) -> Option<egui::Response> {
    let part = chosen?;
    if let Some(value) = words::value(part, seen) {
        kit::live(&ui.label(value));
    }
    let first = group_ui(ui, Group::Part, offers, out);
    let list = ways::forms(part, seen);
    if first.is_none() && list.is_empty() {
        kit::quiet(ui, t!("hand-no-ways", part = parts::name(part)));
    }
    for form in list {
        form_ui(ui, form, seen, forms, out);
    }
    first
}

/// The offers of a group; gives the first button.
fn group_ui(
    ui: &mut Ui,
    group: Group,
    offers: &[Offer],
    out: &mut Vec<Wish>,
) -> Option<egui::Response> {
    let mut first = None;
    for offer in offers.iter().filter(|offer| offer.group == group) {
        let button = kit::list_button(ui, &offer.way.label, offer.key);
        // A double click is no answer to whether a repair shall be done.
        let mend = matches!(offer.way.action, Action::Mend(_));
        if button.clicked() && !(mend && button.double_clicked()) {
            out.push(Wish::Act(offer.way.action.clone()));
        }
        first.get_or_insert(button);
    }
    first
}

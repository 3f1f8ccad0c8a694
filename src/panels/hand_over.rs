//! The end of the job: how it ends and what still has to be done on a real one.

use egui::Ui;

use super::command::Command;
use super::widgets;
use crate::hands::action::{Action, HandOver};
use crate::parts::{Duty, Ending};
use crate::words::Id;

/// What is ticked so far.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct HandOverState {
    /// How the job ends; nothing is proposed.
    pub ending: Option<Ending>,
    /// What was not done.
    pub not_done: Vec<Duty>,
    /// Whether an ending was missing when it was tried.
    pub lacking: Lacking,
}

/// Whether the form can go off.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub enum Lacking {
    /// Nothing is missing, or nothing was tried.
    #[default]
    Nothing,
    /// An ending must be chosen first.
    Ending,
}

const ENDINGS: [(Ending, Id); 3] = [
    (Ending::InService, id!("hand-over-in-service")),
    (Ending::SupplyOwnerCalled, id!("hand-over-owner-called")),
    (Ending::ShutOff, id!("hand-over-shut-off")),
];

/// What the form says.
#[must_use]
pub fn said(state: &HandOverState) -> Option<HandOver> {
    let mut not_done = state.not_done.clone();
    not_done.sort();
    not_done.dedup();
    state.ending.map(|ending| HandOver { ending, not_done })
}

/// Shows the form; hands over once an ending is chosen.
pub fn hand_over_ui(ui: &mut Ui, state: &mut HandOverState, out: &mut Vec<Command>) {
    widgets::section(ui, t!("hand-over-title"));
    for (ending, label) in ENDINGS {
        if ui.radio(state.ending == Some(ending), label.text()).clicked() {
            state.ending = Some(ending);
            state.lacking = Lacking::Nothing;
        }
    }
    ui.label(t!("hand-over-not-done"));
    for &item in Duty::ALL {
        let mut ticked = state.not_done.contains(&item);
        if ui.checkbox(&mut ticked, item.label()).clicked() {
            if ticked {
                state.not_done.push(item);
            } else {
                state.not_done.retain(|&one| one != item);
            }
        }
    }
    // What is missing stands above the button, where it is in view when the button is.
    match state.lacking {
        Lacking::Nothing => {}
        Lacking::Ending => {
            let text = egui::RichText::new(t!("hand-over-choose")).color(super::theme::DANGER);
            widgets::live(&ui.label(text));
        }
    }
    if ui.button(t!("hand-over-title")).clicked() {
        match said(state) {
            Some(said) => out.push(Command::Act(Action::HandOver(said))),
            None => state.lacking = Lacking::Ending,
        }
    }
}

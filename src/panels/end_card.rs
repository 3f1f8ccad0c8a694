//! The card over the drawing when a job is over or was stopped, and when one stands off the
//! premises.

use egui::{Align2, Area, Order, Rect, RichText, Ui, vec2};

use super::command::Command;
use super::theme;
use super::view::{Job, SecondChance};
use super::widgets;
use crate::parts::{Ending, Place};
use crate::senses::seen::Over;

/// Shows the card, if one is due.
pub fn end_card_ui(ui: &Ui, scene: Rect, job: &Job<'_>, out: &mut Vec<Command>) {
    match job.seen.over {
        Some(over) => card(ui, scene, |ui| over_ui(ui, over, job, out)),
        None if job.seen.place == Place::Away => card(ui, scene, |ui| {
            ui.heading(t!("end-away-title"));
            ui.label(t!("end-away"));
        }),
        None => {}
    }
}

fn card(ui: &Ui, scene: Rect, content: impl FnOnce(&mut Ui)) {
    Area::new(widgets::id("end-card"))
        .order(Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(scene.center())
        .constrain_to(scene)
        .show(ui.ctx(), |ui| {
            widgets::slip().inner_margin(egui::Margin::same(18)).show(ui, |ui| {
                ui.set_width(440.0_f32.min(scene.width() - 60.0).max(60.0));
                content(ui);
            });
        });
}

fn over_ui(ui: &mut Ui, over: Over, job: &Job<'_>, out: &mut Vec<Command>) {
    match over {
        Over::HandedOver(ending) => {
            ui.heading(t!("end-handed-over"));
            ui.label(match ending {
                Ending::InService => t!("end-in-service"),
                Ending::SupplyOwnerCalled => {
                    t!("end-owner-called")
                }
                Ending::ShutOff => t!("end-shut-off"),
            });
        }
        Over::Ignition => {
            let (bar, _) =
                ui.allocate_exact_size(vec2(ui.available_width(), 10.0), egui::Sense::hover());
            widgets::hatch(ui.painter(), bar, theme::DANGER);
            ui.heading(RichText::new(t!("end-ignited-title")).color(theme::DANGER));
            ui.label(t!("end-ignited"));
        }
    }
    ui.horizontal_wrapped(|ui| {
        if job.second_chance == SecondChance::Offered && ui.button(t!("end-step-back")).clicked() {
            out.push(Command::StepBack);
        }
        if widgets::main_button(ui, t!("end-debrief")).clicked() {
            out.push(Command::ShowDebrief);
        }
        if ui.button(t!("end-leave")).clicked() {
            out.push(Command::Leave);
        }
    });
}

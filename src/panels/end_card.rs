//! The card over the drawing when a job is over or was stopped, and when one stands off the
//! premises.

use egui::{Align2, Area, Order, Rect, RichText, Ui, vec2};

use super::kit;
use super::theme;
use super::view::{Job, SecondChance};
use super::wish::Wish;
use crate::parts::{Ending, Place};
use crate::senses::seen::Over;

/// Shows the card, if one is due.
pub fn end_card_ui(ui: &Ui, scene: Rect, job: &Job<'_>, out: &mut Vec<Wish>) {
    match job.seen.over {
        Some(over) => card(ui, scene, |ui| over_ui(ui, over, job, out)),
        None if job.seen.place == Place::Away => card(ui, scene, |ui| {
            ui.heading("Off the premises");
            ui.label("You stand at a safe distance. What can be done from here is on the list.");
        }),
        None => {}
    }
}

fn card(ui: &Ui, scene: Rect, content: impl FnOnce(&mut Ui)) {
    Area::new(kit::id("end-card"))
        .order(Order::Foreground)
        .pivot(Align2::CENTER_CENTER)
        .fixed_pos(scene.center())
        .constrain_to(scene)
        .show(ui.ctx(), |ui| {
            kit::slip().inner_margin(egui::Margin::same(18)).show(ui, |ui| {
                ui.set_width(440.0_f32.min(scene.width() - 60.0).max(60.0));
                content(ui);
            });
        });
}

fn over_ui(ui: &mut Ui, over: Over, job: &Job<'_>, out: &mut Vec<Wish>) {
    match over {
        Over::HandedOver(ending) => {
            ui.heading("Handed over");
            ui.label(match ending {
                Ending::InService => "You left the furnace in service.",
                Ending::SupplyOwnerCalled => {
                    "You left the furnace running, with the owner of the supply called."
                }
                Ending::ShutOff => "You left the furnace shut off.",
            });
        }
        Over::Ignition => {
            let (bar, _) =
                ui.allocate_exact_size(vec2(ui.available_width(), 10.0), egui::Sense::hover());
            kit::hatch(ui.painter(), bar, theme::DANGER);
            ui.heading(RichText::new("Stopped: gas ignited").color(theme::DANGER));
            ui.label(
                "Gas met a flame or a hot igniter where it must not. On a real job people are \
                 burnt here. The debrief says how it came to it.",
            );
        }
    }
    ui.horizontal_wrapped(|ui| {
        if job.second_chance == SecondChance::Offered
            && ui.button("Go back to the step before").clicked()
        {
            out.push(Wish::StepBack);
        }
        if kit::main_button(ui, "Debrief").clicked() {
            out.push(Wish::ShowDebrief);
        }
        if ui.button("Leave").clicked() {
            out.push(Wish::Leave);
        }
    });
}

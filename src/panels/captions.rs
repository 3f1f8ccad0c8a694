//! What is heard, smelt and refused, in words at the foot of the drawing.

use egui::{Align2, Area, Order, Rect, RichText, Ui, pos2};

use super::command::Command;
use super::theme;
use super::view::Job;
use super::widgets;
use crate::parts::{Height, Tool};
use crate::senses::seen::{Seen, Smell, Sound};
use crate::words::decimal;

/// Captions of everything heard now, events first, each with a note sign.
#[must_use]
pub fn captions(job: &Job<'_>) -> Vec<String> {
    let happened = job.captions.iter().map(String::as_str);
    let heard = job.seen.sounds.iter().map(|sound| sound.caption());
    happened.chain(heard).map(|caption| format!("♪ {caption}")).collect()
}

/// What the nose and the detector give, in words; nothing where there is nothing to say.
#[must_use]
pub fn air_words(seen: &Seen) -> Option<String> {
    let at = |height| match height {
        Height::Floor => t!("caption-at-floor"),
        Height::Head => t!("caption-at-head"),
    };
    let mut words = Vec::new();
    if seen.smell > Smell::None {
        words.push(t!("caption-smell", smell = seen.smell.label()));
    }
    if let Some((height, smell)) = seen.sniffed {
        words.push(t!("caption-sniff", place = at(height), smell = smell.label()));
    }
    if let (Some(Tool::GasDetector), Some(read)) = (seen.hand, seen.detector) {
        words.push(t!(
            "caption-detector",
            place = at(read.height),
            percent = decimal(read.percent_lel, 0)
        ));
    }
    (!words.is_empty()).then(|| words.join(" "))
}

/// Whether what is heard or smelt means danger.
fn danger(seen: &Seen) -> bool {
    seen.smell >= Smell::Strong
        || seen.sounds.iter().any(|sound| matches!(sound, Sound::Alarm | Sound::Bang))
}

/// Shows captions, smell, the last refusal, and what a look or a repair has just given. Gives
/// where that lies while there is a refusal or something found, so that nothing is put over it.
pub(super) fn captions_ui(
    ui: &Ui,
    scene: Rect,
    job: &Job<'_>,
    message: Option<&str>,
    out: &mut Vec<Command>,
) -> Option<Rect> {
    let lines = captions(job);
    let air = air_words(job.seen);
    if lines.is_empty() && air.is_none() && job.refusal.is_none() && message.is_none() {
        return None;
    }
    // Between the tool roll at the left and the manometer at the right.
    let width = (scene.width() * 0.35).max(220.0).min(scene.width() - 16.0).max(40.0);
    let at = pos2(scene.left() + scene.width() * 0.545, scene.bottom() - 6.0);
    let told = job.refusal.is_some() || message.is_some();
    let area = Area::new(widgets::id("captions"))
        .order(Order::Middle)
        .pivot(Align2::CENTER_BOTTOM)
        .fixed_pos(at)
        .constrain_to(scene)
        .show(ui.ctx(), |ui| {
            ui.set_max_width(width);
            if let Some(refusal) = job.refusal {
                refusal_ui(ui, refusal, out);
            }
            if let Some(message) = message {
                widgets::slip().show(ui, |ui| {
                    let text = RichText::new(message).family(theme::semibold());
                    widgets::live(&ui.label(text.color(theme::INK)));
                });
            }
            if !lines.is_empty() || air.is_some() {
                heard_ui(ui, job.seen, &lines, air.as_deref());
            }
        });
    told.then_some(area.response.rect)
}

fn refusal_ui(ui: &mut Ui, refusal: &str, out: &mut Vec<Command>) {
    widgets::slip().show(ui, |ui| {
        ui.horizontal_wrapped(|ui| {
            let text = RichText::new(format!("✗ {refusal}")).family(theme::semibold());
            widgets::live(&ui.label(text.color(theme::INK)));
            if ui.button(t!("caption-ok")).clicked() {
                out.push(Command::RefusalRead);
            }
        });
    });
}

fn heard_ui(ui: &mut Ui, seen: &Seen, lines: &[String], air: Option<&str>) {
    let frame = if danger(seen) {
        widgets::slip().stroke(egui::Stroke::new(3.0, theme::DANGER))
    } else {
        widgets::slip()
    };
    frame.show(ui, |ui| {
        if !lines.is_empty() {
            widgets::live(&ui.label(lines.join("   ")));
        }
        if let Some(air) = air {
            widgets::live(&ui.label(RichText::new(air).family(theme::semibold())));
        }
        if danger(seen) {
            let (bar, _) = ui.allocate_exact_size(
                egui::vec2(ui.available_width().min(160.0), 8.0),
                egui::Sense::hover(),
            );
            widgets::hatch(ui.painter(), bar, theme::DANGER);
            ui.label(RichText::new(t!("caption-danger")).color(theme::DANGER));
        }
    });
}

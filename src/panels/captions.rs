//! What is heard and smelt, in words under the drawing; what is refused or found, over its foot.

use egui::{Align2, Area, Order, Rect, RichText, Stroke, StrokeKind, Ui, pos2, vec2};

use super::clear;
use super::command::Command;
use super::theme;
use super::view::{Job, PartBox};
use super::widgets;
use crate::parts::{Fitted, Height, Place, Tool};
use crate::senses::seen::{Seen, Smell, Sound};
use crate::words::decimal;

/// Captions of everything heard now, events first, each with a note sign.
#[must_use]
pub fn captions(job: &Job<'_>) -> Vec<String> {
    let happened = job.captions.iter().map(String::as_str);
    let heard = job.seen.sounds.iter().map(|sound| sound.caption());
    happened.chain(heard).map(|caption| format!("♪ {caption}")).collect()
}

/// Whether a sniff that found nothing is still worth a line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Sniff {
    /// It was made just now.
    Fresh,
    /// It is minutes old.
    Old,
}

/// What the nose and the detector give, in words; nothing where there is nothing to say.
#[must_use]
pub fn air_words(seen: &Seen, sniff: Sniff) -> Option<String> {
    let at = |height| match height {
        Height::Floor => t!("caption-at-floor"),
        Height::Head => t!("caption-at-head"),
    };
    let mut words = Vec::new();
    if seen.smell > Smell::None {
        words.push(t!("caption-smell", smell = seen.smell.label()));
    }
    let told = seen.sniffed.filter(|(_, smell)| sniff == Sniff::Fresh || *smell > Smell::None);
    if let Some((height, smell)) = told {
        words.push(t!("caption-sniff", place = at(height), smell = smell.label()));
    }
    if let (Some(Tool::GasDetector), Some(read)) = (seen.hand, seen.detector) {
        words.push(t!(
            "caption-detector",
            place = at(read.height),
            percent = decimal(read.percent_lel, 0)
        ));
    }
    let at_door = seen.place == Place::GasValve;
    let door = seen.furnace.as_ref().filter(|_| at_door).map(|it| it.burner_door);
    if door == Some(Fitted::On) {
        words.push(t!("caption-door-on").to_owned());
    }
    (!words.is_empty()).then(|| words.join(" "))
}

/// Whether what is heard or smelt means danger.
fn danger(seen: &Seen) -> bool {
    seen.smell >= Smell::Strong
        || seen.sounds.iter().any(|sound| matches!(sound, Sound::Alarm | Sound::Bang))
}

/// Height of the line of what is heard, in points at the usual size of type.
const LINE: f32 = 28.0;

/// The drawing without the line at its foot, and that line: what is heard never lies over the work.
#[must_use]
pub(super) fn split(scene: Rect, factor: f32) -> (Rect, Rect) {
    let height = (LINE * factor).min(0.2 * scene.height());
    scene.split_top_bottom_at_y(scene.bottom() - height)
}

/// Shows what is heard and smelt, in one line under the drawing.
pub(super) fn heard_ui(root: &mut Ui, line: Rect, job: &Job<'_>, sniff: Sniff) {
    if !line.is_positive() {
        return;
    }
    let danger = danger(job.seen);
    let painter = root.painter().clone();
    painter.rect_filled(line, 0.0, theme::SHADE);
    if danger {
        let mark = Rect::from_min_max(line.min, pos2(line.left() + 26.0, line.bottom()));
        widgets::hatch(&painter, mark.shrink(4.0), theme::DANGER);
        painter.rect_stroke(line, 0.0, Stroke::new(3.0, theme::DANGER), StrokeKind::Inside);
    }
    let left = if danger { 32.0 } else { 10.0 };
    let inner = Rect::from_min_max(line.min + vec2(left, 0.0), line.max - vec2(10.0, 0.0));
    let mut ui = root.new_child(
        egui::UiBuilder::new()
            .id(widgets::id("heard"))
            .max_rect(inner)
            .layout(egui::Layout::left_to_right(egui::Align::Center)),
    );
    ui.set_clip_rect(line.intersect(root.clip_rect()));
    if let Some(air) = air_words(job.seen, sniff) {
        let text = RichText::new(air).family(theme::semibold()).color(theme::INK);
        widgets::live(&ui.label(text));
    }
    if danger {
        ui.label(RichText::new(t!("caption-danger")).color(theme::DANGER));
    }
    let lines = captions(job).join("   ");
    if !lines.is_empty() {
        let text = RichText::new(lines).color(theme::INK);
        widgets::live(&ui.add(egui::Label::new(text).truncate()));
    }
}

/// Shows at the foot of the drawing what was refused, or what a look or a repair has just given,
/// where no part is near to say it at. Gives where that lies, so that nothing is put over it.
pub(super) fn told_ui(
    ui: &Ui,
    scene: Rect,
    parts: &[PartBox],
    refused: Option<&str>,
    message: Option<&str>,
    out: &mut Vec<Command>,
) -> Option<Rect> {
    if refused.is_none() && message.is_none() {
        return None;
    }
    let width = (440.0 * theme::factor_of(ui)).min(scene.width() - 16.0).max(40.0);
    let text = refused.or(message).unwrap_or_default();
    let font = egui::FontId::new(15.0 * theme::factor_of(ui), theme::semibold());
    let galley = ui.painter().layout(text.to_owned(), font, theme::INK, width - 28.0);
    // The button beside a refusal takes a line of its own at worst.
    let button = if refused.is_some() { 36.0 } else { 0.0 };
    let size = vec2(width, galley.size().y + 22.0 + button);
    let low = clear::lowest(scene, size, &clear::kept_clear(parts));
    let at = low.map_or(pos2(scene.center().x, scene.bottom() - 6.0), |it| it.center_bottom());
    let area = Area::new(widgets::id("captions"))
        .order(Order::Middle)
        .pivot(Align2::CENTER_BOTTOM)
        .fixed_pos(at)
        .constrain_to(scene)
        .show(ui.ctx(), |ui| {
            ui.set_max_width(width);
            if let Some(refusal) = refused {
                refusal_ui(ui, refusal, out);
            }
            if let Some(message) = message {
                widgets::slip().show(ui, |ui| {
                    let text = RichText::new(message).family(theme::semibold());
                    widgets::live(&ui.label(text.color(theme::INK)));
                });
            }
        });
    Some(area.response.rect)
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

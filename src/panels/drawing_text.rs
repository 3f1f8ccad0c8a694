//! What the panels write into the drawing: digits and words on the glass of instruments, words
//! under their buttons.

use egui::{Align2, FontId, Rect, TextStyle, Ui, pos2, vec2};

use super::theme;
use super::view::{Job, PartBox};
use super::words;
use crate::parts::is_staged;
use crate::senses::seen::{Display, HallSeen, MeterSeen};
use crate::words::fixed;

/// Writes into every display that the drawing shows.
pub fn drawing_text_ui(ui: &Ui, scene: Rect, job: &Job<'_>) {
    let painter = ui.painter().with_clip_rect(scene.intersect(ui.clip_rect()));
    if let (Some(glass), Some(seen)) = (find(job.parts, "meter.display"), job.seen.meter()) {
        meter(&painter, glass, seen);
    }
    for (part, word) in [
        ("meter-power", t!("glass-power")),
        ("meter-zero", t!("glass-zero")),
        ("meter-unit", t!("glass-unit")),
    ] {
        if let Some(button) = find(job.parts, part) {
            under(ui, &painter, button, word);
        }
    }
    if let (Some(glass), Some(hall)) = (find(job.parts, "thermostat.display"), &job.seen.hall) {
        thermostat(&painter, glass, hall);
    }
    let dial = job.seen.yard.as_ref().and_then(|yard| yard.dial_turns);
    if let (Some(glass), Some(turns)) = (find(job.parts, "meter-index.display"), dial) {
        let font = FontId::new(glass.height() * 0.6, theme::semibold());
        let text = format!("{turns:07.2}");
        painter.text(glass.center(), Align2::CENTER_CENTER, text, font, theme::INK);
    }
}

fn find(parts: &[PartBox], id: &str) -> Option<Rect> {
    parts.iter().find(|part| part.id == id).map(|part| part.rect).filter(Rect::is_positive)
}

/// The manometer: digits large, unit small above them.
fn meter(painter: &egui::Painter, glass: Rect, seen: &MeterSeen) {
    let digits = FontId::new(glass.height() * 0.62, theme::semibold());
    let small = FontId::new((glass.height() * 0.2).max(9.0), egui::FontFamily::Proportional);
    let text = match seen.display {
        Display::Dark => return,
        Display::Number(shown) => fixed(shown.value, shown.unit.decimals()).replace('-', "−"),
        Display::OverRange => "----".into(),
    };
    let right = pos2(glass.right() - glass.width() * 0.05, glass.bottom() - 2.0);
    painter.text(right, Align2::RIGHT_BOTTOM, text, digits, theme::INK);
    let left = glass.left_top() + vec2(glass.width() * 0.05, 2.0);
    let unit = match seen.display {
        Display::OverRange => t!("glass-over", unit = seen.unit.label()),
        Display::Dark | Display::Number(_) => seen.unit.label().to_owned(),
    };
    painter.text(left, Align2::LEFT_TOP, unit, small, theme::INK);
}

/// A word under a button, light on the dark body.
fn under(ui: &Ui, painter: &egui::Painter, button: Rect, word: &str) {
    let most = TextStyle::Small.resolve(ui.style()).size;
    let font = FontId::new((button.height() * 0.4).clamp(9.0, most), theme::semibold());
    let at = button.center_bottom() + vec2(0.0, 1.0);
    painter.text(at, Align2::CENTER_TOP, word, font, theme::PAPER);
}

/// The thermostat: room large, setpoint and call in words.
fn thermostat(painter: &egui::Painter, glass: Rect, hall: &HallSeen) {
    let h = glass.height();
    let big = FontId::new(h * 0.44, theme::semibold());
    let small = FontId::new((h * 0.17).max(9.0), egui::FontFamily::Proportional);
    let x = glass.center().x;
    let room = t!("glass-room", degrees = words::half_degrees(hall.room_half_f));
    painter.text(pos2(x, glass.top() + h * 0.03), Align2::CENTER_TOP, room, big, theme::INK);
    let set = t!(
        "glass-set",
        degrees = words::half_degrees(hall.setpoint_half_f),
        switch = words::on_off(hall.mode)
    );
    painter.text(
        pos2(x, glass.top() + h * 0.56),
        Align2::CENTER_TOP,
        set,
        small.clone(),
        theme::INK,
    );
    let call = match hall.call {
        None => t!("glass-no-call"),
        Some(level) if !is_staged(level.of()) => t!("glass-heat"),
        Some(level) if level.is_first() => t!("glass-first-stage"),
        Some(_) => t!("glass-both-stages"),
    };
    painter.text(pos2(x, glass.top() + h * 0.78), Align2::CENTER_TOP, call, small, theme::INK);
}

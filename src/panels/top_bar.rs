//! The dark bar on top: job, places, clock, pause, speed, weather.

use egui::{Button, Color32, CornerRadius, Frame, Key, Margin, Panel, RichText, Stroke, Ui, vec2};

use super::command::Command;
use super::theme;
use super::view::{Job, Running};
use super::widgets;
use crate::hands::action::Action;
use crate::parts::Place;
use crate::senses::seen::Seen;
use crate::words::whole;

/// Places to stand, with their keys.
pub const PLACES: [(Place, Key); 4] = [
    (Place::Yard, Key::Num1),
    (Place::PlantRoom, Key::Num2),
    (Place::GasValve, Key::Num3),
    (Place::Hall, Key::Num4),
];

/// Speeds to choose from.
const SPEEDS: [u32; 3] = [1, 5, 20];

/// Width of the window from which the bar carries the job's title, in points.
const TITLE_WIDTH: f32 = 1200.0;

/// What was asked of the window itself.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum WindowRequest {
    /// A hint from the coach.
    Hint,
    /// The list of what can be seen.
    Sights,
    /// The cutaway beside the drawing.
    Cutaway,
    /// The page of settings.
    Settings,
}

/// Shows the bar; says what was asked of the window, if anything.
pub fn top_bar_ui(root: &mut Ui, job: &Job<'_>, out: &mut Vec<Command>) -> Option<WindowRequest> {
    let frame = Frame::new().fill(theme::INK).inner_margin(Margin::symmetric(12, 6));
    let mut asked = None;
    let root_width = root.max_rect().width();
    Panel::top(widgets::id("strip")).frame(frame).show_separator_line(false).resizable(false).show(
        root,
        |ui| {
            on_ink(ui);
            if root_width < 1100.0 * theme::factor_of(ui) {
                ui.spacing_mut().item_spacing.x = 4.0;
                ui.spacing_mut().button_padding.x = 8.0;
            }
            ui.horizontal_wrapped(|ui| {
                // The sheet has the title too; a narrow window needs the room.
                if root_width > TITLE_WIDTH * theme::factor_of(ui) {
                    let title = RichText::new(job.card.title).family(theme::semibold());
                    ui.label(title.color(theme::PAPER));
                    ui.add_space(6.0);
                }
                places(ui, job, out);
                ui.add_space(6.0);
                time(ui, job, out);
                ui.label(weather(job.seen));
                asked = window(ui, job, out);
            });
        },
    );
    asked
}

/// Widgets on the dark background.
fn on_ink(ui: &mut Ui) {
    let visuals = ui.visuals_mut();
    visuals.override_text_color = Some(theme::PAPER);
    let light = Stroke::new(1.5, theme::PAPER);
    for (face, fill, line) in [
        (&mut visuals.widgets.inactive, theme::INK_RAISED, Stroke::new(1.0, theme::SLATE)),
        (&mut visuals.widgets.hovered, theme::INK_RAISED, light),
        (&mut visuals.widgets.active, theme::INK_RAISED, Stroke::new(3.0, theme::FLAME_CORE)),
        (&mut visuals.widgets.open, theme::INK_RAISED, light),
    ] {
        face.bg_fill = fill;
        face.weak_bg_fill = fill;
        face.bg_stroke = line;
        face.fg_stroke = Stroke::new(1.5, theme::PAPER);
    }
    visuals.widgets.noninteractive.fg_stroke.color = theme::PAPER;
    ui.spacing_mut().item_spacing = vec2(6.0, 4.0);
}

fn places(ui: &mut Ui, job: &Job<'_>, out: &mut Vec<Command>) {
    for (place, key) in PLACES {
        let here = job.seen.place == place;
        let (fill, text) =
            if here { (theme::PAPER, theme::INK) } else { (theme::INK_RAISED, theme::PAPER) };
        let label = RichText::new(format!("{} {}", key.symbol_or_name(), place.label()));
        if ink_button(ui, label.color(text), fill, &place_name(place, here)).clicked() && !here {
            out.push(Command::Act(Action::Go(place)));
        }
    }
}

fn place_name(place: Place, here: bool) -> String {
    if here {
        t!("strip-here", place = place.label())
    } else {
        t!("strip-go", place = place.label())
    }
}

fn ink_button(ui: &mut Ui, text: RichText, fill: Color32, name: &str) -> egui::Response {
    let button = ui.add(
        Button::new(text)
            .fill(fill)
            .corner_radius(CornerRadius::same(4))
            .min_size(vec2(34.0, 30.0)),
    );
    widgets::named(&button, egui::WidgetType::Button, name);
    button
}

fn time(ui: &mut Ui, job: &Job<'_>, out: &mut Vec<Command>) {
    ui.label(RichText::new(clock(job.clock_s)).family(theme::semibold()));
    let (sign, name, command) = match job.pace.running {
        Running::Running => (t!("strip-pause"), t!("strip-pause"), Command::Pause),
        Running::Paused => (t!("strip-go-on"), t!("strip-go-on-name"), Command::Resume),
    };
    let (fill, color) = match job.pace.running {
        Running::Running => (theme::INK_RAISED, theme::PAPER),
        Running::Paused => (theme::PAPER, theme::INK),
    };
    if ink_button(ui, RichText::new(sign).color(color), fill, name).clicked() {
        out.push(command);
    }
    for speed in SPEEDS {
        let now = job.pace.speed == speed;
        let (fill, color) =
            if now { (theme::PAPER, theme::INK) } else { (theme::INK_RAISED, theme::PAPER) };
        let name = if now {
            t!("strip-speed-chosen", speed = speed)
        } else {
            t!("strip-speed", speed = speed)
        };
        let text = RichText::new(format!("×{speed}")).color(color);
        if ink_button(ui, text, fill, &name).clicked() && !now {
            out.push(Command::Speed(speed));
        }
    }
}

/// Time of day as `07:42:10`.
#[must_use]
pub fn clock(seconds: f64) -> String {
    #[expect(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "clamped to a day")]
    let s = seconds.rem_euclid(86_400.0).clamp(0.0, 86_399.0) as u32;
    format!("{:02}:{:02}:{:02}", s / 3600, s / 60 % 60, s % 60)
}

/// Temperature outside, with a real minus, and the height above the sea where it matters.
#[must_use]
pub fn weather(seen: &Seen) -> String {
    let sign = if seen.outside_f < 0 { "−" } else { "" };
    let degrees = format!("{sign}{}", seen.outside_f.unsigned_abs());
    match seen.altitude_ft {
        ..1000 => t!("strip-weather", degrees = degrees),
        feet => t!("strip-weather-high", degrees = degrees, feet = whole(i64::from(feet))),
    }
}

fn window(ui: &mut Ui, job: &Job<'_>, out: &mut Vec<Command>) -> Option<WindowRequest> {
    let mut asked = None;
    if job.behind.is_some() {
        let text = RichText::new(t!("strip-cutaway")).color(theme::PAPER);
        if ink_button(ui, text, theme::INK_RAISED, t!("strip-cutaway-name")).clicked() {
            asked = Some(WindowRequest::Cutaway);
        }
    }
    for (text, name, what) in [
        (t!("strip-hint"), t!("strip-hint-name"), WindowRequest::Hint),
        (t!("strip-list"), t!("strip-list-name"), WindowRequest::Sights),
        (t!("strip-settings"), t!("strip-settings"), WindowRequest::Settings),
    ] {
        let text = RichText::new(text).color(theme::PAPER);
        if ink_button(ui, text, theme::INK_RAISED, name).clicked() {
            asked = Some(what);
        }
    }
    let text = RichText::new(t!("strip-leave")).color(theme::PAPER);
    if ink_button(ui, text, theme::INK_RAISED, t!("strip-leave-name")).clicked() {
        out.push(Command::Leave);
    }
    asked
}

//! The settings as a list.

use egui::Ui;

use super::command::Command;
use super::settings::{Motion, Settings, TextSize};
use super::widgets;
use crate::parts::OnOff;
use crate::units::PressureUnit;

/// Scales to choose from, per cent.
const SCALES: [(u32, &str); 5] =
    [(100, "100 %"), (125, "125 %"), (150, "150 %"), (175, "175 %"), (200, "200 %")];

/// Loudness to choose from, per cent.
const VOLUMES: [(u32, &str); 4] = [(25, "25 %"), (50, "50 %"), (75, "75 %"), (100, "100 %")];

/// Shows the settings; each change is a command for the whole of them.
pub fn settings_ui(ui: &mut Ui, settings: &Settings, out: &mut Vec<Command>) {
    let mut now = settings.clone();
    widgets::section(ui, t!("settings-title"));
    let units = PressureUnit::ALL.map(|unit| (unit, unit.label()));
    set(widgets::choice(ui, t!("settings-unit"), now.unit, &units), &mut now.unit);
    let sizes = [
        (TextSize::Window, t!("settings-text-window")),
        (TextSize::Projector, t!("settings-text-projector")),
    ];
    set(widgets::choice(ui, t!("settings-text"), now.text, &sizes), &mut now.text);
    set(
        widgets::choice(ui, t!("settings-scale"), now.scale_percent, &SCALES),
        &mut now.scale_percent,
    );
    let motion = [
        (Motion::Full, t!("settings-motion-full")),
        (Motion::Reduced, t!("settings-motion-reduced")),
    ];
    set(widgets::choice(ui, t!("settings-motion"), now.motion, &motion), &mut now.motion);
    let on_off = [(OnOff::On, t!("settings-on")), (OnOff::Off, t!("settings-off"))];
    set(widgets::choice(ui, t!("settings-names"), now.labels, &on_off), &mut now.labels);
    set(widgets::choice(ui, t!("settings-keys"), now.single_keys, &on_off), &mut now.single_keys);
    set(widgets::choice(ui, t!("settings-sound"), now.sound, &on_off), &mut now.sound);
    set(
        widgets::choice(ui, t!("settings-volume"), now.volume_percent, &VOLUMES),
        &mut now.volume_percent,
    );
    let speeds = [(1, "×1"), (5, "×5"), (20, "×20")];
    set(widgets::choice(ui, t!("settings-speed"), now.speed, &speeds), &mut now.speed);
    widgets::quiet(ui, t!("settings-captions"));
    if now != *settings {
        out.push(Command::Settings(now));
    }
}

fn set<T>(chosen: Option<T>, slot: &mut T) {
    if let Some(chosen) = chosen {
        *slot = chosen;
    }
}

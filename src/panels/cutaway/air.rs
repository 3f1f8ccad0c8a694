//! Gas in the air of the plant room as haze, by height, and where it comes from.

use egui::{Color32, Rect, Stroke, StrokeKind, Ui, vec2};

use super::body::{Type, figure, flow, say, share, write};
use crate::panels::plate::Plate;
use crate::panels::theme;
use crate::panels::view::Behind;
use crate::panels::widgets;
use crate::parts::{Opening, Port, Window};
use crate::words::decimal;

/// Size that the figure is drawn for.
const SIZE: (f32, f32) = (368.0, 380.0);
/// The floor zone's share of the height, as the room's model has it.
const FLOOR: f32 = 0.15;
const HAZE: Color32 = Color32::from_rgb(0xc9, 0xa2, 0x4b);

/// A zone of the room: where it is drawn, and how much gas is in it.
struct Zone {
    salt: &'static str,
    name: &'static str,
    at: ((f32, f32), (f32, f32)),
    fraction: f64,
}

/// Shows the room and the leaks.
pub(super) fn air_ui(ui: &mut Ui, behind: &Behind<'_>) {
    let rect = figure(ui, vec2(SIZE.0, SIZE.1));
    let painter = ui.painter().clone();
    let plate = Plate::within(&painter, rect, vec2(SIZE.0, SIZE.1));
    let gas = &behind.truth.gas_fraction;
    let (top, foot) = (12.0, 368.0);
    let step = foot - FLOOR * (foot - top);
    let zones = [
        Zone {
            salt: "breathing",
            name: t!("air-breathing"),
            at: ((8.0, top), (352.0, step - top)),
            fraction: gas.breathing,
        },
        Zone {
            salt: "floor",
            name: t!("air-floor"),
            at: ((8.0, step), (352.0, foot - step)),
            fraction: gas.floor,
        },
        Zone {
            salt: "vestibule",
            name: t!("air-vestibule"),
            at: ((190.0, 150.0), (160.0, 150.0)),
            fraction: gas.vestibule,
        },
    ];
    for zone in &zones {
        let ((x, y), (w, h)) = zone.at;
        plate.block((x, y), (w, h), 0.0, theme::SHEET);
        let drawn = Rect::from_min_size(plate.at(x, y), vec2(w, h) * plate.scale);
        haze(&painter, drawn, share(zone.fraction / behind.inside.lower_limit.max(1e-9), 1.0));
        painter.rect_stroke(drawn, 0.0, Stroke::new(2.0, theme::INK), StrokeKind::Middle);
        let percent = decimal(100.0 * zone.fraction, 2);
        let of_limit = decimal(100.0 * zone.fraction / behind.inside.lower_limit.max(1e-9), 0);
        let value = t!("air-percent", percent = percent);
        let limit = t!("air-of-limit", percent = of_limit);
        let middle = if h < 60.0 { y + h / 2.0 } else { y + 18.0 };
        if h < 60.0 {
            let name = t!("air-line", name = zone.name, value = &value, limit = &limit);
            paper(&plate, (x + 4.0, middle - 10.0), (290.0, 20.0));
            write(ui, &plate, (x + 8.0, middle), &name, Type::Small);
        } else {
            paper(&plate, (x + 4.0, middle - 12.0), (150.0, 70.0));
            write(ui, &plate, (x + 8.0, middle), zone.name, Type::Small);
            write(ui, &plate, (x + 8.0, middle + 22.0), &value, Type::Value);
            write(ui, &plate, (x + 8.0, middle + 44.0), &limit, Type::Small);
        }
        let said = t!("air-line", name = zone.name, value = value, limit = limit);
        say(ui, drawn, zone.salt, &said);
    }
    leaks_ui(ui, behind);
}

/// A patch of paper under words, so that they are read over any haze.
fn paper(plate: &Plate<'_>, (x, y): (f32, f32), (w, h): (f32, f32)) {
    let rect = Rect::from_min_size(plate.at(x, y), vec2(w, h) * plate.scale);
    plate.painter.rect_filled(rect, 2.0, theme::SHEET);
}

/// Dots the denser, the more gas there is; from the lower limit on, danger with a hatch.
fn haze(painter: &egui::Painter, rect: Rect, of_limit: f32) {
    if of_limit <= 0.001 {
        return;
    }
    if of_limit >= 1.0 {
        widgets::hatch(painter, rect, theme::DANGER);
        return;
    }
    let painter = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    let apart = 30.0 - 24.0 * of_limit.sqrt();
    let mut row = 0.0;
    let mut y = rect.top() + apart / 2.0;
    while y < rect.bottom() {
        let mut x = rect.left() + if row == 0.0 { apart / 2.0 } else { apart };
        while x < rect.right() {
            painter.circle_filled(egui::pos2(x, y), 2.2, HAZE);
            x += apart;
        }
        row = 1.0 - row;
        y += apart;
    }
}

/// Where gas gets out now.
fn leaks_ui(ui: &mut Ui, behind: &Behind<'_>) {
    let truth = behind.truth;
    let leaks = [
        (t!("air-leak-inlet"), truth.leak_m3_s.ports[Port::Inlet]),
        (t!("air-leak-manifold"), truth.leak_m3_s.ports[Port::Manifold]),
        (t!("air-leak-hose"), truth.leak_m3_s.hose),
        (t!("air-leak-connector"), truth.connector_leak_m3_s),
        (t!("air-leak-vent"), truth.vented_m3_s),
    ];
    let mut any = false;
    for (place, m3_s) in leaks {
        if m3_s > 1e-9 {
            any = true;
            ui.label(t!("air-leak", place = place, flow = flow(m3_s)));
        }
    }
    if !any {
        ui.label(t!("air-no-leak"));
    }
    if truth.windows[Window::PlantRoom] == Opening::Open {
        ui.label(t!("air-window"));
    }
}

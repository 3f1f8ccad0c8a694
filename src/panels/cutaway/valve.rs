//! The gas valve cut open: coil and shut-off seat, diaphragm, springs and regulator seat, each
//! where the model has it.

use egui::{Color32, Stroke, StrokeKind, Ui, vec2};

use super::body::{chip, figure, say, screw, share, shown, spring, tint};
use crate::panels::plate::{BRASS, Plate};
use crate::panels::theme;
use crate::panels::view::Behind;
use crate::panels::words;
use crate::parts::is_staged;
use crate::units::PressureUnit;
use crate::words::decimal;

/// Size that the figure is drawn for.
const SIZE: (f32, f32) = (368.0, 318.0);
/// Height of the diaphragm with the seat just shut.
const DIAPHRAGM: f32 = 150.0;
/// How far it moves from shut to fully open, drawn.
const TRAVEL: f32 = 16.0;

/// Shows the figure and its values.
pub(super) fn valve_ui(ui: &mut Ui, unit: PressureUnit, behind: &Behind<'_>) {
    let rect = figure(ui, vec2(SIZE.0, SIZE.1));
    let painter = ui.painter().clone();
    let plate = Plate::within(&painter, rect, vec2(SIZE.0, SIZE.1));
    let (truth, inside) = (behind.truth, behind.inside);
    let full_pa = truth.inlet_pa.max(inside.valve.before_pa).max(truth.manifold_pa).max(1.0);
    let inlet = tint(share(truth.inlet_pa, full_pa));
    let middle = tint(share(inside.valve.before_pa, full_pa));
    let outlet = tint(share(truth.manifold_pa, full_pa));
    chambers(&plate, inlet, middle, outlet);
    shut_off(&plate, inside.seats_open, inside.coils.is_some(), (inlet, middle));
    let open = share(inside.valve.open(), 1.0) * TRAVEL;
    regulator(&plate, open, middle);
    springs(&plate, behind, open);
    chip(ui, &plate, (244.0, 272.0), &shown(truth.inlet_pa, unit));
    chip(ui, &plate, (40.0, 262.0), &shown(inside.valve.before_pa, unit));
    chip(ui, &plate, (2.0, 178.0), &shown(truth.manifold_pa, unit));
    values_ui(ui, unit, behind);
}

/// The body and its three chambers.
fn chambers(plate: &Plate<'_>, inlet: Color32, middle: Color32, outlet: Color32) {
    plate.block((14.0, 150.0), (340.0, 158.0), 6.0, theme::STEEL);
    // Inlet chamber at the lower right, with its pipe.
    plate.block((236.0, 262.0), (132.0, 40.0), 0.0, inlet);
    // Between the seats: upper right and lower left, one room.
    plate.block((210.0, 160.0), (138.0, 80.0), 0.0, middle);
    plate.block((24.0, 232.0), (200.0, 68.0), 0.0, middle);
    bare(plate, (208.0, 232.0), (16.0, 8.0), middle);
    // Outlet chamber under the diaphragm, with its pipe to the manifold.
    plate.block((0.0, 172.0), (40.0, 34.0), 0.0, outlet);
    plate.block((24.0, 150.0), (172.0, 66.0), 0.0, outlet);
    bare(plate, (20.0, 174.0), (10.0, 30.0), outlet);
}

/// A patch without an outline: an opening in a wall.
fn bare(plate: &Plate<'_>, (x, y): (f32, f32), (w, h): (f32, f32), fill: Color32) {
    let rect = egui::Rect::from_min_size(plate.at(x, y), vec2(w, h) * plate.scale);
    plate.painter.rect(rect, 0.0, fill, Stroke::NONE, StrokeKind::Middle);
}

/// The shut-off seat in the wall over the inlet chamber, lifted by the coil.
fn shut_off(plate: &Plate<'_>, seats_open: f64, coil: bool, (inlet, middle): (Color32, Color32)) {
    let wall = (236.0, 240.0);
    plate.block(wall, (132.0 - 14.0, 22.0), 0.0, theme::STEEL);
    bare(plate, (272.0, 238.0), (40.0, 28.0), inlet);
    if seats_open > 0.02 {
        bare(plate, (272.0, 236.0), (40.0, 12.0), middle);
    }
    let lift = share(seats_open, 1.0) * 22.0;
    plate.block((288.0, 120.0), (8.0, 114.0 - lift), 0.0, theme::STEEL_LIGHT);
    plate.block((264.0, 230.0 - lift), (56.0, 9.0), 2.0, theme::INK);
    let winding = if coil { BRASS } else { theme::STEEL };
    plate.block((252.0, 70.0), (80.0, 70.0), 4.0, winding);
    for x in [262.0_f32, 272.0, 282.0, 292.0, 302.0, 312.0, 322.0] {
        plate.line((x, 74.0), (x, 136.0), if coil { 2.4 } else { 1.2 });
    }
}

/// The regulator seat in the wall under the outlet chamber; its disc is held by the stem.
fn regulator(plate: &Plate<'_>, open: f32, middle: Color32) {
    plate.block((24.0, 214.0), (172.0, 18.0), 0.0, theme::STEEL);
    bare(plate, (84.0, 212.0), (52.0, 24.0), middle);
    let y = DIAPHRAGM + open;
    plate.block((106.0, y), (8.0, 236.0 - DIAPHRAGM), 0.0, theme::STEEL_LIGHT);
    plate.block((78.0, 233.0 + open), (64.0, 9.0), 2.0, theme::INK);
    // The diaphragm: clamped at its edges, its middle where the seat has it.
    let half = plate.bend((24.0, DIAPHRAGM), (52.0, y), (72.0, y));
    let other = plate.bend((148.0, y), (168.0, y), (196.0, DIAPHRAGM));
    let line: Vec<(f32, f32)> = half.into_iter().chain(other).collect();
    plate.tube(&line, 3.0, theme::PEN);
}

/// The bonnet with a spring for each level, as far pressed together as its screw has it.
fn springs(plate: &Plate<'_>, behind: &Behind<'_>, open: f32) {
    plate.block((14.0, 22.0), (192.0, 124.0), 6.0, theme::SHADE);
    let staged = is_staged(behind.inside.springs.list());
    for (level, it) in behind.inside.springs.iter() {
        let x = match (staged, level.is_first()) {
            (false, _) => 110.0,
            (true, true) => 66.0,
            (true, false) => 154.0,
        };
        let turned = share(it.turns / it.travel_turns.max(1e-6), 1.0);
        let top = 44.0 + 52.0 * turned;
        let foot = DIAPHRAGM + open - if it.pressing { 6.0 } else { 14.0 };
        spring(plate, x, (top, foot), it.pressing);
        screw(plate, x, 8.0, top);
    }
    plate.block((40.0, DIAPHRAGM + open - 8.0), (140.0, 6.0), 1.0, theme::STEEL_LIGHT);
}

/// The values, a line each.
fn values_ui(ui: &mut Ui, unit: PressureUnit, behind: &Behind<'_>) {
    let (truth, inside) = (behind.truth, behind.inside);
    let staged = is_staged(inside.springs.list());
    let mut lines = Vec::new();
    for (level, it) in inside.springs.iter() {
        let turns = decimal(it.turns, 2);
        let all = decimal(it.travel_turns, 0);
        let level_name = if staged { words::level(level) } else { t!("cutaway-only-spring") };
        lines.push(match it.pressing {
            true => t!("cutaway-spring-presses", level = level_name, turns = turns, all = all),
            false => t!("cutaway-spring-rests", level = level_name, turns = turns, all = all),
        });
    }
    lines.push(t!("cutaway-holds", pressure = shown(inside.valve.balance_pa, unit)));
    lines.push(t!("cutaway-manifold-is", pressure = shown(truth.manifold_pa, unit)));
    lines.push(t!("cutaway-seat-open", percent = decimal(100.0 * inside.valve.open(), 0)));
    lines.push(match inside.coils {
        Some(level) if staged => t!("cutaway-coil-level", level = words::level(level)),
        Some(_) => t!("cutaway-coil-on").to_owned(),
        None => t!("cutaway-coil-off").to_owned(),
    });
    for line in lines {
        ui.label(line);
    }
    let rect = ui.min_rect();
    say(ui, rect, "valve", t!("cutaway-valve-figure"));
}

//! The supply regulator cut open.

use egui::{Ui, vec2};

use super::body::{chip, figure, flow, screw, share, shown, spring, tint};
use crate::panels::plate::Plate;
use crate::panels::theme;
use crate::panels::view::Behind;
use crate::units::PressureUnit;
use crate::words::decimal;

/// Size that the figure is drawn for.
const SIZE: (f32, f32) = (368.0, 286.0);
/// Height of the diaphragm with the seat just shut.
const DIAPHRAGM: f32 = 150.0;
/// How far it moves from shut to fully open, drawn.
const TRAVEL: f32 = 14.0;

/// Shows the figure and its values.
pub(super) fn supply_ui(ui: &mut Ui, unit: PressureUnit, behind: &Behind<'_>) {
    let rect = figure(ui, vec2(SIZE.0, SIZE.1));
    let painter = ui.painter().clone();
    let plate = Plate::within(&painter, rect, vec2(SIZE.0, SIZE.1));
    let (truth, supply) = (behind.truth, &behind.inside.supply);
    let full = truth.supply_pa.max(1.0);
    let (before, after) = (tint(1.0), tint(0.4 * share(truth.supply_pa, full)));
    // The inlet under the seat, from the left; the outlet under the diaphragm, to the right.
    plate.block((0.0, 226.0), (240.0, 36.0), 0.0, before);
    plate.block((84.0, DIAPHRAGM), (200.0, 56.0), 0.0, after);
    plate.block((276.0, 164.0), (92.0, 34.0), 0.0, after);
    plate.block((84.0, 206.0), (200.0, 18.0), 0.0, theme::STEEL);
    plate.block((170.0, 204.0), (28.0, 24.0), 0.0, before);
    let open = share(supply.open(), 1.0) * TRAVEL;
    let y = DIAPHRAGM + open;
    plate.block((180.0, y), (8.0, 228.0 - DIAPHRAGM), 0.0, theme::STEEL_LIGHT);
    plate.block((160.0, 226.0 + open), (48.0, 8.0), 2.0, theme::INK);
    plate.block((96.0, 22.0), (176.0, 124.0), 30.0, theme::SHADE);
    let turned = share(supply.screwed_m / supply.travel_m.max(1e-9), 1.0);
    let top = 44.0 + 52.0 * turned;
    spring(&plate, 184.0, (top, y - 6.0), true);
    screw(&plate, 184.0, 8.0, top);
    let half = plate.bend((84.0, DIAPHRAGM), (116.0, y), (140.0, y));
    let other = plate.bend((228.0, y), (252.0, y), (284.0, DIAPHRAGM));
    plate.tube(&half.into_iter().chain(other).collect::<Vec<_>>(), 3.0, theme::PEN);
    plate.block((116.0, y - 8.0), (136.0, 6.0), 1.0, theme::STEEL_LIGHT);
    chip(ui, &plate, (8.0, 234.0), &shown(supply.before_pa, unit));
    chip(ui, &plate, (274.0, 171.0), &shown(truth.supply_pa, unit));
    for line in [
        t!("cutaway-screwed", mm = decimal(1e3 * supply.screwed_m, 1)),
        t!("cutaway-holds", pressure = shown(supply.balance_pa, unit)),
        t!("cutaway-gives", pressure = shown(truth.supply_pa, unit)),
        t!("cutaway-seat-open", percent = decimal(100.0 * supply.open(), 0)),
        t!("cutaway-passes", flow = flow(behind.inside.supply_flow_m3_s)),
        t!("cutaway-vents", flow = flow(truth.vented_m3_s)),
    ] {
        ui.label(line);
    }
}

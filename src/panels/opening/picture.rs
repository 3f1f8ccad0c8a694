//! A picture for each step of the ladder, drawn as the plates are: ink outlines, flat tints.

use egui::{Color32, Painter, Pos2, Rect, Shape, Stroke, StrokeKind, vec2};

use crate::panels::background;
use crate::panels::plate::{BRASS, IRON, Plate};
use crate::panels::theme;
use crate::scenario::Step;

const HOSE: Color32 = Color32::from_rgb(0xe4, 0xdf, 0xbf);
const TUBING: Color32 = Color32::from_rgb(0xd9, 0xb6, 0x4a);

/// Size that the pictures are drawn for, in points; they are scaled to where they stand.
const SIZE: (f32, f32) = (520.0, 170.0);

/// Draws the picture of a step into `rect`.
pub(super) fn picture(painter: &Painter, rect: Rect, step: Step) {
    let painter = painter.with_clip_rect(rect.intersect(painter.clip_rect()));
    painter.rect_filled(rect, 4.0, theme::PAPER);
    background::grid(&painter, rect);
    let plate = Plate::within(&painter, rect, vec2(SIZE.0, SIZE.1));
    match step {
        Step::Read => read(&plate),
        Step::Set => set(&plate),
        Step::Find => find(&plate),
        Step::Judge => judge(&plate),
    }
    painter.rect_stroke(rect, 4.0, Stroke::new(2.0, theme::INK), StrokeKind::Inside);
}

/// The gas valve's body with its outlet upwards.
fn valve(plate: &Plate<'_>, x: f32) {
    plate.tube(&[(x + 70.0, 0.0), (x + 70.0, 60.0)], 26.0, IRON);
    plate.block((x, 44.0), (180.0, 108.0), 6.0, theme::STEEL);
    plate.line((x + 6.0, 50.0), (x + 172.0, 50.0), 1.5);
    plate.tube(&[(x + 180.0, 112.0), (x + 250.0, 112.0)], 30.0, IRON);
    plate.block((x + 176.0, 90.0), (18.0, 44.0), 2.0, IRON);
}

/// A slotted brass screw.
fn screw(plate: &Plate<'_>, (x, y): (f32, f32), radius: f32, slot: f32) {
    plate.disc((x, y), radius, BRASS);
    plate.disc((x, y), radius * 0.66, BRASS);
    let (dx, dy) = (libm::cosf(slot) * radius * 0.58, libm::sinf(slot) * radius * 0.58);
    plate.line((x - dx, y - dy), (x + dx, y + dy), 6.0);
}

/// A hose from the port to the manometer.
fn read(plate: &Plate<'_>) {
    valve(plate, 30.0);
    screw(plate, (70.0, 80.0), 19.0, 0.0);
    screw(plate, (70.0, 124.0), 19.0, 0.0);
    plate.block((120.0, 96.0), (30.0, 30.0), 4.0, BRASS);
    plate.tube(&plate.bend((135.0, 124.0), (150.0, 200.0), (300.0, 160.0)), 9.0, HOSE);
    plate.tube(&plate.bend((300.0, 160.0), (352.0, 146.0), (376.0, 150.0)), 9.0, HOSE);
    plate.block((330.0, 14.0), (150.0, 132.0), 12.0, theme::INK);
    plate.block((346.0, 30.0), (118.0, 62.0), 4.0, theme::GLASS);
    plate.text((405.0, 62.0), "0.00", 34.0, theme::INK);
    for x in [362.0, 405.0, 448.0] {
        plate.block((x - 15.0, 104.0), (30.0, 22.0), 5.0, theme::SLATE);
    }
    plate.block((368.0, 144.0), (16.0, 14.0), 2.0, BRASS);
}

/// A driver on a screw, with the way that it turns.
fn set(plate: &Plate<'_>) {
    plate.block((20.0, 20.0), (220.0, 136.0), 8.0, theme::STEEL);
    plate.line((28.0, 27.0), (230.0, 27.0), 1.5);
    plate.disc((130.0, 90.0), 56.0, theme::STEEL_LIGHT);
    screw(plate, (130.0, 90.0), 40.0, -0.5);
    let turn: Vec<(f32, f32)> = (0..=20_u8)
        .map(|step| {
            let angle = -2.5 + 0.13 * f32::from(step);
            (130.0 + 74.0 * libm::cosf(angle), 92.0 + 74.0 * libm::sinf(angle))
        })
        .collect();
    let line: Vec<Pos2> = turn.iter().map(|&(x, y)| plate.at(x, y)).collect();
    plate.painter.add(Shape::line(line, Stroke::new(4.0 * plate.scale, theme::PEN)));
    let tip = [(203.0, 100.0), (188.0, 82.0), (213.0, 80.0)].map(|(x, y)| plate.at(x, y));
    plate.painter.add(Shape::convex_polygon(tip.to_vec(), theme::PEN, Stroke::NONE));
    plate.tube(&[(150.0, 82.0), (330.0, 44.0)], 9.0, theme::STEEL_LIGHT);
    plate.tube(&[(330.0, 44.0), (352.0, 39.0)], 16.0, IRON);
    plate.tube(&[(352.0, 39.0), (470.0, 15.0)], 28.0, theme::PEN);
}

/// A kinked connector under a glass.
fn find(plate: &Plate<'_>) {
    plate.tube(&[(-20.0, 62.0), (90.0, 62.0)], 34.0, IRON);
    plate.block((84.0, 38.0), (22.0, 48.0), 3.0, BRASS);
    let mut way = plate.bend((106.0, 62.0), (200.0, 50.0), (250.0, 104.0));
    way.extend(plate.bend((250.0, 104.0), (330.0, 62.0), (420.0, 100.0)));
    plate.tube(&way, 20.0, TUBING);
    for &(x, y) in &way {
        plate.line((x, y - 8.0), (x, y + 8.0), 1.2);
    }
    plate.block((418.0, 76.0), (22.0, 48.0), 3.0, BRASS);
    plate.tube(&[(440.0, 100.0), (540.0, 100.0)], 34.0, IRON);
    let glass = Color32::from_rgba_unmultiplied(0xbf, 0xe3, 0xff, 70);
    plate.tube(&[(292.0, 132.0), (350.0, 176.0)], 14.0, theme::PEN);
    plate.painter.circle(plate.at(250.0, 96.0), 58.0 * plate.scale, glass, plate.ink(6.0));
}

/// A shut valve with the warning tag on it.
fn judge(plate: &Plate<'_>) {
    plate.tube(&[(-20.0, 96.0), (540.0, 96.0)], 36.0, IRON);
    plate.block((196.0, 62.0), (92.0, 68.0), 8.0, BRASS);
    plate.disc((242.0, 96.0), 17.0, theme::STEEL_LIGHT);
    plate.block((233.0, -6.0), (18.0, 104.0), 5.0, TUBING);
    plate.tube(&plate.bend((242.0, 24.0), (290.0, 10.0), (330.0, 46.0)), 2.0, theme::SHEET);
    let corners = [(318.0, 34.0), (352.0, 22.0), (452.0, 58.0), (420.0, 146.0), (300.0, 104.0)];
    let tag: Vec<Pos2> = corners.iter().map(|&(x, y)| plate.at(x, y)).collect();
    plate.painter.add(Shape::convex_polygon(tag, theme::SHEET, plate.ink(2.5)));
    plate.disc((334.0, 44.0), 6.0, theme::PAPER);
    let mark = [(384.0, 56.0), (416.0, 112.0), (352.0, 112.0)].map(|(x, y)| plate.at(x, y));
    plate.painter.add(Shape::convex_polygon(mark.to_vec(), theme::DANGER, plate.ink(2.0)));
    plate.text((384.0, 94.0), "!", 34.0, theme::PAPER);
}

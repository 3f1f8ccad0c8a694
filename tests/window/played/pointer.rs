//! Mouse and finger: both point at a place of the drawing and press, drag or stay there.

use bevy::input::ButtonState;
use bevy::math::Vec2;
use quarterturn::panels::handling::handling;
use quarterturn::parts::Height;

use super::deed::Deed;
use super::{AT_WORK_MS, Way};
use crate::rig::Rig;

/// How long one stays where something is smelt or probed, in frames of [`STAY_MS`].
const STAY_FRAMES: u32 = 20;
const STAY_MS: u64 = 40;

/// The mouse.
pub struct Mouse;

/// A finger.
pub struct Finger;

/// A point of a part where nothing smaller lies, in its upper or lower half where that matters.
fn free_point(rig: &Rig, part: &str, half: Option<Height>) -> Vec2 {
    let spots = rig.spots();
    let spot = spots.iter().find(|spot| spot.part == part).expect("the part is drawn");
    let middle = Vec2::new(spot.middle.x, spot.middle.y);
    let is_free = |at: Vec2| {
        let over = quarterturn::panels::spot::top_spot(&spots, bevy_egui::egui::pos2(at.x, at.y));
        let in_half =
            half.is_none_or(|half| (half == Height::Floor) == (at.y > spot.rect.center().y));
        over.is_some_and(|over| over.part == part) && in_half && rig.is_bare(at)
    };
    if is_free(middle) {
        return middle;
    }
    let steps = 16_u8;
    let points = (1..steps).flat_map(|x| (1..steps).map(move |y| (x, y)));
    let mut points: Vec<Vec2> = points
        .map(|(x, y)| {
            let share = |n: u8| f32::from(n) / f32::from(steps);
            let (min, size) = (spot.rect.min, spot.rect.size());
            Vec2::new(min.x + size.x * share(x), min.y + size.y * share(y))
        })
        .filter(|at| is_free(*at))
        .collect();
    points.sort_by(|a, b| a.distance(middle).total_cmp(&b.distance(middle)));
    points
        .first()
        .copied()
        .unwrap_or_else(|| panic!("nothing of {part} can be pointed at: {spots:#?}"))
}

/// From a part outwards and round its middle.
fn way_round(rig: &Rig, part: &str, deg: f32) -> Vec<Vec2> {
    let middle = rig.middle(part);
    let first = free_point(rig, part, None);
    let from = (first - middle).normalize_or(Vec2::X);
    let steps = (deg.abs() / 15.0).ceil() as u16;
    let mut way = vec![first];
    way.extend((0..=steps).map(|step| {
        let a = (deg * f32::from(step) / f32::from(steps)).to_radians();
        middle + 60.0 * Vec2::from_angle(a).rotate(from)
    }));
    way
}

fn path(rig: &Rig, part: &str, deed: &Deed) -> Vec<Vec2> {
    match deed {
        Deed::Press => vec![free_point(rig, part, None)],
        // A little further, as a hand goes: what was turned counts at the detent.
        Deed::Turn(deg) => way_round(rig, part, deg + 6.0 * deg.signum()),
        Deed::Lever(deg) => way_round(rig, part, deg + 6.0 * deg.signum()),
        Deed::Strokes => {
            let at = free_point(rig, part, None);
            [-14.0, 14.0, -14.0, 14.0, -14.0, 14.0].map(|x| at + Vec2::new(x, 0.0)).to_vec()
        }
        Deed::Stay(height) => vec![free_point(rig, part, Some(*height))],
        Deed::Pull => {
            let at = free_point(rig, part, None);
            (0..=6_u8).map(|i| at + Vec2::new(0.0, 9.0 * f32::from(i))).collect()
        }
    }
}

impl Way for Mouse {
    fn at_part(&mut self, rig: &mut Rig, part: &str, deed: &Deed) {
        let way = path(rig, part, deed);
        match deed {
            Deed::Press => rig.click(way[0]),
            Deed::Stay(_) => {
                rig.point(way[0]);
                rig.button(ButtonState::Pressed);
                rig.frame_ms(STAY_MS);
                rig.frames(STAY_FRAMES);
                rig.frame_ms(AT_WORK_MS);
                rig.button(ButtonState::Released);
            }
            Deed::Turn(_) | Deed::Lever(_) | Deed::Strokes | Deed::Pull => rig.drag(&way),
        }
    }

    fn by_list(&mut self, rig: &mut Rig, part: &str, label: &str) {
        let at = free_point(rig, part, None);
        rig.other_click(at);
        rig.frames(2);
        self.choose(rig, label);
    }

    fn choose(&mut self, rig: &mut Rig, label: &str) {
        let at = rig.bring_into_view(label, |rig, at, lines| {
            rig.point(at);
            rig.wheel(lines);
        });
        rig.click(at);
    }
}

impl Way for Finger {
    fn at_part(&mut self, rig: &mut Rig, part: &str, deed: &Deed) {
        let way = path(rig, part, deed);
        match deed {
            Deed::Stay(_) => {
                rig.finger_down(way[0]);
                rig.frame_ms(STAY_MS);
                rig.frames(STAY_FRAMES);
                rig.frame_ms(AT_WORK_MS);
                rig.finger_up(way[0]);
            }
            Deed::Press | Deed::Turn(_) | Deed::Lever(_) | Deed::Strokes | Deed::Pull => {
                rig.finger(&way);
            }
        }
    }

    fn by_list(&mut self, rig: &mut Rig, part: &str, label: &str) {
        let at = free_point(rig, part, None);
        let seen = rig.seen();
        let stays = handling(part, Height::Head, &seen).hold.is_some();
        if stays {
            // To stay there does something; a tap opens the list.
            rig.finger(&[at]);
            rig.frames(2);
            return self.choose(rig, label);
        }
        // A long touch.
        rig.finger_down(at);
        rig.frame_ms(STAY_MS);
        rig.frames(STAY_FRAMES);
        rig.frame_ms(AT_WORK_MS);
        rig.finger_up(at);
        rig.frames(2);
        self.choose(rig, label);
    }

    fn choose(&mut self, rig: &mut Rig, label: &str) {
        let at = rig.bring_into_view(label, |rig, at, lines| {
            let to = at + Vec2::new(0.0, 24.0 * lines);
            let way: Vec<Vec2> = (0..=6_u8).map(|i| at.lerp(to, f32::from(i) / 6.0)).collect();
            rig.finger(&way);
        });
        rig.finger(&[at]);
    }
}

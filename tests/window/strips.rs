//! Film strips of work with the hands, and a page of all bodies, rooms and yards, written as pictures
//! into `docs/strips`; and what a screen reader gets of each place, as text.

use std::path::Path;

use bevy::input::ButtonState;
use bevy::input::keyboard::{Key, KeyCode};
use bevy::prelude::*;
use quarterturn::hands::action::{Action, PlugStep};
use quarterturn::parts::{
    Door, Fitted, HandValve, OnOff, Place, Port, Push, Room, Scene, TimeOfDay, Tool, ValveBody,
    YardLook,
};

use super::pictures::{has_driver, write};
use super::rig::{Pixels, Rig};
use super::store::TestStore;

const JOB: &str = "propane-cold-morning";
/// Frames of a strip, and how many stand in a row.
const FRAMES: usize = 12;
const ACROSS: usize = 4;
/// A frame of a strip is a quarter of the drawing's part of the window.
const SCALE: usize = 3;
const WINDOW: (u32, u32) = (1280, 720);
/// The part of the window that the drawing takes.
const DRAWING: (usize, usize) = (960, 720);

/// A sheet of frames, left to right and down.
struct Sheet {
    frames: Vec<Vec<u8>>,
}

impl Sheet {
    fn take(&mut self, rig: &mut Rig) {
        let picture = rig.picture();
        let wide = picture.width() as usize;
        let pixels = picture.data.expect("pixels");
        let (w, h) = (DRAWING.0 / SCALE, DRAWING.1 / SCALE);
        let mut small = Vec::with_capacity(w * h * 4);
        for y in 0..h {
            for x in 0..w {
                for channel in 0..3 {
                    let square = (0..SCALE * SCALE).map(|i| {
                        let (dx, dy) = (i % SCALE, i / SCALE);
                        let at = ((y * SCALE + dy) * wide + x * SCALE + dx) * 4 + channel;
                        usize::from(pixels[at])
                    });
                    let mean = square.sum::<usize>() / (SCALE * SCALE);
                    small.push(u8::try_from(mean).expect("a mean of bytes"));
                }
                small.push(255);
            }
        }
        self.frames.push(small);
    }

    fn write(&self, name: &str) {
        let (w, h) = (DRAWING.0 / SCALE, DRAWING.1 / SCALE);
        let rows = self.frames.len().div_ceil(ACROSS);
        let (wide, high) = (w * ACROSS, h * rows);
        let mut sheet = vec![255_u8; wide * high * 4];
        for (index, frame) in self.frames.iter().enumerate() {
            let (left, top) = (index % ACROSS * w, index / ACROSS * h);
            for y in 0..h {
                let to = ((top + y) * wide + left) * 4;
                sheet[to..to + w * 4].copy_from_slice(&frame[y * w * 4..(y + 1) * w * 4]);
            }
        }
        let file = Path::new("docs/strips").join(format!("{name}.png"));
        let size = |n: usize| u32::try_from(n).expect("a small picture");
        write(&file, size(wide), size(high), &sheet);
    }
}

fn open(acts: &[(u64, Action)], until: u64, scene: Option<Scene>) -> Rig {
    let store = TestStore { before: (acts.to_vec(), until), scene, ..TestStore::default() };
    let mut rig = Rig::open(store, Some(JOB), WINDOW, Pixels::Drawn);
    rig.frames(30);
    rig
}

/// The furnace isolated and its burner door off, seen from the valve.
fn isolated() -> Vec<(u64, Action)> {
    vec![
        (0, Action::Go(Place::PlantRoom)),
        (0, Action::FurnaceSwitch(OnOff::Off)),
        (0, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 }),
        (0, Action::Door { door: Door::Burner, to: Fitted::Off }),
        (0, Action::Go(Place::GasValve)),
    ]
}

/// The hose on the manifold, the meter zeroed, gas and power given back.
pub fn fed() -> Vec<(u64, Action)> {
    let port = Port::Manifold;
    let mut acts = isolated();
    acts.extend([
        (1, Action::MeterPower(OnOff::On)),
        (500, Action::MeterZero),
        (3000, Action::Take(Tool::HexKey)),
        (3001, Action::Plug { port, step: PlugStep::BreakLoose }),
        (3002, Action::Plug { port, step: PlugStep::SpinOut }),
        (3003, Action::PutDown),
        (3004, Action::Take(Tool::Adapter)),
        (3005, Action::Adapter { port, to: Fitted::On }),
        (3006, Action::Take(Tool::Hose)),
        (3007, Action::HoseOn { port, push: Push::Fully }),
        (3008, Action::Go(Place::PlantRoom)),
        (3009, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 }),
        (3010, Action::FurnaceSwitch(OnOff::On)),
        (3011, Action::Go(Place::GasValve)),
    ]);
    acts
}

/// A drag of which a frame is taken every few points.
fn filmed(rig: &mut Rig, sheet: &mut Sheet, way: &[Vec2], frames: usize) {
    let every = way.len().div_ceil(frames);
    for (index, &at) in way.iter().enumerate() {
        rig.point(at);
        if index == 0 {
            rig.button(ButtonState::Pressed);
        }
        if index % every == every - 1 {
            sheet.take(rig);
        }
    }
    rig.button(ButtonState::Released);
}

fn plug_out() {
    let mut acts = isolated();
    acts.push((100, Action::Take(Tool::HexKey)));
    let mut rig = open(&acts, 200, None);
    let mut sheet = Sheet { frames: Vec::new() };
    sheet.take(&mut rig);
    let way = rig.way_round("manifold-port", -640.0);
    filmed(&mut rig, &mut sheet, &way, FRAMES - 2);
    rig.frames(10);
    sheet.take(&mut rig);
    sheet.write("plug-out");
}

fn screw_turned() {
    let mut acts = fed();
    let from = 3011 + 50 * 300;
    acts.push((from, Action::Take(Tool::SlottedDriver)));
    let screw = quarterturn::parts::Screw::High;
    acts.push((from + 1, Action::Cap { screw, to: Fitted::Off }));
    let store = TestStore { before: (acts, from + 100), ..TestStore::default() };
    let mut rig = Rig::open(store, Some("healthy-natural"), WINDOW, Pixels::Drawn);
    rig.frames(30);
    let mut sheet = Sheet { frames: Vec::new() };
    sheet.take(&mut rig);
    for _ in 0..FRAMES - 1 {
        let way = rig.way_round("high-screw", 50.0);
        rig.drag(&way);
        rig.frames(60);
        sheet.take(&mut rig);
    }
    sheet.write("screw-turned");
}

/// The boss of the manifold port is cracked and leaks while the burners run: fluid on it, and bubbles
/// that grow.
fn leak_found() {
    let mut acts = fed();
    let burning = 3011 + 50 * 150;
    acts.push((burning, Action::Take(Tool::LeakFluid)));
    let store = TestStore { before: (acts, burning + 50), ..TestStore::default() };
    let mut rig = Rig::open(store, Some("a-trace-by-the-door"), WINDOW, Pixels::Drawn);
    rig.frames(20);
    let mut sheet = Sheet { frames: Vec::new() };
    sheet.take(&mut rig);
    let at = rig.middle("manifold-port");
    rig.drag(&[-16.0, 16.0, -16.0, 16.0, -16.0].map(|x| at + Vec2::new(x, 0.0)));
    // Away from the part, so that no name lies over it.
    rig.point(Vec2::new(300.0, 560.0));
    for _ in 0..FRAMES - 1 {
        rig.frames(30);
        sheet.take(&mut rig);
    }
    sheet.write("leak-found");
}

fn ignition() {
    let mut rig = open(&fed(), 3020, None);
    // From the inducer's start to the burners' steady flame.
    let mut sheet = Sheet { frames: Vec::new() };
    rig.frame_ms(200);
    for _ in 0..FRAMES {
        rig.frames(20);
        sheet.take(&mut rig);
    }
    sheet.write("ignition");
}

fn bodies_and_rooms() {
    let mut sheet = Sheet { frames: Vec::new() };
    for valve in [ValveBody::Plugs, ValveBody::TapScrews, ValveBody::SideBySide] {
        let scene = Scene { valve, ..Scene::default() };
        sheet.take(&mut open(&isolated(), 50, Some(scene)));
    }
    for room in [Room::Basement, Room::Closet, Room::Garage, Room::Attic] {
        let scene = Scene { room, ..Scene::default() };
        let acts = [(0, Action::Go(Place::PlantRoom))];
        sheet.take(&mut open(&acts, 50, Some(scene)));
    }
    let doors = [Door::Burner, Door::Blower].map(|door| Action::Door { door, to: Fitted::Off });
    for (room, valve) in
        [(Room::Garage, ValveBody::TapScrews), (Room::Attic, ValveBody::SideBySide)]
    {
        let scene = Scene { room, valve, ..Scene::default() };
        let mut acts = vec![(0, Action::Go(Place::PlantRoom))];
        acts.extend(doors.clone().map(|door| (1, door)));
        sheet.take(&mut open(&acts, 50, Some(scene)));
    }
    for yard in [YardLook::Siding, YardLook::Brick] {
        let scene = Scene { yard, ..Scene::default() };
        sheet.take(&mut open(&[], 5, Some(scene)));
    }
    sheet.write("bodies-and-rooms");
}

/// Yard, furnace rooms and hall at the hours of a day.
fn hours() {
    let mut sheet = Sheet { frames: Vec::new() };
    let hours = [7.5, 12.0, 16.5, 19.0].map(TimeOfDay::from_hours);
    for (room, place) in [
        (Room::Basement, None),
        (Room::Attic, Some(Place::PlantRoom)),
        (Room::Basement, Some(Place::Hall)),
    ] {
        for begins in hours {
            let scene = Scene { room, begins, ..Scene::default() };
            let acts: Vec<_> = place.into_iter().map(|place| (0, Action::Go(place))).collect();
            sheet.take(&mut open(&acts, 50, Some(scene)));
        }
    }
    sheet.write("hours");
}

/// The way from the furnace room to its gas valve.
fn way_to_the_valve() {
    let mut acts = isolated();
    acts.pop();
    let store = TestStore { before: (acts, 50), moving: true, ..TestStore::default() };
    let mut rig = Rig::open(store, Some(JOB), WINDOW, Pixels::Drawn);
    rig.frames(40);
    let mut sheet = Sheet { frames: Vec::new() };
    sheet.take(&mut rig);
    // A picture takes some frames itself.
    rig.frame_ms(4);
    rig.key(KeyCode::Digit3, Key::Character("3".into()));
    for _ in 1..FRAMES {
        sheet.take(&mut rig);
        rig.frames(2);
    }
    sheet.write("way-to-the-valve");
}

/// Writes the strips anew; look at them afterwards.
#[test]
#[ignore = "writes docs/strips"]
fn write_the_strips() {
    assert!(has_driver(), "no Vulkan software driver is installed");
    let only = std::env::var("STRIP").unwrap_or_default();
    let strips: [(&str, fn()); 7] = [
        ("plug", plug_out),
        ("screw", screw_turned),
        ("leak", leak_found),
        ("ignition", ignition),
        ("bodies", bodies_and_rooms),
        ("hours", hours),
        ("way", way_to_the_valve),
    ];
    strips.iter().filter(|(name, _)| name.contains(&only)).for_each(|(_, film)| film());
}

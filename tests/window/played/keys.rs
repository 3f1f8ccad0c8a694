//! The keyboard alone: F6 and Tab to a part, arrows, Space and Enter there, letters in its list.

use bevy::input::keyboard::{Key, KeyCode};

use super::deed::{Deed, EIGHTH_DEG};
use super::{Way, settle};
use crate::rig::Rig;
use quarterturn::hands::action::Action;
use quarterturn::panels::handling::Handling;
use quarterturn::parts::{Height, Place};

/// Most presses of Tab until something is found.
const MOST_TABS: u32 = 400;

/// Keys.
pub struct Keys;

/// F6 to the first part of the drawing, Tab on from there.
fn to_part(rig: &mut Rig, part: &str) {
    let of = quarterturn::panels::hotspots::spot_id;
    let first = rig.spots().first().map(|spot| of(&spot.part));
    for _ in 0..3 {
        if rig.focused() == Some(of(part)) {
            return;
        }
        if rig.focused() == first {
            break;
        }
        rig.tap(KeyCode::F6, Key::F6);
    }
    tab_until(rig, part, |rig| rig.focused() == Some(of(part)));
}

fn tab_until(rig: &mut Rig, what: &str, is_there: impl Fn(&Rig) -> bool) {
    for _ in 0..MOST_TABS {
        if is_there(rig) {
            return;
        }
        rig.tap(KeyCode::Tab, Key::Tab);
    }
    panic!("Tab does not come to `{what}`");
}

impl Way for Keys {
    fn at_part(&mut self, rig: &mut Rig, part: &str, deed: &Deed) {
        to_part(rig, part);
        let arrow = |deg: f32| match deg > 0.0 {
            true => (KeyCode::ArrowRight, Key::ArrowRight),
            false => (KeyCode::ArrowLeft, Key::ArrowLeft),
        };
        let (deg, each) = match deed {
            Deed::Press | Deed::Strokes | Deed::Stay(_) | Deed::Pull => {
                rig.tap(KeyCode::Space, Key::Space);
                return;
            }
            // A long thread goes by half a turn a press.
            Deed::Turn(deg) if deg.abs() > 2.0 * 135.0 - 1.0 && deg % 90.0 == 0.0 => (*deg, 180.0),
            Deed::Turn(deg) => (*deg, EIGHTH_DEG),
            Deed::Lever(deg) => (*deg, 15.0),
        };
        let (code, key) = arrow(deg);
        for _ in 0..(deg.abs() / each).ceil() as u32 {
            rig.tap(code, key.clone());
            settle(rig);
        }
    }

    fn by_list(&mut self, rig: &mut Rig, part: &str, label: &str) {
        to_part(rig, part);
        rig.tap(KeyCode::Enter, Key::Enter);
        rig.frames(2);
        self.choose(rig, label);
    }

    fn can(&self, it: &Handling, deed: &Deed, action: &Action) -> bool {
        match deed {
            Deed::Turn(_) | Deed::Lever(_) => true,
            // Space does one thing at a part; the rest stands in its list.
            Deed::Press | Deed::Strokes | Deed::Stay(_) | Deed::Pull => {
                it.at_once().as_slice() == core::slice::from_ref(action)
            }
        }
    }

    fn heights(&self) -> &'static [Height] {
        &[Height::Head]
    }

    fn go(&mut self, rig: &mut Rig, place: Place) {
        let digit = match place {
            Place::Yard => ("1", KeyCode::Digit1),
            Place::PlantRoom => ("2", KeyCode::Digit2),
            Place::GasValve => ("3", KeyCode::Digit3),
            Place::Hall => ("4", KeyCode::Digit4),
            Place::Away => return self.choose(rig, "Leave the premises, to a safe distance"),
        };
        rig.tap(digit.1, Key::Character(digit.0.into()));
    }

    fn choose(&mut self, rig: &mut Rig, label: &str) {
        if let Some(letter) = rig.shortcut(label) {
            let code = letter_code(&letter);
            rig.tap(code, Key::Character(letter.to_lowercase().into()));
            rig.frames(2);
            return;
        }
        let (node, _) = rig.node(label);
        tab_until(rig, label, |rig| rig.has_keyboard(node));
        rig.tap(KeyCode::Enter, Key::Enter);
        rig.frames(2);
    }
}

fn letter_code(letter: &str) -> KeyCode {
    const CODES: [KeyCode; 26] = [
        KeyCode::KeyA,
        KeyCode::KeyB,
        KeyCode::KeyC,
        KeyCode::KeyD,
        KeyCode::KeyE,
        KeyCode::KeyF,
        KeyCode::KeyG,
        KeyCode::KeyH,
        KeyCode::KeyI,
        KeyCode::KeyJ,
        KeyCode::KeyK,
        KeyCode::KeyL,
        KeyCode::KeyM,
        KeyCode::KeyN,
        KeyCode::KeyO,
        KeyCode::KeyP,
        KeyCode::KeyQ,
        KeyCode::KeyR,
        KeyCode::KeyS,
        KeyCode::KeyT,
        KeyCode::KeyU,
        KeyCode::KeyV,
        KeyCode::KeyW,
        KeyCode::KeyX,
        KeyCode::KeyY,
        KeyCode::KeyZ,
    ];
    let place = letter.chars().next().expect("a letter") as usize - 'A' as usize;
    CODES[place]
}

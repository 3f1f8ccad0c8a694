//! Mouse, finger and keys.

use std::time::Duration;

use bevy::input::ButtonState;
use bevy::input::keyboard::{Key, KeyboardInput};
use bevy::input::mouse::{MouseButtonInput, MouseScrollUnit, MouseWheel};
use bevy::input::touch::{TouchInput, TouchPhase};
use bevy::prelude::*;
use bevy::time::TimeUpdateStrategy;
use bevy::window::{CursorMoved, WindowEvent, WindowResized};
use quarterturn::app::boxes::Boxes;

impl super::Rig {
    /// Moves the mouse to a point of the window.
    pub fn point(&mut self, at: Vec2) {
        let moved = CursorMoved { window: self.window, position: at, delta: None };
        let world = self.app.world_mut();
        world.write_message(moved.clone());
        world.write_message(WindowEvent::CursorMoved(moved));
        world
            .entity_mut(self.window)
            .get_mut::<Window>()
            .expect("a window")
            .set_cursor_position(Some(at));
        self.frames(2);
    }

    /// How long a frame takes from now on, in milliseconds.
    pub fn frame_ms(&mut self, ms: u64) {
        let frame = TimeUpdateStrategy::ManualDuration(Duration::from_millis(ms));
        self.app.insert_resource(frame);
    }

    /// Clicks on a point.
    pub fn click(&mut self, at: Vec2) {
        self.point(at);
        self.button(ButtonState::Pressed);
        self.button(ButtonState::Released);
        self.frames(2);
    }

    /// Clicks on a point with the other button.
    pub fn other_click(&mut self, at: Vec2) {
        self.point(at);
        self.press(MouseButton::Right, ButtonState::Pressed);
        self.press(MouseButton::Right, ButtonState::Released);
        self.frames(2);
    }

    /// Presses the button where the mouse is, or lets it go.
    pub fn button(&mut self, state: ButtonState) {
        self.press(MouseButton::Left, state);
    }

    fn press(&mut self, button: MouseButton, state: ButtonState) {
        let button = MouseButtonInput { button, state, window: self.window };
        let world = self.app.world_mut();
        world.write_message(button);
        world.write_message(WindowEvent::MouseButtonInput(button));
        self.frames(2);
    }

    /// Turns the wheel by so many lines where the mouse is; up is positive.
    pub fn wheel(&mut self, lines: f32) {
        let turned = MouseWheel {
            unit: MouseScrollUnit::Line,
            x: 0.0,
            y: lines,
            window: self.window,
            phase: TouchPhase::Moved,
        };
        let world = self.app.world_mut();
        world.write_message(turned);
        world.write_message(WindowEvent::MouseWheel(turned));
        self.frames(2);
    }

    /// Drags with the button down through the points.
    pub fn drag(&mut self, way: &[Vec2]) {
        for (index, &at) in way.iter().enumerate() {
            self.point(at);
            if index == 0 {
                self.button(ButtonState::Pressed);
            }
        }
        self.button(ButtonState::Released);
        self.frames(4);
    }

    /// A finger goes through the points.
    pub fn finger(&mut self, way: &[Vec2]) {
        let last = way.len() - 1;
        for (index, &position) in way.iter().enumerate() {
            let phase = if index == 0 { TouchPhase::Started } else { TouchPhase::Moved };
            self.touch(phase, position);
        }
        self.touch(TouchPhase::Ended, way[last]);
        self.frames(4);
    }

    /// A finger comes down on a point.
    pub fn finger_down(&mut self, at: Vec2) {
        self.touch(TouchPhase::Started, at);
    }

    /// A finger goes up from a point.
    pub fn finger_up(&mut self, at: Vec2) {
        self.touch(TouchPhase::Ended, at);
        self.frames(4);
    }

    fn touch(&mut self, phase: TouchPhase, position: Vec2) {
        let touch = TouchInput { phase, position, window: self.window, force: None, id: 7 };
        let world = self.app.world_mut();
        world.write_message(touch);
        world.write_message(WindowEvent::TouchInput(touch));
        self.frames(2);
    }

    /// Drags round a part's middle, `deg` clockwise, beginning on it.
    pub fn turn(&mut self, part: &str, deg: f32) {
        let way = self.way_round(part, deg);
        self.drag(&way);
    }

    /// Points from a part outwards and round its middle, `deg` clockwise.
    pub fn way_round(&self, part: &str, deg: f32) -> Vec<Vec2> {
        let middle = self.middle(part);
        let steps = (deg.abs() / 15.0).ceil() as u16;
        let mut way = vec![middle + Vec2::new(8.0, 0.0)];
        way.extend((0..=steps).map(|step| {
            let a = (deg * f32::from(step) / f32::from(steps)).to_radians();
            middle + 60.0 * Vec2::new(a.cos(), a.sin())
        }));
        way
    }

    /// What a part of the drawing turns about, or else its middle, in the window.
    pub fn middle(&self, part: &str) -> Vec2 {
        let boxes = &self.app.world().resource::<Boxes>().0;
        let found = boxes.iter().find(|it| it.id.split(['@', '.']).next() == Some(part));
        let found = found.unwrap_or_else(|| panic!("no part {part}"));
        let at = found.pivot.unwrap_or(found.rect.center());
        Vec2::new(at.x, at.y)
    }

    /// Types a text and ends with Enter.
    pub fn type_text(&mut self, text: &str) {
        for c in text.chars() {
            self.key(KeyCode::Digit0, Key::Character(c.to_string().into()));
        }
        self.key(KeyCode::Enter, Key::Enter);
    }

    /// Presses and releases a key as quickly as keys go.
    pub fn tap(&mut self, key_code: KeyCode, logical_key: Key) {
        self.key_within(1, key_code, logical_key);
    }

    /// Presses and releases a key.
    pub fn key(&mut self, key_code: KeyCode, logical_key: Key) {
        self.key_within(2, key_code, logical_key);
    }

    fn key_within(&mut self, frames: u32, key_code: KeyCode, logical_key: Key) {
        for state in [ButtonState::Pressed, ButtonState::Released] {
            let text = match (&logical_key, state) {
                (Key::Character(text), ButtonState::Pressed) => Some(text.clone()),
                _ => None,
            };
            let key = KeyboardInput {
                key_code,
                logical_key: logical_key.clone(),
                state,
                text,
                repeat: false,
                window: self.window,
            };
            let world = self.app.world_mut();
            world.write_message(key.clone());
            world.write_message(WindowEvent::KeyboardInput(key));
            self.frames(frames);
        }
    }

    /// Gives the window another size.
    pub fn resize(&mut self, width: u32, height: u32) {
        let world = self.app.world_mut();
        world
            .entity_mut(self.window)
            .get_mut::<Window>()
            .expect("a window")
            .resolution
            .set_physical_resolution(width, height);
        let resized =
            WindowResized { window: self.window, width: width as f32, height: height as f32 };
        world.write_message(resized.clone());
        world.write_message(WindowEvent::WindowResized(resized));
        self.frames(4);
    }
}

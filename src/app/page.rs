//! The state that the window's systems share: what is seen, the page that lies open and where, the
//! trainee's choices, and the order of the work in a frame.

use bevy::prelude::*;
use bevy_egui::egui;

use crate::panels::settings::Settings;
use crate::senses::seen::Seen;

/// The trainee's settings as they hold now.
#[derive(Resource, Default)]
pub struct Choices(pub Settings);

/// The order of the window's own work in a frame.
#[derive(SystemSet, Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum AppSystems {
    /// What is seen goes into the scene.
    Mirror,
    /// The scene moves to where it shall stand.
    Animate,
}

/// The one camera of the window.
#[derive(Component)]
pub struct TheCamera;

/// Where the page lies, in window points; empty when nothing is drawn.
#[derive(Resource, Debug, Clone, Copy, PartialEq)]
pub struct PageRect(pub egui::Rect);

impl Default for PageRect {
    fn default() -> Self {
        Self(egui::Rect::ZERO)
    }
}

/// The color of the paper.
pub const BACKGROUND: Color = Color::srgb_u8(0xF5, 0xF1, 0xE8);

/// What is seen now; nothing without a job.
#[derive(Resource, Default)]
pub struct CurrentSeen(pub Option<Seen>);

/// Which place's drawing lies on the page, if any.
#[derive(Resource, Default, Debug, Clone, Copy, PartialEq, Eq)]
pub struct OnPage(pub Option<&'static str>);

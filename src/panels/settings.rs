//! What a trainee may choose about the window.

use serde::{Deserialize, Serialize};

use crate::parts::OnOff;
use crate::units::PressureUnit;

/// Choices about the window. The shell keeps them; it also scales the whole window by
/// [`Settings::scale_percent`] (points per pixel belong to the shell).
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(default, deny_unknown_fields)]
pub struct Settings {
    /// The unit that figures are shown in and readings are proposed in.
    pub unit: PressureUnit,
    /// Size of type against the window.
    pub text: TextSize,
    /// Scale of the whole window, 100–200 %.
    pub scale_percent: u32,
    /// Whether things move smoothly.
    pub motion: Motion,
    /// Names written beside the parts of the drawing.
    pub labels: OnOff,
    /// Single letters and digits as keys. Off for those who dictate or use a screen reader.
    pub single_keys: OnOff,
    /// Whether the bench is heard.
    pub sound: OnOff,
    /// How loud it is heard, 1–100 %.
    pub volume_percent: u32,
    /// Speed at which a job starts: 1, 5 or 20.
    pub speed: u32,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            unit: PressureUnit::InWc,
            text: TextSize::Window,
            scale_percent: 100,
            motion: Motion::Full,
            labels: OnOff::Off,
            single_keys: OnOff::On,
            sound: OnOff::On,
            volume_percent: 50,
            speed: 1,
        }
    }
}

/// How far away the type must be read from.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum TextSize {
    /// For one person at a screen.
    Window,
    /// For a room and a projector.
    Projector,
}

/// Whether things move smoothly.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum Motion {
    /// Things move: flames flicker, handles turn to where they go.
    Full,
    /// Things change without moving: no flicker, no easing.
    Reduced,
}

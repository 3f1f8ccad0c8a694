//! The window fits the monitor that it opens on.

use bevy::prelude::*;
use bevy::window::{Monitor, PrimaryMonitor, PrimaryWindow};

/// The window as it opens where there is room, in points.
const SIZE: [f32; 2] = [1280.0, 720.0];
/// Smallest window where there is room, in points.
pub(super) const LEAST: [f32; 2] = [1024.0, 700.0];

/// Height that a window's own frame and a task bar may take, in points.
const FRAME: f32 = 64.0;

/// How the window shall open.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum Fit {
    /// At its usual size, which the monitor has room for.
    AsItIs,
    /// As large as the monitor lets it: at most this, and this small at least.
    Within {
        /// Width and height, in points.
        size: [f32; 2],
        /// The least width and height.
        least: [f32; 2],
    },
}

/// How a window opens on a monitor of this size in points.
#[must_use]
pub fn fit(monitor: [f32; 2]) -> Fit {
    let [width, height] = monitor;
    if width >= SIZE[0] && height >= SIZE[1] + FRAME {
        return Fit::AsItIs;
    }
    Fit::Within {
        size: [SIZE[0].min(width), SIZE[1].min(height)],
        least: [LEAST[0].min(width), LEAST[1].min(height - FRAME).max(1.0)],
    }
}

pub(super) fn plugin(app: &mut App) {
    app.add_systems(Update, once);
}

/// The monitors are known a little after the start.
fn once(
    monitors: Query<(&Monitor, Has<PrimaryMonitor>)>,
    mut windows: Query<&mut Window, With<PrimaryWindow>>,
    mut done: Local<Done>,
) {
    if *done == Done::Yes {
        return;
    }
    let first = monitors.iter().max_by_key(|(_, primary)| *primary);
    let (Some((monitor, _)), Ok(mut window)) = (first, windows.single_mut()) else { return };
    *done = Done::Yes;
    #[expect(clippy::cast_possible_truncation, reason = "a scale")]
    let scale = (monitor.scale_factor as f32).max(0.5);
    let size = monitor.physical_size().as_vec2() / scale;
    if let Fit::Within { size, least } = fit(size.to_array()) {
        window.resize_constraints.min_width = least[0];
        window.resize_constraints.min_height = least[1];
        window.resolution.set(size[0], size[1]);
        window.set_maximized(true);
    }
}

#[derive(Default, PartialEq, Eq)]
enum Done {
    #[default]
    No,
    Yes,
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_window_is_never_larger_than_its_screen() {
        assert_eq!(fit([1920.0, 1080.0]), Fit::AsItIs);
        for monitor in [[1280.0, 720.0], [1024.0, 768.0], [1024.0, 600.0], [800.0, 480.0]] {
            let Fit::Within { size, least } = fit(monitor) else { panic!("{monitor:?}") };
            for i in 0..2 {
                assert!(size[i] <= monitor[i] && least[i] <= size[i], "{monitor:?}: {size:?}");
            }
        }
    }
}

//! Whether there is a screen to open a window on.

use std::ffi::OsStr;

use crate::words::Id;

/// Said when there is none.
pub const NO_SCREEN: Id = id!("display-no-screen");

/// Said when there is a screen but nothing that can draw on it.
const NO_DRIVER: Id = id!("display-no-driver");

/// What to say when the engine gave up at its start, by what it said itself.
#[must_use]
pub fn reason(said: &str) -> Id {
    if said.contains("GPU") { NO_DRIVER } else { NO_SCREEN }
}

/// Whether the environment names a screen.
#[must_use]
pub fn is_named() -> bool {
    if cfg!(all(unix, not(target_os = "macos"))) {
        names_one(
            std::env::var_os("DISPLAY").as_deref(),
            std::env::var_os("WAYLAND_DISPLAY").as_deref(),
        )
    } else {
        true
    }
}

/// Whether one of the two variables names a screen.
fn names_one(display: Option<&OsStr>, wayland: Option<&OsStr>) -> bool {
    [display, wayland].into_iter().flatten().any(|value| !value.is_empty())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_empty_variable_names_no_screen() {
        assert!(!names_one(None, None));
        assert!(!names_one(Some(OsStr::new("")), None));
        assert!(names_one(Some(OsStr::new(":0")), None));
        assert!(names_one(None, Some(OsStr::new("wayland-0"))));
    }
}

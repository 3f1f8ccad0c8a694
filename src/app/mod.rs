//! The window: the drawing of the bench with the panels around it. Knows the engine; decides
//! nothing that a record would not know.

mod access;
pub mod approach;
#[cfg(all(feature = "sound", target_os = "linux"))]
mod audio;
pub mod boxes;
pub mod camera;
mod display;
pub mod drawings;
pub mod drive;
mod fit;
pub mod hose;
pub mod in_hand;
pub mod mirror;
pub mod motion;
pub mod page;
pub mod pose;
pub mod redraw;
pub mod scene;
pub mod session;
pub mod store;
pub mod svg;
pub mod ui;

use std::panic::{AssertUnwindSafe, catch_unwind};
use std::process::ExitCode;

use bevy::log::LogPlugin;
use bevy::prelude::*;
use bevy::window::{WindowResizeConstraints, WindowResolution};
use bevy_egui::EguiPlugin;

use crate::panels::view::Help;
use drive::Screen;
use fit::LEAST;
use page::{AppSystems, Choices};
use session::Session;
use store::Store;
use ui::StoreResource;

/// What the window is opened with.
pub struct WindowArgs {
    /// Where scenarios, records and results are kept.
    pub store: Box<dyn Store>,
    /// A job to begin with, in place of the opening page.
    pub start: Option<Start>,
}

/// A job to begin with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Start {
    /// Name of the scenario.
    pub scenario: String,
    /// The seed; the store's proposal when none is given.
    pub seed: Option<u64>,
    /// How much help there is.
    pub help: Help,
}

/// Exit code when there is no screen.
const NO_SCREEN_CODE: u8 = 3;
/// Opens the window and stays until it is closed.
#[must_use]
pub fn open(args: WindowArgs) -> ExitCode {
    if !display::is_named() {
        return give_up(display::NO_SCREEN.text());
    }
    let drawings = match scene::read() {
        Ok(drawings) => drawings,
        Err(error) => {
            eprintln!("{}", t!("program-error", error = error));
            return ExitCode::from(1);
        }
    };
    let mut app = App::new();
    // The engine panics when there is no server behind the variable. That is not a fault of the
    // program, so nobody needs its trace.
    let hook = std::panic::take_hook();
    std::panic::set_hook(Box::new(|_| {}));
    let built = catch_unwind(AssertUnwindSafe(|| {
        app.add_plugins(engine());
    }));
    std::panic::set_hook(hook);
    if let Err(panic) = built {
        let said = panic
            .downcast_ref::<String>()
            .map(String::as_str)
            .or_else(|| panic.downcast_ref::<&str>().copied());
        return give_up(display::reason(said.unwrap_or_default()).text());
    }
    match assemble(&mut app, args, drawings) {
        Ok(()) => {
            // Only here: an app that a test assembles makes no sound.
            #[cfg(all(feature = "sound", target_os = "linux"))]
            app.add_plugins(audio::plugin);
            match app.run() {
                AppExit::Success => ExitCode::SUCCESS,
                AppExit::Error(code) => ExitCode::from(code.get()),
            }
        }
        Err(error) => {
            eprintln!("{}", t!("program-error", error = error));
            ExitCode::from(1)
        }
    }
}

fn give_up(why: &str) -> ExitCode {
    eprintln!("{why}");
    ExitCode::from(NO_SCREEN_CODE)
}

/// The engine's own plugins.
fn engine() -> bevy::app::PluginGroupBuilder {
    DefaultPlugins
        .set(WindowPlugin { primary_window: Some(window()), ..default() })
        .set(LogPlugin { filter: "error,wgpu_hal=off,wgpu_core=off".into(), ..default() })
}

/// The window as it opens.
#[must_use]
pub fn window() -> Window {
    Window {
        title: t!("opening-name").into(),
        name: Some("quarterturn".into()),
        resolution: WindowResolution::new(1280, 720),
        resize_constraints: WindowResizeConstraints {
            min_width: LEAST[0],
            min_height: LEAST[1],
            ..default()
        },
        ..default()
    }
}

/// Adds everything of ours to an app that has the engine's plugins.
///
/// # Errors
/// Why the job to begin with cannot begin.
pub fn assemble(app: &mut App, args: WindowArgs, drawings: scene::Drawings) -> Result<(), String> {
    let WindowArgs { mut store, start } = args;
    let choices = Choices(store.settings());
    let screen = match start {
        None => Screen::Opening,
        Some(Start { scenario, seed, help }) => {
            let seed = seed.unwrap_or_else(|| store.seed());
            let attempt = store.start(&scenario, seed, help)?;
            Screen::Job(Box::new(Session::new(attempt, choices.0.speed)))
        }
    };
    app.add_plugins(EguiPlugin::default())
        .insert_resource(choices)
        .insert_resource(StoreResource(store))
        .insert_resource(drawings)
        .insert_resource(screen)
        .configure_sets(Update, (AppSystems::Mirror, AppSystems::Animate).chain())
        .add_plugins((
            redraw::plugin,
            drive::plugin,
            scene::plugin,
            mirror::plugin,
            approach::plugin,
            motion::plugin,
            hose::plugin,
            in_hand::plugin,
            boxes::plugin,
            camera::plugin,
            ui::plugin,
            access::plugin,
            fit::plugin,
        ));
    Ok(())
}

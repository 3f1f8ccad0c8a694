//! The whole program without a window system: window messages go in, frames come out.

mod input;
mod named;

use std::time::Duration;

use bevy::camera::RenderTarget;
use bevy::ecs::schedule::SingleThreadedExecutor;
use bevy::log::LogPlugin;
use bevy::prelude::*;
use bevy::render::RenderPlugin;
use bevy::render::pipelined_rendering::PipelinedRenderingPlugin;
use bevy::render::render_resource::{PollType, TextureFormat, TextureUsages};
use bevy::render::renderer::RenderDevice;
use bevy::render::settings::WgpuSettings;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use bevy::time::TimeUpdateStrategy;
use bevy::window::{ExitCondition, PrimaryWindow, WindowResolution};
use bevy::winit::WinitPlugin;
use bevy_egui::EguiContext;
use quarterturn::app::drive::Screen;
use quarterturn::app::page::TheCamera;
use quarterturn::app::redraw::Redraw;
use quarterturn::app::scene::{Drawings, PartEntities};
use quarterturn::app::session::Session;
use quarterturn::app::{Start, WindowArgs, assemble, scene, window};
use quarterturn::panels::view::Help;
use quarterturn::senses::seen::Seen;

use super::store::TestStore;

/// Whether pixels are drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pixels {
    /// Not at all: no renderer.
    None,
    /// Into a picture.
    Drawn,
}

/// The program under test.
pub struct Rig {
    pub app: App,
    window: Entity,
    picture: Option<Handle<Image>>,
    egui: bevy_egui::egui::Context,
}

#[derive(Resource, Default)]
struct Caught(Option<Image>);

impl Rig {
    /// Opens the program on a job, or on the opening page, in a window of this size.
    pub fn open(store: TestStore, job: Option<&str>, size: (u32, u32), pixels: Pixels) -> Self {
        let mut app = App::new();
        let render_creation = match pixels {
            Pixels::None => WgpuSettings { backends: None, ..default() }.into(),
            // The same driver everywhere, whatever cards are there.
            Pixels::Drawn => WgpuSettings { force_fallback_adapter: true, ..default() }.into(),
        };
        let primary = Window { resolution: WindowResolution::new(size.0, size.1), ..window() };
        app.add_plugins(
            DefaultPlugins
                .set(WindowPlugin {
                    primary_window: Some(primary),
                    exit_condition: ExitCondition::DontExit,
                    ..default()
                })
                .set(RenderPlugin {
                    synchronous_pipeline_compilation: true,
                    render_creation,
                    ..default()
                })
                .disable::<LogPlugin>()
                .disable::<WinitPlugin>()
                .disable::<PipelinedRenderingPlugin>(),
        );
        app.insert_resource(TimeUpdateStrategy::ManualDuration(Duration::from_millis(20)))
            .init_resource::<Caught>();
        let start = job.map(|id| Start { scenario: id.into(), seed: Some(7), help: Help::Solo });
        let drawings = scene::read().expect("the drawings are sound");
        assemble(&mut app, WindowArgs { store: Box::new(store), start }, drawings)
            .expect("it opens");
        app.finish();
        app.cleanup();
        if pixels == Pixels::None {
            // Small systems on many threads spend their time on waiting for each other.
            for (_, schedule) in app.world_mut().resource_mut::<Schedules>().iter_mut() {
                schedule.set_executor(SingleThreadedExecutor::new());
            }
        }
        let window = app
            .world_mut()
            .query_filtered::<Entity, With<PrimaryWindow>>()
            .single(app.world())
            .expect("one window");
        let picture = (pixels == Pixels::Drawn).then(|| {
            let mut image =
                Image::new_target_texture(size.0, size.1, TextureFormat::Rgba8UnormSrgb, None);
            image.texture_descriptor.usage |= TextureUsages::COPY_SRC;
            app.world_mut().resource_mut::<Assets<Image>>().add(image)
        });
        let egui = bevy_egui::egui::Context::default();
        let mut rig = Self { app, window, picture, egui };
        rig.frames(1);
        let world = rig.app.world_mut();
        let mut contexts = world.query::<&mut EguiContext>();
        rig.egui = contexts.single_mut(world).expect("one context").get_mut().clone();
        rig.aim_cameras();
        rig.frames(4);
        rig
    }

    fn aim_cameras(&mut self) {
        let Some(picture) = self.picture.clone() else { return };
        let world = self.app.world_mut();
        let cameras: Vec<Entity> =
            world.query_filtered::<Entity, With<TheCamera>>().iter(world).collect();
        for camera in cameras {
            world.entity_mut(camera).insert(RenderTarget::Image(picture.clone().into()));
        }
    }

    /// Lets some frames pass, 20 ms each.
    pub fn frames(&mut self, count: u32) {
        for _ in 0..count {
            self.app.update();
            if self.picture.is_some() {
                self.app
                    .world()
                    .resource::<RenderDevice>()
                    .wgpu_device()
                    .poll(PollType::Wait { submission_index: None, timeout: None })
                    .expect("the device answers");
            }
        }
    }

    /// The picture as it is now.
    pub fn picture(&mut self) -> Image {
        let handle = self.picture.clone().expect("pixels are drawn");
        self.app.world_mut().resource_mut::<Redraw>().forced = 8;
        self.frames(2);
        self.app.world_mut().spawn(Screenshot::image(handle)).observe(
            |shot: On<ScreenshotCaptured>, mut caught: ResMut<Caught>| {
                caught.0 = Some(shot.image.clone());
            },
        );
        for _ in 0..60 {
            self.frames(1);
            if let Some(image) = self.app.world_mut().resource_mut::<Caught>().0.take() {
                return image;
            }
        }
        panic!("no picture came");
    }

    /// What is seen in the job in front.
    pub fn seen(&self) -> Seen {
        self.job().seen()
    }

    /// The job in front.
    pub fn job(&self) -> &Session {
        self.app.world().resource::<Screen>().job().expect("a job is in front")
    }

    /// How a group of a drawing stands: its transform, and whether it is shown.
    pub fn group(&mut self, named: &str, id: &str) -> (Transform, bool) {
        let world = self.app.world_mut();
        let drawings = world.resource::<Drawings>();
        let at = drawings.0.iter().position(|s| s.name == named).expect("the drawing");
        let group = drawings.0[at].drawing.find(id).expect("the group");
        let entity = world.resource::<PartEntities>().0[at][group].expect("it moves");
        let shown = world.get::<InheritedVisibility>(entity).expect("shown or not").get();
        (*world.get::<Transform>(entity).expect("a transform"), shown)
    }

    /// Where a drawing lies; nothing while it is hidden.
    pub fn root(&mut self, named: &str) -> Option<Transform> {
        let world = self.app.world_mut();
        let at = world.resource::<Drawings>().0.iter().position(|it| it.name == named);
        let entity = world.resource::<PartEntities>().0[at.expect("the drawing")][0];
        let entity = entity.expect("a root");
        let shown = *world.get::<Visibility>(entity).expect("shown or not") != Visibility::Hidden;
        shown.then(|| *world.get::<Transform>(entity).expect("a transform"))
    }
}

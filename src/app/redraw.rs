//! Drawing only what changed, and sleeping when nothing does.
//!
//! The window wakes thirty times a second while something changes its place, fewer times while a
//! flame or a wheel runs on, five times while only time runs, and not at all while time stands. A frame in which neither the scene nor the panels changed
//! leaves the picture on the screen as it is: the camera rests, and nothing is rendered.

use std::hash::{DefaultHasher, Hash, Hasher};
use std::time::Duration;

use bevy::camera::visibility::VisibilitySystems;
use bevy::ecs::message::Messages;
use bevy::prelude::*;
use bevy::render::renderer::RenderAdapterInfo;
use bevy::window::{
    RequestRedraw, WindowFocused, WindowOccluded, WindowResized, WindowScaleFactorChanged,
};
use bevy::winit::{UpdateMode, WinitSettings};
use bevy_egui::{
    EguiContext, EguiFullOutput, EguiInput, EguiInputSet, EguiPostUpdateSet, EguiPreUpdateSet,
    EguiRenderOutput, egui,
};
use wgpu_types::DeviceType;

use super::drive::Screen;
use super::page::TheCamera;

/// What is known about the need to draw.
#[derive(Resource, Debug)]
pub struct Redraw {
    /// The scene changed in this frame.
    pub changed: bool,
    /// What is under way in the scene.
    pub motion: Moving,
    /// Another frame is wanted at once.
    pub again: bool,
    /// Frames still to be drawn whatever else: at the start, and after the window came into view.
    pub forced: u32,
    /// Frames drawn so far.
    pub drawn: u64,
    /// Shortest time between two pictures while something only runs on.
    pub running_on: Duration,
    panels: u64,
    panels_delay: Duration,
}

/// What is under way in the scene.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Moving {
    /// The scene stands still.
    Nothing,
    /// Something runs on: a flame, a wheel.
    RunningOn,
    /// Something goes to where it shall stand.
    Changing,
}

/// Shortest time between two pictures while something changes, in seconds.
pub(super) const CHANGING_S: f32 = 0.033;
/// Frames drawn at the start, until pipelines and fonts are there.
const FIRST_FRAMES: u32 = 12;
/// Between two pictures of what runs on, with a graphics card.
const ON_A_CARD: Duration = Duration::from_millis(40);
/// The same where the processor draws.
const BY_THE_PROCESSOR: Duration = Duration::from_millis(90);
/// Longest sleep, while nothing can change by itself.
const LONG: Duration = Duration::from_secs(3600);
/// Sleep while only time runs.
const TICKING: Duration = Duration::from_millis(200);

impl Default for Redraw {
    fn default() -> Self {
        Self {
            changed: true,
            motion: Moving::Nothing,
            again: false,
            forced: FIRST_FRAMES,
            drawn: 0,
            running_on: ON_A_CARD,
            panels: 0,
            panels_delay: Duration::MAX,
        }
    }
}

pub(super) fn plugin(app: &mut App) {
    app.init_resource::<Redraw>()
        .insert_resource(settings(TICKING))
        .add_systems(Startup, spare_the_processor)
        .add_systems(
            PreUpdate,
            (
                begin.before(EguiPreUpdateSet::ProcessInput),
                forget_same_modifiers
                    .after(EguiInputSet::WriteEguiEvents)
                    .before(EguiPreUpdateSet::BeginPass),
            ),
        )
        .add_systems(
            PostUpdate,
            (
                panels_delay
                    .after(EguiPostUpdateSet::EndPass)
                    .before(EguiPostUpdateSet::ProcessOutput),
                decide
                    .after(EguiPostUpdateSet::ProcessOutput)
                    .before(EguiPostUpdateSet::PostProcessOutput)
                    .before(VisibilitySystems::CheckVisibility),
            ),
        );
}

fn settings(wait: Duration) -> WinitSettings {
    let mode = UpdateMode::reactive_low_power(wait);
    WinitSettings { focused_mode: mode, unfocused_mode: mode }
}

/// Where the processor draws, it has the rest of the classroom's work to do as well.
fn spare_the_processor(adapter: Option<Res<RenderAdapterInfo>>, mut redraw: ResMut<Redraw>) {
    if adapter.is_some_and(|info| info.device_type == DeviceType::Cpu) {
        redraw.running_on = BY_THE_PROCESSOR;
    }
}

fn begin(
    mut redraw: ResMut<Redraw>,
    mut resized: MessageReader<WindowResized>,
    mut scaled: MessageReader<WindowScaleFactorChanged>,
    mut focused: MessageReader<WindowFocused>,
    mut occluded: MessageReader<WindowOccluded>,
) {
    redraw.changed = false;
    redraw.again = false;
    let seen = resized.read().count()
        + scaled.read().count()
        + focused.read().count()
        + occluded.read().count();
    if seen > 0 {
        redraw.forced = redraw.forced.max(3);
    }
}

/// The panels hear of the modifier keys in every frame and take it for input, so they would ask
/// for another frame for ever. They need to hear of a change only.
fn forget_same_modifiers(mut contexts: Query<(&mut EguiInput, &mut EguiContext)>) {
    for (mut input, mut context) in &mut contexts {
        let held = context.get_mut().input(|i| i.modifiers);
        input
            .0
            .events
            .retain(|event| !matches!(event, egui::Event::ModifiersChanged(now) if *now == held));
    }
}

/// When the panels want to be shown again by themselves.
fn panels_delay(mut redraw: ResMut<Redraw>, outputs: Query<&EguiFullOutput>) {
    redraw.panels_delay = outputs
        .iter()
        .filter_map(|output| output.0.as_ref())
        .flat_map(|output| output.viewport_output.values())
        .map(|viewport| viewport.repaint_delay)
        .min()
        .unwrap_or(Duration::MAX);
}

fn decide(
    screen: Res<Screen>,
    output: Single<&EguiRenderOutput>,
    mut redraw: ResMut<Redraw>,
    mut camera: Single<&mut Camera, With<TheCamera>>,
    mut settled: ResMut<WinitSettings>,
    mut requests: ResMut<Messages<RequestRedraw>>,
) {
    let panels = fingerprint(&output);
    let draw = redraw.changed
        || redraw.forced > 0
        || panels != redraw.panels
        || !output.textures_delta.is_empty();
    redraw.panels = panels;
    if draw {
        redraw.forced = redraw.forced.saturating_sub(1);
        redraw.drawn += 1;
    }
    if camera.is_active != draw {
        camera.is_active = draw;
    }
    // The engine asks for a frame at once even when the panels want one only after a while.
    requests.clear();
    if redraw.again || redraw.forced > 0 || redraw.panels_delay.is_zero() {
        requests.write(RequestRedraw);
    }
    let runs = screen.runs();
    let soon = redraw.panels_delay < LONG;
    let wait = match redraw.motion {
        Moving::Changing => Duration::from_secs_f32(CHANGING_S),
        Moving::RunningOn if runs => redraw.running_on,
        Moving::RunningOn | Moving::Nothing if runs || soon => TICKING,
        Moving::RunningOn | Moving::Nothing => LONG,
    };
    let wanted = settings(wait);
    if settled.focused_mode != wanted.focused_mode {
        *settled = wanted;
    }
}

/// Tells one picture of the panels from another.
fn fingerprint(output: &EguiRenderOutput) -> u64 {
    let mut hasher = DefaultHasher::new();
    for job in &output.paint_jobs {
        for value in [job.clip_rect.min, job.clip_rect.max] {
            value.x.to_bits().hash(&mut hasher);
            value.y.to_bits().hash(&mut hasher);
        }
        match &job.primitive {
            egui::epaint::Primitive::Mesh(mesh) => {
                mesh.texture_id.hash(&mut hasher);
                mesh.indices.hash(&mut hasher);
                for vertex in &mesh.vertices {
                    vertex.pos.x.to_bits().hash(&mut hasher);
                    vertex.pos.y.to_bits().hash(&mut hasher);
                    vertex.uv.x.to_bits().hash(&mut hasher);
                    vertex.uv.y.to_bits().hash(&mut hasher);
                    vertex.color.to_array().hash(&mut hasher);
                }
            }
            egui::epaint::Primitive::Callback(_) => {}
        }
    }
    hasher.finish()
}

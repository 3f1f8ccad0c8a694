//! The whole program without a window system: window messages go in, frames come out.

use std::time::Duration;

use bevy::camera::RenderTarget;
use bevy::ecs::schedule::SingleThreadedExecutor;
use bevy::input::ButtonState;
use bevy::input::keyboard::{Key, KeyboardInput};
use bevy::input::mouse::{MouseButtonInput, MouseScrollUnit, MouseWheel};
use bevy::input::touch::{TouchInput, TouchPhase};
use bevy::log::LogPlugin;
use bevy::prelude::*;
use bevy::render::RenderPlugin;
use bevy::render::pipelined_rendering::PipelinedRenderingPlugin;
use bevy::render::render_resource::{PollType, TextureFormat, TextureUsages};
use bevy::render::renderer::RenderDevice;
use bevy::render::settings::WgpuSettings;
use bevy::render::view::screenshot::{Screenshot, ScreenshotCaptured};
use bevy::time::TimeUpdateStrategy;
use bevy::window::{
    CursorMoved, ExitCondition, PrimaryWindow, WindowEvent, WindowResized, WindowResolution,
};
use bevy::winit::WinitPlugin;
use bevy_egui::egui::accesskit::{Node, NodeId};
use bevy_egui::{EguiContext, EguiOutput};
use quarterturn::app::boxes::Boxes;
use quarterturn::app::drive::Screen;
use quarterturn::app::page::TheCamera;
use quarterturn::app::redraw::Redraw;
use quarterturn::app::scene::{Drawings, PartEntities};
use quarterturn::app::session::Session;
use quarterturn::app::ui::WindowLayout;
use quarterturn::app::{Start, WindowArgs, assemble, scene, window};
use quarterturn::panels::spot::{Spot, spots};
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

    /// Everything that a screen reader could name now: label and box.
    pub fn named(&mut self) -> Vec<(String, NodeId, bevy_egui::egui::Rect)> {
        let named = self.nodes().into_iter().filter_map(|(id, node)| {
            let label = node.label().or(node.value())?.to_owned();
            let b = node.bounds()?;
            let min = bevy_egui::egui::pos2(b.x0 as f32, b.y0 as f32);
            let max = bevy_egui::egui::pos2(b.x1 as f32, b.y1 as f32);
            Some((label, id, bevy_egui::egui::Rect::from_min_max(min, max)))
        });
        named.collect()
    }

    /// The same without what is only read: headings and lines.
    pub fn pressable(&mut self) -> Vec<(String, NodeId)> {
        let able = self.nodes().into_iter().filter_map(|(id, node)| {
            let read = node.role() == bevy_egui::egui::accesskit::Role::Label;
            Some((node.label()?.to_owned(), id)).filter(|_| !read)
        });
        able.collect()
    }

    /// The key of what is called so, if it has one.
    pub fn shortcut(&mut self, name: &str) -> Option<String> {
        self.nodes().into_iter().find_map(|(_, node)| {
            let is_it = node.label().is_some_and(|label| label == name);
            node.keyboard_shortcut().filter(|_| is_it).map(str::to_owned)
        })
    }

    /// What a screen reader gets.
    fn nodes(&mut self) -> Vec<(NodeId, Node)> {
        let world = self.app.world_mut();
        let mut contexts = world.query::<&mut EguiContext>();
        for mut context in contexts.iter_mut(world) {
            context.get_mut().enable_accesskit();
        }
        for _ in 0..4 {
            self.frames(1);
            let world = self.app.world_mut();
            let output = world.query::<&EguiOutput>().single(world).expect("one context");
            if let Some(update) = &output.platform_output.accesskit_update {
                return update.nodes.clone();
            }
        }
        Vec::new()
    }

    /// Whether anything is called exactly so.
    pub fn is_named(&mut self, name: &str) -> bool {
        self.named().iter().any(|(label, ..)| label == name)
    }

    /// The whole name of the first thing whose name begins like this.
    pub fn name_that_begins(&mut self, name: &str) -> String {
        let named = self.named();
        let found = named.into_iter().map(|(label, ..)| label).find(|it| it.starts_with(name));
        found.unwrap_or_else(|| panic!("nothing is called `{name}…`"))
    }

    /// The hot-spots of the drawing, as the panels lay them.
    pub fn spots(&self) -> Vec<Spot> {
        let scene = self.app.world().resource::<WindowLayout>().layout.scene;
        let boxes = &self.app.world().resource::<Boxes>().0;
        spots(scene, self.seen().place, boxes)
    }

    /// Whether nothing lies over the drawing at a point.
    pub fn is_bare(&self, at: Vec2) -> bool {
        let over = self.egui.layer_id_at(bevy_egui::egui::pos2(at.x, at.y));
        over.is_none_or(|layer| layer.order == bevy_egui::egui::Order::Background)
    }

    /// What has the keyboard.
    pub fn focused(&self) -> Option<bevy_egui::egui::Id> {
        self.egui.memory(|memory| memory.focused())
    }

    /// Whether something has the keyboard.
    pub fn has_keyboard(&self, node: NodeId) -> bool {
        self.focused().is_some_and(|id| id.accesskit_id() == node)
    }

    /// Scrolls until what is called so lies under the pointer; gives the point. `scroll` moves what is
    /// at a point by so many lines, up positive.
    pub fn bring_into_view(&mut self, name: &str, scroll: impl Fn(&mut Self, Vec2, f32)) -> Vec2 {
        // Down to its end, then up to its end: whoever looks for a line in a list does the same.
        for lines in [-1.0, 1.0] {
            for _ in 0..60 {
                let (node, at) = self.node(name);
                if self.is_in_view(node, at) {
                    return at;
                }
                let mut rows: Vec<f32> = (1..18_u8).map(|row| 40.0 * f32::from(row)).collect();
                rows.sort_by(|a, b| (a - at.y).abs().total_cmp(&(b - at.y).abs()));
                let moved = rows.into_iter().any(|y| {
                    scroll(self, Vec2::new(at.x, y), lines);
                    self.come_to_rest(name);
                    (self.node(name).1.y - at.y).abs() > 1.0
                });
                if !moved {
                    break;
                }
            }
        }
        panic!("`{name}` does not come into view");
    }

    /// What was scrolled goes on for a moment.
    fn come_to_rest(&mut self, name: &str) {
        let mut before = self.node(name).1;
        for _ in 0..40 {
            self.frames(3);
            let now = self.node(name).1;
            if now.distance(before) < 0.1 {
                return;
            }
            before = now;
        }
    }

    /// What is called so, and its middle.
    pub fn node(&mut self, name: &str) -> (NodeId, Vec2) {
        let named = self.named();
        // A heading may be called like the button below it.
        let exact = named
            .iter()
            .filter(|(label, ..)| label == name)
            .max_by(|(.., a), (.., b)| a.top().total_cmp(&b.top()));
        // Or by how it begins: states and figures follow the name.
        let found = exact.or_else(|| {
            named.iter().find(|(label, ..)| {
                label.strip_prefix(name).is_some_and(|rest| rest.starts_with([',', ' ']))
            })
        });
        let Some((_, node, rect)) = found else {
            let labels: Vec<&String> = named.iter().map(|(label, ..)| label).collect();
            panic!("nothing is called `{name}` among {labels:#?}");
        };
        (*node, Vec2::new(rect.center().x, rect.center().y))
    }

    /// Whether a point of it can be pressed: not scrolled out of sight, nothing over it.
    fn is_in_view(&self, node: NodeId, at: Vec2) -> bool {
        let at = bevy_egui::egui::pos2(at.x, at.y);
        let over = self.egui.layer_id_at(at);
        self.egui.viewport(|viewport| {
            let mut layers = viewport.prev_pass.widgets.layers();
            layers.any(|(layer, widgets)| {
                let on_top = over.is_none_or(|over| over == *layer);
                let mut widgets = widgets.iter();
                on_top
                    && widgets
                        .any(|it| it.id.accesskit_id() == node && it.interact_rect.contains(at))
            })
        })
    }

    /// The middle of the first thing whose name begins like this.
    pub fn find(&mut self, name: &str) -> Vec2 {
        let named = self.named();
        let found = named.iter().find(|(label, ..)| label.starts_with(name));
        let Some((_, _, rect)) = found else {
            let labels: Vec<&String> = named.iter().map(|(label, ..)| label).collect();
            panic!("nothing is called `{name}…` among {labels:#?}");
        };
        Vec2::new(rect.center().x, rect.center().y)
    }

    /// Clicks on the first thing whose name begins like this.
    pub fn click_on(&mut self, name: &str) {
        let at = self.find(name);
        self.click(at);
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

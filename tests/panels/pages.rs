//! Every page stands at every size, and everything in it that can be pressed has a name.

use egui::accesskit::{Action, NodeId, Role, TreeUpdate};
use egui::epaint::ClippedShape;
use egui::{Event, Key, Modifiers, Pos2, Rect, Shape, vec2};
use quarterturn::panels::settings::TextSize;
use quarterturn::panels::view::{Help, SecondChance};
use quarterturn::parts::{Ending, Place, PortFill};
use quarterturn::senses::seen::Over;

use crate::fixture::{App, Which, seen, seen_open};

/// 1280×720, 1024×768, the first at 200 %, a telephone's width, and nothing at all.
const SIZES: [(f32, f32); 5] =
    [(1280.0, 720.0), (1024.0, 768.0), (640.0, 360.0), (320.0, 480.0), (0.0, 0.0)];

fn apps() -> Vec<App> {
    let mut apps: Vec<App> =
        Place::ALL.iter().map(|&place| App::new(Which::Job, seen(place))).collect();
    apps.push(App::new(Which::Job, seen_open(PortFill::Snug)));
    apps.push(App::new(Which::Opening, seen(Place::Yard)));
    apps.push(App::new(Which::Debrief, seen(Place::Yard)));
    for over in [Over::HandedOver(Ending::InService), Over::Ignition] {
        let mut app = App::new(Which::Job, seen(Place::Hall));
        app.seen.over = Some(over);
        app.second_chance = SecondChance::Offered;
        apps.push(app);
    }
    let mut coached = App::new(Which::Job, seen(Place::PlantRoom));
    coached.help = Help::Coached;
    coached.refusal = Some("Put down what you hold first.");
    apps.push(coached);
    apps
}

/// Keys that open whatever a page keeps folded: the list, the sheet, a part's slip; the choice of
/// a job behind the caution.
fn keys(which: Which, frame: usize) -> &'static [Key] {
    match (which, frame) {
        (Which::Job, 1) => &[Key::F2, Key::F3],
        (Which::Job, 2) => &[Key::F6],
        (Which::Opening, 2) => &[Key::Tab],
        (Which::Job | Which::Opening, 3) => &[Key::Enter],
        _ => &[],
    }
}

fn press(key: Key) -> Event {
    let modifiers = Modifiers::NONE;
    Event::Key { key, physical_key: None, pressed: true, repeat: false, modifiers }
}

/// What the last of some passes gives: the tree for assistive technology and the shapes.
fn pass(app: &mut App, width: f32, height: f32) -> (Vec<ClippedShape>, TreeUpdate) {
    let ctx = egui::Context::default();
    ctx.enable_accesskit();
    let mut last = None;
    for frame in 0..6 {
        let events = keys(app.which, frame).iter().map(|&key| press(key)).collect();
        let input = egui::RawInput {
            events,
            screen_rect: Some(Rect::from_min_size(Pos2::ZERO, vec2(width, height))),
            time: Some(frame as f64 * 0.1),
            ..Default::default()
        };
        let mut output = ctx.run_ui(input, |ui| app.ui(ui));
        output.textures_delta.clear();
        let shapes = core::mem::take(&mut output.shapes);
        last = output.platform_output.accesskit_update.take().map(|tree| (shapes, tree));
    }
    last.unwrap()
}

/// Six frames of every page at every size, in both sizes of type: no panic, and no clash of ids
/// (egui paints one in words).
#[test]
fn pages_stand_at_every_size() {
    for (width, height) in SIZES {
        for text in [TextSize::Window, TextSize::Projector] {
            for mut app in apps() {
                app.settings.text = text;
                let (shapes, _) = pass(&mut app, width, height);
                for shape in &shapes {
                    if let Shape::Text(text) = &shape.shape {
                        let words = text.galley.text();
                        assert!(!words.contains(" use of "), "{:?} {width}: {words}", app.which);
                    }
                }
            }
        }
    }
}

/// WCAG 2.2, 4.1.2: whatever can be pressed, typed into or focused has a name.
#[test]
fn everything_that_can_be_pressed_has_a_name() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0), (640.0, 360.0)] {
        for mut app in apps() {
            let (_, update) = pass(&mut app, width, height);
            let named = |id: &NodeId| {
                let node = update.nodes.iter().find(|(one, _)| one == id).map(|(_, node)| node);
                node.is_some_and(|node| {
                    let text = node.label().or(node.value()).unwrap_or_default();
                    !text.trim().is_empty()
                })
            };
            let mut found = 0;
            for (_, node) in &update.nodes {
                // A scroll bar is named by its role, and Tab does not stop at it.
                let pressable =
                    node.supports_action(Action::Focus) || node.supports_action(Action::Click);
                if !pressable || node.role() == Role::ScrollBar {
                    continue;
                }
                found += 1;
                let own = node.label().is_some_and(|label| !label.trim().is_empty());
                assert!(
                    own || node.labelled_by().iter().any(named),
                    "{:?} {:?} at {width}: no name: {node:?}",
                    app.which,
                    app.seen.place
                );
            }
            assert!(found > 3, "{:?} at {width}: only {found} things to press", app.which);
        }
    }
}

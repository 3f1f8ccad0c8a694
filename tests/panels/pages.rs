//! Every page stands at every size, and everything in it that can be pressed has a name.

use egui_kittest::Harness;
use egui_kittest::kittest::NodeT;
use quarterturn::bench::action::Ending;
use quarterturn::bench::part::Place;
use quarterturn::bench::seen::{Over, PortFill};
use quarterturn::panels::settings::TextSize;
use quarterturn::panels::view::{Help, SecondChance};

use crate::fixture::{App, Which, seen, seen_open, window};

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

/// Five frames of every page at every size, in both sizes of type: no panic, and no clash of ids
/// (egui would write one into the picture, and it would be found below).
#[test]
fn pages_stand_at_every_size() {
    for (width, height) in SIZES {
        for text in [TextSize::Window, TextSize::Projector] {
            for mut app in apps() {
                app.settings.text = text;
                let mut harness = window(app, width, height);
                harness.run_steps(5);
            }
        }
    }
}

/// WCAG 2.2, 4.1.2: whatever can be pressed, typed into or focused has a name.
#[test]
fn everything_that_can_be_pressed_has_a_name() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0), (640.0, 360.0)] {
        for app in apps() {
            let which = app.which;
            let harness = window(app, width, height);
            let mut found = 0;
            check_names(&harness, which, &mut found);
            assert!(found > 3, "{which:?} at {width}: only {found} things to press");
        }
    }
}

fn check_names(harness: &Harness<'_, App>, which: Which, found: &mut usize) {
    let mut open = vec![harness.root()];
    while let Some(node) = open.pop() {
        let inner = node.accesskit_node();
        let role = inner.role();
        let pressable = inner.is_focusable(&|_| egui::accesskit_filter());
        let named = inner.label().is_some_and(|label| !label.trim().is_empty());
        if pressable && !inner.is_hidden() {
            *found += 1;
            assert!(named, "{which:?}: a {role:?} without a name at {:?}", inner.bounding_box());
        }
        open.extend(node.children());
    }
}

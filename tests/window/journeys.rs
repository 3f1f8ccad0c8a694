//! Whole journeys without a screen: what a hand on the mouse or the keys does, down to the bench
//! and back into the drawing.

use bevy::a11y::ActionRequest;
use bevy::input::keyboard::{Key, KeyCode};
use bevy::prelude::*;
use bevy_egui::egui::accesskit;
use quarterturn::app::boxes::Boxes;
use quarterturn::app::drive::Screen;
use quarterturn::app::page::PageRect;
use quarterturn::app::redraw::Redraw;
use quarterturn::hands::action::Action;
use quarterturn::panels::view::Running;
use quarterturn::parts::{Door, Fitted, HandValve, OnOff, Place, Tool};

use super::rig::{Pixels, Rig};
use super::store::TestStore;

const JOB: &str = "propane-cold-morning";

fn at(place: Place) -> Rig {
    let store = TestStore { before: (vec![(0, Action::Go(place))], 1), ..TestStore::default() };
    Rig::open(store, Some(JOB), (1280, 720), Pixels::None)
}

/// From the opening page: the caution, a job, the first walk.
#[test]
fn a_job_is_begun_by_mouse_from_the_opening_page() {
    let mut rig = Rig::open(TestStore::default(), None, (1280, 720), Pixels::None);
    assert!(rig.app.world().resource::<Screen>().job().is_none());
    rig.click_on("I have read this");
    rig.click_on("Start");
    assert_eq!(rig.seen().place, Place::Yard);
    rig.click_on("Go to: Furnace room");
    assert_eq!(rig.seen().place, Place::PlantRoom);
    rig.frames(4);
    let (_, shown) = rig.group("plant_room", "burner-door@on");
    assert!(shown, "the plant room is not on the page");
}

/// A lever is pressed in the drawing, the bench obeys, the handle turns.
#[test]
fn a_click_on_the_manual_valve_shuts_it_and_turns_its_handle() {
    let mut rig = at(Place::PlantRoom);
    let (before, _) = rig.group("plant_room", "manual-valve.handle");
    rig.click_on("Manual shut-off valve, open");
    let deg = |rig: &Rig| rig.seen().furnace.map(|f| f.manual_valve.deg());
    assert_eq!(deg(&rig), Some(0));
    rig.frames(30);
    let (after, _) = rig.group("plant_room", "manual-valve.handle");
    let turned = before.rotation.angle_between(after.rotation).to_degrees();
    assert!((turned - 90.0).abs() < 1.0, "the handle turned {turned}°");
}

/// Keys only: walk, take the door off, and the drawing shows what was behind it.
#[test]
fn keys_alone_walk_and_take_the_burner_door_off() {
    let mut rig = at(Place::Hall);
    rig.key(KeyCode::Digit2, Key::Character("2".into()));
    rig.frames(4);
    assert_eq!(rig.seen().place, Place::PlantRoom);
    let boxes = |rig: &Rig| -> Vec<String> {
        rig.app.world().resource::<Boxes>().0.iter().map(|b| b.id.clone()).collect()
    };
    assert!(!boxes(&rig).contains(&"inducer".to_owned()), "the inducer is behind the door");
    let door = rig.named().iter().any(|(label, ..)| label.starts_with("Burner door"));
    assert!(door);
    tab_to(&mut rig, "Burner door");
    rig.key(KeyCode::Enter, Key::Enter);
    rig.key(KeyCode::Enter, Key::Enter);
    rig.frames(4);
    assert_eq!(rig.seen().furnace.map(|f| f.burner_door), Some(Fitted::Off));
    let (_, on) = rig.group("plant_room", "burner-door@on");
    let (_, off) = rig.group("plant_room", "burner-door@off");
    assert_eq!((on, off), (false, true));
    assert!(boxes(&rig).contains(&"inducer".to_owned()), "the inducer came into view");
}

fn tab_to(rig: &mut Rig, name: &str) {
    let wanted = rig
        .named()
        .into_iter()
        .find(|(label, ..)| label.starts_with(name))
        .map(|(_, id, _)| id)
        .expect("it has a name");
    for _ in 0..80 {
        rig.key(KeyCode::Tab, Key::Tab);
        let world = rig.app.world_mut();
        let output = world.query::<&bevy_egui::EguiOutput>().single(world).expect("one context");
        let focus = output.platform_output.accesskit_update.as_ref().map(|update| update.focus);
        if focus == Some(wanted) {
            return;
        }
    }
    panic!("Tab never came to `{name}`");
}

/// What a screen reader asks for is done as if it had been clicked.
#[test]
fn a_request_of_a_screen_reader_reaches_the_part() {
    let mut rig = at(Place::PlantRoom);
    let target = rig
        .named()
        .into_iter()
        .find(|(label, ..)| label.starts_with("Manual shut-off valve"))
        .map(|(_, id, _)| id)
        .expect("the valve has a name");
    rig.app.world_mut().write_message(ActionRequest(accesskit::ActionRequest {
        action: accesskit::Action::Click,
        target_tree: accesskit::TreeId::ROOT,
        target_node: target,
        data: None,
    }));
    rig.frames(4);
    rig.click_on("Shut");
    assert_eq!(rig.seen().furnace.map(|f| f.manual_valve.deg()), Some(0));
}

/// Any size of window: the page stays whole, in its shape, inside it; its parts lie on the page.
#[test]
fn the_page_keeps_its_shape_in_every_window() {
    let mut rig = at(Place::PlantRoom);
    for (width, height) in [(1280, 720), (1024, 768), (1024, 700), (1920, 1080), (2560, 1440)] {
        rig.resize(width, height);
        let page = rig.app.world().resource::<PageRect>().0;
        let window = bevy_egui::egui::Rect::from_min_size(
            bevy_egui::egui::Pos2::ZERO,
            bevy_egui::egui::vec2(width as f32, height as f32),
        );
        assert!(window.expand(0.5).contains_rect(page), "{width}×{height}: {page:?}");
        assert!((page.width() / page.height() - 960.0 / 672.0).abs() < 1e-3);
        assert!(page.width() > 0.6 * width as f32 || page.height() > 0.6 * height as f32);
        let boxes = &rig.app.world().resource::<Boxes>().0;
        assert!(boxes.len() > 15, "{} boxes", boxes.len());
        for part in boxes {
            assert!(part.rect.is_finite() && page.expand(30.0).intersects(part.rect), "{part:?}");
        }
    }
    // A click still lands on its part after all that.
    rig.resize(1024, 768);
    rig.click_on("Furnace switch");
    assert_eq!(rig.seen().furnace.map(|f| f.switch), Some(OnOff::Off));
}

/// Kneeling in front of the closed door shows the door, not the valve behind it.
#[test]
fn a_closed_door_hides_the_gas_valve() {
    let mut rig = at(Place::GasValve);
    let boxes = |rig: &Rig, id: &str| {
        rig.app.world().resource::<Boxes>().0.iter().any(|part| part.id == id)
    };
    assert!(boxes(&rig, "burner-door") && !boxes(&rig, "valve-switch"));
    rig.click_on("Go to: Furnace room");
    rig.click_on("Burner door");
    rig.click_on("Go to: Gas valve");
    rig.frames(4);
    assert!(boxes(&rig, "valve-switch") && !boxes(&rig, "burner-door"));
}

/// While time stands nothing steps, nothing is drawn anew, and what was asked waits.
#[test]
fn a_pause_stands_still_and_draws_nothing() {
    let mut rig = at(Place::PlantRoom);
    rig.key(KeyCode::Space, Key::Space);
    assert_eq!(rig.job().pace().running, Running::Paused);
    rig.frames(60);
    let (tick, drawn) = (rig.seen().tick, rig.app.world().resource::<Redraw>().drawn);
    rig.frames(100);
    assert_eq!(rig.seen().tick, tick);
    assert_eq!(rig.app.world().resource::<Redraw>().drawn, drawn, "something was drawn");
    rig.key(KeyCode::Space, Key::Space);
    rig.frames(10);
    assert!(rig.seen().tick > tick);
}

/// Five times as fast means five times as many steps, one after the other.
#[test]
fn speed_multiplies_the_steps() {
    let mut rig = at(Place::Hall);
    rig.frames(2);
    let start = rig.seen().tick;
    rig.frames(50);
    let slow = rig.seen().tick - start;
    rig.click_on("Speed ×5");
    rig.frames(4);
    let start = rig.seen().tick;
    rig.frames(50);
    assert_eq!(rig.seen().tick - start, 5 * slow);
}

/// What cannot be done is said, and the bench stays as it was.
#[test]
fn a_refusal_is_said() {
    let mut rig = at(Place::PlantRoom);
    let mut screen = rig.app.world_mut().resource_mut::<Screen>();
    let Screen::Job(job) = &mut *screen else { panic!("a job") };
    job.ask(Action::HandValve { hand_valve: HandValve::Range, degrees: 0 });
    rig.frames(3);
    let said = rig.job().refusal().expect("a refusal").to_owned();
    assert!(said.contains("reach"), "{said}");
}

/// After a stop for danger, the step before can be had again: same bench, last act undone.
#[test]
fn a_step_back_undoes_the_last_act() {
    let mut rig = at(Place::PlantRoom);
    rig.frames(5);
    let acts =
        [Action::Door { door: Door::Burner, to: Fitted::Off }, Action::FurnaceSwitch(OnOff::Off)];
    for act in acts {
        let mut screen = rig.app.world_mut().resource_mut::<Screen>();
        let Screen::Job(job) = &mut *screen else { panic!("a job") };
        job.ask(act);
        rig.frames(5);
    }
    let before = rig.seen();
    assert_eq!(before.furnace.as_ref().map(|f| f.switch), Some(OnOff::Off));
    let mut screen = rig.app.world_mut().resource_mut::<Screen>();
    let Screen::Job(job) = &mut *screen else { panic!("a job") };
    job.step_back();
    let after = rig.seen();
    assert!(after.tick < before.tick);
    let furnace = after.furnace.expect("in view");
    assert_eq!((furnace.switch, furnace.burner_door), (OnOff::On, Fitted::Off));
}

/// The hose comes out of the roll and goes back. No mesh without a corner is left behind: the
/// engine takes such a one for freed and complains in the log.
#[test]
fn the_hose_leaves_no_empty_mesh() {
    let mut rig = at(Place::PlantRoom);
    rig.click_on("Manometer hose, in the roll");
    rig.frames(4);
    assert_eq!(rig.seen().hand, Some(Tool::Hose));
    // Long enough that the next press is none of a double click.
    rig.frames(30);
    rig.click_on("Manometer hose, in hand");
    rig.frames(4);
    assert_eq!(rig.seen().hand, None);
    let meshes = rig.app.world().resource::<Assets<Mesh>>();
    assert!(meshes.iter().count() > 50, "the drawings' meshes are not here to be looked at");
    let empty = meshes.iter().filter(|(_, mesh)| mesh.count_vertices() == 0).count();
    assert_eq!(empty, 0);
}

/// On the way to the valve the room's picture grows and gives place to the close-up; what can be
/// pointed at is there at once; at the end everything stands as without the way. With reduced motion
/// there is no way.
#[test]
fn the_way_to_the_valve_flows() {
    let before = vec![
        (0, Action::Go(Place::PlantRoom)),
        (0, Action::FurnaceSwitch(OnOff::Off)),
        (0, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 }),
        (0, Action::Door { door: Door::Burner, to: Fitted::Off }),
    ];
    for moving in [true, false] {
        let store = TestStore { before: (before.clone(), 1), moving, ..TestStore::default() };
        let mut rig = Rig::open(store, Some(JOB), (1280, 720), Pixels::None);
        rig.frames(30);
        assert_eq!(rig.root("plant_room"), Some(Transform::from_xyz(-480.0, 336.0, 0.0)));
        rig.key(KeyCode::Digit3, Key::Character("3".into()));
        assert!(rig.seen().place == Place::GasValve, "the hand is there at once");
        let boxes = &rig.app.world().resource::<Boxes>().0;
        assert!(
            boxes.iter().any(|part| part.id == "manifold-port"),
            "and what it can take hold of"
        );
        let mut scales = Vec::new();
        let mut closer = Vec::new();
        for _ in 0..30 {
            rig.frames(1);
            scales.extend(rig.root("plant_room").map(|room| room.scale.x));
            closer.extend(rig.root("gas_valve").map(|close| close.scale.x));
        }
        assert_eq!(rig.root("gas_valve"), Some(Transform::from_xyz(-480.0, 336.0, 0.0)));
        assert_eq!(rig.root("plant_room"), None);
        assert!(scales.is_sorted() && closer.is_sorted(), "{scales:?} {closer:?}");
        if moving {
            assert!(scales.last().is_some_and(|it| *it > 1.5), "{scales:?}");
            assert!(closer.first().is_some_and(|it| *it < 0.9), "{closer:?}");
        } else {
            assert!(
                scales.is_empty() && closer.iter().all(|it| *it == 1.0),
                "{scales:?} {closer:?}"
            );
        }
        rig.key(KeyCode::Digit2, Key::Character("2".into()));
        rig.frames(30);
        assert_eq!(rig.root("plant_room"), Some(Transform::from_xyz(-480.0, 336.0, 0.0)));
        assert_eq!(rig.root("gas_valve"), None);
    }
}

//! The whole job by keyboard: Tab in the order of the job, keys for the list, places, pause.

use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::panels::view::Running;
use quarterturn::parts::{HandValve, OnOff, Place};

use crate::fixture::{App, Which, seen, window};

fn at(place: Place) -> Harness<'static, App> {
    window(App::new(Which::Job, seen(place)), 1280.0, 720.0)
}

/// Tab to a part, Enter opens its actions with the first in focus, Enter does it.
#[test]
fn keyboard_alone_shuts_the_manual_valve() {
    let mut harness = at(Place::PlantRoom);
    let mut tabs = 0;
    while !harness.get_by_label("Manual shut-off valve, open").is_focused() {
        harness.key_press(Key::Tab);
        harness.run();
        tabs += 1;
        assert!(tabs < 60, "Tab never came to the manual valve");
    }
    harness.key_press(Key::Enter);
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    let shut = Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 };
    assert_eq!(harness.state().commands, [Command::Act(shut)]);
    harness.key_press(Key::Escape);
    harness.run();
    assert!(
        harness.get_by_label("Manual shut-off valve, open").is_focused(),
        "Escape lost the way back"
    );
}

/// Tab meets parts in the order of the job: the air before the plate, the switch before the valve.
#[test]
fn tab_goes_in_the_order_of_the_job() {
    let mut harness = at(Place::PlantRoom);
    let wanted = [
        "Air just above the floor",
        "Rating plate",
        "Furnace switch, on",
        "Manual shut-off valve, open",
    ];
    let mut met = Vec::new();
    for _ in 0..60 {
        harness.key_press(Key::Tab);
        harness.run();
        for name in wanted {
            if harness.get_by_label(name).is_focused() && !met.contains(&name) {
                met.push(name);
            }
        }
    }
    assert_eq!(met, wanted);
}

/// Digits walk, Space pauses, a letter does what the list says.
#[test]
fn single_keys_walk_pause_and_act() {
    let mut harness = at(Place::Hall);
    harness.key_press(Key::Num3);
    harness.run();
    harness.key_press(Key::Space);
    harness.run();
    // Nothing chosen, nothing in hand: A is the first action of the place.
    harness.key_press(Key::A);
    harness.run();
    let commands = &harness.state().commands;
    assert_eq!(commands[0], Command::Act(Action::Go(Place::GasValve)));
    assert_eq!(commands[1], Command::Pause);
    assert!(matches!(commands[2], Command::Act(Action::Sniff(_))), "{commands:?}");
    assert_eq!(commands.len(), 3);

    harness.state_mut().running = Running::Paused;
    harness.run();
    harness.key_press(Key::F5);
    harness.run();
    assert_eq!(harness.state().commands.last(), Some(&Command::Resume));
}

/// WCAG 2.2, 2.1.4: single keys can be switched off; and while a number is typed they are text.
#[test]
fn single_keys_can_be_switched_off_and_rest_while_typing() {
    let mut harness = at(Place::Hall);
    harness.state_mut().settings.single_keys = OnOff::Off;
    harness.run();
    harness.key_press(Key::Num3);
    harness.key_press(Key::A);
    harness.run();
    assert_eq!(harness.state().commands, []);

    harness.state_mut().settings.single_keys = OnOff::On;
    harness.get_by_label("Inlet, low fire, found: not written").click();
    harness.run();
    harness.key_press(Key::Num3);
    harness.key_press(Key::Space);
    harness.key_press(Key::A);
    harness.run();
    assert_eq!(harness.state().commands, []);
}

/// F6 brings the keyboard into the drawing and from there to the sheet.
#[test]
fn f6_goes_from_drawing_to_sheet() {
    let mut harness = at(Place::PlantRoom);
    harness.key_press(Key::F6);
    harness.run();
    assert!(harness.get_by_label("Air at head height").is_focused());
    harness.key_press(Key::F6);
    harness.run();
    assert!(harness.get_by_label("Inlet, lock-up, found: not written").is_focused());
}

/// The opening by keyboard: caution, then start with the seed that is shown.
#[test]
fn keyboard_alone_starts_a_job() {
    let mut harness = window(App::new(Which::Opening, seen(Place::Yard)), 1280.0, 720.0);
    harness.key_press(Key::Tab);
    harness.run();
    assert!(harness.get_by_label("I have read this").is_focused());
    harness.key_press(Key::Enter);
    harness.run();
    let mut tabs = 0;
    while !harness.get_by_label("Start").is_focused() {
        harness.key_press(Key::Tab);
        harness.run();
        tabs += 1;
        assert!(tabs < 30, "Tab never came to Start");
    }
    harness.key_press(Key::Enter);
    harness.run();
    let [Command::Start { scenario, seed, .. }] = harness.state().commands.as_slice() else {
        panic!("{:?}", harness.state().commands);
    };
    assert_eq!((scenario.as_str(), *seed), ("cold", 41));
}

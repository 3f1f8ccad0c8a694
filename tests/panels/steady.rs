//! What must stay where it is: letters under the fingers, messages in sight, the meter beside the
//! sheet; and what must not stay: the folds and scrolls of the job before.

use std::sync::Arc;

use egui::{Event, Key, Modifiers, PointerButton, Pos2, Rect};
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::panels::menu::{Letters, MenuItem, menu};
use quarterturn::parts::{Place, PortFill, Subject, Tool};
use quarterturn::senses::seen::{Condition, Done, Note, Observation};

use crate::fixture::{App, Which, debrief, seen, seen_open, window};

fn key_of(list: &[MenuItem], action: &Action) -> Option<Key> {
    list.iter().find(|item| item.choice.action == *action).and_then(|item| item.key)
}

/// What is offered keeps its letter through a job: with a part chosen, with another tool in hand,
/// after a walk. No letter stands twice in a list.
#[test]
fn letters_stay_with_what_they_do() {
    let mut letters = Letters::default();
    let mut give = |chosen: Option<&str>, seen: &_| {
        let mut list = menu(chosen, seen);
        letters.give(&mut list);
        let mut keys: Vec<Key> = list.iter().filter_map(|item| item.key).collect();
        let count = keys.len();
        keys.sort_unstable();
        keys.dedup();
        assert_eq!(keys.len(), count, "a letter twice");
        list
    };
    let go = Action::Go(Place::Hall);
    let look = Action::Look(Subject::Plate);
    let mut room = seen(Place::PlantRoom);
    let first = key_of(&give(None, &room), &go);
    assert!(first.is_some());
    let plate = key_of(&give(Some("plate"), &room), &look);
    assert!(plate.is_some());
    room.hand = Some(Tool::GasDetector);
    assert_eq!(key_of(&give(None, &room), &go), first);
    let kneeling = seen_open(PortFill::Snug);
    for part in ["manifold-port", "inlet-port", "low-cap", "orifices", "flame-rod"] {
        assert_eq!(key_of(&give(Some(part), &kneeling), &go), first, "{part}");
    }
    assert_eq!(key_of(&give(Some("plate"), &room), &look), plate);
    assert_eq!(key_of(&give(Some("plate"), &room), &go), first);
}

fn quick_click(harness: &mut Harness<'_, App>, at: Pos2, which: PointerButton) {
    let button = |pressed| Event::PointerButton {
        pos: at,
        button: which,
        pressed,
        modifiers: Modifiers::NONE,
    };
    let events = &mut harness.input_mut().events;
    events.extend([Event::PointerMoved(at), button(true), button(false)]);
    harness.run();
}

/// On a slow machine press and release come in the same frame: it is a click all the same.
#[test]
fn a_click_within_one_frame_counts() {
    let mut harness = window(App::new(Which::Job, seen(Place::PlantRoom)), 1280.0, 720.0);
    harness.run();
    let at = harness.get_by_label("Rating plate").rect().center();
    quick_click(&mut harness, at, PointerButton::Secondary);
    let close = harness.query_by_label("Close (Esc)");
    assert!(close.is_some(), "the slip did not open, or closed again");
    let read = harness.get_all_by_label("Read the rating plate").next().unwrap().rect().center();
    quick_click(&mut harness, read, PointerButton::Primary);
    assert_eq!(harness.state().commands, [Command::Act(Action::Look(Subject::Plate))]);
}

fn overlap(one: Rect, other: Rect) -> bool {
    one.intersects(other)
}

/// A refusal stays readable beside an open slip, in a large window and in a small one.
#[test]
fn a_slip_keeps_clear_of_a_refusal() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0)] {
        let mut app = App::new(Which::Job, seen_open(PortFill::Snug));
        app.refusal = Some("Switch the furnace off first: this part carries voltage.");
        let mut harness = window(app, width, height);
        harness.run();
        for part in ["High-fire coil", "Flame rod", "Orifices", "Gas valve, switch on"] {
            harness.get_by_label_contains(part).click_secondary();
            harness.run();
            // Its size is known some frames later.
            for _ in 0..8 {
                harness.step();
            }
            let refusal = harness.get_by_label_contains("✗ Switch the furnace off").rect();
            let close = harness.get_by_label("Close (Esc)").rect();
            assert!(!overlap(refusal, close), "{part} at {width}: {refusal:?} {close:?}");
            assert!(close.bottom() <= refusal.top(), "{part} at {width}");
            harness.key_press(Key::Escape);
            harness.run();
        }
    }
}

/// In a narrow window the opened sheet lies beside the drawing: the manometer stays in sight while
/// its number is written.
#[test]
fn the_sheet_does_not_cover_the_drawing() {
    let mut harness = window(App::new(Which::Job, seen_open(PortFill::Snug)), 1024.0, 768.0);
    harness.run();
    let wide = harness.state().layout.as_ref().unwrap().scene;
    harness.get_by_label("Open the job sheet, F2").click();
    harness.run();
    let scene = harness.state().layout.as_ref().unwrap().scene;
    assert!(scene.width() >= 480.0 && scene.width() < wide.width());
    let cell = harness.get_by_label("Manifold, low fire, found: not written").rect();
    assert!(!overlap(cell, scene), "{cell:?} lies over {scene:?}");
    harness.get_by_label("Fold the job sheet, F2").click();
    harness.run();
    assert_eq!(harness.state().layout.as_ref().unwrap().scene, wide);
}

/// A new job begins with its card open and the end of the job folded, whatever was open before.
#[test]
fn a_new_job_starts_clean() {
    let card = "Supply: Northfield Propane.";
    let ending = "Shut off, tagged and explained";
    let mut app = App::new(Which::Job, seen(Place::PlantRoom));
    Arc::make_mut(&mut app.seen.sheet).notes.clear();
    let mut harness = window(app, 1280.0, 1800.0);
    harness.run();
    assert!(harness.query_by_label(card).is_some() && harness.query_by_label(ending).is_none());
    let fold = egui::accesskit::Role::Button;
    harness.get_by_role_and_label(fold, "No heat on cold mornings").click();
    harness.run();
    harness.get_by_label("End the job").click();
    for _ in 0..20 {
        harness.step();
    }
    assert!(harness.query_by_label(card).is_none(), "the card does not fold");
    assert!(harness.query_by_label(ending).is_some(), "the end of the job does not open");
    harness.state_mut().which = Which::Opening;
    harness.run();
    harness.state_mut().which = Which::Job;
    harness.run();
    assert!(harness.query_by_label(card).is_some(), "the card is still folded");
    assert!(harness.query_by_label(ending).is_none(), "the end of the job is still open");
}

/// A note from before a repair that it tells of is marked; others are not.
#[test]
fn a_note_from_before_the_repair_is_marked() {
    let note =
        |subject, tick| Note { subject, tick, finding: Observation::Condition(Condition::Bad) };
    let mut app = App::new(Which::Job, seen(Place::PlantRoom));
    app.seen.tick = 900;
    Arc::make_mut(&mut app.seen.sheet).notes =
        vec![note(Subject::Filter, 10), note(Subject::Vent, 10)];
    let marks = |app: &App| {
        let lines = quarterturn::panels::sights::sights(&app.seen);
        lines.iter().filter(|line| line.text.contains("before the repair")).count()
    };
    assert_eq!(marks(&app), 0);
    Arc::make_mut(&mut app.seen.sheet).done =
        vec![Done { repair: Repair::ReplaceFilter, tick: 500 }];
    assert_eq!(marks(&app), 1);
    Arc::make_mut(&mut app.seen.sheet).notes[0].tick = 600;
    assert_eq!(marks(&app), 0, "looked at again since");
}

/// Without the propane kit there is no switch to name; its place can be looked at all the same.
#[test]
fn a_switch_that_is_not_fitted_is_not_named() {
    let mut app = App::new(Which::Job, seen_open(PortFill::Snug));
    let fitted = window(app, 1280.0, 720.0);
    assert!(fitted.query_by_label("Low-gas-pressure switch").is_some());
    app = App::new(Which::Job, seen_open(PortFill::Snug));
    let burners = app.seen.furnace.as_mut().and_then(|furnace| furnace.burners.as_mut()).unwrap();
    burners.low_gas_switch = quarterturn::parts::Fitted::Off;
    let bare = window(app, 1280.0, 720.0);
    assert!(bare.query_by_label("Low-gas-pressure switch").is_none());
    assert!(bare.query_by_label("Inlet pipe, no switch on it").is_some());
}

/// What a finding costs is told by what its kind costs together, where that is less; a job that is
/// given no points tells no cost.
#[test]
fn a_limit_of_points_is_told_as_one() {
    let costs = |lost: f64, limit: Option<f64>| {
        let mut app = App::new(Which::Debrief, seen(Place::Hall));
        app.debrief = debrief();
        app.debrief.findings[0].lost = lost;
        app.debrief.findings[0].limit = limit;
        app
    };
    let plain = window(costs(8.0, None), 1280.0, 1600.0);
    assert!(plain.query_by_label("−8 points").is_some());
    let limited = window(costs(8.0, Some(5.0)), 1280.0, 1600.0);
    assert!(limited.query_by_label("−8 points").is_none());
    let said = "worth 8 points; the findings of this kind cost 5 points in all";
    assert!(limited.query_by_label(said).is_some());
    let none = window(costs(0.0, None), 1280.0, 1600.0);
    assert!(none.query_by_label_contains("points").is_none());
}

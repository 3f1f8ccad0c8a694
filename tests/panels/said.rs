//! What a look and a repair give is said at once, and numbers are said as people write them.

use std::sync::Arc;

use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::catalogue::repair::Repair;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::panels::entry::pressure;
use quarterturn::panels::sights::sights;
use quarterturn::panels::words;
use quarterturn::parts::{Fitted, Levels, Place, PortFill, Subject};
use quarterturn::senses::seen::{Condition, Done, Note, Observation};
use quarterturn::units::{PressureUnit, TICKS_PER_S, full_stop};

use crate::fixture::{App, Which, seen, seen_open, window};

const GREY: &str = "The filter is gray and matted with dust.";

fn grey(tick: u64) -> Note {
    Note { subject: Subject::Filter, tick, finding: Observation::Condition(Condition::Bad) }
}

fn go_to(harness: &mut Harness<'_, App>, tick: u64) {
    harness.state_mut().seen.tick = tick;
    harness.run();
}

/// A look's note stands over the drawing at once, goes after some seconds, and stays in the notes.
/// What was noted before is not said again.
#[test]
fn a_look_is_said_over_the_drawing() {
    let mut harness = window(App::new(Which::Job, seen(Place::PlantRoom)), 1280.0, 720.0);
    go_to(&mut harness, 10);
    assert!(harness.query_by_label_contains("Noted:").is_none());
    Arc::make_mut(&mut harness.state_mut().seen.sheet).notes.push(grey(10));
    go_to(&mut harness, 11);
    let said = format!("Noted: {GREY}");
    let at = harness.get_by_label(&said).rect();
    let scene = harness.state().layout.as_ref().unwrap().scene;
    assert!(scene.contains_rect(at), "{at:?}");
    assert!(harness.query_by_label(GREY).is_some(), "the notes have lost it");
    go_to(&mut harness, 11 + 5 * TICKS_PER_S);
    assert!(harness.query_by_label(&said).is_some());
    go_to(&mut harness, 11 + 20 * TICKS_PER_S);
    assert!(harness.query_by_label(&said).is_none());
    assert!(harness.query_by_label(GREY).is_some());
}

/// The list of what can be seen ends a looked-at part with what was noted.
#[test]
fn the_list_of_sights_says_what_was_noted() {
    let mut seen = seen(Place::PlantRoom);
    let line = |seen: &_| {
        let lines = sights(seen);
        lines.into_iter().find(|line| line.part == Some("filter")).unwrap().text
    };
    assert!(!line(&seen).contains(GREY));
    Arc::make_mut(&mut seen.sheet).notes.push(grey(0));
    assert!(line(&seen).ends_with(GREY), "{}", line(&seen));
}

/// A cleaning goes at once, and is said when it is done; not when it was refused.
#[test]
fn a_repair_is_said_when_it_is_done() {
    let done = "Done: clean the flame rod.";
    for refusal in [None, Some("The furnace's switch is on.")] {
        let mut app = App::new(Which::Job, seen_open(PortFill::Snug));
        app.seen.furnace.as_mut().unwrap().burner_door = Fitted::Off;
        let mut harness = window(app, 1280.0, 720.0);
        harness.get_by_label_contains("Flame rod").click_secondary();
        harness.run();
        harness.get_all_by_label("Clean the flame rod").next().unwrap().click();
        harness.run();
        let clean = Command::Act(Action::Mend(Repair::CleanFlameRod));
        assert_eq!(harness.state().commands, [clean]);
        harness.state_mut().refusal = refusal;
        go_to(&mut harness, 3);
        assert!(harness.query_by_label(done).is_none());
        if refusal.is_none() {
            let done = Done { repair: Repair::CleanFlameRod, tick: 3 };
            Arc::make_mut(&mut harness.state_mut().seen.sheet).done.push(done);
        }
        go_to(&mut harness, 4);
        assert_eq!(harness.query_by_label(done).is_some(), refusal.is_none());
    }
}

/// A swap is asked for once before it is done; doing something else takes the question back.
#[test]
fn a_swap_is_asked_for_before_it_is_done() {
    let app = App::new(Which::Job, seen_open(PortFill::Snug));
    let mut harness = window(app, 1280.0, 720.0);
    harness.get_by_label_contains("Igniter").click_secondary();
    harness.run();
    let choose = |harness: &mut Harness<'_, App>, label: &str| {
        harness.get_all_by_label(label).next().unwrap().click();
        harness.run();
        // Long enough that the next click is none of a double click.
        harness.run_steps(4);
    };
    let (swap, again) = ("Replace the igniter", "Replace the igniter? Do it");
    choose(&mut harness, swap);
    assert_eq!(harness.state().commands, []);
    choose(&mut harness, again);
    let mend = Command::Act(Action::Mend(Repair::ReplaceIgniter));
    assert_eq!(harness.state().commands, std::slice::from_ref(&mend));
    choose(&mut harness, swap);
    assert_eq!(harness.state().commands.len(), 1);
    harness.key_press(Key::Num4);
    harness.run();
    assert_eq!(harness.state().commands.len(), 2, "walked away");
    assert!(harness.query_by_label(again).is_none());
    choose(&mut harness, swap);
    assert_eq!(harness.state().commands.iter().filter(|&one| *one == mend).count(), 1);
}

/// One full stop after a unit that has its own, no zero with a sign, more than one turn is turns.
#[test]
fn numbers_are_said_as_people_write_them() {
    assert_eq!(full_stop("4.9 in. w.c.".into()), "4.9 in. w.c.");
    assert_eq!(full_stop("1.2 kPa".into()), "1.2 kPa.");
    assert_eq!(pressure(-0.3, PressureUnit::InWc, 2), "0.00");
    assert_eq!(pressure(-24.9, PressureUnit::InWc, 2), "-0.10");
    let mut seen = seen_open(PortFill::Snug);
    for (eighths, told) in [
        (16, "+2 turns from as found"),
        (8, "+1 turn from as found"),
        (-3, "−⅜ turn from as found"),
    ] {
        let burners = seen.furnace.as_mut().and_then(|it| it.burners.as_mut()).unwrap();
        burners.screw_eighths = Levels::two(Some(eighths), None);
        assert_eq!(words::value("low-screw", &seen).unwrap(), told);
    }
}

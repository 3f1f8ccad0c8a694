//! The page where a job is chosen: the ladder, what became of each job, the way in by keyboard.

use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::panels::Command;
use quarterturn::panels::view::Tried;
use quarterturn::parts::Place;

use crate::fixture::{App, Which, seen, window};

fn chooser(width: f32, height: f32) -> Harness<'static, App> {
    let mut harness = window(App::new(Which::Opening, seen(Place::Yard)), width, height);
    harness.get_by_label("I have read this").click();
    harness.run();
    harness
}

/// The next step of the ladder is unfolded, its jobs with fuel and standing in words; the others
/// unfold at a press; a step without a job is not there. What it is practice for is folded.
#[test]
fn jobs_stand_under_their_steps() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0)] {
        let mut harness = chooser(width, height);
        let judge = "4 · Judge, folded, 1 of 1 met";
        let last = "A new furnace, natural gas, ✓ essentials met, tried 3 times";
        assert!(harness.query_by_label(last).is_none());
        let about = "What it is about, what it is practice for, seed";
        let first = harness.get_by_label("No heat on cold mornings, propane, – not tried").rect();
        let read = harness.get_by_label("1 · Read, your step, 0 of 1 met").rect();
        for fold in [judge, about] {
            harness.get_by_label(fold).click();
            harness.run();
        }
        let judge = harness.get_by_label("4 · Judge, unfolded, 1 of 1 met").rect();
        let last = harness.get_by_label(last).rect();
        assert!(read.top() < first.top() && judge.top() < last.top());
        assert!(read.top() < judge.top());
        assert!(harness.query_by_label_contains("2 · Set").is_none());
        assert!(harness.query_by_label("C07 Supply pressure").is_some());
        // Start is in sight without scrolling.
        assert!(harness.get_by_label("Start").rect().bottom() < height);
    }
}

/// From a job the arrow goes to the next and chooses it; Enter starts it.
#[test]
fn arrows_choose_and_enter_starts() {
    let mut harness = chooser(1280.0, 720.0);
    harness.get_by_label("No heat on cold mornings, propane, – not tried").focus();
    harness.run();
    harness.key_press(Key::ArrowDown);
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
    let [Command::Start { scenario, seed, .. }] = harness.state().commands.as_slice() else {
        panic!("{:?}", harness.state().commands);
    };
    assert_eq!((scenario.as_str(), *seed), ("new", 41));
}

/// A click chooses and starts nothing.
#[test]
fn a_click_only_chooses() {
    let mut harness = chooser(1280.0, 720.0);
    harness.get_by_label("4 · Judge, folded, 1 of 1 met").click();
    harness.run();
    let last = "A new furnace, natural gas, ✓ essentials met, tried 3 times";
    for _ in 0..2 {
        harness.get_by_label(last).click();
        harness.run();
    }
    assert_eq!(harness.state().commands, []);
    harness.get_by_label("Start").click();
    harness.run();
    assert!(
        matches!(harness.state().commands.as_slice(), [Command::Start { scenario, .. }] if scenario == "new")
    );
}

/// How often a job was tried is said in words, each standing with a mark of its own.
#[test]
fn standings_are_words_with_marks() {
    let words =
        [Tried::Never, Tried::Tried(1), Tried::Tried(5), Tried::Passed(2)].map(Tried::words);
    assert_eq!(
        words,
        [
            "– not tried",
            "✗ tried once, not yet met",
            "✗ tried 5 times, not yet met",
            "✓ essentials met, tried twice",
        ]
    );
}

/// The sheet gives the author's hints one after the other, for the asking.
#[test]
fn the_sheet_gives_the_next_hint() {
    let mut app = App::new(Which::Job, seen(Place::PlantRoom));
    app.hints = vec!["Read the plate first.".into()];
    let mut harness = window(app, 1280.0, 720.0);
    assert!(harness.query_by_label("Hint 1: Read the plate first.").is_some());
    harness.get_by_label("Hint 2 of 3 on this job").click();
    harness.run();
    assert_eq!(harness.state().commands, [Command::NextHint]);
}

/// The page after the job says what was in it, what its author says, and how many hints were taken.
#[test]
fn the_debrief_says_what_was_in_the_job() {
    let harness = window(App::new(Which::Debrief, seen(Place::Hall)), 1280.0, 2400.0);
    for text in [
        "What was in this job",
        "• The manual valve was found 10° open of 90°.",
        "The tempting mistake is to turn a screw first.",
        "1 of the 3 hints on this job taken.",
    ] {
        assert!(harness.query_by_label(text).is_some(), "{text}");
    }
}

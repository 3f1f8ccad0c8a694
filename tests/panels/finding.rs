//! What was wrong is written in three steps, by keyboard alone, at the sizes that the page stands
//! at.

use std::sync::Arc;

use egui::Key;
use egui_kittest::Harness;
use egui_kittest::kittest::Queryable;
use quarterturn::hands::action::Action;
use quarterturn::panels::Command;
use quarterturn::parts::{Answer, Backing, Cause, Place, Sight, WrittenFinding};

use crate::fixture::{App, Which, seen, window};

fn press(harness: &mut Harness<'static, App>, label: &str) {
    harness.get_by_label(label).focus();
    harness.run();
    harness.key_press(Key::Enter);
    harness.run();
}

/// Part, cause, answer, a tick: exactly that finding is written; another press strikes it.
#[test]
fn a_finding_is_written_in_three_steps() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0)] {
        let mut harness = window(App::new(Which::Job, seen(Place::Hall)), width, height);
        if width < 1100.0 {
            // Where room is scarce the sheet stands behind its tab.
            press(&mut harness, "Open the job sheet, F2");
        }
        for label in [
            "What was wrong",
            "House piping",
            "Manual valve found part open",
            "Opened, switched on or reset",
            "Manual valve as found",
            "Write it on the sheet",
        ] {
            press(&mut harness, label);
        }
        let written = WrittenFinding {
            cause: Cause::ManualValvePartOpen,
            answer: Answer::Opened,
            evidence: vec![Backing::Sight(Sight::ManualValve)],
        };
        assert_eq!(harness.state().commands, [Command::Act(Action::WriteFinding(written))]);
    }
}

/// What stands on the sheet is read there and can be struck.
#[test]
fn a_finding_can_be_struck() {
    let mut now = seen(Place::Hall);
    Arc::make_mut(&mut now.sheet).findings.push(WrittenFinding {
        cause: Cause::VentBlocked,
        answer: Answer::Mended,
        evidence: Vec::new(),
    });
    let mut harness = window(App::new(Which::Job, now), 1280.0, 720.0);
    press(&mut harness, "What was wrong");
    press(&mut harness, "Strike: vent blocked");
    let struck = Action::StrikeFinding(Cause::VentBlocked);
    assert_eq!(harness.state().commands, [Command::Act(struck)]);
}

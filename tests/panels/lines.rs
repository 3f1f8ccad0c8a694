//! No line that leads or refuses is longer than two lines at 1024×768 and the usual size of type.

use egui::{Color32, FontId};
use egui_kittest::Harness;
use quarterturn::parts::Place;
use quarterturn::words::FILES;

use crate::coached::Follower;
use crate::fixture::{App, Which, seen, window};

/// What the window leaves of 1024 points for the coach's words: less the margins, the three
/// buttons and the word before them.
const COACH: f32 = 1024.0 - 24.0 - 340.0 - 46.0;
/// What a slip leaves for a refusal.
const REFUSAL: f32 = 440.0 - 28.0;

fn rows(harness: &Harness<'_, App>, text: &str, width: f32, family: egui::FontFamily) -> usize {
    let font = FontId::new(15.0, family);
    let galley =
        harness.ctx.fonts_mut(|fonts| fonts.layout(text.to_owned(), font, Color32::BLACK, width));
    galley.rows.len()
}

fn page() -> Harness<'static, App> {
    window(App::new(Which::Job, seen(Place::Hall)), 1024.0, 768.0)
}

/// The messages of a file of words, terms and arguments filled with words of their usual length.
fn messages(file: &str) -> Vec<(String, String)> {
    let (_, text) = FILES.iter().find(|(name, _)| *name == file).unwrap();
    let lines = text.lines().filter(|line| !line.starts_with([' ', '#', '-']));
    let pairs = lines.filter_map(|line| line.split_once(" = "));
    pairs.map(|(id, words)| (id.to_owned(), filled(words))).collect()
}

fn filled(words: &str) -> String {
    let mut text = String::new();
    let mut rest = words;
    while let Some((before, from)) = rest.split_once("{ ") {
        let (inside, after) = from.split_once(" }").unwrap();
        text.push_str(before);
        text.push_str(match inside {
            "$why" => "The screw was turned and the manifold stood still. Leave the screw alone.",
            "$note" => "The filter is gray and matted with dust.",
            "$cell" => "Inlet, full connected load, found",
            "$seconds" => "180",
            "$work" | "$step" | "$text" => "Shut the manual shut-off valve: its handle across.",
            "-jumper" => "R–W2 jumper",
            "-lock-up" => "lock-up",
            _ => "manual shut-off valve",
        });
        rest = after;
    }
    text + rest
}

/// Every message of the coach, filled, has two lines at most.
#[test]
fn the_coachs_messages_have_two_lines() {
    let harness = page();
    let all = messages("coach.ftl");
    assert!(all.len() > 120, "{}", all.len());
    let long: Vec<String> = all
        .into_iter()
        .filter(|(_, text)| rows(&harness, text, COACH, egui::FontFamily::Proportional) > 2)
        .map(|(id, text)| format!("{id} ({}): {text}", text.len()))
        .collect();
    assert!(long.is_empty(), "{}", long.join("\n"));
}

/// Every refusal, filled, has two lines at most.
#[test]
fn refusals_have_two_lines() {
    let harness = page();
    let semibold = quarterturn::panels::theme::semibold();
    for (id, text) in messages("refusals.ftl") {
        let text = format!("✗ {text}");
        assert!(rows(&harness, &text, REFUSAL, semibold.clone()) <= 2, "{id}: {text}");
    }
}

/// What the coach really says on the way through the first jobs of the ladder has two lines too.
#[test]
fn what_is_said_on_the_way_has_two_lines() {
    let harness = page();
    let mut said = 0;
    for id in ["one-screw-one-number", "healthy-natural", "healthy-propane", "borrowed-bag"] {
        for line in Follower::said_on(id, 1, 5_400) {
            let (_, text) = line.split_once(": ").unwrap();
            let rows = rows(&harness, text, COACH, egui::FontFamily::Proportional);
            assert!(rows <= 2, "{id}: {text}");
            said += 1;
        }
    }
    assert!(said > 150, "{said}");
}

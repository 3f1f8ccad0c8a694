//! The debrief: essentials first, traces that can be read, findings that explain.

use egui_kittest::kittest::Queryable;
use quarterturn::bench::Bench;
use quarterturn::hands::action::{Action, HandOver};
use quarterturn::marking::Brief;
use quarterturn::marking::Observer;
use quarterturn::marking::debrief::{Job, debrief as put_together};
use quarterturn::panels::Command;
use quarterturn::panels::debrief::trace::{minutes, nearest, round_step, value_at};
use quarterturn::panels::debrief::{DebriefView, TickView, Verdict};
use quarterturn::parts::{Ending, Place};
use quarterturn::rules::shared;
use quarterturn::scenario::{builtin, load};

use crate::fixture::{App, Which, debrief, seen, window};

/// In both sizes the verdict stands first, then what was wrong in the trainee's numbers, what it means
/// for the house and what to practise next; then the essentials and the sheet. All of the first four
/// lie inside the width of the window.
#[test]
fn the_cause_comes_before_the_house_and_the_practice() {
    for (width, height) in [(1280.0, 720.0), (1024.0, 768.0)] {
        let harness = window(App::new(Which::Debrief, seen(Place::Hall)), width, height);
        let told = [
            "Handed over in service; one essential missed.",
            "Connector kinked: still there, furnace in use",
            "You wrote 4.41 in. w.c. for the inlet port, high fire.",
            "The furnace is starved on its full rate.",
            "The furnace ran all night.",
            "“Behind the new cupboard”, and in it: look along the branch.",
            "✗ Every disturbed joint leak-checked: missed",
            "found: 4.41 in. w.c. (true 4.40 in. w.c.)",
        ];
        let places = told.map(|label| harness.get_by_label(label).rect());
        for (pair, label) in places.windows(2).zip(&told[1..]) {
            assert!(pair[0].top() < pair[1].top(), "{width}: {label}");
        }
        for (place, label) in places.iter().zip(told) {
            assert!(place.left() >= 0.0 && place.right() <= width, "{width}: {label}");
        }
        assert!(places[2].bottom() < height, "{width}: the cause is seen without scrolling");
    }
}

/// Essentials stand above the findings, each with a word beside its mark; the traces have a summary for
/// those who do not see them; a finding leads to its moment.
#[test]
fn essentials_come_first_and_findings_lead_to_their_moment() {
    let mut harness = window(App::new(Which::Debrief, seen(Place::Hall)), 1280.0, 3200.0);
    let essential = harness.get_by_label("✗ Every disturbed joint leak-checked: missed").rect();
    let finding = harness.get_by_label("Manifold plug not checked under pressure").rect();
    assert!(essential.bottom() < finding.top());
    assert!(
        harness.query_by_label_contains("Pressures over time. Inlet: 11.64 to 11.67").is_some()
    );
    harness
        .get_by_label("Manifold plug not checked under pressure: show 5:00 in the traces")
        .click();
    harness.run();
    assert!(harness.query_by_label("At 5:00: brushed leak fluid").is_some());
    harness.get_by_label("Again, another house").click();
    harness.run();
    assert_eq!(harness.state().commands, [Command::AgainOtherSeed]);
}

/// A trace is read at the last point before the moment; before its first point it has no value.
#[test]
fn traces_are_read_at_a_moment() {
    let trace = &debrief().traces[0];
    assert_eq!(value_at(trace, -1.0), None);
    assert_eq!(value_at(trace, 0.0), Some(2900.0));
    assert_eq!(value_at(trace, 4.4), Some(2901.0));
    assert_eq!(value_at(trace, 1e9), trace.points.last().map(|point| point.1));
    assert_eq!(minutes(125.9), "2:05");
    let ticks = [10.0, 20.0].map(|at_s| TickView { at_s, text: String::new() });
    assert_eq!(nearest(&ticks, 16.0, 5.0), Some(&ticks[1]));
    assert_eq!(nearest(&ticks, 40.0, 5.0), None);
}

/// Axis steps are 1, 2 or 5 times a power of ten and cut the axis into 3 to 11 parts.
#[test]
fn axes_have_round_steps() {
    for most in [0.7, 3.4, 9.9, 14.0, 62.0, 480.0] {
        let step = round_step(most, 5.0);
        let parts = most / step;
        assert!((2.0..=11.0).contains(&parts), "{most}: {parts}");
        let digit = step / libm::pow(10.0, libm::floor(libm::log10(step) + 1e-9));
        assert!([1.0, 2.0, 5.0].iter().any(|one| (digit - one).abs() < 1e-6), "{step}");
    }
}

/// A job handed over at once, as it really is marked, fills the page: essentials missed with their
/// reasons in words, four curves, findings that name rule and version.
#[test]
fn a_real_job_fills_the_page() {
    let text = builtin::find("propane-cold-morning").unwrap().text;
    let mut bench = Bench::new(load(text).unwrap().draw(1));
    let mut observer = Observer::new(&bench);
    let leave = HandOver { ending: Ending::InService, not_done: Vec::new() };
    for tick in 0..3_000 {
        match tick {
            1_000 => bench.apply(&Action::Go(Place::Hall)).unwrap(),
            2_500 => bench.apply(&Action::HandOver(leave.clone())).unwrap(),
            _ => {}
        }
        let events = bench.take_events();
        observer.tick(&bench, events);
        bench.step();
    }
    let brief = Brief { right_endings: vec![Ending::InService] };
    let marks = observer.marks(&shared().unwrap(), &brief);
    let rule = marks.findings[0].rule.clone();
    let job = Job { brief: &brief, id: Some("propane-cold-morning"), note: None, night: None };
    let view = DebriefView::from(&put_together(&observer.ledger, marks, observer.trace, job));
    assert!(!view.causes.is_empty() && !view.house.is_empty(), "{view:?}");
    assert!(view.next.starts_with('“'), "{}", view.next);
    assert!(view.result.starts_with("Not yet met. Missing: "), "{}", view.result);
    assert_eq!(view.points, None);
    assert!(view.findings.iter().all(|one| one.lost == 0.0 && one.limit.is_none()));
    let missed = view.essentials.iter().filter(|one| one.verdict == Verdict::Missed);
    assert!(missed.clone().count() > 0);
    assert!(missed.clone().all(|one| one.why.contains(' ')), "{:?}", missed.collect::<Vec<_>>());
    assert_eq!(view.traces.len(), 4);
    assert!(view.traces.iter().all(|trace| trace.points.len() > 100));
    assert!(view.findings[0].rule.starts_with(&format!("{rule}, version ")));

    let mut app = App::new(Which::Debrief, seen(Place::Hall));
    app.debrief = view;
    let harness = window(app, 1280.0, 720.0);
    assert!(harness.query_by_label_contains("Pressures over time. Supply:").is_some());
}

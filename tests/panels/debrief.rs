//! The debrief: essentials first, traces that can be read, findings that explain.

use egui_kittest::kittest::Queryable;
use quarterturn::bench::part::Place;
use quarterturn::panels::Wish;
use quarterturn::panels::debrief::TickView;
use quarterturn::panels::debrief::trace::{minutes, nearest, round_step, value_at};

use crate::fixture::{App, Which, debrief, seen, window};

/// Essentials stand above the findings, each with a word beside its mark; the traces have a summary for
/// those who do not see them; a finding leads to its moment.
#[test]
fn essentials_come_first_and_findings_lead_to_their_moment() {
    let mut harness = window(App::new(Which::Debrief, seen(Place::Hall)), 1280.0, 2400.0);
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
    assert_eq!(harness.state().wishes, [Wish::AgainOtherSeed]);
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

//! `preview`: the job as found beside the healthy bench.

use std::fs;
use std::path::Path;

use quarterturn::scenario::builtin::HEALTHY;
use serde_json::Value;

use super::expect;

fn report(at: &Path, scenario: &str) -> Value {
    let out = expect(at, &["preview", scenario, "--seed", "3", "--json"], 0).out;
    serde_json::from_str(&out).unwrap()
}

fn differs(report: &Value, state: usize) -> Vec<&str> {
    report["differs"][state].as_array().unwrap().iter().filter_map(Value::as_str).collect()
}

/// Nothing differs on a bench without faults, and its two lines are the same.
#[test]
fn a_healthy_bench_shows_no_difference() {
    let folder = tempfile::tempdir().unwrap();
    for one in &HEALTHY {
        let report = report(folder.path(), one.id);
        assert_eq!(report["states"], report["healthy"]);
        assert!((0..6).all(|state| differs(&report, state).is_empty()), "{report}");
        let text = expect(folder.path(), &["preview", one.id], 0).out;
        assert_eq!(text.matches('*').count(), 1, "only the note holds a star: {text}");
    }
}

/// Each fault differs where the trade says (common practice), and not where it must not: a supply
/// set low at every point that it feeds; a kinked connector running and not at rest, before the
/// kink not at all; a plugged orifice in the rate and not in the pressure; a dead high coil on high
/// only; the high stage set low in the manifold on high only, the inlet rising by a trifle at most.
#[test]
fn faults_differ_where_the_trade_says() {
    let folder = tempfile::tempdir().unwrap();
    // Rest, low, high: keys that must differ, and keys that must not.
    let cases: [(&str, [&[&str]; 3], [&[&str]; 3]); 5] = [
        (
            "supply_set_low(\"2 inH2O\")",
            [&["supply_inwc", "inlet_inwc"]; 3],
            [&["manifold_inwc"], &["manifold_inwc", "input_btu_h"], &[]],
        ),
        (
            "kinked_connector(0.9)",
            [&[], &["inlet_inwc"], &["inlet_inwc"]],
            [&["supply_inwc", "inlet_inwc"], &["manifold_inwc"], &[]],
        ),
        (
            "plugged_orifice",
            [&[], &["input_btu_h"], &["input_btu_h"]],
            [&["inlet_inwc", "manifold_inwc"], &["manifold_inwc"], &["manifold_inwc"]],
        ),
        (
            "dead_high_coil",
            [&[], &[], &["missed", "manifold_inwc", "input_btu_h"]],
            [&["inlet_inwc"], &["inlet_inwc", "manifold_inwc", "input_btu_h"], &[]],
        ),
        (
            "high_stage_set_low(\"0.6 inH2O\")",
            [&[], &[], &["manifold_inwc", "input_btu_h"]],
            [&["inlet_inwc"], &["inlet_inwc", "manifold_inwc", "input_btu_h"], &["missed"]],
        ),
    ];
    for (fault, must, must_not) in cases {
        let text =
            HEALTHY[0].text.replace("    card: (", &format!("    faults: [{fault}],\n    card: ("));
        fs::write(folder.path().join("job.ron"), text).unwrap();
        let report = report(folder.path(), "job.ron");
        for state in 0..3 {
            let found = differs(&report, state);
            for key in must[state] {
                assert!(found.contains(key), "{fault}, state {state}: {key} not in {found:?}");
            }
            for key in must_not[state] {
                assert!(!found.contains(key), "{fault}, state {state}: {key} in {found:?}");
            }
        }
    }
}

/// What is found set wrong is put right beside it: the shipped jobs differ, their healthy lines are
/// inside plate or label.
#[test]
fn found_states_are_put_right() {
    let folder = tempfile::tempdir().unwrap();
    for (job, high) in [("propane-cold-morning", 10.0), ("natural-gas-busy-kitchen", 3.5)] {
        let report = report(folder.path(), job);
        assert!(differs(&report, 2).contains(&"manifold_inwc"), "{report}");
        let right = report["healthy"][2]["manifold_inwc"].as_f64().unwrap();
        assert!((right - high).abs() < 0.1, "{job}: {right}");
    }
}

/// The picture: a square and a ring for each point and state and one of each in the key, marks as
/// words, whole when written; a folder is no file.
#[test]
fn a_preview_is_drawn() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let args = ["preview", "propane-cold-morning", "--svg", "a.svg"];
    expect(at, &args, 0);
    let svg = fs::read_to_string(at.join("a.svg")).unwrap();
    assert!(svg.starts_with("<svg ") && svg.ends_with("</svg>\n"));
    assert_eq!(svg.matches("width=\"6\" height=\"6\"").count(), 19);
    assert_eq!(svg.matches("<circle").count(), 19);
    assert!(svg.matches(">* ").count() >= 6 && svg.contains("stroke-dasharray=\"5 4\""));
    assert!(!svg.contains("NaN") && !svg.contains("inf"));
    expect(at, &["preview", "propane-cold-morning", "--svg", "."], 3);
}

/// What the job's own manometer shows stands below: off by its zero on a sound one, held up by water in
/// its hose, and nothing at all where it shows what is there.
#[test]
fn the_jobs_own_manometer_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let healthy = quarterturn::scenario::builtin::find("healthy-natural").unwrap().text;
    let write = |name: &str, manometer: &str, faults: &str| {
        let text = format!("    manometer: ({manometer}),\n    faults: [{faults}],\n    card: (\n");
        assert!(!healthy.contains("manometer: ("));
        fs::write(at.join(name), healthy.replacen("    card: (\n", &text, 1)).unwrap();
    };
    let still = "zero_error: \"0 inH2O\", drift: \"0 inH2O\"";
    write("sound.ron", still, "");
    assert!(!expect(at, &["preview", "sound.ron"], 0).out.contains("this job's manometer"));
    write("off.ron", "zero_error: \"0.3 inH2O\", drift: \"0 inH2O\"", "");
    assert!(expect(at, &["preview", "off.ron"], 0).out.contains("its zero not set"));
    write("wet.ron", still, "water_in_meter_hose(\"0.6 inH2O\")");
    let out = expect(at, &["preview", "wet.ron", "--json"], 0).out;
    let json: Value = serde_json::from_str(&out).unwrap();
    let shown = json["own_meter"][2]["inlet"]["shows"].as_str().unwrap();
    let truth = json["states"][2]["inlet_inwc"].as_f64().unwrap();
    let shown: f64 = shown.trim_end_matches(" in. w.c.").parse().unwrap();
    assert!((shown - truth).abs() > 0.3, "{shown} {truth}");
    assert_eq!(json["own_meter"][2]["inlet"]["true_to_a_digit"], false);
}

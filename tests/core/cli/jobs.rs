//! `run` and `preview`.

use std::fs;

use serde_json::Value;

use super::expect;

/// The technician's job, its record, its marks and the script made from it agree.
#[test]
fn run_mark_and_script_agree() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let job = "natural-gas-busy-kitchen";
    let run = ["run", job, "--seed", "6", "--learner", "ada"];
    let args = [&run[..], &["--technician", "--record", "a.jsonl", "--json"][..]].concat();
    let ran = expect(at, &args, 0);
    assert_eq!(ran.out.lines().count(), 1);
    let report: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(report["scenario"], job);
    assert_eq!(report["ended"], "handed-over");
    assert_eq!(report["stopped"], Value::Null);
    assert_eq!(
        (&report["marks"]["verdict"], &report["marks"]["points"]),
        (&"met".into(), &100.0.into())
    );
    let marked: Value =
        serde_json::from_str(&expect(at, &["mark", "a.jsonl", "--json"], 0).out).unwrap();
    assert_eq!(marked[0]["marks"], report["marks"]);
    assert_eq!(marked[0]["differs"], Value::Null);
    assert_eq!(marked[0]["learner"], "ada");
    assert_eq!(marked[0]["scenario_text"], "as it comes with this program");
    let script = expect(at, &["script", "a.jsonl"], 0).out;
    fs::write(at.join("a.script"), script).unwrap();
    expect(at, &["check", "a.script", "a.jsonl"], 0);
    let again = ["--script", "a.script", "--record", "b.jsonl"];
    expect(at, &[&run[..], &again[..]].concat(), 0);
    assert!(fs::read(at.join("a.jsonl")).unwrap() == fs::read(at.join("b.jsonl")).unwrap());
    let names: Vec<_> = fs::read_dir(at).unwrap().map(|one| one.unwrap().file_name()).collect();
    assert_eq!(names.len(), 3, "nothing half-written is left: {names:?}");
}

/// A script that stops is told with its file, line and reason, exits with 1, and still leaves a
/// record that says so.
#[test]
fn a_script_that_stops_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    fs::write(at.join("x.script"), "go hall\nuntil heard bang within 30 s\n").unwrap();
    let args = ["run", "healthy-propane", "--script", "x.script", "--record", "x.jsonl"];
    let ran = expect(at, &args, 1);
    assert!(ran.err.starts_with("x.script:2: `until heard bang within 30 s`"), "{}", ran.err);
    assert!(ran.out.contains("stopped before the hand-over"), "{}", ran.out);
    let marked = expect(at, &["mark", "x.jsonl"], 1).out;
    assert!(marked.contains("all 8 digests agree"), "{marked}");
    assert!(marked.contains("does not show who sat there"), "{marked}");
    // A script with mistakes is not begun.
    fs::write(at.join("y.script"), "go hal\n").unwrap();
    let ran = expect(at, &["run", "healthy-propane", "--script", "y.script"], 1);
    assert!(ran.err.contains("y.script:1:4") && ran.err.contains("hall"), "{}", ran.err);
    assert_eq!(ran.out, "");
    // The job is over before the script is.
    fs::write(at.join("z.script"), "go hall\nhand-over in-service\ngo yard\n").unwrap();
    let ran = expect(at, &["run", "healthy-propane", "--script", "z.script", "--json"], 1);
    assert!(ran.err.starts_with("z.script:3:"), "{}", ran.err);
    let json: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json["stopped"]["line"], 3);
}

/// The healthy benches preview as the design's calibrated rows: natural gas 7.6 at rest, inlet
/// 6.8/6.6/6.2, manifold 1.70/3.50; propane 13.1, 11.7/11.6/11.1, 4.90/10.0.
#[test]
fn previews_of_healthy_benches_are_the_calibrated_rows() {
    let folder = tempfile::tempdir().unwrap();
    let rows = [
        ("healthy-natural", [7.6, 6.8, 6.6, 6.2], [0.0, 1.7, 3.5, 3.5]),
        ("healthy-propane", [13.1, 11.7, 11.6, 11.1], [0.0, 4.9, 10.0, 10.0]),
    ];
    for (name, inlet, manifold) in rows {
        let out = expect(folder.path(), &["preview", name, "--seed", "2", "--json"], 0).out;
        let json: Value = serde_json::from_str(&out).unwrap();
        for (i, percent) in [0.0, 70.0, 100.0, 100.0].into_iter().enumerate() {
            let state = &json["states"][i];
            let number = |key: &str| state[key].as_f64().unwrap();
            assert_eq!(state["missed"], Value::Null);
            assert!((number("inlet_inwc") - inlet[i]).abs() < 0.1, "{name}: {state}");
            assert!((number("manifold_inwc") - manifold[i]).abs() < 0.1, "{name}: {state}");
            assert!((number("percent") - percent).abs() < 1.0, "{name}: {state}");
        }
        let text = expect(folder.path(), &["preview", name], 0).out;
        assert!(text.contains("full load"), "{text}");
    }
}

/// A furnace that cannot light says what is in the way.
#[test]
fn a_preview_says_what_was_not_reached() {
    let folder = tempfile::tempdir().unwrap();
    let text = quarterturn::scenario::builtin::HEALTHY[1].text;
    let empty = text.replace("supply: (", "supply: (found: \"1 inH2O\", ");
    assert_ne!(text, empty);
    fs::write(folder.path().join("starved.ron"), empty).unwrap();
    let out = expect(folder.path(), &["preview", "starved.ron", "--json"], 0).out;
    let json: Value = serde_json::from_str(&out).unwrap();
    assert!(json["states"][1]["missed"].as_str().unwrap().contains("control"), "{out}");
}

/// A furnace that is rightly left off has nothing to be put back on; one in service has.
#[test]
fn restoring_is_asked_of_what_is_left_on() {
    let folder = tempfile::tempdir().unwrap();
    let standing = |job: &str| {
        let args = ["run", job, "--technician", "--seed", "0", "--json"];
        let json: Value = serde_json::from_str(&expect(folder.path(), &args, 0).out).unwrap();
        let essentials = json["marks"]["essentials"].as_array().unwrap().clone();
        let restored = essentials.into_iter().find(|it| it["essential"] == "Restored").unwrap();
        restored["standing"].as_str().unwrap().to_owned()
    };
    assert_eq!(standing("moved-with-the-house"), "NotDue");
    assert_eq!(standing("healthy-natural"), "Met");
}

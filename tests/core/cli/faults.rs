//! `faults`, and the page made by it.

use std::fs;

use serde_json::Value;

use super::expect;

/// The page in `docs` is what the program writes now.
#[test]
fn slow_the_page_of_faults_is_fresh() {
    let folder = tempfile::tempdir().unwrap();
    expect(folder.path(), &["faults", "--write", "."], 0);
    let made = fs::read_to_string(folder.path().join("faults.md")).unwrap();
    let kept = fs::read_to_string("docs/faults.md").unwrap();
    let differs = made.lines().zip(kept.lines()).find(|(made, kept)| made != kept);
    assert!(made == kept, "make it anew with `quarterturn faults --write docs`: {differs:?}");
}

/// One fault is told by its name, also to programs; an unknown name is refused.
#[test]
fn one_fault_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let text = expect(folder.path(), &["faults", "dead_high_coil"], 0).out;
    assert!(text.starts_with("### dead_high_coil\n"), "{text}");
    let json = expect(folder.path(), &["faults", "dead_high_coil", "--json"], 0).out;
    let report: Value = serde_json::from_str(&json).unwrap();
    let natural = &report[0]["cases"][0];
    assert_eq!(natural["faulty"][2]["reached"], false, "high is not reached");
    let high = natural["faulty"][2]["manifold_inwc"].as_f64().unwrap();
    assert!((high - 1.7).abs() < 0.05, "{high}");
    let refused = expect(folder.path(), &["faults", "dead_coil"], 2);
    assert!(refused.err.contains("dead_coil"), "{}", refused.err);
    expect(folder.path(), &["faults", "--json", "--write", "."], 2);
}

/// What a look shows is told, and which instruments; a fault that no look shows says so.
#[test]
fn looks_and_instruments_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let tell = |args: &[&str]| expect(folder.path(), &[&["faults"], args].concat(), 0).out;
    let kink = tell(&["kinked_connector"]);
    assert!(kink.contains("Connector: “The connector has a kink behind the furnace”"), "{kink}");
    assert!(!kink.contains("- number"), "{kink}");
    let high = tell(&["high_stage_set_high"]);
    assert!(high.contains("- a look shows: nothing\n"), "{high}");
    assert!(high.contains("manometer at the manifold (high, full load)"), "{high}");
    assert!(tell(&["undersized_regulator"]).contains("`supply.droop_flow`"));
    let json: Value = serde_json::from_str(&tell(&["plugged_orifice", "--json"])).unwrap();
    let looks = json[0]["cases"][0]["looks"].to_string();
    assert!(looks.contains("Something sits in one of them"), "{looks}");
    assert!(looks.contains("3 of four burners lit"), "{looks}");
    let tools = json[0]["cases"][0]["instruments"].to_string();
    assert!(tools.contains("stopwatch at the meter's dial"), "{tools}");
}

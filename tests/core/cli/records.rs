//! `mark` on records that are torn, edited or unfinished.

use std::fs;

use quarterturn::marking::debrief::Account;
use serde_json::Value;

use super::expect;
use crate::record::small;

/// A sound record is verified; a torn one is told and marked as unfinished; an edited one is refused
/// with its line.
#[test]
fn torn_and_edited_records() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let text = small();
    fs::write(at.join("good.jsonl"), &text).unwrap();
    fs::write(at.join("torn.jsonl"), &text[..text.len() - 9]).unwrap();
    fs::write(at.join("edited.jsonl"), text.replace("\"hex-key\"", "\"hose\"")).unwrap();
    // The job in it was left as found: not met, so 1.
    let good = expect(at, &["mark", "good.jsonl"], 1).out;
    assert!(good.contains("all 4 digests agree") && good.contains("1 hints"), "{good}");
    assert!(good.contains("solo"), "{good}");
    let torn = expect(at, &["mark", "torn.jsonl"], 1).out;
    assert!(torn.contains("not finished") && torn.contains("torn"), "{torn}");
    let edited = expect(at, &["mark", "edited.jsonl"], 1).out;
    assert!(edited.contains("error[broken-chain]: line 9"), "{edited}");
    let all = ["mark", "good.jsonl", "edited.jsonl", "missing.jsonl", "--json"];
    let ran = expect(at, &all, 3);
    let json: Value = serde_json::from_str(&ran.out).unwrap();
    assert_eq!(json.as_array().unwrap().len(), 2);
    assert_eq!(json[0]["hints"], 1);
    assert_eq!(json[0]["learner"], "learner “7” \\ ü");
    assert_eq!(json[1]["fault"]["code"], "broken-chain");
    assert!(ran.err.contains("missing.jsonl"), "{}", ran.err);
}

/// Another scenario under a shipped name is told.
#[test]
fn a_changed_scenario_under_a_shipped_name_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let easier = quarterturn::scenario::builtin::HEALTHY[0].text.to_owned() + "// changed\n";
    fs::write(at.join("healthy-natural.ron"), easier).unwrap();
    fs::write(at.join("own.ron"), quarterturn::scenario::builtin::HEALTHY[0].text).unwrap();
    fs::write(at.join("x.script"), "go hall\nhand-over in-service\n").unwrap();
    let told = |scenario: &str| {
        let args = ["run", scenario, "--script", "x.script", "--record", "x.jsonl"];
        expect(at, &args, 1);
        let json = expect(at, &["mark", "x.jsonl", "--json"], 1).out;
        let json: Value = serde_json::from_str(&json).unwrap();
        json[0]["scenario_text"].as_str().unwrap().to_owned()
    };
    assert!(told("healthy-natural").starts_with("as it comes"));
    assert!(told("./healthy-natural.ron").starts_with("not the one"));
    assert!(told("own.ron").starts_with("the author's own"));
}

/// `run` and `mark` print the sheet beside what was true and the author's note, and give all of it as data:
/// the same account, which reads back whole.
#[test]
fn the_debrief_is_printed_and_given_as_data() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let job = "behind-the-cupboard";
    let record = ["--record", "x.jsonl"];
    let ran = expect(at, &[&["run", job, "--technician"][..], &record].concat(), 0).out;
    let marked = expect(at, &["mark", "x.jsonl"], 0).out;
    for out in [&ran, &marked] {
        let places = [
            "Behind the new cupboard: met.",
            "Connector kinked: put right",
            "What it means for the house",
            "The night after",
            "Practice next",
            "The connector had been bent when the furnace was moved.",
            "Inlet port, full load: found 6.24 in. w.c. (true 6.23 in. w.c.)",
            "Handed over: back in service",
        ]
        .map(|part| out.find(part).unwrap_or_else(|| panic!("{part}: {out}")));
        assert!(places.is_sorted(), "{places:?}: {out}");
    }
    let json = |args: &[&str]| -> Value {
        serde_json::from_str(&expect(at, &[args, &["--json"]].concat(), 0).out).unwrap()
    };
    let of_mark = json(&["mark", "x.jsonl"])[0]["debrief"].clone();
    assert_eq!(json(&["run", job, "--technician"])["debrief"], of_mark);
    let account: Account = serde_json::from_value(of_mark.clone()).unwrap();
    assert_eq!(serde_json::to_value(&account).unwrap(), of_mark);
    // Inlet at rest, on each level, under full load and at rest again; manifold on each level.
    assert_eq!(account.sheet.lines.len(), 7);
    assert!(account.note.is_some() && account.next.is_some() && !account.night.is_empty());
}

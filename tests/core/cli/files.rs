//! Files that are not there, are not files, are garbage, or are for a newer program.

use std::fs;
use std::path::Path;

use quarterturn::cli::write_whole;
use quarterturn::scenario::builtin::HEALTHY;

use super::expect;

const GARBAGE: &[u8] = &[0, 159, 146, 150, 255, 10, 0, 0, 7];

fn lay_out(at: &Path) {
    fs::create_dir(at.join("folder")).unwrap();
    fs::write(at.join("good.ron"), HEALTHY[0].text).unwrap();
    let newer = HEALTHY[0].text.replace("version: 1", "version: 2");
    fs::write(at.join("newer.ron"), newer).unwrap();
    for name in ["garbage.ron", "garbage.jsonl", "garbage.script"] {
        fs::write(at.join(name), GARBAGE).unwrap();
    }
    for name in ["empty.ron", "empty.jsonl"] {
        fs::write(at.join(name), "").unwrap();
    }
    fs::write(at.join("empty.script"), "").unwrap();
    let lines = include_str!("../../reference/lines.json");
    fs::write(at.join("cases.json"), lines).unwrap();
    let newer = lines.replace("\"version\": 1", "\"version\": 2");
    fs::write(at.join("newer.json"), newer).unwrap();
    fs::write(at.join("newer.jsonl"), "{\"format\":\"quarterturn-record\",\"version\":3}\n")
        .unwrap();
}

/// Each command, each kind of bad file, its exit code.
#[test]
fn exit_codes_of_bad_files() {
    let folder = tempfile::tempdir().unwrap();
    lay_out(folder.path());
    let cases: [(&[&str], i32); 30] = [
        (&["check", "good.ron"], 0),
        (&["check", "empty.script"], 0),
        (&["check", "missing.ron"], 3),
        (&["check", "folder"], 3),
        (&["check", "garbage.ron"], 1),
        (&["check", "garbage.jsonl"], 1),
        (&["check", "garbage.script"], 1),
        (&["check", "empty.ron"], 1),
        (&["check", "empty.jsonl"], 1),
        (&["check", "newer.ron"], 4),
        (&["check", "newer.jsonl"], 4),
        (&["check", "good.ron", "garbage.ron", "newer.ron"], 4),
        (&["check", "missing.ron", "garbage.ron", "newer.ron"], 3),
        (&["fidelity", "--cases", "cases.json"], 0),
        (&["fidelity", "--cases", "garbage.ron"], 3),
        (&["fidelity", "--cases", "newer.json"], 4),
        (&["mark", "missing.jsonl"], 3),
        (&["mark", "folder"], 3),
        (&["mark", "garbage.jsonl"], 1),
        (&["mark", "newer.jsonl"], 4),
        (&["script", "garbage.jsonl"], 1),
        (&["script", "newer.jsonl"], 4),
        (&["preview", "missing.ron"], 3),
        (&["preview", "folder"], 3),
        (&["preview", "garbage.ron"], 1),
        (&["preview", "newer.ron"], 4),
        (&["play", "newer.ron"], 4),
        (&["run", "good.ron", "--script", "missing.script"], 3),
        (&["run", "good.ron", "--script", "garbage.script"], 1),
        (&["run", "good.ron", "--script", "folder"], 3),
    ];
    for (args, code) in cases {
        let ran = expect(folder.path(), args, code);
        let told = if code == 0 { &ran.out } else { &(ran.out.clone() + &ran.err) };
        assert!(!told.trim().is_empty(), "{args:?}");
    }
}

/// `check` tells every file's problems with their places, as text and as JSON.
#[test]
fn check_tells_places() {
    let folder = tempfile::tempdir().unwrap();
    let bad = HEALTHY[0].text.replace("title:", "titel:");
    fs::write(folder.path().join("bad.ron"), bad).unwrap();
    fs::write(folder.path().join("bad.script"), "go hall\nlook plat\n").unwrap();
    let args = ["check", "bad.ron", "bad.script"];
    let text = expect(folder.path(), &args, 1).out;
    assert!(text.contains("bad.ron:") && text.contains("bad.script:2:6"), "{text}");
    let json = expect(folder.path(), &[&args[..], &["--json"][..]].concat(), 1).out;
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json[1]["problems"][0]["nearest"], "plate");
    assert_eq!(json[1]["problems"][0]["line"], 2);
    assert_eq!(json[0]["kind"], "scenario");
}

/// A record that cannot be written is told, and leaves nothing behind.
#[test]
fn a_record_that_cannot_be_written_is_told() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    fs::create_dir(at.join("out")).unwrap();
    fs::write(at.join("x.script"), "go hall\n").unwrap();
    for out in ["out", "nowhere/x.jsonl", ".."] {
        let args = ["run", "healthy-natural", "--script", "x.script", "--record", out];
        let ran = expect(at, &args, 3);
        assert!(ran.err.contains(out), "{}", ran.err);
    }
    assert_eq!(fs::read_dir(at).unwrap().count(), 2);
}

/// All or nothing: what was there before is replaced whole.
#[test]
fn a_file_is_replaced_whole() {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("x.txt");
    write_whole(&path, "first, and longer").unwrap();
    write_whole(&path, "second").unwrap();
    assert_eq!(fs::read_to_string(&path).unwrap(), "second");
    assert!(write_whole(folder.path(), "x").is_err());
    assert_eq!(fs::read_dir(folder.path()).unwrap().count(), 1);
}

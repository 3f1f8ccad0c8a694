//! `explain`, and the page on the format made by it.

use std::fs;

use quarterturn::scenario::{check, guide, to_text};
use serde_json::Value;

use super::{expect, run_in};

/// The page in `docs` is what the program writes now.
#[test]
fn the_page_on_the_format_is_fresh() {
    let folder = tempfile::tempdir().unwrap();
    expect(folder.path(), &["explain", "--write", "."], 0);
    let made = fs::read_to_string(folder.path().join("scenario-format.md")).unwrap();
    let kept = fs::read_to_string("docs/scenario-format.md").unwrap();
    let differs = made.lines().zip(kept.lines()).find(|(made, kept)| made != kept);
    assert!(made == kept, "make it anew with `quarterturn explain --write docs`: {differs:?}");
    expect(folder.path(), &["explain", "supply", "--write", "."], 2);
    expect(folder.path(), &["explain", "--json", "--write", "."], 2);
}

/// The smallest scenario stands on the page whole, passes the strictest check, and previews as a
/// bench that works.
#[test]
fn the_smallest_scenario_is_whole() {
    assert!(guide::page().contains(guide::SMALLEST));
    let problems = check("smallest.ron", guide::SMALLEST);
    assert!(problems.is_empty(), "{}", to_text(&problems, guide::SMALLEST));
    assert!(guide::SMALLEST.lines().count() <= 45);
    let folder = tempfile::tempdir().unwrap();
    fs::write(folder.path().join("smallest.ron"), guide::SMALLEST).unwrap();
    let out = expect(folder.path(), &["preview", "smallest.ron", "--json"], 0).out;
    let json: Value = serde_json::from_str(&out).unwrap();
    for i in 1..4 {
        assert_eq!(json["states"][i]["missed"], Value::Null, "{out}");
    }
}

/// Fields are told by path, by a path with an index as `check` prints it, and by name; faults too;
/// programs get JSON; a slip gets the nearest name.
#[test]
fn fields_and_faults_are_told() {
    let folder = tempfile::tempdir().unwrap();
    let tell = |args: &[&str]| expect(folder.path(), &[&["explain"], args].concat(), 0).out;
    assert!(tell(&["trunk[0].length"]).starts_with("trunk.length\n"));
    assert!(tell(&["faults.plugged_orifice"]).starts_with("faults.plugged_orifice\n"));
    assert!(tell(&["site"]).contains("default: `()`, the defaults of its fields"));
    let json: Value = serde_json::from_str(&tell(&["supply.lockup", "--json"])).unwrap();
    assert_eq!(json[0]["path"], "supply.lockup");
    assert_eq!(json[0]["required"], true);
    assert_eq!(json[0]["limits"][1], "40 inH2O");
    let all: Value = serde_json::from_str(&tell(&["--json"])).unwrap();
    assert!(all.as_array().unwrap().len() > 150);
    for (wrong, near) in [
        ("supply.lokup", "supply.lockup"),
        ("faults.pluged_orifice", "faults.plugged_orifice"),
        ("pluged_orifice", "plugged_orifice"),
    ] {
        let refused = expect(folder.path(), &["explain", wrong], 2);
        assert!(refused.err.contains(&format!("nearest: {near}")), "{}", refused.err);
    }
    let refused = expect(folder.path(), &["faults", "pluged_orifice"], 2);
    assert!(refused.err.contains("nearest: plugged_orifice"), "{}", refused.err);
}

/// Names of any shape are refused in one short line, at once.
#[test]
fn wild_names_are_refused() {
    let folder = tempfile::tempdir().unwrap();
    let long = "x.".repeat(40_000);
    for name in
        ["", " ", ".", "[", "]]]", "a[", "\u{1b}[31m", "faults.", "..", "é\u{10ffff}", &long]
    {
        for command in ["explain", "faults"] {
            let ran = run_in(folder.path(), &[command, name]);
            assert_eq!(ran.code, 2, "{command} {name:.20}: {}", ran.err);
            assert!(ran.err.len() < 400 && !ran.err.contains('\u{1b}'), "{}", ran.err);
        }
    }
}

/// A warning is no finding unless `--strict` says so; the whole place is underlined.
#[test]
fn strict_counts_warnings() {
    let folder = tempfile::tempdir().unwrap();
    let odd = guide::SMALLEST.replace("length: \"52 ft\"", "length: \"320 ft\"");
    fs::write(folder.path().join("odd.ron"), odd).unwrap();
    let text = expect(folder.path(), &["check", "odd.ron"], 0).out;
    assert!(text.contains("warning[unusual]"), "{text}");
    assert!(text.lines().any(|line| line.ends_with(" ^^^^^^^^")), "{text}");
    assert!(text.contains("1 ft to 200 ft (common practice"), "{text}");
    expect(folder.path(), &["check", "odd.ron", "--strict"], 1);
    fs::write(folder.path().join("good.ron"), guide::SMALLEST).unwrap();
    expect(folder.path(), &["check", "good.ron", "--strict"], 0);
}

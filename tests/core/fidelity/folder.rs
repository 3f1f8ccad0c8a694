//! `quarterturn fidelity` as it is run from a shell.

use std::fs;
use std::path::Path;

use quarterturn::fidelity::tables::TABLES;

use crate::cli::expect;

fn lay_out(folder: &Path, names: &[&str]) {
    for (name, text) in TABLES.iter().filter(|(name, _)| names.contains(name)) {
        fs::write(folder.join(name), text).unwrap();
    }
}

/// A folder of good tables passes; a strange file is named and passed over.
#[test]
fn a_folder_of_tables_is_checked() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    lay_out(at, &["csst_ng_3p0inwc.csv", "test_vectors.csv"]);
    fs::write(at.join("strange.csv"), "a,b\n1,2\n").unwrap();
    fs::write(at.join("leak_rules.csv"), "item\nx\n").unwrap();
    fs::write(at.join("notes.txt"), "no table").unwrap();
    let ran = expect(at, &["fidelity", "--tables", "."], 0);
    assert!(
        ran.err.contains("strange.csv: passed over") && ran.err.contains("leak_rules.csv: not")
    );
    assert!(ran.out.contains("csst.natural.drop-3-inwc") && ran.out.contains("case.U1"));
    assert!(!ran.out.contains("pipe.steel"), "only the folder's tables");
    let json = expect(at, &["fidelity", "--tables", ".", "--json"], 0).out;
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json["count"]["fail"], 0);
    assert_eq!(json["checks"][0]["verdict"], "pass");
    assert!(json["checks"][0]["rows"].as_array().unwrap().len() > 100);
}

/// Exit codes: 1 for a wrong figure or nothing to check, 3 for what is no table or no folder, 2 for
/// options that do not go together.
#[test]
fn exit_codes_of_tables() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    for name in ["wrong", "broken", "empty", "strange", "both"] {
        fs::create_dir(at.join(name)).unwrap();
    }
    let (name, text) = TABLES.iter().find(|(name, _)| *name == "airside.csv").unwrap();
    let wrong = text.replace("50.0 F", "60.0 F");
    fs::write(at.join("wrong").join(name), &wrong).unwrap();
    fs::write(at.join("both").join(name), &wrong).unwrap();
    fs::write(at.join("broken/pipe_ng_x.csv"), [0xff, 0, 1]).unwrap();
    fs::write(at.join("both/pipe_ng_x.csv"), "gas,gas\n").unwrap();
    fs::write(at.join("strange/x.csv"), "a\n1\n").unwrap();
    fs::write(at.join("file.csv"), "a\n1\n").unwrap();
    let cases: [(&[&str], i32, &str); 8] = [
        (&["--tables", "wrong"], 1, ""),
        (&["--tables", "broken"], 3, "pipe_ng_x.csv:1:1:"),
        (&["--tables", "both"], 3, "pipe_ng_x.csv:1:2:"),
        (&["--tables", "empty"], 3, "no table"),
        (&["--tables", "strange"], 1, "passed over"),
        (&["--tables", "missing"], 3, "missing"),
        (&["--tables", "file.csv"], 3, "file.csv"),
        (&["--tables", "wrong", "--write", "x"], 2, "cannot be used"),
    ];
    for (args, code, words) in cases {
        let ran = expect(at, &[&["fidelity"], args].concat(), code);
        assert!(ran.err.contains(words), "{args:?}: {}", ran.err);
    }
    let both = expect(at, &["fidelity", "--tables", "both"], 3).out;
    assert!(both.contains("FAIL       air.rise"), "the good file is still checked: {both}");
}

/// The guide is written whole, and the same each time.
#[test]
fn the_guide_is_written() {
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    expect(at, &["fidelity", "--write", "out"], 0);
    let written = fs::read(at.join("out/fidelity.md")).unwrap();
    let committed = Path::new(".").join("docs/fidelity.md");
    assert!(written == fs::read(committed).unwrap());
    fs::write(at.join("file"), "").unwrap();
    expect(at, &["fidelity", "--write", "file"], 3);
}

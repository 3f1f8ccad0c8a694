//! Records of other versions of the model, and of the format's first version, which told none.

use quarterturn::record::{FaultCode, MODEL_VERSION, What, read, replay};

use super::forged::{bodies, seal};
use super::small;

/// The small record as if another model had played it: its header changed, a digest with it.
fn of_another_model(from: &str, to: &str) -> String {
    let mut bodies = bodies();
    let header = bodies[0].replacen(from, to, 1);
    assert_ne!(header, bodies[0]);
    bodies[0] = header;
    let mark = bodies.iter().position(|body| body.starts_with(r#"{"t":250,"mark""#)).unwrap();
    bodies[mark] = r#"{"t":250,"mark":"0123456789abcdef""#.to_owned();
    seal(&bodies)
}

/// A record tells the model that it was played with.
#[test]
fn a_record_tells_its_model() {
    assert_eq!(read(small().as_bytes()).unwrap().model, Some(MODEL_VERSION));
    let here = format!("\"model\":{MODEL_VERSION}");
    let old = read(of_another_model(&here, "\"model\":0").as_bytes()).unwrap();
    assert_eq!(old.model, Some(0));
    let difference = replay(&old, &mut |_, _| {}).unwrap().differs.unwrap();
    assert_eq!((difference.tick, difference.model), (250, Some(0)));
    let told = difference.to_string();
    assert!(told.contains("version 0 of the model wrote it"), "{told}");
}

/// A record in the first version of the format is read as before and tells no model.
#[test]
fn the_first_version_of_the_format_is_still_read() {
    let from = format!("\"version\":2,\"program\":\"0.0.0-test\",\"model\":{MODEL_VERSION}");
    let to = "\"version\":1,\"program\":\"0.0.0-test\"";
    let mut bodies = bodies();
    bodies[0] = bodies[0].replacen(&from, to, 1);
    let old = read(seal(&bodies).as_bytes()).unwrap();
    let new = read(small().as_bytes()).unwrap();
    assert_eq!(old.model, None);
    assert_eq!((&old.header, &old.lines), (&new.header, &new.lines));
    // The model has not changed since, as far as this record goes.
    assert!(old.lines.iter().any(|line| matches!(line.what, What::Mark(_))));
    assert_eq!(replay(&old, &mut |_, _| {}).unwrap().differs, None);
    let differs = read(of_another_model(&from, to).as_bytes()).unwrap();
    let told = replay(&differs, &mut |_, _| {}).unwrap().differs.unwrap().to_string();
    assert!(told.contains("an early version of the model"), "{told}");
}

/// Neither version has the other's header.
#[test]
fn the_model_belongs_to_the_second_version_of_the_format() {
    let here = format!(",\"model\":{MODEL_VERSION}");
    for (from, to) in [("\"version\":2", "\"version\":1"), (here.as_str(), "")] {
        let mut bodies = bodies();
        bodies[0] = bodies[0].replacen(from, to, 1);
        let fault = read(seal(&bodies).as_bytes()).unwrap_err();
        assert_eq!((fault.code, fault.line), (FaultCode::BadField, 1), "{fault}");
    }
}

/// `mark` says that a record belongs to another model, whether it comes out alike or not.
#[cfg(feature = "cli")]
#[test]
fn mark_reports_a_record_of_another_model() {
    use crate::cli::expect;
    let folder = tempfile::tempdir().unwrap();
    let at = folder.path();
    let here = format!("\"model\":{MODEL_VERSION}");
    std::fs::write(at.join("old.jsonl"), of_another_model(&here, "\"model\":0")).unwrap();
    std::fs::write(at.join("new.jsonl"), small()).unwrap();
    let told =
        format!("recorded with version 0 of the model; this program has version {MODEL_VERSION}");
    let old = expect(at, &["mark", "old.jsonl"], 1).out;
    assert!(old.contains(&told) && old.contains("NOT VERIFIED"), "{old}");
    let new = expect(at, &["mark", "new.jsonl"], 1).out;
    assert!(!new.contains("of the model") && new.contains("digests agree"), "{new}");
    let json = expect(at, &["mark", "old.jsonl", "--json"], 1).out;
    let json: serde_json::Value = serde_json::from_str(&json).unwrap();
    assert_eq!(json[0]["model"], 0);
    assert_eq!(json[0]["replayed_with_model"], MODEL_VERSION);
}

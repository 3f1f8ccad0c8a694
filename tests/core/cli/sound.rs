//! `quarterturn sound` as it is run from a shell.

use std::fs;
use std::path::Path;

use super::expect;

/// The pictures of `docs/sound.md` are those of a fresh run.
#[test]
fn slow_the_pictures_of_sound_are_fresh() {
    let folder = tempfile::tempdir().unwrap();
    expect(folder.path(), &["sound", "--write", "."], 0);
    for name in ["sound/cycle.svg", "sound/voices.svg"] {
        let fresh = fs::read_to_string(folder.path().join(name)).unwrap();
        let kept = Path::new(env!("CARGO_MANIFEST_DIR")).join("docs").join(name);
        let kept = fs::read_to_string(kept).unwrap_or_default();
        assert!(kept == fresh, "docs/{name}: `quarterturn sound --write docs` writes it anew");
    }
}

/// A script of one's own is heard: two seconds, and the tick in which it is found to be over, are
/// 96,960 samples of 16 bits; one that stops says where.
#[test]
fn a_script_is_written_as_a_file_to_hear() {
    let folder = tempfile::tempdir().unwrap();
    fs::write(
        folder.path().join("a.script"),
        "go plant-room\nneighbor water-heater on\nwait 2 s\n",
    )
    .unwrap();
    expect(folder.path(), &["sound", "--script", "a.script", "--wav", "a.wav"], 0);
    let bytes = fs::read(folder.path().join("a.wav")).unwrap();
    assert_eq!(bytes.len(), 44 + 2 * 96_960);
    assert_eq!((&bytes[..4], &bytes[8..16]), (&b"RIFF"[..], &b"WAVEfmt "[..]));
    let number = |at: usize| u32::from_le_bytes(bytes[at..at + 4].try_into().unwrap());
    assert_eq!([number(4), number(24), number(40)], [36 + 193_920, 48_000, 193_920]);
    // The water heater burns there: it is no silence.
    assert!(bytes[44..].iter().any(|byte| *byte != 0));

    fs::write(folder.path().join("b.script"), "go hall\nturn low-screw 1/8\n").unwrap();
    let ran = expect(folder.path(), &["sound", "--script", "b.script", "--wav", "b.wav"], 1);
    assert!(ran.err.contains("b.script:2"), "{}", ran.err);
    expect(folder.path(), &["sound"], 2);
    expect(folder.path(), &["sound", "no-such-job", "--wav", "c.wav"], 3);
    assert!(!folder.path().join("c.wav").exists());
}

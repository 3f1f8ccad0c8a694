//! Tests of the program as it is run from a shell.

mod faults;
mod files;
mod format;
mod jobs;
mod previews;
mod proofs;
mod records;
mod sound;
mod window;

use std::path::Path;
use std::process::{Command, Output, Stdio};

/// What a command gave.
pub struct Ran {
    pub code: i32,
    pub out: String,
    pub err: String,
}

/// Runs the program in a folder.
pub fn run_in(folder: &Path, args: &[&str]) -> Ran {
    let output: Output = Command::new(env!("CARGO_BIN_EXE_quarterturn"))
        .args(args)
        .current_dir(folder)
        .stdin(Stdio::null())
        .env_remove("DISPLAY")
        .env_remove("WAYLAND_DISPLAY")
        .output()
        .unwrap();
    Ran {
        code: output.status.code().expect("an exit code, so no panic by a signal"),
        out: String::from_utf8(output.stdout).unwrap(),
        err: String::from_utf8(output.stderr).unwrap(),
    }
}

/// Runs the program and expects an exit code and no panic.
pub fn expect(folder: &Path, args: &[&str], code: i32) -> Ran {
    let ran = run_in(folder, args);
    assert_eq!(ran.code, code, "{args:?}\n{}\n{}", ran.out, ran.err);
    assert!(!ran.err.contains("panicked"), "{args:?}: {}", ran.err);
    ran
}

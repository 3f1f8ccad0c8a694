//! Usage, help, and no window.

use super::expect;

/// Without a display there is one clear line that names what works all the same.
#[test]
fn without_a_window_one_line_names_the_other_commands() {
    let folder = tempfile::tempdir().unwrap();
    for args in [&[][..], &["play", "healthy-natural", "--level", "solo", "--learner", "ada"][..]] {
        let ran = expect(folder.path(), args, 3);
        assert_eq!(ran.out, "");
        assert_eq!(ran.err.trim().lines().count(), 1, "{}", ran.err);
        for command in ["run", "mark", "preview", "check"] {
            assert!(ran.err.contains(command), "{}", ran.err);
        }
    }
}

/// Usage mistakes give 2; help and version give 0 on standard output.
#[test]
fn usage_mistakes_and_help() {
    let folder = tempfile::tempdir().unwrap();
    let run = "healthy-natural";
    let wrong: [&[&str]; 9] = [
        &["fly"],
        &["run", run],
        &["run", run, "--technician", "--script", "x"],
        &["run", run, "--technician", "--seed", "-1"],
        &["play", run, "--level", "expert"],
        &["play", run, "--learner", "two\nlines"],
        &["mark"],
        &["check"],
        &["explain", "no_such_field"],
    ];
    for args in wrong {
        let ran = expect(folder.path(), args, 2);
        assert_eq!(ran.out, "", "{args:?}");
        assert!(!ran.err.is_empty(), "{args:?}");
    }
    assert!(expect(folder.path(), &["--help"], 0).out.contains("Exit codes"));
    assert!(expect(folder.path(), &["--version"], 0).out.contains(env!("CARGO_PKG_VERSION")));
    assert!(expect(folder.path(), &["explain", "supply.set"], 0).out.contains("supply.set"));
}

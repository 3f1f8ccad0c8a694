//! Tidiness is a test: layers, lengths, words, and that nothing is forgotten.

use std::collections::BTreeMap;
use std::fs;
use std::path::{Path, PathBuf};

fn root() -> PathBuf {
    PathBuf::from(".")
}

fn files(folder: &Path, ending: &str, found: &mut Vec<PathBuf>) {
    let Ok(entries) = fs::read_dir(folder) else { return };
    let mut entries: Vec<_> = entries.filter_map(Result::ok).map(|entry| entry.path()).collect();
    entries.sort();
    for path in entries {
        if path.is_dir() {
            files(&path, ending, found);
        } else if path.to_string_lossy().ends_with(ending) {
            found.push(path);
        }
    }
}

fn sources() -> Vec<(String, String)> {
    let mut found = Vec::new();
    files(&root().join("src"), ".rs", &mut found);
    found
        .into_iter()
        .map(|path| {
            let name = path.strip_prefix(root()).unwrap_or(&path).to_string_lossy().into_owned();
            (name, fs::read_to_string(&path).unwrap_or_default())
        })
        .collect()
}

/// Modules from the bottom up. A module may use only what stands before it.
const LAYERS: &[&[&str]] = &[
    &["units", "rng"],
    &["physics"],
    &["appliance", "site", "instrument"],
    &["parts"],
    &["setup"],
    &["model"],
    &["catalogue"],
    &["senses"],
    &["hands"],
    &["bench"],
    &["measure"],
    &["rules"],
    &["scenario"],
    &["record"],
    &["marking"],
    &["technician"],
    &["fidelity"],
    &["practice", "classroom"],
    &["panels"],
    &["app", "cli"],
];

fn layer(module: &str) -> Option<usize> {
    LAYERS.iter().position(|layer| layer.contains(&module))
}

/// Dependencies point one way, also between the parts of one layer's neighbours.
#[test]
fn modules_use_only_what_stands_before_them() {
    let mut wrong = Vec::new();
    for (name, text) in sources() {
        let Some(module) = name.strip_prefix("src/").and_then(|rest| {
            rest.split(['/', '.']).next().filter(|first| *first != "lib" && *first != "main")
        }) else {
            continue;
        };
        let Some(own) = layer(module) else {
            wrong.push(format!("{name}: `{module}` is in no layer"));
            continue;
        };
        for (number, line) in text.lines().enumerate() {
            for rest in line.split("crate::").skip(1) {
                let used: String =
                    rest.chars().take_while(|c| c.is_ascii_alphanumeric() || *c == '_').collect();
                if layer(&used).is_some_and(|used| used > own) {
                    wrong.push(format!("{name}:{}: uses crate::{used}", number + 1));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// The engine and the panels' library stay in their rooms; the core has no clock, no file, no
/// thread and no order that changes from run to run.
#[test]
fn words_stay_in_their_rooms() {
    let core_forbids = [
        "std::time",
        "Instant",
        "SystemTime",
        "HashMap",
        "HashSet",
        "std::fs",
        "std::thread",
        "std::env",
        "println!",
        "eprintln!",
        "use egui",
        "egui::",
        "bevy",
    ];
    let panels_forbid = ["std::time", "Instant", "HashMap", "std::fs", "std::thread", "bevy"];
    let mut wrong = Vec::new();
    for (name, text) in sources() {
        let forbids: &[&str] = if name.starts_with("src/app") || name.starts_with("src/cli") {
            &[]
        } else if name.starts_with("src/panels") {
            &panels_forbid
        } else if name == "src/main.rs" || name == "src/lib.rs" {
            &["HashMap"]
        } else {
            &core_forbids
        };
        for (number, line) in text.lines().enumerate() {
            let code = line.split("//").next().unwrap_or_default();
            for word in forbids {
                if code.contains(word) {
                    wrong.push(format!("{name}:{}: `{word}`", number + 1));
                }
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// One thing a file.
#[test]
fn files_are_short() {
    let mut found = Vec::new();
    for folder in ["src", "tests"] {
        files(&root().join(folder), ".rs", &mut found);
    }
    let long: Vec<String> = found
        .iter()
        .filter_map(|path| {
            let lines = fs::read_to_string(path).unwrap_or_default().lines().count();
            (lines > 500).then(|| format!("{}: {lines} lines", path.display()))
        })
        .collect();
    assert!(long.is_empty(), "{}", long.join("\n"));
}

/// Every module is on the map, every scenario and drawing is used, nothing unfinished is marked.
#[test]
fn nothing_is_forgotten() {
    let guide = fs::read_to_string(root().join("DEVELOPERS.md")).unwrap_or_default();
    let library = fs::read_to_string(root().join("src/lib.rs")).unwrap_or_default();
    let mut wrong = Vec::new();
    for line in library.lines() {
        if let Some(module) = line.strip_prefix("pub mod ").and_then(|m| m.strip_suffix(';'))
            && !guide.contains(&format!("`{module}`"))
        {
            wrong.push(format!("DEVELOPERS.md does not mention `{module}`"));
        }
    }
    let all: String = sources().into_iter().map(|(_, text)| text).collect();
    for (folder, ending) in [("scenarios", ".ron"), ("assets", ".svg"), ("assets", ".ttf")] {
        let mut found = Vec::new();
        files(&root().join(folder), ending, &mut found);
        for path in found {
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            // A scenario ships by its name alone.
            let shipped = format!("ship!(\"{}\")", name.trim_end_matches(ending));
            if !all.contains(&name) && !all.contains(&shipped) {
                wrong.push(format!("{name} is used nowhere"));
            }
        }
    }
    for (name, text) in sources() {
        for word in ["todo!", "unimplemented!", "FIXME", "XXX", "dbg!"] {
            if text.contains(word) {
                wrong.push(format!("{name}: {word}"));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

/// At top level stand the project's own few things and the usual small files only.
#[test]
fn top_level_is_small() {
    let allowed = [
        "Cargo.toml",
        "Cargo.lock",
        "README.md",
        "DEVELOPERS.md",
        "src",
        "scenarios",
        "assets",
        "tests",
        "docs",
        "LICENSE-MIT",
        "LICENSE-APACHE",
        "rust-toolchain.toml",
        "rustfmt.toml",
        "clippy.toml",
        ".ci",
        ".git",
        ".gitignore",
        "target",
    ];
    let strange: BTreeMap<String, ()> = fs::read_dir(root())
        .into_iter()
        .flatten()
        .filter_map(Result::ok)
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .filter(|name| !allowed.contains(&name.as_str()))
        .map(|name| (name, ()))
        .collect();
    assert!(strange.is_empty(), "{strange:?}");
}

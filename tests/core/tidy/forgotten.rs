//! Nothing stands outside the map, and nothing lies about.

use std::collections::BTreeSet;
use std::fs;
use std::path::Path;

use super::{files, texts};

/// Every module is on the map, every scenario and drawing is used.
#[test]
fn nothing_is_forgotten() {
    let guide = fs::read_to_string("DEVELOPERS.md").unwrap_or_default();
    let library = fs::read_to_string("src/lib.rs").unwrap_or_default();
    let mut wrong = Vec::new();
    for line in library.lines() {
        if let Some(module) = line.strip_prefix("pub mod ").and_then(|m| m.strip_suffix(';'))
            && !guide.contains(&format!("`{module}`"))
        {
            wrong.push(format!("DEVELOPERS.md does not mention `{module}`"));
        }
    }
    let all: String = texts(&["src"]).into_values().collect();
    for (folder, ending) in
        [("scenarios", ".ron"), ("assets", ".svg"), ("assets", ".ttf"), ("assets", ".ftl")]
    {
        let mut found = Vec::new();
        files(Path::new(folder), ending, &mut found);
        for path in found {
            let name = path.file_name().unwrap_or_default().to_string_lossy().into_owned();
            // A scenario ships by its name alone.
            let shipped = format!("ship!(\"{}\")", name.trim_end_matches(ending));
            if !all.contains(&name) && !all.contains(&shipped) {
                wrong.push(format!("{name} is used nowhere"));
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
    let strange: BTreeSet<String> = fs::read_dir(".")
        .into_iter()
        .flatten()
        .filter_map(Result::ok)
        .map(|entry| entry.file_name().to_string_lossy().into_owned())
        .filter(|name| !allowed.contains(&name.as_str()))
        .collect();
    assert!(strange.is_empty(), "{strange:?}");
}

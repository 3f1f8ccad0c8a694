//! Knowledge stands in one place: the plate's bands, the angles of a hand valve, the loop, the names
//! of the test states, inches of water in words. A second copy fails here.

use std::fs;
use std::path::Path;

/// Every source file: its path and its code, comments taken off.
fn sources() -> Vec<(String, Vec<String>)> {
    fn walk(folder: &Path, found: &mut Vec<(String, Vec<String>)>) {
        let mut entries: Vec<_> =
            fs::read_dir(folder).unwrap().map(|it| it.unwrap().path()).collect();
        entries.sort();
        for path in entries {
            if path.is_dir() {
                walk(&path, found);
            } else if path.extension().is_some_and(|ending| ending == "rs") {
                let text = fs::read_to_string(&path).unwrap();
                let code = |line: &str| line.split("//").next().unwrap_or_default().to_owned();
                found.push((path.to_string_lossy().into_owned(), text.lines().map(code).collect()));
            }
        }
    }
    let mut found = Vec::new();
    walk(Path::new("src"), &mut found);
    assert!(found.len() > 300, "the sources are not where this test looks: {}", found.len());
    found
}

/// Lines of code that hold a word, as `path:line: code`.
fn holding(word: &str) -> Vec<(String, String)> {
    let mut found = Vec::new();
    for (path, lines) in sources() {
        for (number, line) in lines.iter().enumerate() {
            if line.contains(word) {
                found.push((path.clone(), format!("{path}:{}: {}", number + 1, line.trim())));
            }
        }
    }
    found
}

/// Fails unless a word stands in these files only, told by their names, and in each of them.
fn only_in(word: &str, names: &[&str]) {
    let found = holding(word);
    let is_at = |path: &str, name: &str| path.ends_with(&format!("/{name}"));
    let elsewhere: Vec<&str> = found
        .iter()
        .filter(|(path, _)| !names.iter().any(|name| is_at(path, name)))
        .map(|(_, line)| line.as_str())
        .collect();
    assert!(elsewhere.is_empty(), "`{word}` stands elsewhere too:\n{}", elsewhere.join("\n"));
    for name in names {
        let there = found.iter().any(|(path, _)| is_at(path, name));
        assert!(there, "`{word}` does not stand in {name} any more: take it off the list");
    }
}

/// The plate's limits are judged by `GasFigures::allows` alone. Others fill them in from a scenario,
/// print them, or size a leak by them.
#[test]
fn only_the_plate_judges_by_its_figures() {
    let prints = ["observation.rs", "notes.rs", "preview.rs"];
    let and = |more: &[&'static str]| [&prints[..], more].concat();
    only_in("inlet_min_pa", &and(&["plate.rs", "draw/furnace.rs", "gas/worn.rs"]));
    only_in("inlet_max_pa", &and(&["plate.rs", "draw/furnace.rs"]));
    only_in(
        "tolerance_pa",
        &and(&["plate.rs", "draw/furnace.rs", "told.rs", "adjusting.rs", "debrief/causes.rs"]),
    );
    for word in ["inlet_min_pa", "inlet_max_pa", "tolerance_pa"] {
        for (path, line) in
            holding(word).into_iter().filter(|(path, _)| !path.ends_with("plate.rs"))
        {
            let judges = [" < ", " > ", "<=", ">=", "contains(", ".min(", ".max("];
            assert!(!judges.iter().any(|sign| line.contains(sign)), "{path} judges: {line}");
        }
    }
}

/// Nobody but the hand valve knows at which angle it is shut or open.
#[test]
fn only_the_hand_valve_knows_its_angles() {
    only_in("OPEN_DEG", &["physics/valve.rs"]);
    only_in("SEAL_DEG", &["physics/valve.rs"]);
    for word in ["SHUT_DEG", "FED_DEG"] {
        only_in(word, &[]);
    }
}

/// A bench is stepped by the one loop.
#[test]
fn only_the_loop_steps_a_bench() {
    only_in(".step()", &["bench/run.rs"]);
}

/// A test state has one spelling, and a pressure in words one rounding.
#[test]
fn test_states_and_pressures_have_one_spelling() {
    only_in("\"full-load\"", &["appliance/test_point.rs"]);
    only_in("fn inwc(", &["units/shown.rs"]);
    only_in("fn hundredths_inwc(", &["units/shown.rs"]);
}

//! The report on structure: what the house looks like today, on one page.
//!
//! `cargo test --no-default-features --features cli --test core structure_report -- --ignored --nocapture`

use std::collections::BTreeMap;

use super::offence::Rule;
use super::tree::{Source, Tree};
use super::{LAYERS, OFFENCES, TODAY, arrows};

/// Functions from this length on are shown, well before the rule of tidiness stops them.
const FUNCTION_LINES: usize = 60;
/// Rows of a list; the rest is counted.
const ROWS: usize = 40;

/// Fields of the plate that make a band: naming one is knowing what the plate allows.
const BANDS: &[&str] = &["inlet_min_pa", "inlet_max_pa", "tolerance_pa"];

fn list(title: &str, rows: &[String]) {
    println!("\n{title}: {}", rows.len());
    rows.iter().take(ROWS).for_each(|row| println!("  {row}"));
    if rows.len() > ROWS {
        println!("  and {} more", rows.len() - ROWS);
    }
}

fn room(source: &Source) -> String {
    source.top().unwrap_or("lib and main").to_owned()
}

/// Whether an identifier has `segment` as one of its words: `low_pa`, `LowStage`, `is_low`.
fn has_segment(ident: &str, segment: &str) -> bool {
    let mut words = vec![String::new()];
    for c in ident.chars() {
        if c == '_'
            || c.is_uppercase() && words.last().is_some_and(|w| !w.ends_with(char::is_uppercase))
        {
            words.push(String::new());
        }
        if c != '_'
            && let Some(word) = words.last_mut()
        {
            word.push(c);
        }
    }
    words.iter().any(|word| word.eq_ignore_ascii_case(segment))
}

/// Names of what is low or high and no firing level: a supply, a battery, the low-gas switch, the
/// side of a meter.
const NO_LEVELS: [&str; 8] =
    ["lowgas", "lowside", "lowmain", "battery", "supply", "tank", "mainpressure", "toohigh"];
/// The same, where it is the whole name.
const NO_LEVELS_WHOLE: [&str; 3] = ["SetLow", "SetHigh", "is_set_low"];

fn names_level(ident: &str, level: &str) -> bool {
    let plain = ident.replace('_', "").to_ascii_lowercase();
    has_segment(ident, level)
        && !NO_LEVELS_WHOLE.contains(&ident)
        && !NO_LEVELS.iter().any(|other| plain.contains(other))
}

fn names_both_levels(source: &Source) -> bool {
    ["low", "high"]
        .iter()
        .all(|level| source.facts.own_idents.keys().any(|ident| names_level(ident, level)))
}

fn lines_by_room(tree: &Tree) {
    let mut rooms: BTreeMap<String, [usize; 5]> = BTreeMap::new();
    let offence = |rule: Rule, source: &Source| {
        OFFENCES.iter().filter(|it| it.rule == rule && it.file == source.name).count()
    };
    for source in tree.program() {
        let row = rooms.entry(room(source)).or_default();
        row[0] += 1;
        row[1] += source.text.lines().count();
        row[2] += usize::from(names_both_levels(source));
        row[3] += source.facts.wordy_texts.len();
        row[4] += offence(Rule::Unused, source);
    }
    println!(
        "{:14}{:>7}{:>8}{:>12}{:>14}{:>15}",
        "room", "files", "lines", "both levels", "texts", "unused public"
    );
    let mut sum = [0; 5];
    for (room, row) in &rooms {
        println!("{room:14}{:>7}{:>8}{:>12}{:>14}{:>15}", row[0], row[1], row[2], row[3], row[4]);
        sum.iter_mut().zip(row).for_each(|(sum, value)| *sum += value);
    }
    println!("{:14}{:>7}{:>8}{:>12}{:>14}{:>15}", "all", sum[0], sum[1], sum[2], sum[3], sum[4]);
}

/// Prints the page; it judges nothing.
#[test]
#[ignore = "a page to read, not a check"]
fn structure_report() {
    let tree = &*TODAY;
    lines_by_room(tree);

    let mut functions: Vec<(usize, String)> = tree
        .program()
        .flat_map(|source| source.facts.functions.iter().map(move |function| (source, function)))
        .filter(|(_, function)| function.lines > FUNCTION_LINES)
        .map(|(source, it)| {
            (it.lines, format!("{:4} {}:{} {}", it.lines, source.name, it.line, it.name))
        })
        .collect();
    functions.sort_by(|a, b| b.cmp(a));
    let functions: Vec<String> = functions.into_iter().map(|(_, row)| row).collect();
    list(&format!("functions over {FUNCTION_LINES} lines"), &functions);

    let circles: Vec<String> = OFFENCES
        .iter()
        .filter(|offence| offence.rule == Rule::Circle)
        .map(|it| format!("{} files: {}", it.circle.len(), it.circle.join(" ")))
        .collect();
    list("circles between files", &circles);

    let siblings: Vec<String> = arrows::circles_of(&arrows::without_parents(arrows::arrows(tree)))
        .iter()
        .map(|it| format!("{} files: {}", it.circle.len(), it.circle.join(" ")))
        .collect();
    list("circles that stand without the arrows from a file to its parent", &siblings);

    let against: Vec<String> =
        arrows::against_layers(tree, &LAYERS).iter().map(ToString::to_string).collect();
    list("arrows against the layers", &against);

    let bands: Vec<String> = tree
        .program()
        .filter_map(|source| {
            let named: Vec<String> = BANDS
                .iter()
                .filter_map(|band| Some(format!("{band} {}", source.facts.own_idents.get(*band)?)))
                .collect();
            (!named.is_empty()).then(|| format!("{}: {}", source.name, named.join(", ")))
        })
        .collect();
    list("files that name the plate's bands, and how often", &bands);

    let levels: Vec<String> =
        tree.program().filter(|it| names_both_levels(it)).map(|it| it.name.clone()).collect();
    list("files that name both levels", &levels);

    println!("\noffences by rule");
    for rule in Rule::ALL {
        let count = OFFENCES.iter().filter(|offence| offence.rule == *rule).count();
        println!("  {rule:?}: {count}");
    }
}

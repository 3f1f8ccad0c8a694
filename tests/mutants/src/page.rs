//! Tells what became of the mutants, on the terminal and as a page.

use std::collections::{BTreeMap, BTreeSet};
use std::fmt::Write as _;
use std::path::Path;

use crate::Failure;

/// What stands above the table.
const HEAD: &str = "# Mutants of the marks

`tests/mutants/run` changes the code of the rules and their evaluation in one place at a time (a
bound, a sign, a condition, a number, what a function returns) and asks whether a quick test sees
it. What no test saw stands at the end: with the reason why nothing can be seen, or as one that
waits for a test. A file that no test has tried as it stands says so. Written by that program.

";

/// By how many of the tests a source has been tried as it stands.
#[derive(Default, Clone, Copy, PartialEq, Eq)]
enum Tried {
    /// By none: nothing is known of its mutants.
    #[default]
    Not,
    /// By those that are about it, or by some of the rest.
    Near,
    /// By every one.
    All,
}

/// How it went in one file.
#[derive(Default)]
struct Tally {
    mutants: usize,
    killed: usize,
    timed_out: usize,
    survived: usize,
}

impl Tally {
    fn add(&mut self, other: &Self) {
        self.mutants += other.mutants;
        self.killed += other.killed;
        self.timed_out += other.timed_out;
        self.survived += other.survived;
    }

    fn row(&self, name: &str, by: &str) -> String {
        let Self { mutants, killed, timed_out, survived } = self;
        format!("| {name} | {mutants} | {killed} | {timed_out} | {survived} | {by} |\n")
    }
}

/// A mutant that no test saw.
struct Survivor<'a> {
    name: &'a str,
    line: &'a str,
}

/// All that was found, for the page.
#[derive(Default)]
struct Found<'a> {
    tallies: BTreeMap<&'a str, Tally>,
    tried: BTreeMap<&'a str, Tried>,
    survived: Vec<Survivor<'a>>,
}

impl Found<'_> {
    /// Whether the source of a mutant has been tried; so has one that is gone.
    fn is_tried(&self, name: &str) -> bool {
        let file = name.split(' ').next().unwrap_or_default();
        self.tried.get(file) != Some(&Tried::Not)
    }
}

/// Tells what became of the mutants, right where all that survived is on the list of known ones,
/// and that list names nothing else. `MUTANT_FILE` leaves out the other sources, but for the page.
///
/// # Errors
/// When a file cannot be read or written.
pub fn told(tree: &Path, results: &Path, to: Option<&Path>) -> Result<bool, Failure> {
    let listed = std::fs::read_to_string(tree.join("mutants.txt"))?;
    let tests = std::fs::read_to_string(tree.join("tests.txt"))?;
    let results = std::fs::read_to_string(results)?;
    let found = found(&listed, &tests, &results);
    let known: BTreeMap<&str, &str> =
        include_str!("../known.txt").lines().filter_map(|line| line.split_once(" # ")).collect();
    let wanted = std::env::var("MUTANT_FILE").unwrap_or_default();
    let is_wanted = |name: &str| {
        let file = name.split(' ').next().unwrap_or_default();
        wanted.is_empty() || wanted.split([' ', ',']).any(|it| !it.is_empty() && file.contains(it))
    };
    let unknown: Vec<_> = found
        .survived
        .iter()
        .filter(|it| is_wanted(it.name) && !known.contains_key(it.name))
        .collect();
    for it in &unknown {
        println!("survives: {}, line {}", it.name, it.line);
    }
    let alive: BTreeSet<&str> = found.survived.iter().map(|it| it.name).collect();
    let outdated: Vec<_> = known
        .keys()
        .filter(|name| is_wanted(name) && found.is_tried(name))
        .filter(|name| !alive.contains(*name))
        .collect();
    for name in &outdated {
        println!("listed and no survivor any more: {name}");
    }
    let mut all = Tally::default();
    found.tallies.iter().filter(|(file, _)| is_wanted(file)).for_each(|(_, it)| all.add(it));
    println!(
        "{} mutants: {} killed, {} timed out, {} survived, {} of them not listed",
        all.mutants,
        all.killed,
        all.timed_out,
        all.survived,
        unknown.len()
    );
    if let Some(to) = to {
        std::fs::write(to, page(&found, &known)?)?;
    }
    Ok(unknown.is_empty() && outdated.is_empty())
}

/// What the lists of mutants and tests and the results come to; what was found in another text of a
/// source or of a test counts no more.
fn found<'a>(listed: &'a str, tests: &str, results: &str) -> Found<'a> {
    let mut fates = BTreeMap::new();
    let mut done = BTreeSet::new();
    let mut near = BTreeSet::new();
    for line in results.lines() {
        match *line.split('\t').collect::<Vec<_>>().as_slice() {
            [how @ ("done" | "near"), test, hash, texts] => {
                near.extend(texts.split(' '));
                if how == "done" {
                    done.extend(texts.split(' ').map(|text| (test, hash, text)));
                }
            }
            [how @ ("killed" | "timed out"), name, _, text] => {
                let _ = fates.insert((name, text), how);
            }
            _ => {}
        }
    }
    let mut found = Found::default();
    let mut texts = BTreeMap::new();
    for line in listed.lines() {
        let [_, name, line, text] = *line.split('\t').collect::<Vec<_>>().as_slice() else {
            continue;
        };
        let file = name.split(' ').next().unwrap_or(name);
        let _ = texts.insert(file, text);
        let tally = found.tallies.entry(file).or_default();
        tally.mutants += 1;
        match fates.get(&(name, text)) {
            Some(&"killed") => tally.killed += 1,
            Some(_) => tally.timed_out += 1,
            None => {
                tally.survived += 1;
                found.survived.push(Survivor { name, line });
            }
        }
    }
    for (file, text) in texts {
        let has_all = tests
            .lines()
            .filter_map(|line| line.split_once('\t'))
            .all(|(test, hash)| done.contains(&(test, hash, text)));
        let tried = if has_all {
            Tried::All
        } else if near.contains(text) || found.tallies[file].killed > 0 {
            Tried::Near
        } else {
            Tried::Not
        };
        let _ = found.tried.insert(file, tried);
    }
    let survived = std::mem::take(&mut found.survived);
    found.survived = survived.into_iter().filter(|it| found.is_tried(it.name)).collect();
    found
}

fn page(found: &Found, known: &BTreeMap<&str, &str>) -> Result<String, Failure> {
    let mut out = HEAD.to_owned();
    out.push_str("| file | mutants | killed | timed out | survived | survivors tried by |\n");
    out.push_str("|---|---|---|---|---|---|\n");
    let mut all = Tally::default();
    for (name, tally) in &found.tallies {
        all.add(tally);
        let by = match found.tried.get(name).copied().unwrap_or_default() {
            Tried::Not => "no test",
            Tried::Near | Tried::All if tally.survived == 0 => "",
            Tried::Near => "tests about it",
            Tried::All => "all tests",
        };
        out.push_str(&tally.row(&format!("`{name}`"), by));
    }
    out.push_str(&all.row("all", ""));
    out.push_str("\n## What survives\n\n");
    if found.survived.is_empty() {
        out.push_str("Nothing.\n");
    }
    for it in &found.survived {
        if let Some(why) = known.get(it.name) {
            writeln!(out, "- `` {} ``: {why}.", it.name)?;
        }
    }
    let open: Vec<_> = found.survived.iter().filter(|it| !known.contains_key(it.name)).collect();
    if !open.is_empty() {
        out.push_str("\n## What waits for a test\n\n");
    }
    for it in open {
        writeln!(out, "- `` {} ``, line {}", it.name, it.line)?;
    }
    Ok(out)
}

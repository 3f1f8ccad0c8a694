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
waits for a test. Written by that program.

";

/// How it went in one file.
#[derive(Default)]
struct Tally {
    tried: usize,
    killed: usize,
    timed_out: usize,
    survived: usize,
}

impl Tally {
    fn add(&mut self, other: &Self) {
        self.tried += other.tried;
        self.killed += other.killed;
        self.timed_out += other.timed_out;
        self.survived += other.survived;
    }

    fn row(&self, name: &str) -> String {
        let Self { tried, killed, timed_out, survived } = self;
        format!("| {name} | {tried} | {killed} | {timed_out} | {survived} |\n")
    }
}

/// Tells what became of the mutants; right where all that survived is on the list of known ones,
/// and that list names nothing else.
///
/// # Errors
/// When a file cannot be read or written.
pub fn told(tree: &Path, results: &Path, to: Option<&Path>) -> Result<bool, Failure> {
    let listed = std::fs::read_to_string(tree.join("mutants.txt"))?;
    let results = std::fs::read_to_string(results)?;
    let mut fates = BTreeMap::new();
    let (mut on_all, mut on_near) = (BTreeSet::new(), BTreeSet::new());
    for line in results.lines() {
        if let [how @ ("done" | "near"), test, _] = line.split('\t').collect::<Vec<_>>().as_slice()
        {
            let _ = if *how == "done" { on_all.insert(*test) } else { on_near.insert(*test) };
        }
        if let [how @ ("killed" | "timed out"), name, _] =
            line.split('\t').collect::<Vec<_>>().as_slice()
        {
            let _ = fates.insert(*name, *how);
        }
    }
    let known: BTreeMap<&str, &str> =
        include_str!("../known.txt").lines().filter_map(|line| line.split_once(" # ")).collect();
    let mut tallies: BTreeMap<&str, Tally> = BTreeMap::new();
    let mut survived = Vec::new();
    for line in listed.lines() {
        let mut parts = line.split('\t').skip(1);
        let (Some(name), Some(at)) = (parts.next(), parts.next()) else { continue };
        let tally = tallies.entry(name.split(' ').next().unwrap_or(name)).or_default();
        tally.tried += 1;
        match fates.get(name) {
            Some(&"killed") => tally.killed += 1,
            Some(_) => tally.timed_out += 1,
            None => {
                tally.survived += 1;
                survived.push((name, at));
            }
        }
    }
    let unknown: Vec<_> = survived.iter().filter(|(name, _)| !known.contains_key(name)).collect();
    for (name, at) in &unknown {
        println!("survives: {name}, line {at}");
    }
    let alive: BTreeSet<&str> = survived.iter().map(|(name, _)| *name).collect();
    let outdated: Vec<_> = known.keys().filter(|name| !alive.contains(*name)).collect();
    for name in &outdated {
        println!("listed and no survivor any more: {name}");
    }
    let mut all = Tally::default();
    tallies.values().for_each(|it| all.add(it));
    println!(
        "{} mutants: {} killed, {} timed out, {} survived, {} of them not listed",
        all.tried,
        all.killed,
        all.timed_out,
        all.survived,
        unknown.len()
    );
    if let Some(to) = to {
        let near = on_near.difference(&on_all).count();
        std::fs::write(to, page(&tallies, &all, [on_all.len(), near], &survived, &known)?)?;
    }
    Ok(unknown.is_empty() && outdated.is_empty())
}

fn page(
    tallies: &BTreeMap<&str, Tally>,
    all: &Tally,
    [on_all, on_near]: [usize; 2],
    survived: &[(&str, &str)],
    known: &BTreeMap<&str, &str>,
) -> Result<String, Failure> {
    let mut out = HEAD.to_owned();
    writeln!(
        out,
        "Tests that tried all that they reach: {on_all}; only what they are about: {on_near}.\n"
    )?;
    out.push_str("| file | tried | killed | timed out | survived |\n|---|---|---|---|---|\n");
    for (name, tally) in tallies {
        out.push_str(&tally.row(&format!("`{name}`")));
    }
    out.push_str(&all.row("all"));
    out.push_str("\n## What survives\n\n");
    if survived.is_empty() {
        out.push_str("Nothing.\n");
    }
    for (name, why) in survived.iter().filter_map(|(name, _)| known.get_key_value(name)) {
        writeln!(out, "- `` {name} ``: {why}.")?;
    }
    let open: Vec<_> = survived.iter().filter(|(name, _)| !known.contains_key(name)).collect();
    if !open.is_empty() {
        out.push_str("\n## What waits for a test\n\n");
    }
    for (name, at) in open {
        writeln!(out, "- `` {name} ``, line {at}")?;
    }
    Ok(out)
}

//! The marks tried from both sides: good work in other manners loses nothing, and the ritual done
//! with nothing thought does not meet the essentials of a job that has anything to find. On shipped
//! jobs, and on bare benches with one fault of the catalogue each.

use std::collections::BTreeSet;
use std::fs;
use std::sync::Mutex;

use quarterturn::rng::stream;
use quarterturn::scenario::builtin::LADDER;
use quarterturn::scenario::{Scenario, load};
use quarterturn::technician::fairness::{Manner, Policy, Sequence};
use quarterturn::technician::proof::{
    BlindProof, FairProof, Judgment, blind_run, fair_run, fault_benches,
};

use super::catalogue;

/// Fair runs of each job that the committed page must tell of, at least.
const LEAST_RUNS: u64 = 6;
/// Fair runs of each job that are played anew; every job takes others of those on the page.
const SAMPLE: u64 = 3;
/// Bare benches that are tried anew, and the seed that draws them.
const BENCHES: usize = 20;
const DRAWN_WITH: u64 = 7;

/// Does these on every processor.
fn on_threads<T: Send>(tasks: Vec<T>, work: impl Fn(T) -> Vec<String> + Sync) -> Vec<String> {
    let waiting = Mutex::new(tasks);
    let told = Mutex::new(Vec::new());
    let hands = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    std::thread::scope(|scope| {
        for _ in 0..hands {
            scope.spawn(|| {
                loop {
                    let Some(task) = waiting.lock().unwrap().pop() else { return };
                    let wrong = work(task);
                    told.lock().unwrap().extend(wrong);
                }
            });
        }
    });
    told.into_inner().unwrap()
}

fn jobs() -> Vec<(u64, &'static str, Scenario)> {
    (0..).zip(LADDER).map(|(place, one)| (place, one.id, load(one.text).unwrap())).collect()
}

/// Runs of both sides that were judged wrongly.
fn misses(name: &str, fair: &[FairProof], blind: &[BlindProof]) -> Vec<String> {
    let unfair = fair.iter().filter(|run| !run.is_right()).map(|run| format!("{name}: {run:?}"));
    let passed = blind.iter().filter(|run| !run.is_right()).map(|run| format!("{name}: {run:?}"));
    unfair.chain(passed).collect()
}

/// The committed page.
struct Page {
    text: String,
    /// Seeds and fair runs of each job that it tells of.
    seeds: u64,
    runs: u64,
}

impl Page {
    fn read() -> Self {
        let text = fs::read_to_string("docs/examined.md").unwrap();
        let first = &jobs()[0].2.title;
        let row = |seed: u64| text.contains(&format!("\n| {first} | {seed} | "));
        let seeds = (0..).take_while(|seed| row(*seed)).count();
        let runs = fair_row(&text, first).unwrap().1.parse().unwrap();
        Self { seeds: u64::try_from(seeds).unwrap(), runs, text }
    }
}

/// How many fair runs of a job lost nothing, of how many.
fn fair_row<'a>(page: &'a str, title: &str) -> Option<(&'a str, &'a str)> {
    let begins = format!("| {title} |");
    let row = page.lines().find(|it| it.starts_with(&begins) && it.contains(" of "))?;
    row.split('|').nth(2)?.trim().split_once(" of ")
}

/// On every shipped job a few fair runs lose nothing and no blind habit passes, and the committed
/// page says the same of the blind ones.
#[test]
fn slow_shipped_jobs_are_marked_rightly_from_both_sides() {
    let page = Page::read();
    let rows: BTreeSet<&str> = page.text.lines().collect();
    let told = on_threads(jobs(), |(place, id, scenario)| {
        let runs = (0..SAMPLE).map(|i| (place * SAMPLE + i) % page.runs);
        let fair: Vec<FairProof> =
            runs.map(|run| fair_run(&scenario, run % page.seeds, run).unwrap()).collect();
        let seed = place % page.seeds;
        let blind: Vec<BlindProof> =
            Policy::ALL.iter().map(|habit| blind_run(&scenario, seed, *habit).unwrap()).collect();
        let mut told = misses(id, &fair, &blind);
        let cells: Vec<&str> = blind
            .iter()
            .map(|run| match run.judgment {
                Judgment::Caught => "caught",
                Judgment::Fits => "fits",
                Judgment::Passes => "**passes**",
            })
            .collect();
        let row = format!("| {} | {seed} | {} |", scenario.title, cells.join(" | "));
        if !rows.contains(row.as_str()) {
            told.push(format!(
                "docs/examined.md does not have this row; write it with `quarterturn examine --write \
                 docs`: {row}"
            ));
        }
        told
    });
    assert!(told.is_empty(), "{}", told.join("\n"));
}

/// The committed page has a row for every shipped job on each side, for every manner and every sequence,
/// a column for every habit, and as many runs as are asked of it. What it misses it names.
#[test]
fn the_page_of_both_sides_is_whole() {
    let page = Page::read();
    assert!(page.seeds >= 1 && page.runs >= LEAST_RUNS, "{} {}", page.seeds, page.runs);
    let text = page.text.as_str();
    let misses = text.split("## Misses").nth(1).unwrap();
    let mut wrong = Vec::new();
    for (_, id, scenario) in jobs() {
        match fair_row(text, &scenario.title) {
            Some((right, runs)) if runs == page.runs.to_string() => {
                if right != runs && !misses.contains(&format!("\n{id}: ")) {
                    wrong.push(format!("{id} misses, and its misses are not named"));
                }
            }
            other => wrong.push(format!("{id}: {other:?}")),
        }
        for seed in 0..page.seeds {
            let row = format!("| {} | {seed} | ", scenario.title);
            if !text.lines().any(|it| it.starts_with(&row)) {
                wrong.push(format!("no row: {row}"));
            }
        }
    }
    let row = |words: &str| format!("\n| {words} | ");
    let manners = Manner::ALL.iter().map(|it| row(it.words()));
    let sequences = Sequence::ALL.iter().map(|it| row(it.words()));
    let habits = Policy::ALL.iter().map(|it| format!(" | {} |", it.words()));
    wrong.extend(manners.chain(sequences).chain(habits).filter(|words| !text.contains(words)));
    assert!(wrong.is_empty(), "write the page with `quarterturn examine --write docs`: {wrong:#?}");
}

/// Some bare benches of all that there are, drawn by a seed: one fair run each, with manners of its
/// own, and two habits.
#[test]
fn slow_faults_are_marked_rightly_from_both_sides() {
    let mut benches = fault_benches();
    assert!(benches.len() > 300, "{}", benches.len());
    let mut chance = stream(DRAWN_WITH, "examined-benches");
    let mut drawn = Vec::new();
    for i in 0..BENCHES {
        let among = u32::try_from(benches.len()).unwrap();
        let at = usize::try_from(chance.below(among)).unwrap();
        drawn.push((i, benches.swap_remove(at)));
    }
    let told = on_threads(drawn, |(i, bench)| {
        let name = format!("{:?} {} {}", bench.fuel, bench.fault, bench.severity);
        if catalogue::is_missed(bench.fuel, bench.fault, &bench.severity) {
            return Vec::new();
        }
        let habits = [2 * i, 2 * i + 1].map(|at| Policy::ALL[at % Policy::ALL.len()]);
        let proof = bench.try_marks([u64::try_from(i).unwrap()], habits).unwrap();
        let mut told = misses(&name, &proof.fair, &proof.blind);
        told.extend(proof.ending.is_none().then(|| format!("{name}: no right ending")));
        told
    });
    assert!(told.is_empty(), "{}", told.join("\n"));
}

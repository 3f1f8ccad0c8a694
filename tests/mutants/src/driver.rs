//! Tries the mutants on the tests; `tests/mutants/run` puts this file into a copy of the tests, and
//! the list `TESTS` of what it runs below it.
//!
//! Quick tests come first, and a mutant that one of them has seen is left alone by the rest. What
//! is found is added to the file `MUTANT_RESULTS` at once: after a stop it goes on from there.

use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::io::Write as _;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::time::Instant;

unsafe extern "C" {
    safe fn clock() -> i64;
}

use quarterturn::mutant::{Fate, begin, divided, noted, probed, whole};

use crate::mutants_kept as kept;

/// A test that takes longer than this with its plays kept waits until the quicker ones are done.
const QUICK_S: f64 = 0.25;
/// A test that plays jobs longer than this is probed first: to divide with them is dear.
const PLAYS_S: f64 = 0.3;
/// Time of the processor that a mutant has at least, in seconds.
const LEAST_S: f64 = 10.0;
/// A mutant that makes a test so many times longer has hung it.
const LONGER: f64 = 20.0;

/// What the files of tests are about. `MUTANT_NEAR` tries only these mutants, which is soon done;
/// what is alive then is tried on all tests.
const ABOUT: &[(&str, &[&str])] = &[
    ("marking::limits", &["adjusting", "turning", "unsafe_left"]),
    ("marking::ports", &["joints", "grounds", "control"]),
    ("marking::hazards", &["safety", "house", "closing", "conversion"]),
    ("marking::hose", &["test_setup", "instruments", "measuring", "unread"]),
    (
        "marking::left",
        &[
            "control",
            "closing",
            "unsafe_left",
            "lock_up",
            "repairs",
            "faults_left",
            "ask",
            "ledger",
        ],
    ),
    ("marking::scale", &["rules/", "score", "trace"]),
    ("marking::cycles", &["cycle"]),
    (
        "marking::standing",
        &[
            "evaluate",
            "due",
            "ended",
            "score",
            "judged",
            "verdict",
            "combustion",
            "conversion",
            "ask",
            "ledger",
        ],
    ),
    ("marking::findings", &["marking/causes"]),
    ("marking::told", &["debrief", "unsafe_left"]),
    ("marking::digits", &["numbers", "measuring", "spells", "unread"]),
    ("marking::work", &["shown", "occasion", "work", "safety", "joints", "control", "ended"]),
    ("marking::joints", &["joints"]),
    ("marking::numbers", &["numbers", "measuring", "spells"]),
    ("marking::slips", &["measuring", "numbers"]),
    ("marking::unread", &["unread", "repairs"]),
    ("marking::lock_up", &["unread", "spells", "numbers", "lock_up"]),
    ("marking::grounds", &["grounds", "joints", "conversion", "ended"]),
    ("marking::calls", &["closing", "grounds"]),
    ("marking::book", &["rules/", "score", "judged", "evaluate"]),
    ("marking::adjusting", &["adjusting", "turning"]),
    ("marking::arrival", &["house", "conversion", "safety", "closing"]),
    ("marking::burners", &["adjusting", "unsafe_left", "turning", "combustion"]),
    ("marking::competencies", &["shown", "occasion", "work", "competency"]),
    ("marking::cycle", &["cycle"]),
    ("marking::debrief", &["debrief", "trace", "deed"]),
    ("marking::leaving", &["control", "cycle", "joints"]),
    ("marking::measured", &["instruments", "test_setup", "turning"]),
    ("marking::played", &["numbers", "adjusting", "closing"]),
    ("marking::practice", &["evaluate", "ended", "shown"]),
    ("marking::spells", &["spells", "numbers"]),
    ("marking::supply", &["lock_up"]),
    ("marking::verdict", &["verdict", "evaluate", "due", "ended", "score", "judged"]),
    ("faults::", &["faults_left", "causes", "unsafe_left", "repairs", "closing", "lock_up"]),
    ("debriefs::", &["debrief"]),
    ("bench::answers", &["safety", "control"]),
    ("technician::causes", &["causes"]),
    ("scenario::", &["rules/"]),
];

/// A test that waits for the quicker ones.
struct Slow {
    place: usize,
    seconds: f64,
    cold: f64,
    reached: Reached,
}

/// Mutants that a test reaches.
#[derive(Default, Clone)]
struct Reached {
    /// Where its plays are kept, on its own thread: the process can divide there.
    warm: Vec<u32>,
    /// Only in what is kept, or only on another thread.
    cold: Vec<u32>,
}

/// What stands in the file of results, and the file.
struct Results {
    file: fs::File,
    names: BTreeMap<u32, String>,
    dead: BTreeSet<u32>,
    done: BTreeSet<String>,
    only_near: bool,
}

impl Results {
    fn read() -> Self {
        let root = env!("CARGO_MANIFEST_DIR");
        let listed = fs::read_to_string(format!("{root}/mutants.txt")).unwrap();
        let of = |line: &str| {
            let mut parts = line.split('\t');
            Some((parts.next()?.parse().ok()?, parts.next()?.to_owned()))
        };
        let names: BTreeMap<u32, String> = listed.lines().filter_map(of).collect();
        let path = std::env::var("MUTANT_RESULTS").unwrap();
        let text = fs::read_to_string(&path).unwrap_or_default();
        let only_near = std::env::var_os("MUTANT_NEAR").is_some();
        let (mut gone, mut done) = (BTreeSet::new(), BTreeSet::new());
        for line in text.lines() {
            match line.split('\t').collect::<Vec<_>>().as_slice() {
                ["near", test, hash] if only_near => drop(done.insert(format!("{test} {hash}"))),
                ["done", test, hash] => drop(done.insert(format!("{test} {hash}"))),
                ["killed" | "timed out", name, _] => drop(gone.insert((*name).to_owned())),
                _ => {}
            }
        }
        let dead = names.iter().filter(|(_, it)| gone.contains(*it)).map(|(&it, _)| it).collect();
        let file = fs::File::options().create(true).append(true).open(path).unwrap();
        Self { file, names, dead, done, only_near }
    }

    /// Of these mutants the ones that are alive; where only near ones are tried, those.
    fn alive(&self, test: &str, of: &[u32]) -> Vec<u32> {
        let about = ABOUT.iter().find(|(tests, _)| test.starts_with(tests)).map(|it| it.1);
        let is_near = |number: u32| {
            let file = self.names[&number].split(' ').next().unwrap_or_default();
            about.is_some_and(|about| about.iter().any(|it| file.contains(it)))
        };
        let all = of.iter().copied().filter(|it| !self.dead.contains(it));
        all.filter(|&it| !self.only_near || is_near(it)).collect()
    }

    fn take(&mut self, test: &str, fates: &[(u32, Fate)]) {
        for (number, fate) in fates {
            let how = match fate {
                Fate::Passed => continue,
                Fate::Failed => "killed",
                Fate::TimedOut => "timed out",
            };
            writeln!(self.file, "{how}\t{}\t{test}", self.names[number]).unwrap();
            self.dead.insert(*number);
        }
    }

    fn done(&mut self, test: &str, hash: &str) {
        let how = if self.only_near { "near" } else { "done" };
        writeln!(self.file, "{how}\t{test}\t{hash}").unwrap();
    }
}

/// Runs a test: 0 where it passes.
fn run(test: fn()) -> i32 {
    kept::begin();
    i32::from(catch_unwind(AssertUnwindSafe(test)).is_err())
}

/// Runs a test; what it reaches here and on other threads, and how long it takes. None where it
/// fails.
fn noted_run(name: &str, test: fn()) -> Option<(BTreeSet<u32>, BTreeSet<u32>, f64)> {
    let begun = clock();
    let mut code = 0;
    let (here, aside) = noted(|| code = run(test));
    let seconds = (clock() - begun) as f64 / 1e6;
    if code != 0 {
        println!("without a mutant this test fails: {name}");
        return None;
    }
    Some((here.into_iter().collect(), aside.into_iter().collect(), seconds))
}

fn limit_s(seconds: f64) -> u32 {
    (LONGER * seconds).max(LEAST_S).ceil() as u32
}

/// The process divides where a mutant is reached; what was played before is kept.
fn divide(results: &mut Results, name: &str, test: fn(), reached: &Reached, took: (f64, f64)) {
    let (cold_s, warm_s) = took;
    let mut code = 0;
    let alive = results.alive(name, &reached.warm);
    let wanted = if cold_s > PLAYS_S { probed(&alive, || code = run(test)) } else { alive };
    assert_eq!(code, 0, "asked again, this test fails: {name}");
    if !wanted.is_empty() {
        let fates = divided(&wanted, limit_s(warm_s), || run(test));
        results.take(name, &fates);
    }
}

#[test]
#[ignore = "tests/mutants/run runs it"]
fn try_all() {
    let hands = std::env::var("MUTANT_HANDS").ok().and_then(|it| it.parse().ok()).unwrap_or(2);
    begin(hands);
    if std::env::var_os("MUTANT_LOUD").is_none() {
        std::panic::set_hook(Box::new(|_| ()));
    }
    let mut results = Results::read();
    let mut slow = Vec::new();
    let begun = Instant::now();
    for (place, &(name, hash, test)) in TESTS.iter().enumerate() {
        let is_about = ABOUT.iter().any(|(tests, _)| name.starts_with(tests));
        if results.done.contains(&format!("{name} {hash}")) || (results.only_near && !is_about) {
            continue;
        }
        kept::forget();
        let Some((cold, aside, cold_s)) = noted_run(name, test) else { continue };
        if cold.is_empty() && aside.is_empty() {
            results.done(name, hash);
            continue;
        }
        let Some((warm, _, warm_s)) = noted_run(name, test) else { continue };
        let reached = Reached {
            cold: cold.difference(&warm).chain(&aside).copied().collect(),
            warm: warm.into_iter().collect(),
        };
        if warm_s <= QUICK_S {
            divide(&mut results, name, test, &reached, (cold_s, warm_s));
        }
        let left =
            results.alive(name, &reached.warm).len() + results.alive(name, &reached.cold).len();
        println!(
            "{:6.0} s  {name}: {cold_s:.2} s, kept {warm_s:.3} s, reaches {}, {left} alive",
            begun.elapsed().as_secs_f64(),
            reached.warm.len() + reached.cold.len(),
        );
        if warm_s > QUICK_S || !results.alive(name, &reached.cold).is_empty() {
            slow.push(Slow { place, seconds: warm_s, cold: cold_s, reached });
        } else {
            results.done(name, hash);
        }
    }
    try_slow(&mut results, slow, begun);
    println!(
        "{} of {} mutants are alive",
        results.names.len() - results.dead.len(),
        results.names.len()
    );
}

/// The tests that waited for the quicker ones, the quickest first.
fn try_slow(results: &mut Results, mut slow: Vec<Slow>, begun: Instant) {
    slow.sort_by(|a, b| a.seconds.total_cmp(&b.seconds));
    let most_s: f64 =
        std::env::var("MUTANT_MOST_S").ok().and_then(|it| it.parse().ok()).unwrap_or(f64::MAX);
    for it in &slow {
        let (name, hash, test) = TESTS[it.place];
        if it.seconds > most_s {
            println!("left out, {:.1} s: {name}", it.seconds);
            continue;
        }
        if it.seconds > QUICK_S && !results.alive(name, &it.reached.warm).is_empty() {
            kept::forget();
            let _ = noted_run(name, test);
            divide(results, name, test, &it.reached, (it.cold, it.seconds));
        }
        kept::forget();
        let wanted = results.alive(name, &it.reached.cold);
        if it.cold <= most_s {
            let fates = whole(&wanted, limit_s(it.cold), || run(test));
            results.take(name, &fates);
        }
        let (warm, cold) =
            (results.alive(name, &it.reached.warm), results.alive(name, &it.reached.cold));
        println!(
            "{:6.0} s  slow {name}: kept {:.2} s, {} and {} alive",
            begun.elapsed().as_secs_f64(),
            it.seconds,
            warm.len(),
            cold.len()
        );
        results.done(name, hash);
    }
}

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
    ("marking::limits", &["ask", "adjusting", "turning", "unsafe_left"]),
    ("marking::ports", &["joints", "grounds", "control", "ask"]),
    ("marking::hazards", &["safety", "house", "closing", "conversion", "evaluate"]),
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
    ("marking::cycles", &["cycle", "evaluate"]),
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
            "required",
        ],
    ),
    ("marking::findings", &["marking/causes", "occasion"]),
    ("marking::faults_left", &["faults_left", "closing", "repairs"]),
    ("marking::told_causes", &["debrief/", "marking/causes"]),
    ("marking::told_sheet", &["debrief/", "deed"]),
    ("marking::told", &["debrief", "unsafe_left", "deed"]),
    ("marking::digits", &["numbers", "measuring", "spells", "unread"]),
    ("marking::work", &["shown", "occasion", "work", "safety", "joints", "control", "ended"]),
    ("marking::joints", &["joints"]),
    ("marking::numbers", &["numbers", "measuring", "spells"]),
    (
        "marking::so_far",
        &["observer", "ask", "ledger", "safety", "verdict", "conversion", "evaluate", "piping"],
    ),
    ("marking::slips", &["measuring", "numbers"]),
    ("marking::unread", &["unread", "repairs", "spells", "numbers"]),
    ("marking::lock_up", &["unread", "spells", "numbers", "lock_up"]),
    ("marking::grounds", &["ledger", "grounds", "joints", "conversion", "ended"]),
    ("marking::calls", &["closing", "grounds"]),
    ("marking::book", &["rules/", "score", "judged", "evaluate"]),
    ("marking::adjusting", &["adjusting", "turning"]),
    ("marking::asked", &["required", "occasion", "work"]),
    ("marking::arrival", &["house", "conversion", "safety", "closing"]),
    ("marking::burners", &["adjusting", "unsafe_left", "turning", "combustion"]),
    ("marking::competencies", &["shown", "occasion", "work", "competency"]),
    ("marking::cycle", &["cycle"]),
    ("instruments::taps", &["joints", "measuring"]),
    ("marking::debrief", &["debrief", "trace", "deed", "observer"]),
    ("marking::leaving", &["control", "cycle", "joints"]),
    ("marking::measured", &["instruments", "test_setup", "turning", "rise"]),
    ("marking::played", &["numbers", "adjusting", "closing", "observer"]),
    ("marking::practice", &["evaluate", "ended", "shown"]),
    ("marking::spells", &["spells", "numbers"]),
    ("marking::supply", &["lock_up"]),
    ("marking::drift", &["causes"]),
    ("marking::named", &["marking/causes", "ledger"]),
    ("scenario::rule_changes", &["rules/"]),
    ("marking::nonsense", &["numbers", "measuring", "debrief/"]),
    ("marking::work_left", &["work", "shown", "occasion", "control"]),
    ("marking::piping", &["piping", "required", "joints", "numbers", "closing", "control"]),
    ("marking::rise", &["rise"]),
    ("marking::mistakes", &["rules/"]),
    ("marking::verdict", &["verdict", "evaluate", "due", "ended", "score", "judged"]),
    ("faults::", &["faults_left", "causes", "unsafe_left", "repairs", "closing", "lock_up"]),
    ("debriefs::", &["debrief", "deed"]),
    ("bench::answers", &["safety", "control"]),
    ("technician::causes", &["causes"]),
    ("instruments::hand_over", &["required"]),
];

/// A test, and the sources whose mutants it is to try.
struct Task {
    name: &'static str,
    hash: &'static str,
    test: fn(),
    files: BTreeSet<String>,
}

/// A test that waits for the quicker ones.
struct Slow {
    task: Task,
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

/// A mutant as the list of the copy names it.
struct Mutant {
    name: String,
    /// Text of its source, as a number: what was found in another text counts no more.
    text: String,
}

impl Mutant {
    fn file(&self) -> &str {
        self.name.split(' ').next().unwrap_or_default()
    }
}

/// What stands in the file of results, and the file.
struct Results {
    file: fs::File,
    mutants: BTreeMap<u32, Mutant>,
    /// Sources that are tried, with their text as a number.
    texts: BTreeMap<String, String>,
    dead: BTreeSet<u32>,
    /// Tests with their text, and the text of a source that they have tried.
    done: BTreeSet<(String, String, String)>,
    only_near: bool,
}

impl Results {
    fn read() -> Self {
        let root = env!("CARGO_MANIFEST_DIR");
        let listed = fs::read_to_string(format!("{root}/mutants.txt")).unwrap();
        let of = |line: &str| match *line.split('\t').collect::<Vec<_>>().as_slice() {
            [number, name, _, text] => {
                Some((number.parse().ok()?, Mutant { name: name.to_owned(), text: text.to_owned() }))
            }
            _ => None,
        };
        let mutants: BTreeMap<u32, Mutant> = listed.lines().filter_map(of).collect();
        let wanted = std::env::var("MUTANT_FILE").unwrap_or_default();
        let is_wanted = |file: &str| {
            wanted.is_empty() || wanted.split([' ', ',']).any(|it| !it.is_empty() && file.contains(it))
        };
        let texts = mutants
            .values()
            .filter(|it| is_wanted(it.file()))
            .map(|it| (it.file().to_owned(), it.text.clone()))
            .collect();
        let path = std::env::var("MUTANT_RESULTS").unwrap();
        let text = fs::read_to_string(&path).unwrap_or_default();
        let only_near = std::env::var_os("MUTANT_NEAR").is_some();
        let (mut gone, mut done) = (BTreeSet::new(), BTreeSet::new());
        for line in text.lines() {
            match *line.split('\t').collect::<Vec<_>>().as_slice() {
                [how @ ("near" | "done"), test, hash, sources] if only_near || how == "done" => {
                    let all = sources.split(' ');
                    done.extend(all.map(|it| (test.to_owned(), hash.to_owned(), it.to_owned())));
                }
                ["killed" | "timed out", name, _, text] => {
                    drop(gone.insert((name.to_owned(), text.to_owned())));
                }
                _ => {}
            }
        }
        let is_gone = |it: &Mutant| gone.contains(&(it.name.clone(), it.text.clone()));
        let dead = mutants.iter().filter(|(_, it)| is_gone(it)).map(|(&it, _)| it).collect();
        let file = fs::File::options().create(true).append(true).open(path).unwrap();
        Self { file, mutants, texts, dead, done, only_near }
    }

    /// What a test has to try: of the sources that are asked for (where only near ones are tried, of
    /// those that it is about) the ones with something alive that it has not tried as they are. None
    /// where there is nothing.
    fn task(&self, (name, hash, test): (&'static str, &'static str, fn())) -> Option<Task> {
        let about = ABOUT.iter().find(|(tests, _)| name.starts_with(tests)).map(|it| it.1);
        let is_near =
            |file: &str| about.is_some_and(|about| about.iter().any(|it| file.contains(it)));
        let is_done = |text: &str| {
            self.done.contains(&(name.to_owned(), hash.to_owned(), text.to_owned()))
        };
        let alive: BTreeSet<&str> = self
            .mutants
            .iter()
            .filter(|(number, _)| !self.dead.contains(number))
            .map(|(_, it)| it.file())
            .collect();
        let files: BTreeSet<String> = self
            .texts
            .iter()
            .filter(|(file, _)| !self.only_near || is_near(file))
            .filter(|(file, text)| alive.contains(file.as_str()) && !is_done(text))
            .map(|(file, _)| file.clone())
            .collect();
        (!files.is_empty()).then_some(Task { name, hash, test, files })
    }

    /// Of these mutants the ones that are alive and the test is to try.
    fn alive(&self, task: &Task, of: &[u32]) -> Vec<u32> {
        let all = of.iter().copied().filter(|it| !self.dead.contains(it));
        all.filter(|it| task.files.contains(self.mutants[it].file())).collect()
    }

    fn take(&mut self, task: &Task, fates: &[(u32, Fate)]) {
        for (number, fate) in fates {
            let how = match fate {
                Fate::Passed => continue,
                Fate::Failed => "killed",
                Fate::TimedOut => "timed out",
            };
            let Mutant { name, text } = &self.mutants[number];
            writeln!(self.file, "{how}\t{name}\t{}\t{text}", task.name).unwrap();
            self.dead.insert(*number);
        }
    }

    fn done(&mut self, task: &Task) {
        let how = if self.only_near { "near" } else { "done" };
        let texts: Vec<&str> = task.files.iter().map(|it| self.texts[it].as_str()).collect();
        writeln!(self.file, "{how}\t{}\t{}\t{}", task.name, task.hash, texts.join(" ")).unwrap();
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
fn divide(results: &mut Results, task: &Task, reached: &Reached, took: (f64, f64)) {
    let (cold_s, warm_s) = took;
    let mut code = 0;
    let alive = results.alive(task, &reached.warm);
    let wanted =
        if cold_s > PLAYS_S { probed(&alive, || code = run(task.test)) } else { alive };
    assert_eq!(code, 0, "asked again, this test fails: {}", task.name);
    if !wanted.is_empty() {
        let fates = divided(&wanted, limit_s(warm_s), || run(task.test));
        results.take(task, &fates);
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
    for &test in TESTS {
        let Some(task) = results.task(test) else { continue };
        slow.extend(try_quick(&mut results, task, begun));
    }
    try_slow(&mut results, slow, begun);
    let of = |it: &&u32| results.texts.contains_key(results.mutants[*it].file());
    let (all, dead) = (results.mutants.keys().filter(of), results.dead.iter().filter(of));
    let all = all.count();
    println!("{} of {all} mutants are alive", all - dead.count());
}

/// Tries what a test reaches, if it is a quick one; else it waits.
fn try_quick(results: &mut Results, task: Task, begun: Instant) -> Option<Slow> {
    kept::forget();
    let (cold, aside, cold_s) = noted_run(task.name, task.test)?;
    let all: Vec<u32> = cold.union(&aside).copied().collect();
    if results.alive(&task, &all).is_empty() {
        results.done(&task);
        return None;
    }
    let (warm, _, warm_s) = noted_run(task.name, task.test)?;
    let reached = Reached {
        cold: cold.difference(&warm).chain(&aside).copied().collect(),
        warm: warm.into_iter().collect(),
    };
    if warm_s <= QUICK_S {
        divide(results, &task, &reached, (cold_s, warm_s));
    }
    let left = [&reached.warm, &reached.cold].map(|of| results.alive(&task, of).len());
    println!(
        "{:6.0} s  {}: {cold_s:.2} s, kept {warm_s:.3} s, reaches {}, {} alive",
        begun.elapsed().as_secs_f64(),
        task.name,
        reached.warm.len() + reached.cold.len(),
        left[0] + left[1]
    );
    if (warm_s > QUICK_S && left[0] > 0) || left[1] > 0 {
        return Some(Slow { task, seconds: warm_s, cold: cold_s, reached });
    }
    results.done(&task);
    None
}

/// The tests that waited for the quicker ones, the quickest first.
fn try_slow(results: &mut Results, mut slow: Vec<Slow>, begun: Instant) {
    slow.sort_by(|a, b| a.seconds.total_cmp(&b.seconds));
    let most_s: f64 =
        std::env::var("MUTANT_MOST_S").ok().and_then(|it| it.parse().ok()).unwrap_or(f64::MAX);
    for it in &slow {
        let task = &it.task;
        if it.seconds > most_s {
            println!("left out, {:.1} s: {}", it.seconds, task.name);
            continue;
        }
        if it.seconds > QUICK_S && !results.alive(task, &it.reached.warm).is_empty() {
            kept::forget();
            let _ = noted_run(task.name, task.test);
            divide(results, task, &it.reached, (it.cold, it.seconds));
        }
        kept::forget();
        let wanted = results.alive(task, &it.reached.cold);
        if it.cold > most_s && !wanted.is_empty() {
            println!("left out in part, {:.1} s: {}", it.cold, task.name);
            continue;
        }
        let fates = whole(&wanted, limit_s(it.cold), || run(task.test));
        results.take(task, &fates);
        let [warm, cold] =
            [&it.reached.warm, &it.reached.cold].map(|of| results.alive(task, of).len());
        println!(
            "{:6.0} s  slow {}: kept {:.2} s, {warm} and {cold} alive",
            begun.elapsed().as_secs_f64(),
            task.name,
            it.seconds
        );
        results.done(task);
    }
}

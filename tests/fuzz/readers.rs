//! What the fuzzer does with bytes, and what must hold for all of them. The core's tests do the same
//! with the kept corpora, so that they count without the fuzzer.

#![allow(dead_code, reason = "each fuzz target uses one of them")]
#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a failure is what is looked for")]

use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::EventKind;
use quarterturn::marking::debrief::{Job, debrief};
use quarterturn::marking::{Brief, Observer};
use quarterturn::record::{self, Ended, Header, Recorder, ScenarioText, What};
use quarterturn::scenario::builtin::{Builtin, HEALTHY, JOBS};
use quarterturn::scenario::{self, ProblemLevel, Scenario};
use quarterturn::technician::drive::Nobody;
use quarterturn::technician::play;
use quarterturn::technician::script::{self, Order, ScriptPlayer, action_line};

/// Longest play of one input, in ticks.
const MOST_TICKS: u64 = 1_500;
/// Longest play of one script, in seconds.
const MOST_S: u64 = 6;

/// A scenario: every problem has a place in the text; what loads can be explained, drawn, set up and
/// run, and its rules can be read.
pub fn scenario(bytes: &[u8]) {
    let found = scenario::check_bytes("fuzz.ron", bytes);
    let text = String::from_utf8_lossy(bytes);
    let lines = text.lines().count();
    for problem in &found {
        assert!((1..=lines + 1).contains(&problem.line) && problem.column >= 1, "{problem:?}");
    }
    let _ = scenario::to_text(&found, &text);
    let _ = scenario::to_json(&found);
    let Ok(text) = core::str::from_utf8(bytes) else {
        assert!(!found.is_empty());
        return;
    };
    let _ = scenario::explain(text.lines().next().unwrap_or_default());
    let refused = found.iter().any(|problem| problem.severity == ProblemLevel::Error);
    match scenario::load(text) {
        Ok(it) => {
            assert!(!refused, "loaded with an error: {found:?}");
            let _ = it.marking.rule_book();
            for seed in [0, 7, u64::MAX] {
                run(&it, seed);
            }
        }
        Err(problems) => {
            assert!(refused, "refused without an error");
            assert_eq!(problems.len(), found.len());
        }
    }
}

/// Sets a bench up and lets some seconds pass: every step converges, every number is one.
fn run(scenario: &Scenario, seed: u64) {
    let mut bench = Bench::new(scenario.draw(seed));
    for _ in 0..50 {
        let _ = bench.seen();
        bench.step();
    }
    for event in bench.take_events() {
        assert!(event.what != EventKind::NotConverged, "a step did not converge");
    }
    let truth = bench.truth();
    assert!(truth.supply_pa.is_finite() && truth.manifold_pa.is_finite(), "{truth:?}");
    assert!(bench.worst_imbalance() <= 1e-9, "{}", bench.worst_imbalance());
}

/// A script: what is wrong has a place; what reads can be played, and its actions can be printed and
/// read again.
pub fn script(bytes: &[u8]) {
    let lines = String::from_utf8_lossy(bytes).lines().count();
    let it = match script::read_bytes("fuzz.script", bytes) {
        Ok(it) => it,
        Err(problems) => {
            assert!(!problems.is_empty());
            for problem in &problems {
                assert!((1..=lines + 1).contains(&problem.line) && problem.column >= 1);
            }
            let _ = scenario::to_text(&problems, &String::from_utf8_lossy(bytes));
            return;
        }
    };
    for step in &it.steps {
        if let Order::Do(action) = &step.order {
            reads_again(action);
        }
    }
    let mut bench = bench_of(&HEALTHY[0], 1);
    let mut player = ScriptPlayer::new(it);
    play(&mut bench, &mut player, MOST_S, &mut Nobody);
    let _ = (player.stop(), player.left_over());
}

/// An action's line in a script is read as the same action.
fn reads_again(action: &Action) {
    let line = action_line(action);
    let again = script::read("again.script", &line);
    let orders = again.as_ref().map(|it| it.steps.iter().map(|step| &step.order).collect());
    let orders: Vec<&Order> = orders.unwrap_or_else(|problems| panic!("{line}: {problems:?}"));
    assert_eq!(orders, [&Order::Do(action.clone())], "{line}");
}

/// A record: any bytes as they are, and once more with a true chain of checksums around their lines,
/// since no fuzzer guesses those. What reads is written again to the byte, and played when it is
/// short.
pub fn record(bytes: &[u8]) {
    one_record(bytes);
    let text = String::from_utf8_lossy(bytes);
    one_record(sealed(text.lines().map(with_its_hash)).as_bytes());
}

fn one_record(bytes: &[u8]) {
    let it = match record::read(bytes) {
        Ok(it) => it,
        Err(fault) => {
            let lines = bytes.iter().filter(|&&byte| byte == b'\n').count();
            assert!((1..=lines + 1).contains(&fault.line) && fault.column >= 1, "{fault}");
            assert!(fault.to_string().len() < 2_000, "{fault}");
            return;
        }
    };
    assert!(it.whole_bytes <= bytes.len());
    if it.model == Some(record::MODEL_VERSION) {
        let again = record::whole(&it.header, &it.lines).expect("what was read can be written");
        assert!(again.as_bytes() == &bytes[..it.whole_bytes], "not the same bytes");
    }
    if it.last_tick() <= MOST_TICKS {
        let mut observer: Option<Observer> = None;
        let played = record::replay(&it, &mut |bench, events| {
            observer.get_or_insert_with(|| Observer::new(bench)).tick(bench, events);
        });
        if let (Ok(played), Some(observer)) = (played, observer) {
            marked(observer, &played.scenario);
        }
        let _ = record::resume(&it, &mut |_, _| {}).map(|it| it.bench.digest());
    }
}

/// A play: a line with the number of a job and a seed, then lines of ticks to wait and an action as
/// records write it. What is recorded of it is read, replayed and gone on with to the bit.
pub fn replay(bytes: &[u8]) {
    let text = String::from_utf8_lossy(bytes);
    let mut lines = text.lines();
    let (job, seed) = lines.next().and_then(first).unwrap_or((&JOBS[0], 1));
    let mut bench = bench_of(job, seed);
    let header = Header {
        program: "fuzz".to_owned(),
        scenario: ScenarioText::new(job.id, job.text),
        seed,
        learner: None,
        help: None,
    };
    let mut recorder = Recorder::begin(&header, String::new()).unwrap();
    for (ticks, action) in lines.filter_map(timed) {
        for _ in 0..ticks.min(MOST_TICKS - bench.tick().min(MOST_TICKS)) {
            pass(&mut bench, &mut recorder);
        }
        let _ = bench.apply(&action);
        recorder.acted(&bench, &action);
        reads_again(&action);
        if bench.over().is_some() {
            break;
        }
    }
    recorder.ticked(&bench);
    assert_eq!(recorder.trouble(), None);
    let text = recorder.end(&bench, Ended::of(bench.over())).unwrap();
    let it = record::read(text.as_bytes()).unwrap_or_else(|fault| panic!("{fault}"));
    let mut observer: Option<Observer> = None;
    let played = record::replay(&it, &mut |bench, events| {
        observer.get_or_insert_with(|| Observer::new(bench)).tick(bench, events);
    })
    .unwrap();
    assert_eq!(played.differs, None);
    assert_eq!(played.bench.digest(), bench.digest());
    assert!(played.compared > 0);
    marked(observer.unwrap(), &played.scenario);
    // Without its end it goes on from where it was.
    let cut = text.trim_end().rfind('\n').unwrap() + 1;
    let half = record::read(&text.as_bytes()[..cut]).unwrap();
    let resumed = record::resume(&half, &mut |_, _| {}).unwrap();
    let last = half.lines.last().is_some_and(|line| matches!(line.what, What::Mark(_)));
    assert!(!last || resumed.bench.tick() == half.last_tick());
}

fn pass(bench: &mut Bench, recorder: &mut Recorder<String>) {
    recorder.ticked(bench);
    bench.step();
    for event in bench.take_events() {
        assert!(event.what != EventKind::NotConverged, "a step did not converge");
    }
}

fn first(line: &str) -> Option<(&'static Builtin, u64)> {
    let (job, seed) = line.split_once(' ')?;
    let job = JOBS.iter().chain(&HEALTHY).nth(job.parse().ok()?)?;
    Some((job, seed.parse().ok()?))
}

fn timed(line: &str) -> Option<(u64, Action)> {
    let (ticks, action) = line.split_once(' ')?;
    Some((ticks.parse().ok()?, serde_json::from_str(action).ok()?))
}

fn bench_of(job: &Builtin, seed: u64) -> Bench {
    Bench::new(scenario::load(job.text).expect("it ships").draw(seed))
}

/// Marks and debrief of whatever was played.
fn marked(observer: Observer, scenario: &Scenario) {
    let Ok(book) = scenario.marking.rule_book() else { return };
    let brief = Brief { right_endings: scenario.right_endings(0) };
    let marks = observer.marks(&book, &brief);
    let note = scenario.debrief.as_deref();
    let job = Job { brief: &brief, id: None, note, night: None };
    assert!(!debrief(&observer.ledger, marks, observer.trace, job).text().is_empty());
}

/// Lines of JSON, each without its closing brace, sealed into a record as the format says.
pub fn sealed<T: AsRef<str>>(bodies: impl Iterator<Item = T>) -> String {
    let mut sum = record::FORMAT.to_owned();
    let mut text = String::new();
    for body in bodies {
        let body = body.as_ref();
        let hash = blake3::hash(format!("{sum}\n{body}").as_bytes()).to_hex();
        hash.as_str()[..16].clone_into(&mut sum);
        text.push_str(&format!("{body},\"sum\":\"{sum}\"}}\n"));
    }
    text
}

/// A header's line whose scenario's hash is that of its text.
fn with_its_hash(line: &str) -> String {
    let told =
        |value: &serde_json::Value, name: &str| value["scenario"][name].as_str().map(str::to_owned);
    let whole: Result<serde_json::Value, _> = serde_json::from_str(&format!("{line}}}"));
    match whole.map(|it| (told(&it, "text"), told(&it, "hash"))) {
        Ok((Some(text), Some(hash))) if !hash.is_empty() => {
            line.replacen(&hash, &scenario::text_hash(&text), 1)
        }
        _ => line.to_owned(),
    }
}

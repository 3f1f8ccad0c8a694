//! Saved and gone on with: an attempt that was stopped at a random place, resumed from its record and
//! played on ends as if nothing had happened.

use quarterturn::bench::Bench;
use quarterturn::marking::{Brief, Marks, Observer};
use quarterturn::record::{Ended, Record, Recorder, What, read, replay, resume};
use quarterturn::rng::stream;
use quarterturn::scenario::builtin::JOBS;

use super::whole_of;
use crate::bench::golden::GOLDEN;

/// Places at which each attempt is cut.
const CUTS: u32 = 5;

/// The marks of a watched attempt, as the program gives them.
fn marks(observer: &Observer, record: &Record) -> Marks {
    let scenario = quarterturn::scenario::load(&record.header.scenario.text).unwrap();
    let book = scenario.marking.rule_book().unwrap();
    observer.marks(&book, &Brief { right_endings: scenario.right_endings(record.header.seed) })
}

/// Observes a replay of the whole.
fn watched(record: &Record) -> Observer {
    let mut observer: Option<Observer> = None;
    let it = replay(record, &mut |bench, events| {
        observer.get_or_insert_with(|| Observer::new(bench)).tick(bench, events);
    })
    .unwrap();
    assert_eq!(it.differs, None);
    observer.unwrap()
}

/// An attempt that went on.
struct GoneOn {
    bench: Bench,
    observer: Observer,
    text: String,
}

/// Cuts a record to so many bytes, resumes it and plays on what was played the first time.
fn go_on(text: &str, full: &Record, bytes: usize) -> GoneOn {
    let half = read(&text.as_bytes()[..bytes]).unwrap();
    let mut observer: Option<Observer> = None;
    let resumed = resume(&half, &mut |bench, events| {
        observer.get_or_insert_with(|| Observer::new(bench)).tick(bench, events);
    })
    .unwrap();
    let mut bench = resumed.bench;
    let mut observer = observer.unwrap_or_else(|| Observer::new(&bench));
    let kept = text[..half.whole_bytes].to_owned();
    let mut recorder = Recorder::go_on(resumed.writer, kept);
    let mut to_come = full.lines[half.lines.len()..].iter().peekable();
    while bench.over().is_none() {
        while let Some(line) = to_come.next_if(|line| line.tick == bench.tick()) {
            if let What::Do(action) = &line.what {
                let _ = bench.apply(action);
                recorder.acted(&bench, action);
            }
        }
        recorder.ticked(&bench);
        let events = bench.take_events();
        observer.tick(&bench, events);
        if bench.over().is_none() {
            bench.step();
        }
    }
    let text = recorder.end(&bench, Ended::of(bench.over())).unwrap();
    GoneOn { bench, observer, text }
}

/// Both jobs, two seeds, cut at random bytes and right after random lines: the same file to the
/// byte, the same bench to the bit (the golden one), the same events, the same marks.
#[test]
fn killed_anywhere_and_resumed_it_ends_the_same() {
    let mut stream = stream(1, "kill");
    for (job, seed) in JOBS.iter().flat_map(|job| [1, 2].map(|seed| (job, seed))) {
        let (text, digest) = whole_of(job, seed);
        let golden = GOLDEN.iter().find(|row| (row.0, row.1) == (job.id, seed)).unwrap();
        assert_eq!(digest, golden.3, "{}, seed {seed}", job.id);
        let full = read(text.as_bytes()).unwrap();
        let wanted = watched(&full);
        let header = text.find('\n').unwrap() + 1;
        for cut in 0..CUTS {
            let end = text.rfind('\n').unwrap() - 1;
            let span = u32::try_from(end - header).unwrap();
            let mut at = header + stream.below(span) as usize;
            if cut % 2 == 1 {
                at = text[..at].rfind('\n').unwrap() + 1;
            }
            let it = go_on(&text, &full, at);
            let place = format!("{}, seed {seed}, cut at byte {at}", job.id);
            assert_eq!(it.bench.digest(), digest, "{place}");
            assert!(it.text == text, "{place}");
            assert_eq!(it.observer.ledger.events, wanted.ledger.events, "{place}");
            assert_eq!(marks(&it.observer, &full), marks(&wanted, &full), "{place}");
        }
    }
}

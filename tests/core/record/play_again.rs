//! Replay and resume.

use quarterturn::hands::event::Event;
use quarterturn::record::{ReplayError, What, Writer, read, replay, resume, whole};
use quarterturn::scenario::builtin::JOBS;
use quarterturn::technician::drive::Witness;
use quarterturn::technician::{Technician, play};

use super::{bench, small, whole_job};

/// Every digest comes out again, and so do the events, to the last one.
#[test]
fn replay_reproduces_digests_and_events() {
    let (text, digest) = whole_job(2);
    let record = read(text.as_bytes()).unwrap();
    let mut events: Vec<Event> = Vec::new();
    let replayed = replay(&record, &mut |_, new| events.extend(new)).unwrap();
    let digests =
        record.lines.iter().filter(|l| matches!(l.what, What::Mark(_) | What::End { .. })).count();
    assert_eq!(replayed.differs, None);
    assert_eq!(replayed.compared, digests);
    assert_eq!(replayed.bench.digest(), digest);
    struct Keep(Vec<Event>);
    impl Witness for Keep {
        fn acted(
            &mut self,
            _: &quarterturn::bench::Bench,
            _: &quarterturn::hands::action::Action,
            _: Result<(), quarterturn::hands::refusal::Refusal>,
        ) {
        }
        fn ticked(&mut self, _: &quarterturn::bench::Bench, events: Vec<Event>) {
            self.0.extend(events);
        }
    }
    let mut live = Keep(Vec::new());
    let mut bench = bench(&JOBS[0], 2);
    let mut technician = Technician::new(&bench.setup().card);
    play(&mut bench, &mut technician, 3 * 3600, &mut live);
    assert_eq!(events, live.0);
}

/// A changed action is told with the first tick that comes out differently, though the chain is
/// sound.
#[test]
fn another_action_comes_out_differently() {
    let record = read(small().as_bytes()).unwrap();
    let mut lines = record.lines.clone();
    let at = lines.iter().position(|line| line.tick == 300).unwrap();
    lines[at].what = What::Do(quarterturn::hands::action::Action::PutDown);
    let forged = read(whole(&record.header, &lines).unwrap().as_bytes()).unwrap();
    let difference = replay(&forged, &mut |_, _| {}).unwrap().differs.unwrap();
    assert_eq!(difference.tick, 500);
    assert_eq!(forged.lines[difference.line - 2].tick, 500);
    // Another seed gives another bench, from its first mark on.
    let mut header = record.header.clone();
    header.seed += 1;
    header.scenario = quarterturn::record::ScenarioText::new(JOBS[0].id, JOBS[0].text);
    let forged = read(whole(&header, &record.lines).unwrap().as_bytes()).unwrap();
    assert_eq!(replay(&forged, &mut |_, _| {}).unwrap().differs.unwrap().tick, 0);
}

/// A finished attempt, and one that comes out differently, do not go on.
#[test]
fn what_cannot_go_on_is_refused() {
    let record = read(small().as_bytes()).unwrap();
    assert!(matches!(resume(&record, &mut |_, _| {}), Err(ReplayError::Finished)));
    let mut lines = record.lines[..record.lines.len() - 1].to_vec();
    let What::Mark(digest) = &mut lines[1].what else { panic!("a mark") };
    *digest ^= 1;
    let forged = read(whole(&record.header, &lines).unwrap().as_bytes()).unwrap();
    assert!(
        matches!(resume(&forged, &mut |_, _| {}), Err(ReplayError::Differs(it)) if it.line == 3)
    );
    let mut header = record.header.clone();
    header.scenario = quarterturn::record::ScenarioText::new("broken", "Scenario(");
    let (_, text) = Writer::begin(&header).unwrap();
    let broken = read(text.as_bytes()).unwrap();
    assert!(matches!(resume(&broken, &mut |_, _| {}), Err(ReplayError::Scenario(_))));
}

/// After a stop for danger the attempt goes back to before its last action: the lines up to there,
/// and a note that says so, are a record that goes on.
#[test]
fn an_attempt_goes_back_before_its_last_action() {
    let record = read(small().as_bytes()).unwrap();
    let last = record.lines.iter().rposition(|line| matches!(line.what, What::Do(_))).unwrap();
    let mut lines = record.lines[..last].to_vec();
    let tick = lines.last().unwrap().tick;
    let what = What::Note(quarterturn::record::Note::WentBack);
    lines.push(quarterturn::record::Line { tick, what });
    let text = whole(&record.header, &lines).unwrap();
    let back = read(text.as_bytes()).unwrap();
    assert!(!back.is_finished());
    let resumed = resume(&back, &mut |_, _| {}).unwrap();
    assert!(resumed.bench.over().is_none());
    assert_eq!(resumed.bench.tick(), 600);
}

//! What is done in the window stands in a record that replays to the same bench, also after a way
//! back and after the program was stopped in the middle.

use std::path::Path;

use quarterturn::app::session::Session;
use quarterturn::app::store::{FileStore, Store};
use quarterturn::hands::action::{Action, HandOver, PlugStep};
use quarterturn::panels::view::{Help, Tried};
use quarterturn::parts::{Door, Ending, Fitted, HandValve, OnOff, Place, Port, Tool};
use quarterturn::record::{self, Ended, What};

const JOB: &str = "propane-cold-morning";

fn store(folder: &Path) -> FileStore {
    FileStore::bare().recording_in(folder.to_owned())
}

fn play(session: &mut Session, action: Action, ticks: u32) {
    session.ask(action);
    for _ in 0..ticks {
        session.run();
    }
}

fn records(folder: &Path) -> Vec<record::Record> {
    let mut files: Vec<_> = std::fs::read_dir(folder)
        .expect("a folder")
        .map(|entry| entry.expect("an entry").path())
        .filter(|file| file.extension().is_some_and(|ending| ending == "jsonl"))
        .collect();
    files.sort();
    files
        .iter()
        .map(|file| record::read(&std::fs::read(file).expect("a file")).expect("a record"))
        .collect()
}

/// A whole attempt: its record ends as the job did and comes out the same when played again.
#[test]
fn a_finished_attempt_replays() {
    let folder = tempfile::tempdir().expect("a folder");
    let attempt = store(folder.path()).start(JOB, 7, Help::Coached).expect("it starts");
    let mut session = Session::new(attempt, 1);
    play(&mut session, Action::Go(Place::PlantRoom), 400);
    play(&mut session, Action::HandValve { hand_valve: HandValve::Range, degrees: 0 }, 10);
    assert!(session.refusal().is_some(), "the range is in the kitchen");
    play(&mut session, Action::Go(Place::Hall), 100);
    play(&mut session, Action::HandOver(said()), 10);
    assert!(session.over().is_some());
    let digest = session.finished().bench.digest();
    drop(session);
    let all = records(folder.path());
    assert_eq!(all.len(), 1);
    let again = record::replay(&all[0], &mut |_, _| {}).expect("it can be played");
    assert_eq!(again.differs, None);
    assert_eq!(again.bench.digest(), digest);
    let last = all[0].lines.last().map(|line| line.what.clone());
    assert_eq!(last, Some(What::End { how: Ended::HandedOver, digest }));
}

fn said() -> HandOver {
    HandOver { ending: Ending::InService, not_done: Vec::new() }
}

/// The program is stopped in the middle: the attempt is offered, and goes on at the last line.
#[test]
fn a_stopped_attempt_goes_on() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = store(folder.path());
    let mut session = Session::new(store.start(JOB, 7, Help::Solo).expect("it starts"), 1);
    play(&mut session, Action::Go(Place::PlantRoom), 900);
    drop(session);
    let offered = store.unfinished();
    assert_eq!(offered.len(), 1, "{offered:?}");
    let mut session = Session::new(store.resume(&offered[0].id).expect("it goes on"), 1);
    assert_eq!(session.seen().place, Place::PlantRoom);
    assert!(session.seen().tick >= 750, "{}", session.seen().tick);
    play(&mut session, Action::Go(Place::Hall), 100);
    play(&mut session, Action::HandOver(said()), 10);
    drop(session);
    let all = records(folder.path());
    let again = record::replay(&all[0], &mut |_, _| {}).expect("it can be played");
    assert!(all[0].is_finished() && again.differs.is_none());
    assert!(store.unfinished().is_empty());
}

/// A way back opens another record with the same beginning; both replay.
#[test]
fn a_way_back_is_another_record() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = store(folder.path());
    let mut session = Session::new(store.start(JOB, 7, Help::Solo).expect("it starts"), 1);
    play(&mut session, Action::Go(Place::PlantRoom), 300);
    play(&mut session, Action::Door { door: Door::Burner, to: Fitted::Off }, 300);
    play(&mut session, Action::FurnaceSwitch(OnOff::Off), 300);
    session.step_back();
    assert_eq!(session.seen().tick, 600);
    let digest = session.finished().bench.digest();
    drop(session);
    let all = records(folder.path());
    assert_eq!(all.len(), 2);
    let acts: Vec<usize> = all
        .iter()
        .map(|r| r.lines.iter().filter(|l| matches!(l.what, What::Do(_))).count())
        .collect();
    assert!(acts.contains(&3) && acts.contains(&2), "{acts:?}");
    for record in &all {
        let again = record::resume(record, &mut |_, _| {}).expect("it replays");
        if record.lines.iter().any(|l| l.what == What::Note(record::Note::WentBack)) {
            assert_eq!(again.bench.digest(), digest);
        }
    }
}

/// A folder that cannot be written is told, and the job goes on.
#[test]
fn trouble_with_the_record_is_told() {
    let folder = tempfile::tempdir().expect("a folder");
    let file = folder.path().join("not-a-folder");
    std::fs::write(&file, "").expect("a file");
    let attempt = store(&file).start(JOB, 7, Help::Solo).expect("it starts");
    let mut session = Session::new(attempt, 1);
    play(&mut session, Action::Go(Place::PlantRoom), 5);
    assert!(session.refusal().is_some_and(|said| said.contains("not being recorded")));
    assert_eq!(session.seen().place, Place::PlantRoom);
}

/// What became of a job is read from the folder: tried after a record, not passed by a result that
/// was not met, passed by one that was, for the text that was played only.
#[test]
fn the_list_says_what_became_of_a_job() {
    let folder = tempfile::tempdir().expect("a folder");
    let standing = || {
        let jobs = store(folder.path()).jobs();
        jobs.iter().find(|job| job.id == JOB).expect("it ships").standing
    };
    assert_eq!(standing(), Tried::Never);
    let mut store = store(folder.path());
    let mut session = Session::new(store.start(JOB, 7, Help::Solo).expect("it starts"), 1);
    let (taken, left) = session.hints();
    assert_eq!((taken.len(), left), (0, 3));
    session.take_hint();
    play(&mut session, Action::Go(Place::Hall), 100);
    play(&mut session, Action::HandOver(said()), 10);
    let view = store.debrief(&session.finished());
    assert_eq!(view.hints, "1 of the 3 hints on this job taken.");
    assert!(view.in_this_job.is_some_and(|lines| lines.len() == 3) && !view.note.is_empty());
    drop(session);
    assert_eq!(standing(), Tried::Tried(1));
    let results = folder.path().join("results.log");
    let line = std::fs::read_to_string(&results).expect("a result");
    let met = line.replace("\"met\":false", "\"met\":true");
    std::fs::write(&results, format!("{line}torn{met}")).expect("written");
    assert_eq!(standing(), Tried::Tried(1), "a torn line is no result");
    std::fs::write(&results, format!("{line}{}", met.replace("\"hash\":\"", "\"hash\":\"0")))
        .expect("written");
    assert_eq!(standing(), Tried::Tried(1), "another text was passed");
    std::fs::write(&results, format!("{line}{met}")).expect("written");
    assert_eq!(standing(), Tried::Passed(1));
}

/// The author's hints that were taken are still taken when the attempt is gone on with.
#[test]
fn hints_taken_are_kept() {
    let folder = tempfile::tempdir().expect("a folder");
    let mut store = store(folder.path());
    let mut session = Session::new(store.start(JOB, 7, Help::Solo).expect("it starts"), 1);
    play(&mut session, Action::Go(Place::PlantRoom), 300);
    session.take_hint();
    session.hinted();
    session.take_hint();
    play(&mut session, Action::Go(Place::Hall), 300);
    assert_eq!(session.hints().0.len(), 2);
    drop(session);
    let id = store.unfinished().first().expect("it can go on").id.clone();
    let again = Session::new(store.resume(&id).expect("it goes on"), 1);
    assert_eq!(again.hints().0.len(), 2);
    assert_eq!(again.finished().hints_taken, 2);
}

/// Faster than a clock is refused in words while gas escapes.
#[test]
fn haste_is_refused_in_words() {
    let attempt = FileStore::bare().start(JOB, 7, Help::Solo).expect("it starts");
    let mut session = Session::new(attempt, 1);
    session.set_speed(20);
    assert_eq!(session.pace().speed, 20);
    assert_eq!(session.refusal(), None);
    session.set_speed(1);
    for action in [
        Action::Go(Place::PlantRoom),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::Go(Place::GasValve),
        Action::Take(Tool::HexKey),
        Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose },
        Action::Plug { port: Port::Inlet, step: PlugStep::SpinOut },
    ] {
        play(&mut session, action, 60);
    }
    assert!(session.hazard(), "an open port under gas hisses");
    session.read_refusal();
    session.set_speed(20);
    assert_eq!(session.pace().speed, 1);
    assert!(session.refusal().is_some_and(|why| why.contains("no faster than a clock")));
}

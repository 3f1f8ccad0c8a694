//! The reference technician's jobs, played on this machine, whichever it is: last tick, digest of
//! the bench and a fingerprint of the marks, to be compared with those of other machines.

use std::cell::Cell;

use quarterturn::bench::Bench;
use quarterturn::marking::{Brief, Observer};
use quarterturn::scenario::builtin::{Builtin, LADDER};
use quarterturn::scenario::load;
use quarterturn::technician::{Technician, play};

/// Longest job, in seconds.
const LIMIT_S: u64 = 6 * 3600;

/// How a job ended.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Outcome {
    /// Its last tick.
    pub tick: u64,
    /// The digest of the bench then.
    pub digest: u64,
    /// The first 64 bits of BLAKE3 over the marks as JSON.
    pub marks: u64,
}

/// A job by its number, in the order in which the jobs are offered.
pub fn job(number: u32) -> Option<&'static Builtin> {
    LADDER.get(usize::try_from(number).ok()?)
}

/// Plays a job to its end; nothing when there is no such job or it cannot be read.
pub fn outcome(number: u32, seed: u32) -> Option<Outcome> {
    let scenario = load(job(number)?.text).ok()?;
    let setup = scenario.draw(u64::from(seed));
    let mut technician = Technician::new(&setup.card);
    let mut bench = Bench::new(setup);
    let mut observer = Observer::new(&bench);
    play(&mut bench, &mut technician, LIMIT_S, &mut observer);
    let book = scenario.marking.rule_book().ok()?;
    let brief = Brief { right_endings: scenario.right_endings(u64::from(seed)) };
    let marks = serde_json::to_vec(&observer.marks(&book, &brief)).ok()?;
    let (head, _) = blake3::hash(&marks).as_bytes().split_first_chunk().map(|(a, b)| (*a, b))?;
    Some(Outcome { tick: bench.tick(), digest: bench.digest(), marks: u64::from_be_bytes(head) })
}

thread_local! {
    static LAST: Cell<Outcome> = const { Cell::new(Outcome { tick: 0, digest: 0, marks: 0 }) };
}

/// How many jobs there are.
#[unsafe(no_mangle)]
pub extern "C" fn count() -> u32 {
    u32::try_from(LADDER.len()).unwrap_or(u32::MAX)
}

/// Plays a job and keeps how it ended; returns the digest, or 0 when there is no such job.
#[unsafe(no_mangle)]
pub extern "C" fn digest(number: u32, seed: u32) -> u64 {
    let outcome = outcome(number, seed).unwrap_or_default();
    LAST.set(outcome);
    outcome.digest
}

/// The last tick of the job that was played last.
#[unsafe(no_mangle)]
pub extern "C" fn last_tick() -> u64 {
    LAST.get().tick
}

/// The fingerprint of the marks of the job that was played last.
#[unsafe(no_mangle)]
pub extern "C" fn last_marks() -> u64 {
    LAST.get().marks
}

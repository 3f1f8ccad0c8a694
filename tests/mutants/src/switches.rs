//! Switches of the mutants. `tests/mutants/run` puts this file into a copy of the source; the
//! simulator itself does not hold it.
//!
//! A test is run once to note the mutants that it reaches, and once more to see which of them
//! change what a question to the job comes to. When it is run again, the process divides at each
//! of those: the child goes on with the mutant on, and the parent without.

use std::any::Any;
use std::sync::atomic::{AtomicBool, AtomicU8, AtomicU32, Ordering::Relaxed};
use std::sync::{Mutex, OnceLock};
use std::thread::{ThreadId, current};

/// Most mutants that a tree may hold, and one more.
pub const MOST: usize = 20_000;
/// Most memory of a child, in bytes: a mutant that gathers without end stops there.
const MEMORY: u64 = 8 << 30;
/// Longest time by the clock that a child waits for something, in seconds.
const WAITS_S: u32 = 900;

const IDLE: u8 = 0;
const NOTING: u8 = 1;
const DIVIDING: u8 = 2;
const PROBING: u8 = 3;
const CHECKING: u8 = 4;

/// Switches that one question may pass with a mutant on; one that passes more goes in circles.
const STEPS: u32 = 3_000_000;

static DOES: AtomicU8 = AtomicU8::new(IDLE);
static CHOSEN: AtomicU32 = AtomicU32::new(0);
static REACHED: [AtomicBool; MOST] = [const { AtomicBool::new(false) }; MOST];
static ASIDE: [AtomicBool; MOST] = [const { AtomicBool::new(false) }; MOST];
static WANTED: [AtomicBool; MOST] = [const { AtomicBool::new(false) }; MOST];
static CHANGES: [AtomicBool; MOST] = [const { AtomicBool::new(false) }; MOST];
static FRESH: Mutex<Vec<u32>> = Mutex::new(Vec::new());
static ASKED: AtomicBool = AtomicBool::new(false);
static PASSED: AtomicU32 = AtomicU32::new(0);
static DRIVER: OnceLock<ThreadId> = OnceLock::new();
static CHILDREN: Mutex<Vec<(i32, u32)>> = Mutex::new(Vec::new());
static ENDED: Mutex<Vec<(u32, Fate)>> = Mutex::new(Vec::new());
static REMEMBERED: Mutex<Vec<Box<dyn Any + Send>>> = Mutex::new(Vec::new());
static LIMIT_S: AtomicU32 = AtomicU32::new(60);
static HANDS: AtomicU32 = AtomicU32::new(1);

unsafe extern "C" {
    safe fn fork() -> i32;
    safe fn _exit(code: i32) -> !;
    safe fn alarm(seconds: u32) -> u32;
    fn waitpid(pid: i32, status: *mut i32, options: i32) -> i32;
    fn setrlimit(resource: i32, limit: *const [u64; 2]) -> i32;
}

/// What became of a test with a mutant on.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fate {
    /// It passed.
    Passed,
    /// It failed, or the process broke.
    Failed,
    /// It used up its time.
    TimedOut,
}

/// Whether a mutant is on.
pub fn on(number: u32) -> bool {
    match DOES.load(Relaxed) {
        IDLE => CHOSEN.load(Relaxed) == number,
        NOTING => {
            let set = if is_driver() { &REACHED } else { &ASIDE };
            set[number as usize].store(true, Relaxed);
            false
        }
        PROBING => {
            if is_driver() && !REACHED[number as usize].swap(true, Relaxed) {
                if ASKED.load(Relaxed) {
                    FRESH.lock().unwrap().push(number);
                } else {
                    CHANGES[number as usize].store(true, Relaxed);
                }
            }
            false
        }
        CHECKING => {
            assert!(PASSED.fetch_add(1, Relaxed) < STEPS, "it goes round in circles");
            CHOSEN.load(Relaxed) == number
        }
        _ => is_driver() && WANTED[number as usize].swap(false, Relaxed) && divide(number),
    }
}

/// Takes this thread for the one that may divide, with so many children at a time.
pub fn begin(hands: u32) {
    let _ = DRIVER.set(current().id());
    HANDS.store(hands.max(1), Relaxed);
}

fn is_driver() -> bool {
    DRIVER.get() == Some(&current().id())
}

/// Notes what a run reaches on this thread, and what on others.
pub fn noted(run: impl FnOnce()) -> (Vec<u32>, Vec<u32>) {
    for set in [&REACHED, &ASIDE] {
        set.iter().for_each(|it| it.store(false, Relaxed));
    }
    DOES.store(NOTING, Relaxed);
    run();
    DOES.store(IDLE, Relaxed);
    let of = |set: &[AtomicBool]| {
        let all = set.iter().enumerate().filter(|(_, it)| it.load(Relaxed));
        all.map(|(number, _)| number as u32).collect()
    };
    (of(&REACHED), of(&ASIDE))
}

/// Which of these mutants change what a run comes to, as far as questions tell: those that change
/// the answer to one, and those that are reached beside them.
pub fn probed(wanted: &[u32], run: impl FnOnce()) -> Vec<u32> {
    for set in [&REACHED, &CHANGES, &WANTED] {
        set.iter().for_each(|it| it.store(false, Relaxed));
    }
    wanted.iter().for_each(|&it| WANTED[it as usize].store(true, Relaxed));
    ASKED.store(false, Relaxed);
    DOES.store(PROBING, Relaxed);
    run();
    DOES.store(IDLE, Relaxed);
    wanted.iter().copied().filter(|&it| CHANGES[it as usize].load(Relaxed)).collect()
}

/// A question to the job, which changes nothing: asked again with each mutant on that it reaches.
pub fn question<T: PartialEq>(ask: impl Fn() -> T) -> T {
    if DOES.load(Relaxed) != PROBING || !is_driver() || ASKED.load(Relaxed) {
        return ask();
    }
    ASKED.store(true, Relaxed);
    // What was reached before is asked anew by each question.
    let sound = ask();
    ASKED.store(false, Relaxed);
    for number in std::mem::take(&mut *FRESH.lock().unwrap()) {
        let at = number as usize;
        REACHED[at].store(CHANGES[at].load(Relaxed) || !WANTED[at].load(Relaxed), Relaxed);
        if REACHED[at].load(Relaxed) {
            continue;
        }
        PASSED.store(0, Relaxed);
        CHOSEN.store(number, Relaxed);
        DOES.store(CHECKING, Relaxed);
        let answer = std::panic::catch_unwind(std::panic::AssertUnwindSafe(&ask));
        DOES.store(PROBING, Relaxed);
        CHOSEN.store(0, Relaxed);
        let changes = answer.map_or(true, |answer| answer != sound);
        CHANGES[at].store(changes, Relaxed);
        REACHED[at].store(changes, Relaxed);
    }
    sound
}

/// Runs with a division at each of these mutants where it is first reached. A child ends with the
/// code that `run` gives.
pub fn divided(wanted: &[u32], limit_s: u32, run: impl FnOnce() -> i32) -> Vec<(u32, Fate)> {
    LIMIT_S.store(limit_s.max(1), Relaxed);
    WANTED.iter().for_each(|it| it.store(false, Relaxed));
    wanted.iter().for_each(|&it| WANTED[it as usize].store(true, Relaxed));
    CHOSEN.store(0, Relaxed);
    DOES.store(DIVIDING, Relaxed);
    let code = run();
    if CHOSEN.load(Relaxed) != 0 {
        _exit(code);
    }
    DOES.store(IDLE, Relaxed);
    await_down_to(0);
    std::mem::take(&mut ENDED.lock().unwrap())
}

/// Runs all of it once for each of these mutants.
pub fn whole(wanted: &[u32], limit_s: u32, run: impl Fn() -> i32) -> Vec<(u32, Fate)> {
    LIMIT_S.store(limit_s.max(1), Relaxed);
    for &number in wanted {
        if divide(number) {
            _exit(run());
        }
    }
    await_down_to(0);
    std::mem::take(&mut ENDED.lock().unwrap())
}

/// What is worked out without any code that holds mutants, once for all tests, by what it depends on.
pub fn remembered<K, V>(key: K, make: impl FnOnce() -> V) -> V
where
    K: PartialEq + Send + 'static,
    V: Clone + Send + 'static,
{
    let all = REMEMBERED.lock().unwrap();
    let same = all.iter().filter_map(|it| it.downcast_ref::<(K, V)>()).find(|it| it.0 == key);
    if let Some((_, value)) = same {
        return value.clone();
    }
    drop(all);
    let value = make();
    REMEMBERED.lock().unwrap().push(Box::new((key, value.clone())));
    value
}

/// Divides the process; true in the child, where the mutant is on from now on.
fn divide(number: u32) -> bool {
    await_down_to(HANDS.load(Relaxed) as usize - 1);
    let child = fork();
    if child != 0 {
        if child > 0 {
            CHILDREN.lock().unwrap().push((child, number));
        }
        return false;
    }
    DOES.store(IDLE, Relaxed);
    CHOSEN.store(number, Relaxed);
    let limit_s = u64::from(LIMIT_S.load(Relaxed));
    // Time of the processor, address space and the dump of a broken process, by Linux' numbers.
    for (what, most) in [(0, [limit_s, limit_s + 1]), (9, [MEMORY; 2]), (4, [0; 2])] {
        // SAFETY: the limit is a pair of numbers that lives through the call.
        unsafe { setrlimit(what, &raw const most) };
    }
    alarm(WAITS_S);
    true
}

/// Waits for the oldest children until no more than so many are left.
fn await_down_to(left: usize) {
    let mut children = CHILDREN.lock().unwrap();
    while children.len() > left {
        let (pid, number) = children.remove(0);
        let mut status = 0;
        // SAFETY: the status lives through the call.
        unsafe { waitpid(pid, &raw mut status, 0) };
        let fate = match (status & 0x7f, status >> 8 & 0xff) {
            (0, 0) => Fate::Passed,
            (14 | 24 | 9, _) => Fate::TimedOut,
            _ => Fate::Failed,
        };
        ENDED.lock().unwrap().push((number, fate));
    }
}

/// The mutated expression where its switch is on, else the sound one.
macro_rules! mutant_either {
    ($number:literal, $mutated:expr, $sound:expr) => {
        if crate::mutant::on($number) { $mutated } else { $sound }
    };
}

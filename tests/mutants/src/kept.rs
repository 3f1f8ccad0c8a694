//! Plays that are kept while mutants are tried: a test that is run again takes each of its plays as
//! it came out the first time. `tests/mutants/run` puts this file into a copy of the tests.

use std::any::Any;
use std::collections::BTreeMap;
use std::sync::atomic::{AtomicBool, AtomicUsize, Ordering::Relaxed};
use std::sync::{Arc, Mutex};

use quarterturn::bench::Bench;
use quarterturn::setup::Setup;

type Kept = Arc<dyn Any + Send + Sync>;

/// Good work, by job and seed; kept for all tests.
static WORK: Mutex<BTreeMap<String, Kept>> = Mutex::new(BTreeMap::new());
/// Plays of one test, in order.
static PLAYS: Mutex<Vec<Kept>> = Mutex::new(Vec::new());
static NEXT: AtomicUsize = AtomicUsize::new(0);
/// Whether something that is kept is being made: what it is made of is not kept by itself.
static MAKING: AtomicBool = AtomicBool::new(false);

fn of<T: Clone + 'static>(kept: &Kept) -> T {
    kept.downcast_ref::<T>().expect("the same play").clone()
}

fn made<T>(make: impl FnOnce() -> T) -> T {
    let outer = MAKING.swap(true, Relaxed);
    let made = make();
    MAKING.store(outer, Relaxed);
    made
}

/// What `make` gives, made once for all tests.
pub fn once<T: Clone + Send + Sync + 'static>(key: &str, make: impl FnOnce() -> T) -> T {
    if let Some(kept) = WORK.lock().unwrap().get(key) {
        return of(kept);
    }
    let made = made(make);
    let _ = WORK.lock().unwrap().insert(key.to_owned(), Arc::new(made.clone()));
    made
}

/// What `make` gave when the test came here the first time.
pub fn nth<T: Clone + Send + Sync + 'static>(make: impl FnOnce() -> T) -> T {
    if MAKING.load(Relaxed) {
        return make();
    }
    let place = NEXT.fetch_add(1, Relaxed);
    if let Some(kept) = PLAYS.lock().unwrap().get(place) {
        return of(kept);
    }
    let made = made(make);
    let mut plays = PLAYS.lock().unwrap();
    assert_eq!(plays.len(), place, "plays of one test come one after the other");
    plays.push(Arc::new(made.clone()));
    made
}

/// A bench as it is set up.
pub fn bench(setup: Setup) -> Bench {
    nth(|| Bench::new(setup))
}

/// The test begins anew; its plays are kept.
pub fn begin() {
    MAKING.store(false, Relaxed);
    NEXT.store(0, Relaxed);
}

/// Nothing of a test is kept any more.
pub fn forget() {
    PLAYS.lock().unwrap().clear();
    begin();
}

/// Bench and observer after a play.
macro_rules! play_on {
    ($bench:ident, $observer:ident, $play:path, $($more:expr),+ $(,)?) => {{
        let (kept_bench, kept_observer) = crate::mutants_kept::nth(|| {
            let _ = $play(&mut $bench, $($more),+);
            ($bench.clone(), $observer.clone())
        });
        $bench = kept_bench;
        $observer = kept_observer;
    }};
}
pub(crate) use play_on;

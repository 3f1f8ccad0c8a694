//! Switches of the mutants. `tests/mutants/run` puts this file into a copy of the source; the
//! simulator itself does not hold it. The environment variable `MUTANT` names the one that is on.

use std::io::Write as _;
use std::sync::atomic::{AtomicBool, Ordering};
use std::sync::{LazyLock, Mutex};

/// Most mutants that a tree may hold.
const MOST: usize = 20_000;

static CHOSEN: LazyLock<Option<u32>> =
    LazyLock::new(|| std::env::var("MUTANT").ok().and_then(|text| text.parse().ok()));
static TRACE: LazyLock<Option<Mutex<std::fs::File>>> = LazyLock::new(|| {
    let path = std::env::var_os("MUTANT_TRACE")?;
    std::fs::File::options().create(true).append(true).open(path).ok().map(Mutex::new)
});
static REACHED: [AtomicBool; MOST] = [const { AtomicBool::new(false) }; MOST];

/// Whether a mutant is on. With `MUTANT_TRACE` each one that is reached is written there.
pub fn on(number: u32) -> bool {
    if let (Some(file), Some(seen)) = (&*TRACE, REACHED.get(number as usize)) {
        if !seen.swap(true, Ordering::Relaxed) {
            if let Ok(mut file) = file.lock() {
                let _ = writeln!(file, "{number}");
            }
        }
    }
    *CHOSEN == Some(number)
}

/// The mutated expression where its switch is on, else the sound one.
macro_rules! mutant_either {
    ($number:literal, $mutated:expr, $sound:expr) => {
        if crate::mutant::on($number) { $mutated } else { $sound }
    };
}

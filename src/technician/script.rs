//! Scripts: a job written down line by line, for the command line and for tests. A script sees what
//! a person sees and does what a person can do; it knows no more.
//!
//! One order a line; `#` begins a remark. Words are the ids of parts and tools as they stand in
//! records and drawings.
//!
//! ```text
//! go hall
//! thermostat-mode off
//! go plant-room
//! furnace-switch off
//! cock manual-valve shut            # or an angle: 45 deg
//! try window plant-window open      # goes on if it is refused
//! go gas-valve
//! take hex-key
//! plug manifold-port break-loose
//! plug manifold-port spin-out
//! plug manifold-port tighten 6/8    # eighths of a turn
//! turn low-screw -2/8
//! setpoint 70.5 degF
//! wait 30 s
//! until heard burners-low within 4 min
//! until quiet burners-low burners-high within 10 min
//! until status burning on low within 5 min
//! until meter between 3.4 inH2O and 3.6 inH2O within 60 s
//! until meter steady 0.02 inH2O for 5 s within 60 s
//! until room at-least 68 degF within 30 min
//! write manifold-port low found                # what the manometer shows
//! write manifold-port low found 1.7 inH2O      # this number
//! take flue-analyser
//! measure flue                                 # hold the instrument there
//! write-measured flue                          # what it shows
//! take stopwatch
//! measure meter-dial
//! stopwatch start
//! gauge water-column                           # the hose goes to it
//! finding connector-kinked mended by look connector reading inlet-port high found
//! strike-finding connector-kinked
//! hand-over in-service not-done combustion temperature-rise gas-rate piping-leak-check
//! ```
//!
//! A refused action, or an `until` that does not come true in its time, stops the script, unless
//! `try` stands before it. `wait 0 s` lets no time pass.

mod finding;
mod order;
mod player;
mod print;
mod tokens;
mod until;
mod verb;
mod words;

pub use order::{Order, Otherwise, Script, Step};
pub use player::{ScriptPlayer, Stop};
pub use print::action_line;
pub use words::Word;

use crate::scenario::{Code, Problem, ProblemLevel};
use tokens::{Slip, Tokens};

/// Largest script, in bytes.
pub const MAX_BYTES: usize = 256 * 1024;
/// Most lines of a script.
pub const MAX_LINES: usize = 20_000;
/// Problems listed at most.
const MAX_PROBLEMS: usize = 100;

/// Reads a script; `name` is the file's name for the report.
///
/// # Errors
/// Every problem found, in the order of the text, each with line, column, what was found, what was
/// expected and the nearest word.
pub fn read(name: &str, text: &str) -> Result<Script, Vec<Problem>> {
    let text = text.strip_prefix('\u{feff}').unwrap_or(text);
    if let Some(problem) = over_limits(name, text) {
        return Err(vec![problem]);
    }
    let mut steps = Vec::new();
    let mut problems = Vec::new();
    for (i, line) in text.lines().enumerate() {
        match step(i + 1, line) {
            Ok(Some(step)) => steps.push(step),
            Ok(None) => {}
            Err(slip) => problems.push(located(slip, name, i + 1)),
        }
        if problems.len() > MAX_PROBLEMS {
            problems.truncate(MAX_PROBLEMS);
            let message = t!("script-more-problems");
            problems.push(located(Slip::new(Code::TooMany, 1, message), name, i + 1));
            break;
        }
    }
    if problems.is_empty() { Ok(Script { steps }) } else { Err(problems) }
}

/// Like [`read`], for bytes that may not even be text.
///
/// # Errors
/// See [`read`].
pub fn read_bytes(name: &str, bytes: &[u8]) -> Result<Script, Vec<Problem>> {
    match core::str::from_utf8(bytes) {
        Ok(text) => read(name, text),
        Err(error) => {
            let (good, _) = bytes.split_at(error.valid_up_to());
            let good = core::str::from_utf8(good).unwrap_or_default();
            let line = 1 + good.matches('\n').count();
            let column = 1 + good.rsplit('\n').next().map_or(0, |last| last.chars().count());
            let slip = Slip::new(Code::NotUtf8, column, t!("script-not-utf8"));
            Err(vec![located(slip, name, line)])
        }
    }
}

fn over_limits(name: &str, text: &str) -> Option<Problem> {
    let message = if text.len() > MAX_BYTES {
        t!("script-too-many-bytes", most = MAX_BYTES, has = text.len())
    } else if text.lines().nth(MAX_LINES).is_some() {
        t!("script-too-many-lines", most = MAX_LINES)
    } else {
        return None;
    };
    Some(located(Slip::new(Code::TooLarge, 1, &message), name, 1))
}

fn step(number: usize, line: &str) -> Result<Option<Step>, Slip> {
    let line = line.split('#').next().unwrap_or_default();
    let mut tokens = Tokens::of(line)?;
    let Some(first) = tokens.peek() else { return Ok(None) };
    let otherwise = if first == "try" {
        tokens.skip();
        Otherwise::GoOn
    } else {
        Otherwise::Stop
    };
    let order = verb::order(&mut tokens)?;
    tokens.end()?;
    Ok(Some(Step { line: number, text: line.trim().to_owned(), otherwise, order }))
}

fn located(slip: Slip, name: &str, line: usize) -> Problem {
    Problem {
        severity: ProblemLevel::Error,
        code: slip.code,
        file: name.to_owned(),
        line,
        column: slip.column,
        width: slip.found.chars().count(),
        path: String::new(),
        found: slip.found,
        expected: slip.expected,
        message: slip.message,
        nearest: slip.nearest,
    }
}

//! Playing a record again.

use super::MODEL_VERSION;
use super::line::What;
use super::read::Record;
use super::write::Writer;
use crate::bench::Bench;
use crate::bench::run;
use crate::hands::event::Event;
use crate::scenario::{Problem, Scenario, load};

/// A record played to its end.
#[derive(Debug, Clone)]
pub struct Replay {
    /// The scenario that was in it.
    pub scenario: Scenario,
    /// The bench as it stands after the last line.
    pub bench: Bench,
    /// Digests that were compared.
    pub compared: usize,
    /// The first digest that came out differently. Nothing that this replay gives is proven then.
    pub differs: Option<Difference>,
}

/// A digest that came out differently: the record was made with another model, or with other
/// actions.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Difference {
    /// Tick of the digest.
    pub tick: u64,
    /// Its line in the file, from 1.
    pub line: usize,
    /// The digest in the record.
    pub recorded: u64,
    /// The digest that came out.
    pub replayed: u64,
    /// The version of the model that the record tells.
    pub model: Option<u32>,
}

/// A record that can go on.
#[derive(Debug, Clone)]
pub struct Resumed {
    /// The scenario that was in it.
    pub scenario: Scenario,
    /// The bench at the last line: its tick's step is yet to come.
    pub bench: Bench,
    /// For the lines to come.
    pub writer: Writer,
}

/// Why a record cannot be played.
#[derive(Debug, Clone, PartialEq)]
pub enum ReplayError {
    /// The scenario in it cannot be read by this program.
    Scenario(Vec<Problem>),
    /// The attempt ended; there is nothing to go on with.
    Finished,
    /// It comes out differently, so that what followed would not be the same attempt.
    Differs(Difference),
}

impl core::fmt::Display for ReplayError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self {
            Self::Scenario(problems) => match problems.first() {
                Some(first) => f.write_str(&t!("replay-scenario-why", why = &first.message)),
                None => f.write_str(t!("replay-scenario")),
            },
            Self::Finished => f.write_str(t!("replay-finished")),
            Self::Differs(it) => write!(f, "{it}"),
        }
    }
}

impl core::error::Error for ReplayError {}

impl core::fmt::Display for Difference {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let difference = t!(
            "replay-differs",
            tick = self.tick.to_string(),
            line = self.line,
            recorded = format!("{:016x}", self.recorded),
            replayed = format!("{:016x}", self.replayed)
        );
        match self.model {
            Some(MODEL_VERSION) => f.write_str(&difference),
            Some(other) => f.write_str(&t!(
                "replay-differs-other",
                difference = difference,
                model = other,
                now = MODEL_VERSION
            )),
            None => f.write_str(&t!(
                "replay-differs-early",
                difference = difference,
                now = MODEL_VERSION
            )),
        }
    }
}

/// Told once a tick, after its actions and before its step, with what happened since the last
/// time: as the observer of a running job is.
pub type Ticked<'a> = dyn FnMut(&Bench, Vec<Event>) + 'a;

/// Plays a record from its first tick to its last line and compares every digest.
///
/// # Errors
/// [`ReplayError::Scenario`].
pub fn replay(record: &Record, ticked: &mut Ticked<'_>) -> Result<Replay, ReplayError> {
    let mut it = play(record, &mut *ticked)?;
    run::tell(&mut it.bench, &mut &mut *ticked);
    Ok(it)
}

/// Plays an unfinished record to its last line and hands the bench back to go on with. The last
/// tick is not told yet: whoever goes on tells it, with its further actions.
///
/// # Errors
/// The scenario cannot be read, the attempt has ended, or it comes out differently.
pub fn resume(record: &Record, ticked: &mut Ticked<'_>) -> Result<Resumed, ReplayError> {
    if record.is_finished() {
        return Err(ReplayError::Finished);
    }
    let it = play(record, ticked)?;
    match it.differs {
        Some(difference) => Err(ReplayError::Differs(difference)),
        None => Ok(Resumed { scenario: it.scenario, bench: it.bench, writer: record.writer() }),
    }
}

fn play(record: &Record, mut ticked: &mut Ticked<'_>) -> Result<Replay, ReplayError> {
    let scenario = load(&record.header.scenario.text).map_err(ReplayError::Scenario)?;
    let mut bench = Bench::new(scenario.draw(record.header.seed));
    let mut compared = 0;
    let mut differs = None;
    for (i, line) in record.lines.iter().enumerate() {
        while bench.tick() < line.tick {
            run::pass(&mut bench, &mut ticked);
        }
        match &line.what {
            What::Do(action) => {
                // A refusal is an event, and is refused again as it was the first time.
                let _ = run::act(&mut bench, action, &mut ticked);
            }
            What::Mark(recorded) | What::End { digest: recorded, .. } => {
                compared += 1;
                let (recorded, replayed) = (*recorded, bench.digest());
                if recorded != replayed && differs.is_none() {
                    let (tick, line, model) = (line.tick, i + 2, record.model);
                    differs = Some(Difference { tick, line, recorded, replayed, model });
                }
            }
            What::Note(_) => {}
        }
    }
    Ok(Replay { scenario, bench, compared, differs })
}

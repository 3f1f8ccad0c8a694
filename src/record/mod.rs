//! Records: one append-only JSON Lines file per attempt, from which the attempt can be replayed to
//! the last bit, marked again, and gone on with after a crash.
//!
//! The first line is the header: format, version, program, version of the model, the scenario with
//! its whole text (so that a record can always be replayed, whatever becomes of the scenario's
//! file), the seed, and who played with how much help. Then comes one line for each action that was
//! tried, done or refused, and a tick mark every five simulated seconds with the digest of the whole
//! bench. The last line of a finished attempt says how it ended. A tick's lines stand in the order
//! of the play: its actions, its mark, then the step.
//!
//! ```text
//! {"format":"quarterturn-record","version":2,"program":"0.1.0","model":1,"scenario":{…},"seed":7,"sum":"…"}
//! {"t":0,"mark":"9f86d081884c7d65","sum":"…"}
//! {"t":103,"do":{"go":"plant-room"},"sum":"…"}
//! {"t":250,"mark":"2c26b46b68ffc68f","sum":"…"}
//! {"t":310,"end":"handed-over","digest":"fcde2b2edba56bf4","sum":"…"}
//! ```
//!
//! Every line ends with a checksum: the first 16 hexadecimal digits of BLAKE3 over the checksum
//! before it (over the format's name on the first line), a line feed, and the line up to `,"sum"`.
//! So a torn or edited line is found with its number. That shows that a record is whole and
//! consistent; it does not show who sat there.
//!
//! Here lines are made and read; files are opened at the edge, through a [`Sink`].

mod chain;
mod fault;
mod line;
mod read;
mod recorder;
mod replay;
mod write;

pub use fault::{Fault, FaultCode};
pub use line::{Ended, Header, Help, Line, Note, ScenarioText, What};
pub use read::{Record, Torn, read};
pub use recorder::{Recorder, Sink, SinkError};
pub use replay::{Difference, Replay, ReplayError, Resumed, replay, resume};
pub use write::{Full, Writer, is_mark_due, whole};

use crate::units::TICKS_PER_S;

/// The word that every record begins with.
pub const FORMAT: &str = "quarterturn-record";
/// The version of the format that this program writes. It reads all from 1 on; in version 1 a record
/// did not tell the version of the model.
pub const VERSION: u32 = 2;
/// The version of the model: of everything that decides what a bench does with the same setup and
/// the same actions. Whatever changes a digest raises it, with its reason in
/// `docs/model-versions.md`; tests hold the two together.
pub const MODEL_VERSION: u32 = 8;
/// Ticks between two marks: five simulated seconds.
pub const MARK_TICKS: u64 = 5 * TICKS_PER_S;
/// Longest attempt, in ticks: a day.
pub const MAX_TICKS: u64 = 24 * 3600 * TICKS_PER_S;
/// Most lines of a record. A day of marks takes 17,280.
pub const MAX_LINES: usize = 200_000;
/// Longest header line, in bytes. The scenario's text is in it.
pub const MAX_HEADER_BYTES: usize = 2 * 1024 * 1024;
/// Longest other line, in bytes.
pub const MAX_LINE_BYTES: usize = 16 * 1024;
/// Largest record, in bytes.
pub const MAX_BYTES: usize = 64 * 1024 * 1024;
/// Longest learner id, scenario id and program version, in characters.
pub const MAX_NAME: usize = 120;

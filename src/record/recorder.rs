//! Keeps the record of a job that is being played, line by line, wherever the lines go.

use super::line::{Ended, Header, Note};
use super::write::{Full, Writer};
use crate::bench::Bench;
use crate::bench::run::Witness;
use crate::hands::action::Action;
use crate::hands::event::Event;
use crate::hands::refusal::Refusal;

/// Where finished lines go: a file, a thread that writes one, a text in memory.
pub trait Sink {
    /// Takes one finished line, its line feed included. What it has taken shall survive the
    /// program.
    ///
    /// # Errors
    /// When the line could not be kept.
    fn line(&mut self, line: &str) -> Result<(), SinkError>;
}

/// Why a line could not be kept, or written at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct SinkError {
    /// The reason in a sentence, for a person.
    pub message: String,
}

impl core::fmt::Display for SinkError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.message)
    }
}

impl core::error::Error for SinkError {}

impl From<Full> for SinkError {
    fn from(full: Full) -> Self {
        Self { message: full.to_string() }
    }
}

/// A text in memory takes any line.
impl Sink for String {
    fn line(&mut self, line: &str) -> Result<(), SinkError> {
        self.push_str(line);
        Ok(())
    }
}

/// Writes the record of a running job. After the first line that could not be kept it writes no
/// more, since the chain would be broken; see [`Recorder::trouble`].
#[derive(Debug)]
pub struct Recorder<S> {
    writer: Writer,
    sink: S,
    trouble: Option<SinkError>,
}

impl<S: Sink> Recorder<S> {
    /// Begins a record. The header is written at once.
    ///
    /// # Errors
    /// When the header cannot be written or kept.
    pub fn begin(header: &Header, mut sink: S) -> Result<Self, SinkError> {
        let (writer, line) = Writer::begin(header)?;
        sink.line(&line)?;
        Ok(Self { writer, sink, trouble: None })
    }

    /// Goes on with a record that was resumed. The sink must stand right after the last whole line.
    #[must_use]
    pub fn go_on(writer: Writer, sink: S) -> Self {
        Self { writer, sink, trouble: None }
    }

    /// An action was tried on the bench, done or refused.
    pub fn acted(&mut self, bench: &Bench, action: &Action) {
        let line = self.writer.action(bench.tick(), action);
        self.keep(line);
    }

    /// A tick is about to pass; its actions have been done. Call it once a tick.
    pub fn ticked(&mut self, bench: &Bench) {
        if self.trouble.is_none() && self.writer.wants_mark(bench.tick()) {
            let line = self.writer.mark(bench.tick(), bench.digest());
            self.keep(line);
        }
    }

    /// Something beside the bench happened.
    pub fn note(&mut self, bench: &Bench, note: Note) {
        let line = self.writer.note(bench.tick(), note);
        self.keep(line);
    }

    /// The first trouble, if there was one: nothing has been recorded since.
    #[must_use]
    pub fn trouble(&self) -> Option<&SinkError> {
        self.trouble.as_ref()
    }

    /// Ends the record after [`Recorder::ticked`] and gives the sink back.
    ///
    /// # Errors
    /// The first trouble.
    pub fn end(mut self, bench: &Bench, how: Ended) -> Result<S, SinkError> {
        let line = self.writer.end(bench.tick(), how, bench.digest());
        self.keep(line);
        match self.trouble {
            None => Ok(self.sink),
            Some(trouble) => Err(trouble),
        }
    }

    fn keep(&mut self, line: Result<String, Full>) {
        if self.trouble.is_some() {
            return;
        }
        let kept = line.map_err(SinkError::from).and_then(|line| self.sink.line(&line));
        self.trouble = kept.err();
    }
}

impl<S: Sink> Witness for Recorder<S> {
    fn acted(&mut self, bench: &Bench, action: &Action, _: Result<(), Refusal>) {
        // A refused action stands in the record as well.
        Self::acted(self, bench, action);
    }

    fn ticked(&mut self, bench: &Bench, _: Vec<Event>) {
        Self::ticked(self, bench);
    }
}

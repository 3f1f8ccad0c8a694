//! From what happens to lines. Pure: a line is a text, and whoever asked for it keeps it.

use super::chain::Chain;
use super::line::{Ended, Header, Line, Note, What};
use super::{
    MARK_TICKS, MAX_HEADER_BYTES, MAX_LINE_BYTES, MAX_LINES, MAX_NAME, MAX_TICKS, MODEL_VERSION,
};
use crate::hands::action::Action;

/// Why a line cannot be written: it could not be read again.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Full {
    /// The attempt has lasted a day.
    Ticks,
    /// There are too many lines.
    Lines,
    /// The line is too long.
    TooLong,
    /// The attempt has ended.
    Ended,
    /// The tick lies before the last line's.
    Backwards,
    /// A mark belongs before this line, or none belongs here.
    Mark,
    /// A name in the header is too long or holds control characters, or the scenario's hash is not
    /// that of its text.
    Header,
}

impl core::fmt::Display for Full {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(match self {
            Self::Ticks => t!("record-full-ticks"),
            Self::Lines => t!("record-full-lines"),
            Self::TooLong => t!("record-full-too-long"),
            Self::Ended => t!("record-full-ended"),
            Self::Backwards => t!("record-full-backwards"),
            Self::Mark => t!("record-full-mark"),
            Self::Header => t!("record-full-header"),
        })
    }
}

impl core::error::Error for Full {}

/// Whether a mark is due at a tick.
#[must_use]
pub fn is_mark_due(tick: u64) -> bool {
    tick.is_multiple_of(MARK_TICKS)
}

/// Where a record stands, for going on with it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Writer {
    chain: Chain,
    order: Order,
}

impl Writer {
    /// Begins a record of the present model: the writer and the header's line.
    ///
    /// # Errors
    /// [`Full::Header`] or [`Full::TooLong`].
    pub fn begin(header: &Header) -> Result<(Self, String), Full> {
        if !header.is_sound() {
            return Err(Full::Header);
        }
        let mut chain = Chain::start();
        let line = finished(&mut chain, &header.encode(Some(MODEL_VERSION)));
        if line.len() > MAX_HEADER_BYTES {
            return Err(Full::TooLong);
        }
        Ok((Self { chain, order: Order::default() }, line))
    }

    /// A writer that goes on where a reader stopped.
    pub(super) fn after(chain: Chain, order: Order) -> Self {
        Self { chain, order }
    }

    /// The line of an action that was tried at a tick, with its line feed.
    ///
    /// # Errors
    /// See [`Full`]; the record stands as before.
    pub fn action(&mut self, tick: u64, action: &Action) -> Result<String, Full> {
        self.line(&Line { tick, what: What::Do(action.clone()) })
    }

    /// The mark of a tick.
    ///
    /// # Errors
    /// See [`Full`].
    pub fn mark(&mut self, tick: u64, digest: u64) -> Result<String, Full> {
        self.line(&Line { tick, what: What::Mark(digest) })
    }

    /// A note at a tick.
    ///
    /// # Errors
    /// See [`Full`].
    pub fn note(&mut self, tick: u64, note: Note) -> Result<String, Full> {
        self.line(&Line { tick, what: What::Note(note) })
    }

    /// The end at a tick.
    ///
    /// # Errors
    /// See [`Full`].
    pub fn end(&mut self, tick: u64, how: Ended, digest: u64) -> Result<String, Full> {
        self.line(&Line { tick, what: What::End { how, digest } })
    }

    /// Any line.
    ///
    /// # Errors
    /// See [`Full`].
    pub fn line(&mut self, line: &Line) -> Result<String, Full> {
        let mut order = self.order.clone();
        order.take(line)?;
        let mut chain = self.chain.clone();
        let text = finished(&mut chain, &line.encode());
        if text.len() > MAX_LINE_BYTES {
            return Err(Full::TooLong);
        }
        *self = Self { chain, order };
        Ok(text)
    }

    /// Whether the mark of a tick still has to be written.
    #[must_use]
    pub fn wants_mark(&self, tick: u64) -> bool {
        is_mark_due(tick) && self.order.next_mark <= tick && !self.order.ended
    }
}

fn finished(chain: &mut Chain, object: &str) -> String {
    let mut line = chain.seal(object);
    line.push('\n');
    line
}

impl Header {
    /// Whether its names are short and plain and the hash is that of the text.
    pub(super) fn is_sound(&self) -> bool {
        let plain = |name: &str| {
            !name.is_empty()
                && name.chars().count() <= MAX_NAME
                && !name.chars().any(char::is_control)
        };
        plain(&self.program)
            && plain(&self.scenario.id)
            && self.learner.as_deref().is_none_or(plain)
            && self.scenario.text.len() <= crate::scenario::MAX_BYTES
            && self.scenario.hash == crate::scenario::text_hash(&self.scenario.text)
    }
}

/// A whole record of the present model as text.
///
/// # Errors
/// See [`Full`].
pub fn whole(header: &Header, lines: &[Line]) -> Result<String, Full> {
    let (mut writer, mut text) = Writer::begin(header)?;
    for line in lines {
        text.push_str(&writer.line(line)?);
    }
    Ok(text)
}

/// The order that lines keep, for writer and reader alike.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub(super) struct Order {
    tick: u64,
    lines: usize,
    /// Tick of the next mark that must come.
    next_mark: u64,
    ended: bool,
}

impl Order {
    /// The tick of the last line.
    pub(super) fn tick(&self) -> u64 {
        self.tick
    }

    /// Whether the end has come.
    pub(super) fn ended(&self) -> bool {
        self.ended
    }

    /// Takes in the next line, or says why it cannot come next.
    pub(super) fn take(&mut self, line: &Line) -> Result<(), Full> {
        if self.ended {
            return Err(Full::Ended);
        }
        if line.tick > MAX_TICKS {
            return Err(Full::Ticks);
        }
        if line.tick < self.tick {
            return Err(Full::Backwards);
        }
        // The header is a line too.
        if self.lines + 1 >= MAX_LINES {
            return Err(Full::Lines);
        }
        if let What::Mark(_) = line.what {
            if line.tick != self.next_mark {
                return Err(Full::Mark);
            }
            self.next_mark += MARK_TICKS;
        } else if line.tick > self.next_mark {
            return Err(Full::Mark);
        }
        self.ended = matches!(line.what, What::End { .. });
        self.tick = line.tick;
        self.lines += 1;
        Ok(())
    }
}

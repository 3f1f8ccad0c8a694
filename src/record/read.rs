//! From bytes to a record. Any bytes may be given; what is not a record is refused with its place.

use super::chain::{Chain, Unsealed};
use super::fault::{Fault, FaultCode};
use super::line::{Header, Line};
use super::write::{Full, Order, Writer};
use super::{FORMAT, MAX_BYTES, MAX_HEADER_BYTES, MAX_LINE_BYTES, MAX_LINES, VERSION};

/// A record that has been read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Record {
    /// The first line: scenario, seed, learner and program.
    pub header: Header,
    /// The version of the model that it was played with; none in version 1 of the format.
    pub model: Option<u32>,
    /// Its lines after the header; line `i` here stands on line `i + 2` of the file.
    pub lines: Vec<Line>,
    /// What was torn off at its end.
    pub torn: Option<Torn>,
    /// Bytes up to the end of the last whole line. Who goes on with the file cuts it here first.
    pub whole_bytes: usize,
    chain: Chain,
    order: Order,
}

/// A last line without its line feed: the program was stopped while it was written. It counts for
/// nothing.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Torn {
    /// Its number in the file, from 1.
    pub line: usize,
    /// Bytes of it that are there.
    pub bytes: usize,
}

impl Record {
    /// The tick of the last line.
    #[must_use]
    pub fn last_tick(&self) -> u64 {
        self.order.tick()
    }

    /// Whether the attempt came to an end that the record tells.
    #[must_use]
    pub fn is_finished(&self) -> bool {
        self.order.ended()
    }

    /// A writer that goes on after the last whole line.
    #[must_use]
    pub fn writer(&self) -> Writer {
        Writer::after(self.chain.clone(), self.order.clone())
    }
}

/// Reads a record.
///
/// A torn last line is dropped and told. Everything else that is not as it was written is refused.
///
/// # Errors
/// The first fault.
pub fn read(bytes: &[u8]) -> Result<Record, Fault> {
    if bytes.len() > MAX_BYTES {
        let message = t!("record-too-large", most = MAX_BYTES, bytes = bytes.len());
        return Err(Fault::new(FaultCode::TooLarge, 1, message));
    }
    let mut lines = Vec::new();
    let mut header = None;
    let mut chain = Chain::start();
    let mut order = Order::default();
    let mut rest = bytes;
    let mut number = 1;
    while let Some(end) = rest.iter().position(|&byte| byte == b'\n') {
        let (raw, after) = rest.split_at(end);
        rest = after.get(1..).unwrap_or_default();
        if number > MAX_LINES {
            let message = t!("record-too-many-lines", most = MAX_LINES);
            return Err(Fault::new(FaultCode::TooManyLines, number, message));
        }
        let text = text(raw, number)?;
        if header.is_some() {
            let line = line(text, number, &mut chain)?;
            order.take(&line).map_err(|why| misplaced(why, &line, &order, number))?;
            lines.push(line);
        } else {
            header = Some(first(text, &mut chain)?);
        }
        number += 1;
    }
    let Some((header, model)) = header else {
        return Err(no_header(bytes));
    };
    let torn = (!rest.is_empty()).then_some(Torn { line: number, bytes: rest.len() });
    let whole_bytes = bytes.len() - rest.len();
    Ok(Record { header, model, lines, torn, whole_bytes, chain, order })
}

fn no_header(bytes: &[u8]) -> Fault {
    let message = if bytes.is_empty() { t!("record-empty") } else { t!("record-no-first-line") };
    Fault::new(FaultCode::NoHeader, 1, message)
}

/// A line's text, when it is not too long and is text.
fn text(raw: &[u8], number: usize) -> Result<&str, Fault> {
    let most = if number == 1 { MAX_HEADER_BYTES } else { MAX_LINE_BYTES };
    if raw.len() >= most {
        let message = t!("record-line-too-long", bytes = raw.len(), most = most);
        return Err(Fault::new(FaultCode::LineTooLong, number, message));
    }
    core::str::from_utf8(raw).map_err(|error| {
        let message = t!("record-not-utf8");
        Fault::new(FaultCode::NotUtf8, number, message).at(error.valid_up_to() + 1, "")
    })
}

/// The header, once its format and version are known.
fn first(text: &str, chain: &mut Chain) -> Result<(Header, Option<u32>), Fault> {
    let bare: serde_json::Value =
        serde_json::from_str(text).map_err(|error| malformed(&error, 1))?;
    if bare.get("format").and_then(serde_json::Value::as_str) != Some(FORMAT) {
        let message = t!("record-not-one", format = FORMAT);
        return Err(Fault::new(FaultCode::NotARecord, 1, message).at(1, "format"));
    }
    let version = bare.get("version");
    let known = 1..=u64::from(VERSION);
    if !version.and_then(serde_json::Value::as_u64).is_some_and(|it| known.contains(&it)) {
        return Err(other_version(version));
    }
    let (body, sum) = split(text, 1)?;
    let object = format!("{body}}}");
    let (header, model) = Header::decode(&object).map_err(|error| malformed(&error, 1))?;
    sealed(chain, body, sum, 1)?;
    let ours = header.encode(model);
    if ours != object {
        return Err(unusual(&ours, &object, 1));
    }
    if !header.is_sound() {
        let message = t!("record-bad-header");
        return Err(Fault::new(FaultCode::BadHeader, 1, message).at(1, "scenario"));
    }
    Ok((header, model))
}

fn other_version(version: Option<&serde_json::Value>) -> Fault {
    let newer = version.and_then(serde_json::Value::as_u64).filter(|&it| it > u64::from(VERSION));
    let (code, message) = if let Some(newer) = newer {
        let message = t!("record-newer", version = newer.to_string(), known = VERSION.to_string());
        (FaultCode::NewerVersion, message)
    } else {
        let message = t!("record-no-version", known = VERSION.to_string());
        (FaultCode::NoSuchVersion, message)
    };
    Fault::new(code, 1, message).at(1, "version")
}

/// A line after the header.
fn line(text: &str, number: usize, chain: &mut Chain) -> Result<Line, Fault> {
    let (body, sum) = split(text, number)?;
    let object = format!("{body}}}");
    let line = Line::decode(&object).map_err(|error| malformed(&error, number))?;
    let Some(line) = line else {
        let message = t!("record-one-thing");
        return Err(Fault::new(FaultCode::BadField, number, message).at(1, "do"));
    };
    sealed(chain, body, sum, number)?;
    if line.encode() != object {
        return Err(unusual(&line.encode(), &object, number));
    }
    Ok(line)
}

fn split(text: &str, number: usize) -> Result<(&str, &str), Fault> {
    Chain::split(text).map_err(|_| {
        // A line that is no JSON at all is told as such, with its column.
        match serde_json::from_str::<serde::de::IgnoredAny>(text) {
            Err(error) => malformed(&error, number),
            Ok(_) => {
                let message = t!("record-no-checksum");
                Fault::new(FaultCode::NoChecksum, number, message).at(text.len(), "sum")
            }
        }
    })
}

fn sealed(chain: &mut Chain, body: &str, sum: &str, number: usize) -> Result<(), Fault> {
    chain.check(body, sum).map_err(|why| match why {
        Unsealed::Broken | Unsealed::NoSum => {
            let message = t!("record-broken-chain");
            Fault::new(FaultCode::BrokenChain, number, message).at(body.len() + 1, "sum")
        }
    })
}

/// A line that means something, but was not written by this format's rules.
fn unusual(ours: &str, theirs: &str, number: usize) -> Fault {
    let same = ours.bytes().zip(theirs.bytes()).take_while(|(a, b)| a == b).count();
    let message = t!("record-otherwise-written");
    Fault::new(FaultCode::BadField, number, message).at(same + 1, "")
}

fn malformed(error: &serde_json::Error, number: usize) -> Fault {
    let code = if error.is_data() { FaultCode::BadField } else { FaultCode::Malformed };
    let mut message = error.to_string();
    if let Some(cut) = message.rfind(" at line ") {
        message.truncate(cut);
    }
    // What was found is shown, but not all of a megabyte.
    let short: String = message.chars().take(400).collect();
    let field = named(&short);
    Fault::new(code, number, format!("{short}.")).at(error.column(), &field)
}

/// The field or word that a message is about: what it names in backticks at its beginning.
fn named(message: &str) -> String {
    let about = matches!(message.split(' ').next(), Some("unknown" | "missing" | "duplicate"));
    let word = message.split('`').nth(1).filter(|_| about);
    word.unwrap_or("").chars().take(60).collect()
}

fn misplaced(why: Full, line: &Line, order: &Order, number: usize) -> Fault {
    let code = match why {
        Full::Ticks => FaultCode::AbsurdTick,
        Full::Lines => FaultCode::TooManyLines,
        Full::TooLong => FaultCode::LineTooLong,
        Full::Ended => FaultCode::AfterEnd,
        Full::Backwards => FaultCode::Backwards,
        Full::Mark => FaultCode::BadMark,
        Full::Header => FaultCode::BadHeader,
    };
    let message = t!(
        "record-misplaced",
        tick = line.tick.to_string(),
        last = order.tick().to_string(),
        why = why.to_string()
    );
    Fault::new(code, number, message).at(2, "t")
}

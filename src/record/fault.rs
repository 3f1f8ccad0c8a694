//! What is wrong with a record.

use serde::Serialize;

/// What kind of fault.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum FaultCode {
    /// Larger than a record may be.
    TooLarge,
    /// A line that is longer than a line may be.
    LineTooLong,
    /// More lines than a record may have.
    TooManyLines,
    /// The bytes are not UTF-8 text.
    NotUtf8,
    /// Nothing, or not a whole first line.
    NoHeader,
    /// Another kind of file.
    NotARecord,
    /// Written for a newer version of the format.
    NewerVersion,
    /// No such version of the format.
    NoSuchVersion,
    /// Not a JSON object, or an unfinished one.
    Malformed,
    /// A field, an action or a word that the format does not have, or a field that is missing.
    BadField,
    /// No checksum at the end of the line.
    NoChecksum,
    /// The checksum does not follow from the line and the one before it.
    BrokenChain,
    /// The hash of the scenario is not that of its text, or a name is not plain.
    BadHeader,
    /// A tick before the last one.
    Backwards,
    /// A tick beyond a day.
    AbsurdTick,
    /// A mark is missing, or stands where none belongs.
    BadMark,
    /// A line after the end.
    AfterEnd,
}

impl FaultCode {
    /// The code in text and JSON.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::TooLarge => "too-large",
            Self::LineTooLong => "line-too-long",
            Self::TooManyLines => "too-many-lines",
            Self::NotUtf8 => "not-utf8",
            Self::NoHeader => "no-header",
            Self::NotARecord => "not-a-record",
            Self::NewerVersion => "newer-version",
            Self::NoSuchVersion => "no-such-version",
            Self::Malformed => "malformed",
            Self::BadField => "bad-field",
            Self::NoChecksum => "no-checksum",
            Self::BrokenChain => "broken-chain",
            Self::BadHeader => "bad-header",
            Self::Backwards => "backwards",
            Self::AbsurdTick => "absurd-tick",
            Self::BadMark => "bad-mark",
            Self::AfterEnd => "after-end",
        }
    }
}

/// The first thing wrong with a record. What follows a broken line cannot be trusted, so nothing
/// after it is judged.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Fault {
    /// The kind of fault, for programs.
    pub code: FaultCode,
    /// Line of the file, from 1 (the header).
    pub line: usize,
    /// Column in bytes, from 1; 1 where the whole line is meant.
    pub column: usize,
    /// The field, where one is to blame; else empty.
    pub field: String,
    /// The fault in a sentence.
    pub message: String,
}

impl Fault {
    /// A fault of a whole line.
    pub(super) fn new(code: FaultCode, line: usize, message: impl Into<String>) -> Self {
        Self { code, line, column: 1, field: String::new(), message: message.into() }
    }

    /// The same, to blame on a field.
    pub(super) fn at(mut self, column: usize, field: &str) -> Self {
        self.column = column.max(1);
        field.clone_into(&mut self.field);
        self
    }

    /// The exit code of a program that met it: 4 for a newer format, else 1.
    #[must_use]
    pub fn exit_code(&self) -> u8 {
        if self.code == FaultCode::NewerVersion { 4 } else { 1 }
    }
}

impl core::fmt::Display for Fault {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let (code, line, column) = (self.code.id(), self.line, self.column);
        let message = &self.message;
        f.write_str(&if self.field.is_empty() {
            t!("record-fault", code = code, line = line, column = column, message = message)
        } else {
            t!(
                "record-fault-field",
                code = code,
                line = line,
                column = column,
                field = &self.field,
                message = message
            )
        })
    }
}

impl core::error::Error for Fault {}

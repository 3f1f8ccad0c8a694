//! How the tables of the catalogue are read: rows of RON in `assets/catalogue`, with their texts in
//! `assets/words/en`.
//!
//! A table is read whole or not at all: a row that cannot be read, a row that stands twice or is
//! missing, and a text that is missing are errors with their place. A test forbids all of them; the
//! command line says them before it runs anything.

use serde::{Deserialize, Deserializer, de};

use crate::words;

/// Why a table of the catalogue cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TableError {
    /// The file, below the root of the project.
    pub file: &'static str,
    /// Line, from 1; 0 where the error has no line, such as a row that is missing.
    pub line: usize,
    /// What is wrong with it.
    pub message: String,
}

impl core::fmt::Display for TableError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        match self.line {
            0 => write!(f, "{}: {}", self.file, self.message),
            line => write!(f, "{}:{line}: {}", self.file, self.message),
        }
    }
}

impl core::error::Error for TableError {}

/// A table that comes with the program.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Table {
    /// The file, below the root of the project.
    pub file: &'static str,
    /// Its text, as it was embedded.
    pub text: &'static str,
}

impl Table {
    /// The rows, one by one.
    ///
    /// # Errors
    /// The first place that is no row.
    pub(crate) fn rows<Row: Deserialize<'static>>(self) -> Result<Vec<Row>, TableError> {
        ron::from_str(self.text).map_err(|error| TableError {
            file: self.file,
            line: error.span.start.line,
            message: error.code.to_string(),
        })
    }

    /// An error in the row that begins with this id; in none, where no row does.
    pub(crate) fn error(self, id: &str, message: String) -> TableError {
        TableError { file: self.file, line: self.line(id), message }
    }

    /// The line of the last row that begins with this id; 0 if none does.
    fn line(self, id: &str) -> usize {
        let quoted = format!(": \"{id}\"");
        let lines = self.text.lines().enumerate();
        lines.filter(|(_, line)| line.contains(&quoted)).last().map_or(0, |(at, _)| at + 1)
    }

    /// The text of a message that a row asks for.
    ///
    /// # Errors
    /// There is none, or it has arguments.
    pub(crate) fn message(self, row: &str, id: &str) -> Result<&'static str, TableError> {
        words::from_data(id).ok_or_else(|| self.error(row, format!("no message `{id}`")))
    }
}

/// The id of a message that a row asks for, with the row's place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Asked {
    /// File and line of the row.
    pub place: String,
    /// The id of the message.
    pub id: String,
}

impl Asked {
    /// The message that this row asks for.
    pub(crate) fn new(table: Table, row: &str, id: String) -> Self {
        Self { place: format!("{}:{}", table.file, table.line(row)), id }
    }
}

/// Reads something that is written by its id.
///
/// # Errors
/// Nothing has this id.
pub(crate) fn by_id<'de, D: Deserializer<'de>, T>(
    reader: D,
    from_id: fn(&str) -> Option<T>,
) -> Result<T, D::Error> {
    let id = String::deserialize(reader)?;
    from_id(&id).ok_or_else(|| de::Error::custom(format!("nothing has the id `{id}`")))
}

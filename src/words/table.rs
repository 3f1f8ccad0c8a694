//! Tables of data: rows of RON in `assets/catalogue`, with their texts in `assets/words/en`.
//!
//! A table is read whole or not at all: a row that cannot be read, a row that stands twice or is
//! missing, and a text that is missing are errors with their place. A test forbids all of them; the
//! command line says them before it runs anything.

use serde::{Deserialize, Deserializer, de};

/// Why a table cannot be used.
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
    /// The field that a row begins with: what the row is about.
    pub key: &'static str,
}

impl Table {
    /// The whole table.
    ///
    /// # Errors
    /// The first place that is not written as it must be.
    pub(crate) fn read<T: Deserialize<'static>>(self) -> Result<T, TableError> {
        ron::from_str(self.text).map_err(|error| TableError {
            file: self.file,
            line: error.span.start.line,
            message: error.code.to_string(),
        })
    }

    /// The table with rows that begin with another field.
    pub(crate) const fn keyed(self, key: &'static str) -> Self {
        Self { key, ..self }
    }

    /// An error in the row about this id; in none, where there is no such row.
    pub(crate) fn error(self, id: &str, message: String) -> TableError {
        TableError { file: self.file, line: self.line(id), message }
    }

    /// The line of the last row about this id; 0 if there is none.
    fn line(self, id: &str) -> usize {
        let key = format!("{}: \"{id}\"", self.key);
        let lines = self.text.lines().enumerate();
        lines.filter(|(_, line)| line.contains(&key)).last().map_or(0, |(at, _)| at + 1)
    }

    /// The text of a message that the row about `row` asks for.
    ///
    /// # Errors
    /// There is none, or it has arguments.
    pub(crate) fn message(self, row: &str, id: &str) -> Result<&'static str, TableError> {
        super::from_data(id).ok_or_else(|| self.error(row, t!("table-no-message", id = id)))
    }

    /// The rows in their order, one for each of `all`.
    ///
    /// # Errors
    /// A row that is wrong, stands twice or is missing.
    pub(crate) fn one_each<Row, Key: Copy + PartialEq, Value>(
        self,
        all: &[Key],
        id: fn(Key) -> &'static str,
        rows: Vec<(Key, Row)>,
        read: impl Fn(Row) -> Result<Value, TableError>,
    ) -> Result<Vec<(Key, Value)>, TableError> {
        let mut done: Vec<(Key, Value)> = Vec::new();
        for (key, row) in rows {
            if done.iter().any(|(other, _)| *other == key) {
                return Err(self.error(id(key), t!("table-twice", id = id(key))));
            }
            done.push((key, read(row)?));
        }
        match all.iter().find(|&key| !done.iter().any(|(other, _)| other == key)) {
            Some(&key) => Err(self.error("", t!("table-no-row", id = id(key)))),
            None => Ok(done),
        }
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
    from_id(&id).ok_or_else(|| de::Error::custom(t!("table-no-id", id = &*id)))
}

//! Published tables, read as CSV, against the model.

mod cells;
mod csst;
mod gather;
mod pipe;
mod sheet;
mod stream;

use super::Check;

pub use sheet::{MAX_BYTES, TableError};

/// What came of one table.
#[derive(Debug, Clone, Default)]
pub struct Outcome {
    /// Its checks.
    pub checks: Vec<Check>,
    /// Rows that were not used.
    pub set_aside: Vec<SetAside>,
}

/// Rows of a table that were not used.
#[derive(Debug, Clone, PartialEq)]
pub struct SetAside {
    /// The table.
    pub file: String,
    /// How many.
    pub rows: usize,
    /// Why.
    pub reason: String,
}

/// temp
pub fn temp(file: &str, bytes: &[u8]) -> Result<Outcome, TableError> {
    if file.starts_with("csst") { return csst::run(&sheet::Sheet::read(file, bytes)?); }
    pipe::run(&sheet::Sheet::read(file, bytes)?)
}

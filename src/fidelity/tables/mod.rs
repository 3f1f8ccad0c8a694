//! Published tables, read as CSV, against the model.
//!
//! `assets/reference` holds the tables; the layout of each kind is in `docs/reference-tables.md`.
//! Any other folder of tables in the same layout can be checked the same way ([`read`]).

mod air;
mod altitude;
mod burning;
mod cells;
mod csst;
mod csv_table;
mod fittings;
mod gas;
mod gather;
mod instruments;
mod kind;
mod manifold;
mod meter;
mod orifice;
mod outcome;
mod pipe;
mod regulator;
mod room;
mod stream;
mod vectors;

use super::check::Check;

pub use csv_table::{MAX_BYTES, TableError};
pub use kind::{List, Named, Reader, TABLES, read_list};
pub use outcome::{Outcome, SetAside};

/// What a file turned out to be.
#[derive(Debug, Clone)]
pub enum Found {
    /// A table that the model was held against.
    Table(Outcome),
    /// A table that is known and not used, and why.
    NotUsed(&'static str),
    /// Neither its name nor its columns say what it is.
    Unknown,
}

/// Reads a table and holds the model against it; `file` is its name without folders.
///
/// # Errors
/// With file, line and field, for anything that is not a table, or is one of a known kind with a
/// column missing or a cell that makes no sense.
pub fn read(file: &str, bytes: &[u8]) -> Result<Found, TableError> {
    if let Some(why) = kind::not_used(file) {
        return Ok(Found::NotUsed(why));
    }
    let table = csv_table::CsvTable::read(file, bytes)?;
    match kind::reader(&table) {
        Some(run) => run(&table).map(Found::Table),
        None => Ok(Found::Unknown),
    }
}

/// Every table of the project.
///
/// # Errors
/// If one of them is broken; the tests see to it that none is.
pub fn own() -> Result<Outcome, TableError> {
    let mut all = Outcome::default();
    for (file, text) in TABLES.iter() {
        if let Found::Table(outcome) = read(file, text.as_bytes())? {
            all.join(outcome);
        }
    }
    Ok(all)
}

/// The checks of every table of the project.
#[must_use]
pub fn checks() -> Vec<Check> {
    own().map(|outcome| outcome.checks).unwrap_or_default()
}

/// Tables that are known and not used, with the reason.
#[must_use]
pub fn not_used() -> &'static [(String, String)] {
    kind::all_not_used()
}

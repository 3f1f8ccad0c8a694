//! The catalogue: faults and repairs by name, each an edit of a [`Setup`](crate::setup::Setup), with
//! what is right, what tempts and what harms. It plays no bench; the model does not know it.
//!
//! What is plain data stands in tables, `assets/catalogue`; code holds the edits.

pub mod cause;
pub mod fault;
pub mod repair;
pub(crate) mod springs;

use crate::parts;
use crate::words::table::{Asked, TableError};

/// Whether the tables of parts, faults, repairs and causes that come with the program can be read.
///
/// # Errors
/// Where and why not; a test forbids it.
pub fn check() -> Result<(), TableError> {
    parts::check()?;
    fault::ENTRIES.as_ref().map_err(Clone::clone)?;
    repair::WORKS.as_ref().map_err(Clone::clone)?;
    cause::CAUSES_READ.as_ref().map_err(Clone::clone)?;
    Ok(())
}

/// The messages that the tables ask for, each with the row that does.
///
/// # Errors
/// A table cannot be read.
pub fn asked() -> Result<Vec<Asked>, TableError> {
    let mut asked = parts::asked()?;
    asked.extend(fault::asked()?);
    asked.extend(repair::asked()?);
    asked.extend(cause::asked()?);
    Ok(asked)
}

//! The catalogue: faults and repairs by name, each an edit of a [`Setup`](crate::setup::Setup), with
//! what is right, what tempts and what harms. It plays no bench; the model does not know it.
//!
//! What is plain data stands in tables, `assets/catalogue`; code holds the edits.

pub mod fault;
pub mod repair;
mod springs;
mod table;

pub use table::{Asked, TableError};

/// Whether the tables that come with the program can be read.
///
/// # Errors
/// Where and why not; a test forbids it.
pub fn check() -> Result<(), TableError> {
    fault::ENTRIES.as_ref().map_err(Clone::clone)?;
    repair::WORKS.as_ref().map_err(Clone::clone)?;
    Ok(())
}

/// The messages that the tables ask for, each with the row that does.
///
/// # Errors
/// A table cannot be read.
pub fn asked() -> Result<Vec<Asked>, TableError> {
    let mut asked = fault::asked()?;
    asked.extend(repair::asked()?);
    Ok(asked)
}

//! The fidelity guide: every claim about the model, held against a published law, a table, a
//! closed form or an independent solver, with condition, tolerance and result.
//!
//! A claim that is not here is not made. What the model leaves out is listed in the guide too.
//!
//! Nothing here reads a file or a clock: text goes in, checks come out. To add a claim, write a
//! function that returns [`Check`]s and put it on the list in [`all`].

pub mod cases;
pub mod check;
pub mod claims;
pub mod closed;
pub mod guide;
pub mod invariants;
pub mod left_out;
pub mod parts;
pub mod plot;
pub mod tables;
pub mod words;

pub use check::{Check, Row, Tolerance, Truth, Verdict};

/// Every check of the guide, in its order.
#[must_use]
pub fn all() -> Vec<Check> {
    let families: &[fn() -> Vec<Check>] =
        &[tables::checks, closed::checks, parts::checks, invariants::checks, cases::checks];
    families.iter().flat_map(|checks| checks()).collect()
}

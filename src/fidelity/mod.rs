//! The fidelity guide: every claim about the model, held against a published law, a table, a
//! closed form or an independent solver, with condition, tolerance and result.
//!
//! A claim that is not here is not made. What the model leaves out is listed in the guide too.

pub mod cases;
pub mod check;

pub use check::{Check, Row, Tolerance, Truth, Verdict};

//! Proof of the marks from both sides. Fair runs are the technician's work done in another manner and
//! in another sequence, each one that a person may have who works as well: they must lose nothing. Blind runs are
//! the ritual done well with nothing thought: they must not meet the essentials of a job that has
//! anything to find.

mod blind;
mod detour;
mod fair;
mod manner;

pub use super::sequence::Sequence;
pub use blind::{Blind, Policy};
pub use fair::Fair;
pub use manner::Manner;

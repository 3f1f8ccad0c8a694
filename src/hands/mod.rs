//! What hands can do.

pub mod action;
pub(crate) mod apply;
pub(crate) mod cycle;
pub mod event;
mod measure;
mod mend;
mod paper;
pub mod refusal;
mod switches;
pub(crate) mod tools;

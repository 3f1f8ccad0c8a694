//! The fidelity guide: its own checks, its pages, its reader of tables.

mod claims;
#[cfg(feature = "cli")]
mod folder;
mod guide;
mod tables;
mod verdicts;

//! The fidelity guide: its own checks, its pages, its reader of tables.

#[cfg(feature = "cli")]
mod folder;
mod claims;
mod guide;
mod tables;
mod verdicts;

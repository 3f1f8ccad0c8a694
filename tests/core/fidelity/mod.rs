//! The fidelity guide: its own checks, its pages, its reader of tables.

#[cfg(feature = "cli")]
mod folder;
#[cfg(feature = "reports")]
mod guide;
#[cfg(feature = "reports")]
mod tables;
mod verdicts;

//! Panels.

//! Tests of whole panels through the accessibility tree, without any engine.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop at once")]

mod coached;
mod cutaway;
mod debrief;
mod drawing;
mod finding;
mod fixture;
mod handling;
mod keyboard;
mod lines;
mod look;
mod opening;
mod order;
mod pages;
mod reach;
mod said;
mod steady;
mod writing;

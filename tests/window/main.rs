//! The window: the whole program without a screen, its pictures, and one run of the real thing.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop at once")]

mod by_hand;
mod drawings;
mod journeys;
mod pictures;
mod played;
mod poses;
mod reader;
mod records;
mod rig;
mod screen;
mod signs;
mod store;
mod strips;
mod whole_job;

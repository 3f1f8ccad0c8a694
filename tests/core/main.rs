//! Tests of the bare core.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop at once")]
#![allow(clippy::disallowed_methods, reason = "expected values need no last digit")]

mod appliance;
mod bench;
#[cfg(feature = "cli")]
mod cli;
mod component_docs;
mod corpora;
mod debriefs;
mod faults;
#[cfg(feature = "fidelity")]
mod fidelity;
#[cfg(feature = "fidelity")]
mod fidelity_cases;
#[cfg(feature = "fidelity")]
mod fidelity_parts;
mod instruments;
mod marking;
mod one_place;
mod parts;
mod physics;
mod record;
mod scenario;
mod script;
mod sound;
mod technician;
mod tidy;
mod trials;
mod words;

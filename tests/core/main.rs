//! Tests of the bare core.

#![allow(clippy::unwrap_used, clippy::expect_used, reason = "a test may stop at once")]
#![allow(clippy::disallowed_methods, reason = "expected values need no last digit")]

mod appliance;
mod bench;
mod physics;
mod scenario;
mod tidy;

//! Any bytes, taken as a play that is recorded and played again.

#![no_main]

#[path = "../readers.rs"]
mod readers;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| readers::replay(bytes));

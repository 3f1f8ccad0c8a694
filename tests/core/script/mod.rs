//! Tests of scripts.

mod playing;
mod reading;

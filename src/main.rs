//! Quarterturn.
fn main() {}

//! Closed forms, behaviour of parts, invariants.

mod checks;
mod properties;

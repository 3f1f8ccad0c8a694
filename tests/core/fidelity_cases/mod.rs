//! Reference cases: the kept ones hold, there are enough of them, and a bad file is told where.

mod bad_input;
mod kept;
mod layout;

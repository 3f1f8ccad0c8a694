//! The program.

use std::process::ExitCode;

#[cfg(feature = "cli")]
fn main() -> ExitCode {
    quarterturn::cli::main()
}

#[cfg(not(feature = "cli"))]
fn main() -> ExitCode {
    eprintln!("This program was built as a bare core: build it with the feature `cli` or `app`.");
    ExitCode::from(2)
}

//! The program.

use std::process::ExitCode;

fn main() -> ExitCode {
    quarterturn::cli::main()
}

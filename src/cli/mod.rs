//! The command line: data on standard output, talk on standard error, `--json` for programs.

mod check;
mod examine;
mod exit;
mod explain;
mod faults;
mod fidelity;
mod files;
mod job;
mod mark;
mod marks;
mod play;
mod preview;
mod prove;
mod run;
mod script;
mod sound;
mod threads;
mod window;

use std::process::ExitCode;

use clap::{Parser, Subcommand};

pub use exit::{Exit, Trouble};
pub use files::write_whole;
pub use job::Job;

#[derive(Debug, Parser)]
#[command(
    name = "quarterturn",
    version,
    about = t!("help-quarterturn"),
    long_about = t!("help-quarterturn-long"),
    arg_required_else_help = false,
)]
struct Cli {
    #[command(subcommand)]
    command: Option<Command>,
}

#[derive(Debug, Subcommand)]
enum Command {
    Play(play::Args),
    Run(run::Args),
    Mark(mark::Args),
    Script(script::Args),
    Preview(preview::Args),
    Prove(prove::Args),
    Examine(examine::Args),
    Check(check::Args),
    Explain(explain::Args),
    Faults(faults::Args),
    Fidelity(fidelity::Args),
    Sound(sound::Args),
}

/// Runs the program with the arguments it was started with.
#[must_use]
pub fn main() -> ExitCode {
    let cli = match Cli::try_parse() {
        Ok(cli) => cli,
        Err(error) => {
            // Help and version come this way too, with exit code 0. A closed pipe is nobody's fault.
            let _ = error.print();
            return u8::try_from(error.exit_code()).map_or(ExitCode::FAILURE, ExitCode::from);
        }
    };
    if let Err(error) = crate::catalogue::check() {
        exit::talk(&error.to_string());
        return Exit::Files.into();
    }
    let result = match &cli.command {
        None => return window::open(None),
        Some(Command::Play(args)) => match play::start(args) {
            Ok(start) => return window::open(Some(start)),
            Err(trouble) => Err(trouble),
        },
        Some(Command::Run(args)) => run::run(args),
        Some(Command::Mark(args)) => mark::mark(args),
        Some(Command::Script(args)) => script::script(args),
        Some(Command::Preview(args)) => preview::preview(args),
        Some(Command::Prove(args)) => prove::prove(args),
        Some(Command::Examine(args)) => examine::examine(args),
        Some(Command::Check(args)) => check::check(args),
        Some(Command::Explain(args)) => explain::explain(args),
        Some(Command::Faults(args)) => faults::faults(args),
        Some(Command::Fidelity(args)) => fidelity::fidelity(args),
        Some(Command::Sound(args)) => sound::sound(args),
    };
    match result {
        Ok(exit) => exit.into(),
        Err(trouble) => {
            exit::talk(&trouble.message);
            trouble.exit.into()
        }
    }
}

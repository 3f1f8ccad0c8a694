//! `play`: the window, on one job.

use clap::ValueEnum;

use super::exit::Trouble;
use super::job::Job;
use super::window::Start;
use crate::record::Help;

/// Open the window on one job.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// A scenario that comes with the program, by its id, or a scenario's file.
    scenario: String,
    /// The seed that the job's numbers are drawn with.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// How much help there is.
    #[arg(long, value_enum, default_value_t = Level::Coached)]
    level: Level,
    /// Who plays, for the record: an id that a class agrees on, not a secret.
    #[arg(long, value_name = "ID", value_parser = super::job::learner)]
    learner: Option<String>,
}

/// How much help there is.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Level {
    /// Led step by step.
    Coached,
    /// A hint when asked.
    Solo,
}

/// The job that the window shall open on.
pub(super) fn start(args: &Args) -> Result<Start, Trouble> {
    let help = match args.level {
        Level::Coached => Help::Coached,
        Level::Solo => Help::Solo,
    };
    let job = Job::find(&args.scenario)?;
    Ok(Start { job, seed: args.seed, help, learner: args.learner.clone() })
}

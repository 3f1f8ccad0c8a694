//! `play`: the window, on one job.

use clap::ValueEnum;

use super::exit::Trouble;
use super::job::Job;
use super::window::Start;
use crate::record::Help;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-play"))]
pub(super) struct Args {
    #[arg(help = t!("help-scenario"))]
    scenario: String,
    #[arg(long, default_value_t = 1, help = t!("help-seed"))]
    seed: u64,
    #[arg(long, value_enum, default_value_t = Level::Coached, help = t!("help-play-level"))]
    level: Level,
    #[arg(long, value_name = "ID", value_parser = super::job::learner, help = t!("help-learner"))]
    learner: Option<String>,
}

/// How much help there is.
#[derive(Debug, Clone, Copy, ValueEnum)]
enum Level {
    #[value(help = t!("help-play-coached"))]
    Coached,
    #[value(help = t!("help-play-solo"))]
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

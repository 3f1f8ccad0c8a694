//! Opening the window.

use std::process::ExitCode;

use super::job::Job;
use crate::record::Help;

/// A job to open the window on.
pub(super) struct Start {
    /// The job to be played.
    pub job: Job,
    /// The seed that its numbers are drawn with.
    pub seed: u64,
    /// With how much help.
    pub help: Help,
    /// Who plays, for the record.
    pub learner: Option<String>,
}

/// Opens the window, on a job if one is given.
#[cfg(feature = "app")]
pub(super) fn open(start: Option<Start>) -> ExitCode {
    use crate::app::store::FileStore;
    use crate::app::{self, WindowArgs};
    use crate::panels::view;

    let Some(Start { job, seed, help, learner }) = start else {
        return app::open(WindowArgs { store: Box::new(FileStore::usual()), start: None });
    };
    let help = match help {
        Help::Coached => view::Help::Coached,
        Help::Solo => view::Help::Solo,
    };
    let start = app::Start { scenario: job.id.clone(), seed: Some(seed), help };
    let store = FileStore::usual().of(learner);
    // A scenario from a file is known by its text; one that comes with the program is known anyway.
    let store = if job.is_builtin() { store } else { store.knowing(job.id, job.text) };
    app::open(WindowArgs { store: Box::new(store), start: Some(start) })
}

/// Says that there is no window, and what works without one.
#[cfg(not(feature = "app"))]
pub(super) fn open(start: Option<Start>) -> ExitCode {
    let what = match start {
        Some(Start { job, seed, help, learner }) => {
            let (job, seed, help) = (job.id, seed.to_string(), help.label());
            match learner {
                None => t!("window-playing", job = job, seed = seed, help = help),
                Some(learner) => t!(
                    "window-playing-learner",
                    job = job,
                    seed = seed,
                    help = help,
                    learner = learner
                ),
            }
        }
        None => t!("window-this").to_owned(),
    };
    super::exit::talk(&t!("window-none", what = what));
    super::exit::Exit::Files.into()
}

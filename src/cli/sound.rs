//! `sound`: what a job sounds like, as a file to hear and as pictures to look at.

mod bands;
mod cycle_picture;
mod listener;
mod voices_picture;
mod wav;

use std::path::{Path, PathBuf};

use super::exit::{Exit, Trouble, talk};
use super::files::{self, write_whole};
use super::job::Job;
use super::run::{play_script, read_script};
use crate::bench::Bench;
use crate::technician::script;
use listener::{LONGEST_S, Listener, RATE_HZ};

/// The cycle that is listened to where no script is given.
const CYCLE: &str = include_str!("sound/cycle.script");
const CYCLE_NAME: &str = "cycle.script";
/// Seed of the noise: pictures and files are the same again.
const NOISE_SEED: u64 = 1;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-sound"))]
pub(super) struct Args {
    #[arg(default_value = "healthy-natural", help = t!("help-scenario"))]
    scenario: String,
    #[arg(long, value_name = "FILE", help = t!("help-sound-script"))]
    script: Option<PathBuf>,
    #[arg(long, default_value_t = 1, help = t!("help-seed"))]
    seed: u64,
    #[arg(long, value_name = "FILE.wav", help = t!("help-sound-wav"))]
    wav: Option<PathBuf>,
    #[arg(long, value_name = "FOLDER", help = t!("help-sound-write"))]
    write: Option<PathBuf>,
}

pub(super) fn sound(args: &Args) -> Result<Exit, Trouble> {
    let job = Job::find(&args.scenario)?;
    let script = match &args.script {
        Some(path) => read_script(path)?,
        None => script::read(CYCLE_NAME, CYCLE).map_err(|problems| {
            Trouble::new(Exit::Files, crate::scenario::to_text(&problems, CYCLE))
        })?,
    };
    let mut bench = Bench::new(job.scenario.draw(args.seed));
    let mut listener = Listener::new(&bench, NOISE_SEED);
    let halt = play_script(script, &mut bench, &mut listener);
    listener.end();
    if let Some(halt) = &halt {
        talk(&halt.words(args.script.as_deref().unwrap_or(Path::new(CYCLE_NAME))));
    }
    if bench.seconds() > f64::from(LONGEST_S) {
        talk(&t!("sound-too-long", minutes = LONGEST_S / 60));
    }
    if let Some(path) = &args.wav {
        files::write_bytes(path, &wav::bytes(&listener.samples, RATE_HZ))?;
    }
    if let Some(folder) = &args.write {
        let inner = folder.join("sound");
        std::fs::create_dir_all(&inner)
            .map_err(|error| Trouble::new(Exit::Files, format!("{}: {error}", inner.display())))?;
        write_whole(&inner.join("cycle.svg"), &cycle_picture::draw(&job.id, &listener))?;
        write_whole(&inner.join("voices.svg"), &voices_picture::draw())?;
        talk(&t!("sound-written", folder = inner.display().to_string()));
    }
    if args.wav.is_none() && args.write.is_none() {
        talk(t!("sound-nothing-asked"));
        return Ok(Exit::Usage);
    }
    Ok(if halt.is_some() { Exit::Findings } else { Exit::Fine })
}

//! `run`: a whole job without a window, played by a script or by the reference technician.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json, talk};
use super::files::{self, write_whole};
use super::job::Job;
use super::marks;
use crate::bench::Bench;
use crate::hands::action::Action;
use crate::hands::event::Event;
use crate::hands::refusal::Refusal;
use crate::marking::debrief::{Account, clock};
use crate::marking::{Marks, Observer};
use crate::record::{Ended, Recorder};
use crate::scenario::to_text;
use crate::technician::drive::{Stopped, Witness};
use crate::technician::script::{self, Script, ScriptPlayer};
use crate::technician::{Technician, play};

/// Longest job, in simulated seconds.
const LIMIT_S: u64 = 12 * 3600;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-run"))]
#[command(group(clap::ArgGroup::new("player").required(true).args(["script", "technician"])))]
pub(super) struct Args {
    #[arg(help = t!("help-scenario"))]
    scenario: String,
    #[arg(long, value_name = "FILE", help = t!("help-run-script"))]
    script: Option<PathBuf>,
    #[arg(long, help = t!("help-run-technician"))]
    technician: bool,
    #[arg(long, default_value_t = 1, help = t!("help-seed"))]
    seed: u64,
    #[arg(long, value_name = "ID", value_parser = super::job::learner, help = t!("help-learner"))]
    learner: Option<String>,
    #[arg(long, value_name = "OUT", help = t!("help-run-record"))]
    record: Option<PathBuf>,
    #[arg(long, help = t!("help-json-object"))]
    json: bool,
}

/// What a run gave.
#[derive(Debug, Serialize)]
struct Report {
    scenario: String,
    seed: u64,
    player: &'static str,
    ended: Ended,
    simulated_s: f64,
    /// Actions that were refused.
    refused: usize,
    /// Where and why the player stopped before its end.
    stopped: Option<Halt>,
    record: Option<String>,
    marks: Marks,
    /// What is told beside the marks: causes, consequences, what to practise, the sheet.
    debrief: Account,
    /// The debrief for a terminal.
    #[serde(skip)]
    text: String,
}

/// Where and why a player stopped before its end.
#[derive(Debug, Serialize)]
pub(super) struct Halt {
    /// Line of the script, from 1; none when the time was up.
    line: Option<usize>,
    text: String,
    reason: String,
}

impl Halt {
    /// What is told of it; `file` is the script's.
    pub(super) fn words(&self, file: &Path) -> String {
        match self.line {
            Some(line) => t!(
                "run-stopped",
                file = file.display().to_string(),
                line = line,
                step = &self.text,
                reason = &self.reason
            ),
            None => self.reason.clone(),
        }
    }
}

/// Watches a run for the marks and for the record.
struct Watcher {
    observer: Observer,
    recorder: Recorder<String>,
    refused: usize,
}

impl Witness for Watcher {
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>) {
        self.recorder.acted(bench, action);
        self.refused += usize::from(result.is_err());
    }

    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        self.observer.tick(bench, events);
        self.recorder.ticked(bench);
    }
}

pub(super) fn run(args: &Args) -> Result<Exit, Trouble> {
    let job = Job::find(&args.scenario)?;
    let script = args.script.as_deref().map(read_script).transpose()?;
    let mut bench = Bench::new(job.scenario.draw(args.seed));
    let header = job.header(args.seed, args.learner.clone());
    let recorder = Recorder::begin(&header, String::new()).map_err(record_trouble)?;
    let mut watcher = Watcher { observer: Observer::new(&bench), recorder, refused: 0 };
    let player = if script.is_some() { "script" } else { "technician" };
    let stopped = match script {
        Some(script) => play_script(script, &mut bench, &mut watcher),
        None => play_technician(&mut bench, &mut watcher),
    };
    let ended = Ended::of(bench.over());
    let record = watcher.recorder.end(&bench, ended);
    if let Some(out) = &args.record {
        write_whole(out, &record.map_err(record_trouble)?)?;
    }
    let shipped = job.is_builtin().then_some(job.id.as_str());
    let refused = watcher.refused;
    let told = marks::debriefed(watcher.observer, &bench, &job.scenario, args.seed, shipped)?;
    let text = told.text();
    let report = Report {
        scenario: job.id.clone(),
        seed: args.seed,
        player,
        ended,
        simulated_s: bench.seconds(),
        refused,
        stopped,
        record: args.record.as_ref().map(|out| out.display().to_string()),
        marks: told.marks,
        debrief: told.account,
        text,
    };
    tell(args, &report)?;
    let exit = marks::exit(&report.marks);
    Ok(if report.stopped.is_some() { Exit::Findings } else { exit })
}

fn record_trouble(error: crate::record::SinkError) -> Trouble {
    Trouble::new(Exit::Files, t!("run-no-record", error = error.to_string()))
}

/// The script of a file.
pub(super) fn read_script(path: &Path) -> Result<Script, Trouble> {
    let bytes = files::read(path, script::MAX_BYTES)?;
    script::read_bytes(&path.display().to_string(), &bytes).map_err(|problems| {
        let text = String::from_utf8_lossy(&bytes);
        Trouble::new(Exit::Findings, to_text(&problems, &text))
    })
}

/// Plays a script; gives where it stopped before its end.
pub(super) fn play_script(
    script: Script,
    bench: &mut Bench,
    watcher: &mut dyn Witness,
) -> Option<Halt> {
    let mut player = ScriptPlayer::new(script);
    let stopped = play(bench, &mut player, LIMIT_S, watcher);
    if let Some(stop) = player.stop() {
        return Some(Halt {
            line: Some(stop.line),
            text: stop.text.clone(),
            reason: stop.reason.clone(),
        });
    }
    let reason = match stopped {
        Stopped::Over => t!("run-job-over"),
        Stopped::TimeUp => t!("run-time-over"),
        Stopped::PlayerFinished => return None,
    };
    player.left_over().map(|step| Halt {
        line: Some(step.line),
        text: step.text.clone(),
        reason: reason.to_owned(),
    })
}

fn play_technician(bench: &mut Bench, watcher: &mut Watcher) -> Option<Halt> {
    let mut player = Technician::new(&bench.setup().card);
    let reason = match play(bench, &mut player, LIMIT_S, watcher) {
        Stopped::Over => return None,
        Stopped::TimeUp => t!("run-time-up"),
        Stopped::PlayerFinished => t!("run-technician-done"),
    };
    Some(Halt { line: None, text: String::new(), reason: reason.to_owned() })
}

fn tell(args: &Args, report: &Report) -> Result<(), Trouble> {
    if let Some(halt) = &report.stopped {
        talk(&halt.words(args.script.as_deref().unwrap_or(Path::new(""))));
    }
    if args.json {
        return json(report);
    }
    let mut out = String::new();
    let line = |name: &str, text: &str| format!("{name:<9} {text}\n");
    out.push_str(&line(t!("run-result"), &report.marks.verdict.words()));
    let job = t!("run-job-line", scenario = &report.scenario, seed = report.seed.to_string());
    out.push_str(&line(t!("run-job"), &job));
    out.push_str(&line(t!("run-played-by"), report.player));
    out.push_str(&line(t!("run-ended"), report.ended.label()));
    out.push_str(&line(t!("run-time"), &t!("run-time-line", time = clock(report.simulated_s))));
    out.push_str(&line(t!("run-refused"), &report.refused.to_string()));
    if let Some(record) = &report.record {
        out.push_str(&line(t!("run-record"), record));
    }
    let _ = writeln!(out, "\n{}", report.text);
    data(&out)
}

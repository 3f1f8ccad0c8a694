//! `mark`: replays records, verifies them and marks them.

use std::fmt::Write as _;
use std::path::{Path, PathBuf};

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json, talk};
use super::{files, marks};
use crate::marking::debrief::{Account, Debrief};
use crate::marking::{Marks, Observer};
use crate::record::{
    self, Difference, Ended, Fault, Help, MODEL_VERSION, Note, Record, Replay, What,
};
use crate::scenario::builtin;
use crate::words::Id;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-mark"))]
pub(super) struct Args {
    #[arg(required = true, value_name = "RECORD", help = t!("help-mark-records"))]
    records: Vec<PathBuf>,
    #[arg(long, help = t!("help-json-array"))]
    json: bool,
}

/// What stands under every verified record.
const PROOF: Id = id!("mark-proof");

/// What a record gave.
#[derive(Debug, Serialize)]
#[serde(untagged)]
enum Result_ {
    Marked(Box<Marked>),
    Faulty(Faulty),
}

#[derive(Debug, Serialize)]
struct Faulty {
    file: String,
    fault: Fault,
}

#[derive(Debug, Serialize)]
struct Marked {
    file: String,
    scenario: String,
    scenario_hash: String,
    /// Whether the scenario's text is the one that comes with this program under its id.
    scenario_text: &'static str,
    seed: u64,
    learner: Option<String>,
    help: Option<Help>,
    program: String,
    /// The version of the model that the record tells, and the one that replayed it.
    model: Option<u32>,
    replayed_with_model: u32,
    ended: Option<Ended>,
    /// Whether a torn last line was dropped.
    torn: bool,
    hints: usize,
    went_back: usize,
    /// Digests that were compared, and the first that came out differently.
    digests: usize,
    differs: Option<Differs>,
    marks: Marks,
    /// What is told beside the marks: causes, consequences, what to practise, the sheet.
    debrief: Account,
    /// The debrief for a terminal.
    #[serde(skip)]
    text: String,
}

#[derive(Debug, Serialize)]
struct Differs {
    tick: u64,
    line: usize,
}

pub(super) fn mark(args: &Args) -> Result<Exit, Trouble> {
    let mut worst = Exit::Fine;
    let mut results = Vec::new();
    for path in &args.records {
        match one(path) {
            Ok((result, exit)) => {
                worst = worst.max(exit);
                if args.json {
                    results.push(result);
                } else {
                    data(&text(&result))?;
                }
            }
            Err(trouble) => {
                talk(&trouble.message);
                worst = worst.max(trouble.exit);
            }
        }
    }
    if args.json {
        json(&results)?;
    }
    Ok(worst)
}

fn one(path: &Path) -> Result<(Result_, Exit), Trouble> {
    let file = path.display().to_string();
    let bytes = files::read(path, record::MAX_BYTES)?;
    let record = match record::read(&bytes) {
        Ok(record) => record,
        Err(fault) => {
            let exit = Exit::from_code(fault.exit_code());
            return Ok((Result_::Faulty(Faulty { file, fault }), exit));
        }
    };
    let mut observer: Option<Observer> = None;
    let replay = record::replay(&record, &mut |bench, events| {
        observer.get_or_insert_with(|| Observer::new(bench)).tick(bench, events);
    })
    .map_err(|error| match &error {
        record::ReplayError::Scenario(problems) => {
            let exit = Exit::from_code(crate::scenario::exit_code(problems));
            Trouble::new(exit.max(Exit::Findings), format!("{file}: {error}"))
        }
        record::ReplayError::Finished | record::ReplayError::Differs(_) => {
            Trouble::new(Exit::Findings, format!("{file}: {error}"))
        }
    })?;
    let observer = observer.unwrap_or_else(|| Observer::new(&replay.bench));
    let header = &record.header;
    let shipped = marks::shipped(&header.scenario.id, &header.scenario.text);
    let told = marks::debriefed(observer, &replay.bench, &replay.scenario, header.seed, shipped)?;
    let mut exit = marks::exit(&told.marks);
    if replay.differs.is_some() || !record.is_finished() {
        exit = Exit::Findings;
    }
    let marked = marked(file, &record, &replay, told);
    Ok((Result_::Marked(Box::new(marked)), exit))
}

fn marked(file: String, record: &Record, replay: &Replay, told: Debrief) -> Marked {
    let text = told.text();
    let header = &record.header;
    let notes =
        |note: Note| record.lines.iter().filter(|line| line.what == What::Note(note)).count();
    let scenario_text = match builtin::find(&header.scenario.id) {
        Some(one) if one.text == header.scenario.text => t!("mark-text-shipped"),
        Some(_) => t!("mark-text-changed"),
        None => t!("mark-text-own"),
    };
    Marked {
        file,
        scenario: header.scenario.id.clone(),
        scenario_hash: header.scenario.hash.clone(),
        scenario_text,
        seed: header.seed,
        learner: header.learner.clone(),
        help: header.help,
        program: header.program.clone(),
        model: record.model,
        replayed_with_model: MODEL_VERSION,
        ended: record.lines.iter().find_map(|line| match line.what {
            What::End { how, .. } => Some(how),
            What::Do(_) | What::Mark(_) | What::Note(_) => None,
        }),
        torn: record.torn.is_some(),
        hints: notes(Note::Hint) + notes(Note::JobHint),
        went_back: notes(Note::WentBack),
        digests: replay.compared,
        differs: replay.differs.map(|Difference { tick, line, .. }| Differs { tick, line }),
        marks: told.marks,
        debrief: told.account,
        text,
    }
}

fn text(result: &Result_) -> String {
    match result {
        Result_::Faulty(it) => format!("{}: {}\n", it.file, it.fault),
        Result_::Marked(it) => marked_text(it),
    }
}

fn marked_text(it: &Marked) -> String {
    let mut out = String::new();
    let learner = it.learner.as_deref().unwrap_or(t!("mark-nobody"));
    let help = it.help.map_or(t!("mark-no-help"), Help::label);
    let _ = writeln!(out, "{}", it.file);
    let line = |name: &str, text: &str| format!("  {name:<9} {text}\n");
    out.push_str(&line(t!("mark-result"), &it.marks.verdict.words()));
    let job = t!("mark-job-line", scenario = &it.scenario, seed = it.seed.to_string());
    out.push_str(&line(t!("mark-job"), &job));
    out.push_str(&line(t!("mark-scenario"), it.scenario_text));
    let who = t!("mark-learner-line", learner = learner, help = help);
    out.push_str(&line(t!("mark-learner"), &who));
    if it.hints + it.went_back > 0 {
        let way = t!("mark-way", hints = it.hints, back = it.went_back);
        let _ = writeln!(out, "  {way}");
    }
    let ended = it.ended.map_or(t!("mark-not-finished"), Ended::label);
    out.push_str(&line(t!("mark-ended"), ended));
    if it.torn {
        out.push_str(&line(t!("mark-torn"), t!("mark-torn-line")));
    }
    if it.model != Some(MODEL_VERSION) {
        let told = match it.model {
            None => t!("mark-model-early", now = MODEL_VERSION),
            Some(recorded) => t!("mark-model-line", recorded = recorded, now = MODEL_VERSION),
        };
        out.push_str(&line(t!("mark-model"), &told));
    }
    match &it.differs {
        None => {
            let agree = t!("mark-verified-line", digests = it.digests);
            out.push_str(&line(t!("mark-verified"), &agree));
        }
        Some(at) => {
            let differs = t!(
                "mark-not-verified",
                tick = at.tick.to_string(),
                line = at.line,
                recorded = &it.program,
                now = env!("CARGO_PKG_VERSION")
            );
            let _ = writeln!(out, "  {differs}");
        }
    }
    let _ = writeln!(out, "  {}\n\n{}", PROOF.text(), it.text);
    out
}

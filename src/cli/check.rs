//! `check`: everything that is wrong with scenarios, scripts and records.

use std::path::{Path, PathBuf};

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json, talk};
use super::files;
use crate::record::{self, Fault};
use crate::scenario::{self, Problem, exit_code, to_text, warns};
use crate::technician::script;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-check"))]
pub(super) struct Args {
    #[arg(required = true, value_name = "FILE", help = t!("help-check-files"))]
    files: Vec<PathBuf>,
    #[arg(long, help = t!("help-check-strict"))]
    strict: bool,
    #[arg(long, help = t!("help-check-json"))]
    json: bool,
}

/// What was found in one file.
#[derive(Debug, Serialize)]
struct Checked {
    file: String,
    kind: &'static str,
    problems: Vec<Problem>,
    fault: Option<Fault>,
    #[serde(skip)]
    text: String,
    #[serde(skip)]
    exit: Exit,
}

pub(super) fn check(args: &Args) -> Result<Exit, Trouble> {
    let mut worst = Exit::Fine;
    let mut all = Vec::new();
    for path in &args.files {
        match one(path) {
            Ok(checked) => {
                worst = worst.max(checked.exit);
                if args.strict && warns(&checked.problems) {
                    worst = worst.max(Exit::Findings);
                }
                if args.json {
                    all.push(checked);
                } else {
                    data(&checked.text)?;
                }
            }
            Err(trouble) => {
                talk(&trouble.message);
                worst = worst.max(trouble.exit);
            }
        }
    }
    if args.json {
        json(&all)?;
    }
    Ok(worst)
}

fn one(path: &Path) -> Result<Checked, Trouble> {
    let file = path.display().to_string();
    match path.extension().and_then(|ending| ending.to_str()) {
        Some("jsonl") => record(file, &files::read(path, record::MAX_BYTES)?),
        Some("script") => {
            let bytes = files::read(path, script::MAX_BYTES)?;
            let problems = script::read_bytes(&file, &bytes).err().unwrap_or_default();
            Ok(problems_of(file, "script", problems, &bytes))
        }
        Some(_) | None => {
            let bytes = files::read(path, scenario::MAX_BYTES)?;
            let problems = scenario::check_bytes(&file, &bytes);
            Ok(problems_of(file, "scenario", problems, &bytes))
        }
    }
}

fn problems_of(file: String, kind: &'static str, problems: Vec<Problem>, bytes: &[u8]) -> Checked {
    let text = if problems.is_empty() {
        t!("check-fine", file = &file, kind = kind) + "\n"
    } else {
        to_text(&problems, &String::from_utf8_lossy(bytes))
    };
    let exit = Exit::from_code(exit_code(&problems));
    Checked { file, kind, problems, fault: None, text, exit }
}

fn record(file: String, bytes: &[u8]) -> Result<Checked, Trouble> {
    let (fault, text, exit) = match record::read(bytes) {
        Ok(record) => {
            let lines = record.lines.len() + 1;
            let text = match record.torn {
                None => t!("check-record-fine", file = &file, lines = lines),
                Some(_) => t!("check-record-torn", file = &file, lines = lines),
            } + "\n";
            (None, text, Exit::Fine)
        }
        Err(fault) => {
            let text = format!("{file}: {fault}\n");
            let exit = Exit::from_code(fault.exit_code());
            (Some(fault), text, exit)
        }
    };
    Ok(Checked { file, kind: "record", problems: Vec::new(), fault, text, exit })
}

//! `fidelity`: what the model claims, held against its references.

use std::path::{Path, PathBuf};

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json, talk};
use super::files;
use crate::fidelity::cases::{self, CaseFault};
use crate::fidelity::tables::{self, Found, Outcome, SetAside};
use crate::fidelity::words::{self, Count, count};
use crate::fidelity::{Check, Verdict, all, guide};

#[derive(Debug, clap::Args)]
#[command(about = t!("help-fidelity"), long_about = t!("help-fidelity-long"))]
pub(super) struct Args {
    #[arg(long, help = t!("help-fidelity-json"))]
    json: bool,
    #[arg(long, value_name = "FOLDER", help = t!("help-fidelity-tables"))]
    tables: Option<PathBuf>,
    #[arg(long, value_name = "FILE.json", num_args = 1.., help = t!("help-fidelity-cases"))]
    cases: Vec<PathBuf>,
    #[arg(
        long,
        value_name = "FOLDER",
        conflicts_with_all = ["tables", "cases"],
        help = t!("help-fidelity-write"),
    )]
    write: Option<PathBuf>,
}

/// A check with its verdict, for programs.
#[derive(Debug, Serialize)]
struct Judged<'a> {
    verdict: Verdict,
    #[serde(flatten)]
    check: &'a Check,
}

/// All of it, for programs.
#[derive(Debug, Serialize)]
struct Report<'a> {
    count: Count,
    checks: Vec<Judged<'a>>,
    not_used: &'a [SetAside],
}

pub(super) fn fidelity(args: &Args) -> Result<Exit, Trouble> {
    let (outcome, worst) = if args.tables.is_none() && args.cases.is_empty() {
        let set_aside = tables::own().map(|own| own.set_aside).map_err(|error| {
            Trouble::new(Exit::Files, t!("fidelity-table-broken", error = error.to_string()))
        })?;
        (Outcome { checks: all(), set_aside }, Exit::Fine)
    } else {
        let (mut outcome, mut worst) = match &args.tables {
            Some(folder) => of_folder(folder)?,
            None => (Outcome::default(), Exit::Fine),
        };
        for path in &args.cases {
            match of_cases(path) {
                Ok(checks) => outcome.checks.extend(checks),
                Err(trouble) => {
                    talk(&trouble.message);
                    worst = worst.max(trouble.exit);
                }
            }
        }
        (outcome, worst)
    };
    let count = count(&outcome.checks);
    if args.json {
        let judged = |check| Judged { verdict: Check::verdict(check), check };
        let checks = outcome.checks.iter().map(judged).collect();
        json(&Report { count, checks, not_used: &outcome.set_aside })?;
    } else {
        for check in &outcome.checks {
            data(&words::text(check))?;
        }
        for class in &outcome.set_aside {
            data(
                &(t!(
                    "fidelity-set-aside",
                    file = &class.file,
                    rows = class.rows,
                    reason = &class.reason
                ) + "\n"),
            )?;
        }
        let Count { checks, rows, pass, known_miss, fail } = count;
        data(
            &(t!(
                "fidelity-count",
                checks = checks,
                rows = rows,
                pass = pass,
                known_miss = known_miss,
                fail = fail
            ) + "\n"),
        )?;
    }
    if let Some(folder) = &args.write {
        write(folder, &outcome)?;
    }
    let found = if count.fail > 0 || count.checks == 0 { Exit::Findings } else { Exit::Fine };
    Ok(worst.max(found))
}

/// Every table of a folder, by name; what cannot be read is told and the rest goes on.
fn of_folder(folder: &Path) -> Result<(Outcome, Exit), Trouble> {
    let trouble =
        |error: std::io::Error| Trouble::new(Exit::Files, format!("{}: {error}", folder.display()));
    let mut paths = Vec::new();
    for entry in std::fs::read_dir(folder).map_err(trouble)? {
        let path = entry.map_err(trouble)?.path();
        if path.extension().is_some_and(|ending| ending.eq_ignore_ascii_case("csv")) {
            paths.push(path);
        }
    }
    paths.sort();
    if paths.is_empty() {
        let message = t!("fidelity-no-table", folder = folder.display().to_string());
        return Err(Trouble::new(Exit::Files, message));
    }
    let (mut all, mut worst) = (Outcome::default(), Exit::Fine);
    for path in paths {
        match of_file(&path) {
            Ok(Some(outcome)) => {
                all.checks.extend(outcome.checks);
                all.set_aside.extend(outcome.set_aside);
            }
            Ok(None) => {}
            Err(trouble) => {
                talk(&trouble.message);
                worst = worst.max(trouble.exit);
            }
        }
    }
    Ok((all, worst))
}

/// The cases of one file.
fn of_cases(path: &Path) -> Result<Vec<Check>, Trouble> {
    let bytes = files::read(path, tables::MAX_BYTES)?;
    // What is no UTF-8 is no JSON either, and is told as such with its place.
    cases::run(&String::from_utf8_lossy(&bytes)).map_err(|problem| {
        let newer = problem.fault == CaseFault::Newer;
        let exit = if newer { Exit::Newer } else { Exit::Files };
        Trouble::new(exit, format!("{}: {problem}", path.display()))
    })
}

fn of_file(path: &Path) -> Result<Option<Outcome>, Trouble> {
    let name = path.file_name().unwrap_or_default().to_string_lossy();
    let bytes = files::read(path, tables::MAX_BYTES)?;
    match tables::read(&name, &bytes) {
        Ok(Found::Table(outcome)) => Ok(Some(outcome)),
        Ok(Found::NotUsed(why)) => {
            talk(&t!("fidelity-not-used", file = name.as_ref(), why = why));
            Ok(None)
        }
        Ok(Found::Unknown) => {
            talk(&t!("fidelity-unknown", file = name.as_ref()));
            Ok(None)
        }
        Err(error) => Err(Trouble::new(Exit::Files, error.to_string())),
    }
}

fn write(folder: &Path, outcome: &Outcome) -> Result<(), Trouble> {
    let inner = folder.join("fidelity");
    std::fs::create_dir_all(&inner)
        .map_err(|error| Trouble::new(Exit::Files, format!("{}: {error}", inner.display())))?;
    let pages = guide::pages(&outcome.checks, &outcome.set_aside);
    for page in &pages {
        files::write_whole(&folder.join(&page.name), &page.text)?;
    }
    talk(&t!("fidelity-written", files = pages.len(), folder = folder.display().to_string()));
    Ok(())
}

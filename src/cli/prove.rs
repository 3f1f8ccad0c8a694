//! `prove`: shows that a scenario can be solved by what it gives to see, and that it marks rightly.

mod page;

use std::path::PathBuf;
use std::sync::Mutex;

use serde::Serialize;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use super::job::Job;
use crate::scenario::builtin;
use crate::technician::proof::{self, Alike, MAX_SEEDS, Proof, SeedProof, Spoiling};

/// Let the reference technician do the job on several seeds, then spoil its work in every way.
///
/// It must have full marks on every seed, and each spoiled run must lose exactly its own items. Rules
/// that nothing trips and faults that show the same signs are told. Without a scenario, all that
/// come with the program are proven.
#[derive(Debug, clap::Args)]
pub(super) struct Args {
    /// Scenarios: ids that come with the program, or files.
    scenarios: Vec<String>,
    /// How many seeds, from 0 on (1 to 1000).
    #[arg(long, default_value_t = 3, value_parser = clap::value_parser!(u64).range(1..=MAX_SEEDS))]
    seeds: u64,
    /// On how many of them the work is spoiled too.
    #[arg(long, default_value_t = 1)]
    spoiled: u64,
    /// Do not look for faults that show the same signs (that takes the longest).
    #[arg(long)]
    no_alike: bool,
    /// Print one JSON array.
    #[arg(long, conflicts_with = "write")]
    json: bool,
    /// Write the page to `proof.md` in this folder instead of printing the findings.
    #[arg(long, value_name = "FOLDER", conflicts_with = "scenarios")]
    write: Option<PathBuf>,
}

/// A scenario with its proof.
#[derive(Debug, Serialize)]
pub(super) struct Proven {
    /// Its id or file.
    pub scenario: String,
    /// Its title.
    pub title: String,
    /// What was found.
    #[serde(flatten)]
    pub proof: Proof,
}

pub(super) fn prove(args: &Args) -> Result<Exit, Trouble> {
    let jobs = jobs(&args.scenarios)?;
    let look = |job: &Job| if args.no_alike { Vec::new() } else { proof::alike(&job.scenario, 0) };
    let alike = on_threads(&jobs, look);
    let mut all = Vec::new();
    for (job, alike) in jobs.iter().zip(alike) {
        all.push(prove_job(job, args, alike)?);
    }
    if args.json {
        json(&all)?;
    } else if let Some(folder) = &args.write {
        write_whole(&folder.join("proof.md"), &page::page(&all))?;
    } else {
        data(&all.iter().map(page::told).collect::<String>())?;
    }
    let holds = all.iter().all(|one| one.proof.holds());
    Ok(if holds { Exit::Fine } else { Exit::Findings })
}

fn jobs(names: &[String]) -> Result<Vec<Job>, Trouble> {
    if names.is_empty() {
        return builtin::LADDER.iter().map(|one| Job::find(one.id)).collect();
    }
    names.iter().map(|name| Job::find(name)).collect()
}

fn prove_job(job: &Job, args: &Args, alike: Vec<Alike>) -> Result<Proven, Trouble> {
    let broken = |error: crate::rules::RuleBookError| {
        Trouble::new(Exit::Findings, format!("{}: {error}", job.id))
    };
    let spoiling = |seed| if seed < args.spoiled { Spoiling::Yes } else { Spoiling::No };
    let tasks: Vec<u64> = (0..args.seeds).collect();
    let seeds = on_threads(&tasks, |&seed| proof::prove_seed(&job.scenario, seed, spoiling(seed)));
    let seeds: Vec<SeedProof> = seeds.into_iter().collect::<Result<_, _>>().map_err(broken)?;
    let proof = proof::gather(&job.scenario, seeds, alike).map_err(broken)?;
    Ok(Proven { scenario: job.id.clone(), title: job.scenario.title.clone(), proof })
}

/// Does tasks on as many threads as there are; the order stays.
fn on_threads<T: Sync, R: Send>(tasks: &[T], work: impl Fn(&T) -> R + Sync) -> Vec<R> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let next = Mutex::new(0);
    let done: Mutex<Vec<(usize, R)>> = Mutex::new(Vec::new());
    std::thread::scope(|scope| {
        for _ in 0..threads.min(tasks.len()) {
            scope.spawn(|| {
                loop {
                    let i = {
                        let Ok(mut next) = next.lock() else { return };
                        *next += 1;
                        *next - 1
                    };
                    let Some(task) = tasks.get(i) else { return };
                    let result = work(task);
                    let Ok(mut done) = done.lock() else { return };
                    done.push((i, result));
                }
            });
        }
    });
    let mut done = done.into_inner().unwrap_or_default();
    done.sort_by_key(|(i, _)| *i);
    done.into_iter().map(|(_, result)| result).collect()
}

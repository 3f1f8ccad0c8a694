//! `examine`: tries the marks from both sides, with good work in other manners and with the ritual done
//! blindly.

mod examined;
mod page;

use core::ops::Range;
use std::path::PathBuf;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use super::job::Job;
use super::threads::on_threads;
use crate::rules::RuleBookError;
use crate::scenario::builtin;
use crate::technician::fairness::Policy;
use crate::technician::proof::{
    FaultBench, FaultProof, MAX_SEEDS, blind_run, fair_run, fault_benches,
};
use examined::Examined;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-examine"), long_about = t!("help-examine-long"))]
pub(super) struct Args {
    #[arg(help = t!("help-prove-scenarios"))]
    scenarios: Vec<String>,
    #[arg(
        long,
        default_value_t = 2,
        value_parser = clap::value_parser!(u64).range(1..=MAX_SEEDS),
        help = t!("help-examine-seeds"),
    )]
    seeds: u64,
    #[arg(long, default_value_t = 0, help = t!("help-examine-from"))]
    from: u64,
    #[arg(
        long,
        default_value_t = 30,
        value_parser = clap::value_parser!(u64).range(0..=MAX_SEEDS),
        help = t!("help-examine-runs"),
    )]
    runs: u64,
    #[arg(long, conflicts_with = "scenarios", help = t!("help-examine-faults"))]
    faults: bool,
    #[arg(long, conflicts_with = "write", help = t!("help-json-array"))]
    json: bool,
    #[arg(
        long,
        value_name = "FOLDER",
        conflicts_with_all = ["scenarios", "faults"],
        help = t!("help-examine-write"),
    )]
    write: Option<PathBuf>,
}

impl Args {
    /// Whether each finding is printed once it is there: a long run tells how far it is.
    fn tells_at_once(&self) -> bool {
        !self.json && self.write.is_none()
    }

    /// Numbers of the fair runs of one bench; benches take different ones where `place` differs.
    fn runs(&self, place: u64) -> Range<u64> {
        let first = self.from.saturating_add(place.saturating_mul(self.runs));
        first..first.saturating_add(self.runs)
    }
}

pub(super) fn examine(args: &Args) -> Result<Exit, Trouble> {
    if args.faults {
        return examine_faults(args);
    }
    let jobs: Vec<Job> = if args.scenarios.is_empty() {
        builtin::LADDER.iter().map(|one| Job::find(one.id)).collect::<Result<_, _>>()?
    } else {
        args.scenarios.iter().map(|name| Job::find(name)).collect::<Result<_, _>>()?
    };
    let mut all = Vec::new();
    for job in &jobs {
        let one = examine_job(job, args)?;
        if args.tells_at_once() {
            data(&page::told(&one))?;
        }
        all.push(one);
    }
    if args.json {
        json(&all)?;
    } else if let Some(folder) = &args.write {
        write_whole(&folder.join("examined.md"), &page::page(&all))?;
    }
    Ok(if all.iter().all(Examined::holds) { Exit::Fine } else { Exit::Findings })
}

fn examine_job(job: &Job, args: &Args) -> Result<Examined, Trouble> {
    let broken =
        |error: RuleBookError| Trouble::new(Exit::Findings, format!("{}: {error}", job.id));
    let runs: Vec<u64> = args.runs(0).collect();
    let fair = on_threads(&runs, |&run| fair_run(&job.scenario, run % args.seeds, run));
    let seeds = 0..args.seeds;
    let habits: Vec<(u64, Policy)> =
        seeds.flat_map(|seed| Policy::ALL.map(|policy| (seed, policy))).collect();
    let blind = on_threads(&habits, |&(seed, policy)| blind_run(&job.scenario, seed, policy));
    Ok(Examined {
        scenario: job.id.clone(),
        title: job.scenario.title.clone(),
        fair: fair.into_iter().collect::<Result<_, _>>().map_err(broken)?,
        blind: blind.into_iter().collect::<Result<_, _>>().map_err(broken)?,
    })
}

/// Bare benches with one fault of the catalogue each, instead of jobs.
fn examine_faults(args: &Args) -> Result<Exit, Trouble> {
    let benches: Vec<(u64, FaultBench)> = (0..).zip(fault_benches()).collect();
    let all = on_threads(&benches, |(place, bench)| {
        let proof = bench.try_marks(args.runs(*place), Policy::ALL);
        let proof = proof.map_err(|error| Trouble::new(Exit::Findings, error.to_string()))?;
        if args.tells_at_once() {
            data(&page::told_of_fault(&proof))?;
        }
        Ok(proof)
    });
    let all: Vec<FaultProof> = all.into_iter().collect::<Result<_, Trouble>>()?;
    if args.json {
        json(&all)?;
    }
    Ok(if all.iter().all(FaultProof::holds) { Exit::Fine } else { Exit::Findings })
}

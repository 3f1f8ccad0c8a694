//! `prove`: shows that a scenario can be solved by what it gives to see, and that it marks rightly.

mod page;
mod proven;

use std::collections::BTreeMap;
use std::path::PathBuf;

use super::exit::{Exit, Trouble, data, json};
use super::files::write_whole;
use super::job::Job;
use super::threads::on_threads;
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::Fault;
use crate::scenario::{Scenario, builtin};
use crate::setup::Setup;
use crate::technician::proof::{self, Alike, MAX_SEEDS, SeedProof, Spoiling};
use proven::Proven;

#[derive(Debug, clap::Args)]
#[command(about = t!("help-prove"), long_about = t!("help-prove-long"))]
pub(super) struct Args {
    #[arg(help = t!("help-prove-scenarios"))]
    scenarios: Vec<String>,
    #[arg(
        long,
        default_value_t = 3,
        value_parser = clap::value_parser!(u64).range(1..=MAX_SEEDS),
        help = t!("help-prove-seeds"),
    )]
    seeds: u64,
    #[arg(long, default_value_t = 1, help = t!("help-prove-spoiled"))]
    spoiled: u64,
    #[arg(long, help = t!("help-prove-no-alike"))]
    no_alike: bool,
    #[arg(long, conflicts_with = "write", help = t!("help-json-array"))]
    json: bool,
    #[arg(long, value_name = "FOLDER", conflicts_with = "scenarios", help = t!("help-prove-write"))]
    write: Option<PathBuf>,
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
        let pairs = if args.no_alike { Vec::new() } else { pairs(&jobs) };
        write_whole(&folder.join("proof.md"), &page::page(&all, &pairs))?;
    } else {
        data(&all.iter().map(page::told).collect::<String>())?;
    }
    let holds = all.iter().all(|one| one.proof.holds());
    Ok(if holds { Exit::Fine } else { Exit::Findings })
}

/// Faults of the catalogue that show the same signs on the healthy benches, by fuel.
fn pairs(jobs: &[Job]) -> Vec<(Fuel, Vec<(Alike, Alike)>)> {
    let healthy = |job: &&Job| builtin::HEALTHY.iter().any(|one| one.id == job.id);
    let benches: Vec<Setup> =
        jobs.iter().filter(healthy).map(|job| job.scenario.draw_sound(0)).collect();
    on_threads(&benches, |bench| (bench.fuel, proof::alike_pairs(bench)))
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
    let tasks = tasks(&job.scenario, args);
    let seeds = on_threads(&tasks, |&(seed, how)| proof::prove_seed(&job.scenario, seed, how));
    let seeds: Vec<SeedProof> = seeds.into_iter().collect::<Result<_, _>>().map_err(broken)?;
    let proof = proof::gather(&job.scenario, seeds, alike).map_err(broken)?;
    Ok(Proven { scenario: job.id.clone(), title: job.scenario.title.clone(), proof })
}

/// Every seed, and whether its work is spoiled too: on the first seeds that draw the same.
fn tasks(scenario: &Scenario, args: &Args) -> Vec<(u64, Spoiling)> {
    let mut before: BTreeMap<(usize, Vec<Fault>), u64> = BTreeMap::new();
    (0..args.seeds)
        .map(|seed| {
            let faults = scenario.draw(seed).faults.into_iter().map(|(fault, _)| fault).collect();
            let count = before.entry((scenario.setting(seed), faults)).or_default();
            *count += 1;
            (seed, if *count <= args.spoiled { Spoiling::Yes } else { Spoiling::No })
        })
        .collect()
}

//! What the runs of both sides found, as words for the terminal and as a page.

use std::fmt::Write as _;

use super::examined::Examined;
use crate::technician::fairness::{Manner, Policy, Sequence};
use crate::technician::proof::{BlindProof, FairProof, FaultProof, Judgment};

/// What was found on a job, for the terminal.
pub(super) fn told(one: &Examined) -> String {
    let right = |all: usize, wrong: usize| all - wrong;
    let mut text = t!(
        "examined-summary",
        scenario = &one.scenario,
        fair = right(one.fair.len(), one.unfair().count()),
        runs = one.fair.len(),
        caught = right(one.blind.len(), one.passed_blindly().count()),
        blind = one.blind.len()
    );
    text.push('\n');
    text.push_str(&misses(&one.fair, &one.blind));
    text
}

/// What was found on a bare bench, for the terminal.
pub(super) fn told_of_fault(one: &FaultProof) -> String {
    let (fuel, fault, severity) = (one.fuel.label(), one.fault, &one.severity);
    let bench = if severity.is_empty() {
        t!("examined-bench-bare", fuel = fuel, fault = fault)
    } else {
        t!("examined-bench", fuel = fuel, fault = fault, severity = severity)
    };
    if one.ending.is_none() {
        return format!("{}\n", t!("examined-no-ending", bench = &bench));
    }
    let mut text = t!(
        "examined-summary",
        scenario = &bench,
        fair = one.fair.iter().filter(|run| run.is_right()).count(),
        runs = one.fair.len(),
        caught = one.blind.iter().filter(|run| run.is_right()).count(),
        blind = one.blind.len()
    );
    text.push('\n');
    text.push_str(&misses(&one.fair, &one.blind));
    text
}

/// Each miss in a line of its own.
fn misses(fair: &[FairProof], blind: &[BlindProof]) -> String {
    let unfair = fair.iter().filter(|run| !run.is_right()).map(unfair);
    let passed = blind.iter().filter(|run| !run.is_right()).map(passed);
    unfair.chain(passed).map(|miss| format!("  {miss}\n")).collect()
}

fn unfair(run: &FairProof) -> String {
    let charged = |(rule, seen): &(String, String)| t!("proof-finding", rule = rule, seen = seen);
    let mut lost: Vec<String> = run.findings.iter().map(charged).collect();
    lost.extend(run.stopped.map(str::to_owned));
    lost.extend(run.refused.iter().map(|refused| t!("proof-refused", refused = refused)));
    t!(
        "examined-unfair",
        run = run.run.to_string(),
        seed = run.seed.to_string(),
        manners = [run.manners.join(", "), run.sequences.join(", ")].join("; "),
        lost = lost.join("; ")
    )
}

fn passed(run: &BlindProof) -> String {
    t!("examined-passed", seed = run.seed.to_string(), habit = run.habit)
}

/// The page of all jobs.
pub(super) fn page(all: &[Examined]) -> String {
    let mut text = String::new();
    let _ = writeln!(text, "{}\n", t!("examined-page-head"));
    let _ = writeln!(text, "{}", t!("examined-page-fair"));
    for one in all {
        let right = one.fair.len() - one.unfair().count();
        let row =
            t!("examined-page-fair-row", what = &one.title, right = right, runs = one.fair.len());
        let _ = writeln!(text, "{row}");
    }
    let _ = writeln!(text, "\n{}", t!("examined-page-manners"));
    for manner in Manner::ALL {
        let _ = writeln!(text, "{}", row_of(all, manner.words(), |run| &run.manners));
    }
    let _ = writeln!(text, "\n{}", t!("examined-page-sequences"));
    for sequence in Sequence::ALL {
        let _ = writeln!(text, "{}", row_of(all, sequence.words(), |run| &run.sequences));
    }
    let _ = writeln!(text, "\n{}\n", t!("examined-page-blind"));
    let habits: Vec<&str> = Policy::ALL.iter().map(|it| it.words()).collect();
    let head = [t!("examined-page-job"), t!("examined-page-seed")];
    let _ = writeln!(text, "| {} | {} |", head.join(" | "), habits.join(" | "));
    let _ = writeln!(text, "|---|---|{}", "---|".repeat(habits.len()));
    for one in all {
        text.push_str(&blind_rows(one));
    }
    let _ = writeln!(text, "\n{}\n", t!("examined-page-misses"));
    let misses: String = all.iter().filter(|one| !one.holds()).map(told).collect();
    if misses.is_empty() {
        let _ = writeln!(text, "{}", t!("examined-page-no-misses"));
    } else {
        let _ = writeln!(text, "```text\n{misses}```");
    }
    text
}

/// A manner or sequence with the runs that had it, and how many of them lost nothing.
fn row_of(all: &[Examined], one: &str, had: fn(&FairProof) -> &[&'static str]) -> String {
    let runs = all.iter().flat_map(|it| &it.fair).filter(|run| had(run).contains(&one));
    let right = runs.clone().filter(|run| run.is_right()).count();
    t!("examined-page-fair-row", what = one, right = right, runs = runs.count())
}

/// A row for each seed of a job: how each habit was judged.
fn blind_rows(one: &Examined) -> String {
    let mut seeds: Vec<u64> = one.blind.iter().map(|run| run.seed).collect();
    seeds.dedup();
    let mut text = String::new();
    for seed in seeds {
        let runs = one.blind.iter().filter(|run| run.seed == seed);
        let cells: Vec<&str> = runs.map(|run| cell(run.judgment)).collect();
        let _ = writeln!(text, "| {} | {seed} | {} |", one.title, cells.join(" | "));
    }
    text
}

fn cell(judgment: Judgment) -> &'static str {
    match judgment {
        Judgment::Caught => t!("examined-page-caught"),
        Judgment::Fits => t!("examined-page-fits"),
        Judgment::Passes => t!("examined-page-passes"),
    }
}

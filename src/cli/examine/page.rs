//! What the runs of both sides found, as words for the terminal and as a page.

use std::fmt::Write as _;

use super::examined::Examined;
use crate::technician::fairness::{Manner, Policy};
use crate::technician::proof::{BlindProof, FairProof};

/// What was found, for the terminal.
pub(super) fn told(one: &Examined) -> String {
    let mut text = String::new();
    let _ = writeln!(text, "{}", summary(one));
    for run in one.unfair() {
        let _ = writeln!(text, "  {}", unfair(run));
    }
    for run in one.passed_blindly() {
        let _ = writeln!(text, "  {}", passed(run));
    }
    text
}

fn summary(one: &Examined) -> String {
    t!(
        "examined-summary",
        scenario = &one.scenario,
        fair = one.fair.len() - one.unfair().count(),
        runs = one.fair.len(),
        caught = one.blind.len() - one.passed_blindly().count(),
        blind = one.blind.len()
    )
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
        manners = run.manners.join(", "),
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
    let manners: Vec<&str> = Manner::ALL.iter().map(|it| it.words()).collect();
    let _ = writeln!(text, "{}\n", t!("examined-page-manners", manners = manners.join("; ")));
    let _ = writeln!(text, "{}\n", t!("examined-page-fair"));
    for one in all {
        let right = one.fair.len() - one.unfair().count();
        let row =
            t!("examined-page-fair-row", job = &one.title, right = right, runs = one.fair.len());
        let _ = writeln!(text, "{row}");
    }
    let _ = writeln!(text, "\n{}\n", t!("examined-page-blind"));
    let habits: Vec<&str> = Policy::ALL.iter().map(|it| it.words()).collect();
    let _ = writeln!(text, "| {} | {} |", t!("examined-page-job"), habits.join(" | "));
    let _ = writeln!(text, "|---|{}", "---|".repeat(habits.len()));
    for one in all {
        let cells: Vec<&str> = habits.iter().map(|habit| cell(one, habit)).collect();
        let _ = writeln!(text, "| {} | {} |", one.title, cells.join(" | "));
    }
    let misses: String = all.iter().filter(|one| !one.holds()).map(told).collect();
    if !misses.is_empty() {
        let _ = writeln!(text, "\n{}\n\n```text\n{misses}```", t!("examined-page-misses"));
    }
    text
}

/// How a habit was judged on all seeds of a job.
fn cell(one: &Examined, habit: &str) -> &'static str {
    let mut runs = one.blind.iter().filter(|run| run.habit == habit);
    if runs.clone().any(|run| !run.is_right()) {
        t!("examined-page-passes")
    } else if runs.all(|run| run.met) {
        t!("examined-page-fits")
    } else {
        t!("examined-page-caught")
    }
}

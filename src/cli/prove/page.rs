//! Proofs as words for the terminal, and as a page.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use super::proven::Proven;
use crate::appliance::plate::Fuel;
use crate::marking::debrief::clock;
use crate::parts::Ending;
use crate::technician::proof::{Alike, SeedProof, SpoilProof};

/// What a proof found, for the terminal.
pub(super) fn told(one: &Proven) -> String {
    let proof = &one.proof;
    let mut text = String::new();
    let solved = proof.seeds.iter().filter(|seed| seed.is_full()).count();
    let scenario = &one.scenario;
    let first = t!("proof-solved", scenario = scenario, solved = solved, seeds = proof.seeds.len());
    let _ = writeln!(text, "{first}");
    for seed in proof.unsolved() {
        let _ = writeln!(text, "  {}", unsolved(seed));
    }
    let (right, all) = spoiled(one);
    let _ = writeln!(text, "  {}", t!("proof-spoiled", right = right, runs = all));
    for (seed, spoil) in proof.misjudged() {
        let (seed, misjudged) = (seed.to_string(), misjudged(spoil));
        let line = t!("proof-misjudged-seed", seed = seed, misjudged = misjudged);
        let _ = writeln!(text, "  {line}");
    }
    if all > 0 {
        let _ = writeln!(text, "  {}", t!("proof-no-rule", rules = list(&proof.untripped)));
    }
    if !proof.alike.is_empty() {
        let _ = writeln!(text, "  {}", t!("proof-same-signs", faults = alike(&proof.alike)));
    }
    text
}

fn unsolved(seed: &SeedProof) -> String {
    let (number, faults) = (seed.seed.to_string(), list(&seed.faults));
    let mut all = vec![match seed.stopped {
        Some(why) => t!("proof-stopped", seed = number, faults = faults, why = why),
        None => t!(
            "proof-unsolved",
            seed = number,
            faults = faults,
            points = points(seed.points),
            ending = ending(seed.ending)
        ),
    }];
    let finding = |(rule, seen): &(String, String)| t!("proof-finding", rule = rule, seen = seen);
    all.extend(seed.findings.iter().map(finding));
    all.extend(seed.refused.iter().map(|refused| t!("proof-refused", refused = refused)));
    all.push(t!("proof-taken-for", faults = list(&seed.diagnosis)));
    all.join("; ")
}

fn misjudged(spoil: &SpoilProof) -> String {
    let (spoiled, time) = (spoil.name, at(spoil.tick));
    let (wanted, lost) = (list(&spoil.trips), list(&spoil.found));
    match spoil.stopped {
        None => {
            t!("proof-misjudged", spoiled = spoiled, time = time, wanted = wanted, lost = lost)
        }
        Some(why) => t!(
            "proof-misjudged-stopped",
            spoiled = spoiled,
            time = time,
            wanted = wanted,
            lost = lost,
            why = why
        ),
    }
}

fn at(tick: u64) -> String {
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let seconds = tick as f64 * crate::units::TICK_S;
    clock(seconds)
}

fn spoiled(one: &Proven) -> (usize, usize) {
    let runs = || one.proof.seeds.iter().flat_map(|seed| &seed.spoiled);
    (runs().filter(|run| run.is_right()).count(), runs().count())
}

fn list<T: AsRef<str>>(items: &[T]) -> String {
    if items.is_empty() {
        return t!("proof-nothing").to_owned();
    }
    items.iter().map(AsRef::as_ref).collect::<Vec<_>>().join(", ")
}

fn alike(all: &[Alike]) -> String {
    all.iter().map(at_severity).collect::<Vec<_>>().join(", ")
}

fn at_severity(it: &Alike) -> String {
    match it.severity.as_str() {
        "" => it.fault.to_owned(),
        severity => t!("proof-fault-at", fault = it.fault, severity = severity),
    }
}

fn ending(ending: Option<Ending>) -> &'static str {
    match ending {
        None => t!("proof-no-ending"),
        Some(Ending::InService) => t!("proof-in-service"),
        Some(Ending::SupplyOwnerCalled) => t!("proof-owner-called"),
        Some(Ending::ShutOff) => t!("proof-shut-off"),
    }
}

/// A row of the table of seeds.
fn row(seed: &SeedProof) -> String {
    format!(
        "| {} | {} | {} | {} | {} | {} | {} |\n",
        seed.seed,
        list(&seed.faults),
        list(&seed.diagnosis),
        ending(seed.ending),
        points(seed.points),
        clock(seed.seconds),
        seed.actions,
    )
}

/// A spoiled run's row.
fn spoil_row(spoil: &SpoilProof) -> String {
    let points = points(spoil.points);
    format!("| {} | {} | {} | {points} |\n", spoil.name, at(spoil.tick), list(&spoil.found))
}

/// Points, or that there are none because the job is not met.
fn points(points: Option<f64>) -> String {
    points.map_or_else(|| t!("proof-no-points").to_owned(), |points| points.to_string())
}

/// The page `docs/proof.md`: all scenarios in a table, then each with its seeds and spoiled runs.
pub(super) fn page(all: &[Proven], pairs: &[(Fuel, Vec<(Alike, Alike)>)]) -> String {
    let mut text = format!("{}\n\n{}\n", t!("proof-page"), t!("proof-columns"));
    text.push_str("|---|---|---|---|\n");
    for one in all {
        let solved = one.proof.seeds.iter().filter(|seed| seed.is_full()).count();
        let (right, runs) = spoiled(one);
        let same = if one.proof.alike.is_empty() {
            t!("proof-same-none").to_owned()
        } else {
            alike(&one.proof.alike)
        };
        let row = t!(
            "proof-scenario",
            title = &one.title,
            scenario = &one.scenario,
            solved = solved,
            seeds = one.proof.seeds.len(),
            right = right,
            runs = runs,
            same = same
        );
        let _ = writeln!(text, "{row}");
    }
    let untripped = t!("proof-untripped", rules = list(&never_tripped(all)));
    let _ = writeln!(text, "\n{untripped}");
    for (fuel, pairs) in pairs {
        text.push_str(&alike_pairs(*fuel, pairs));
    }
    for one in all {
        let _ = writeln!(text, "\n## {}\n", one.title);
        let _ = writeln!(text, "{}", t!("proof-seed-columns"));
        text.push_str("|---|---|---|---|---|---|---|\n");
        text.extend(one.proof.seeds.iter().map(row));
        for seed in one.proof.seeds.iter().filter(|seed| !seed.spoiled.is_empty()) {
            let columns = t!("proof-spoiled-columns", seed = seed.seed.to_string());
            let _ = writeln!(text, "\n{columns}");
            text.push_str("|---|---|---|---|\n");
            text.extend(seed.spoiled.iter().map(spoil_row));
        }
    }
    text
}

/// Pairs of faults that nobody can tell apart by what is read, seen and heard.
fn alike_pairs(fuel: Fuel, pairs: &[(Alike, Alike)]) -> String {
    if pairs.is_empty() {
        return format!("\n{}\n", t!("proof-alike-none", fuel = fuel.label()));
    }
    let mut text = format!("\n{}\n\n", t!("proof-alike", fuel = fuel.label()));
    for (one, other) in pairs {
        let pair = t!("proof-alike-pair", one = at_severity(one), other = at_severity(other));
        let _ = writeln!(text, "- {pair}");
    }
    text
}

/// Rules that no run of any scenario tripped.
fn never_tripped(all: &[Proven]) -> Vec<String> {
    let mut sets = all.iter().map(|one| one.proof.untripped.iter().collect::<BTreeSet<_>>());
    let Some(first) = sets.next() else { return Vec::new() };
    sets.fold(first, |left, set| left.intersection(&set).copied().collect())
        .into_iter()
        .cloned()
        .collect()
}

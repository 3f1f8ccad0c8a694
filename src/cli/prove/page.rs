//! Proofs as words for the terminal, and as a page.

use std::collections::BTreeSet;
use std::fmt::Write as _;

use super::Proven;
use crate::appliance::plate::Fuel;
use crate::marking::debrief::clock;
use crate::parts::Ending;
use crate::technician::proof::{Alike, SeedProof, SpoilProof};

/// Head of the page.
const HEAD: &str = "# Proof of the scenarios

This page is made by `quarterturn prove --seeds 20 --write docs`; a test proves every scenario anew on
its first seeds and holds the rows against this page.

A scenario proves itself. The reference technician does the job on each seed, seeing and doing only
what a person can see and do, and finds what is wrong by what it reads, not by looking into the file;
it must finish with full marks. Then its work is spoiled: a step dropped, swapped, hurried or botched,
forked from the good run at that point, on the first seed of each set of faults and each variant that a
job draws. Each spoiled run must lose exactly its own items. Ways that a
job gives no occasion for are not tried on it.

The technician's marks show that a job can be solved and that the marking is consistent. They say
nothing about real gas: there the appliance's plate and instructions, the local code and a licensed
technician decide.
";

/// What a proof found, for the terminal.
pub(super) fn told(one: &Proven) -> String {
    let proof = &one.proof;
    let mut text = String::new();
    let solved = proof.seeds.iter().filter(|seed| seed.is_full()).count();
    let _ = writeln!(text, "{}: {} of {} seeds solved", one.scenario, solved, proof.seeds.len());
    for seed in proof.unsolved() {
        let _ = writeln!(text, "  {}", unsolved(seed));
    }
    let (right, all) = spoiled(one);
    let _ = writeln!(text, "  {right} of {all} spoiled runs lost exactly their own items");
    for (seed, spoil) in proof.misjudged() {
        let _ = writeln!(text, "  seed {seed}, {}", misjudged(spoil));
    }
    if all > 0 {
        let _ = writeln!(text, "  rules that no spoiled run tripped: {}", list(&proof.untripped));
    }
    if !proof.alike.is_empty() {
        let _ = writeln!(text, "  shows the same signs as: {}", alike(&proof.alike));
    }
    text
}

fn unsolved(seed: &SeedProof) -> String {
    let mut text = format!("seed {} ({}): ", seed.seed, list(&seed.faults));
    match seed.stopped {
        Some(why) => text.push_str(why),
        None => {
            let _ = write!(text, "{} points, ending {}", seed.points, ending(seed.ending));
        }
    }
    for (rule, seen) in &seed.findings {
        let _ = write!(text, "; {rule}: {seen}");
    }
    for refused in &seed.refused {
        let _ = write!(text, "; refused {refused}");
    }
    let _ = write!(text, "; taken for: {}", list(&seed.diagnosis));
    text
}

fn misjudged(spoil: &SpoilProof) -> String {
    let mut text = format!(
        "“{}” forked at {}: should lose {}, lost {}",
        spoil.name,
        at(spoil.tick),
        list(&spoil.trips),
        list(&spoil.found)
    );
    if let Some(why) = spoil.stopped {
        let _ = write!(text, " ({why})");
    }
    text
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
        return "nothing".to_owned();
    }
    items.iter().map(AsRef::as_ref).collect::<Vec<_>>().join(", ")
}

fn alike(all: &[Alike]) -> String {
    let one = |it: &Alike| match it.severity.as_str() {
        "" => it.fault.to_owned(),
        severity => format!("{} at {severity}", it.fault),
    };
    all.iter().map(one).collect::<Vec<_>>().join(", ")
}

fn ending(ending: Option<Ending>) -> &'static str {
    match ending {
        None => "none",
        Some(Ending::InService) => "in service",
        Some(Ending::SupplyOwnerCalled) => "runs, owner called",
        Some(Ending::ShutOff) => "shut off and tagged",
    }
}

/// A seed's row.
pub(super) fn row(seed: &SeedProof) -> String {
    format!(
        "| {} | {} | {} | {} | {} | {} | {} |\n",
        seed.seed,
        list(&seed.faults),
        list(&seed.diagnosis),
        ending(seed.ending),
        seed.points,
        clock(seed.seconds),
        seed.actions,
    )
}

/// A spoiled run's row.
pub(super) fn spoil_row(spoil: &SpoilProof) -> String {
    format!("| {} | {} | {} | {} |\n", spoil.name, at(spoil.tick), list(&spoil.found), spoil.points)
}

/// The whole page.
pub(super) fn page(all: &[Proven], pairs: &[(Fuel, Vec<(Alike, Alike)>)]) -> String {
    let mut text = HEAD.to_owned();
    text.push_str("\n| scenario | seeds solved | spoiled runs right | the same signs as |\n");
    text.push_str("|---|---|---|---|\n");
    for one in all {
        let solved = one.proof.seeds.iter().filter(|seed| seed.is_full()).count();
        let (right, runs) = spoiled(one);
        let same = if one.proof.alike.is_empty() {
            "no other fault".to_owned()
        } else {
            alike(&one.proof.alike)
        };
        let _ = writeln!(
            text,
            "| {} (`{}`) | {solved} of {} | {right} of {runs} | {same} |",
            one.title,
            one.scenario,
            one.proof.seeds.len()
        );
    }
    text.push_str("\nRules that no spoiled run of any scenario tripped: ");
    text.push_str(&list(&never_tripped(all)));
    text.push_str(".\n");
    for (fuel, pairs) in pairs {
        text.push_str(&alike_pairs(*fuel, pairs));
    }
    for one in all {
        let _ = writeln!(text, "\n## {}\n", one.title);
        text.push_str("| seed | faults | taken for | ending | points | time | actions |\n");
        text.push_str("|---|---|---|---|---|---|---|\n");
        text.extend(one.proof.seeds.iter().map(row));
        for seed in one.proof.seeds.iter().filter(|seed| !seed.spoiled.is_empty()) {
            let _ = writeln!(text, "\n| spoiled, seed {} | forked at | lost | points |", seed.seed);
            text.push_str("|---|---|---|---|\n");
            text.extend(seed.spoiled.iter().map(spoil_row));
        }
    }
    text
}

/// Pairs of faults that nobody can tell apart by what is read, seen and heard.
fn alike_pairs(fuel: Fuel, pairs: &[(Alike, Alike)]) -> String {
    let bench = format!(
        "Faults that show the same signs as another on the healthy bench, {}",
        fuel.label()
    );
    if pairs.is_empty() {
        return format!("\n{bench}: none.\n");
    }
    let mut text = format!("\n{bench}:\n\n");
    for (one, other) in pairs {
        let both = [one.clone(), other.clone()];
        let _ = writeln!(text, "- {}", alike(&both).replacen(", ", " and ", 1));
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

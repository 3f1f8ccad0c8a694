//! The reference technician on the healthy rigs.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::bench::action::Action;
use quarterturn::bench::event::{Event, Happening};
use quarterturn::bench::refusal::Refusal;
use quarterturn::technician::drive::{Stopped, Witness};
use quarterturn::technician::{Technician, play};

use quarterturn::marking::debrief::debrief;
use quarterturn::marking::{Brief, Observer};

use quarterturn::technician::proof::{Spoiling, prove_seed};
use quarterturn::technician::spoil::spoils;

use super::rig;

/// Prints what was done, for a failing test's reader.
struct Log(Vec<String>);

impl Witness for Log {
    fn acted(&mut self, bench: &Bench, action: &Action, result: Result<(), Refusal>) {
        self.0.push(format!("{:7.1} s {action:?} {result:?}", bench.seconds()));
    }
    fn ticked(&mut self, _: &Bench, events: Vec<Event>) {
        for event in events {
            match event.what {
                Happening::Did { .. } | Happening::Refused { .. } => {}
                Happening::Ended { hand_over, .. } => self.0.push(format!("Ended {hand_over:?}")),
                other => self.0.push(format!("        {other:?}")),
            }
        }
    }
}

/// The technician finishes the job on both fuels without a single refusal.
#[test]
fn finishes_without_a_refusal() {
    for fuel in [Fuel::Natural, Fuel::Propane] {
        let setup = rig::healthy(fuel);
        let mut technician = Technician::new(&setup.card);
        let mut bench = Bench::new(setup);
        let mut log = Log(Vec::new());
        let stopped = play(&mut bench, &mut technician, 3 * 3600, &mut log);
        let text = log.0.join("\n");
        assert!(technician.refused().is_empty(), "{text}");
        assert_eq!(stopped, Stopped::Over, "{text}");
        if std::env::var("SHOW").is_ok() {
            println!("{text}");
        }
    }
}

/// Full marks on both jobs, on twenty seeds each.
#[test]
fn full_marks_on_both_jobs_on_twenty_seeds() {
    let book = quarterturn::rules::shared().unwrap();
    for job in quarterturn::scenario::builtin::JOBS {
        let scenario = quarterturn::scenario::load(job.text).unwrap();
        let brief = Brief { right_endings: scenario.marking.endings.clone() };
        for seed in 0..20 {
            let setup = scenario.draw(seed);
            let mut technician = Technician::new(&setup.card);
            let mut bench = Bench::new(setup);
            let mut observer = Observer::new(&bench);
            let stopped = play(&mut bench, &mut technician, 3 * 3600, &mut observer);
            let marks = observer.marks(&book, &brief);
            let text = debrief(&observer.ledger, marks.clone(), observer.trace.clone()).text();
            assert_eq!(stopped, Stopped::Over, "{} seed {seed}: {text}", job.id);
            assert!(
                technician.refused().is_empty(),
                "{} seed {seed}: {:?} {text}",
                job.id,
                technician.refused()
            );
            assert!(marks.met && marks.findings.is_empty(), "{} seed {seed}: {text}", job.id);
            assert!(bench.worst_imbalance() <= 1e-9);
        }
    }
}

/// Each spoiled run, forked from the good one where it goes wrong, loses its own items and no
/// others.
#[test]
fn spoiled_runs_lose_exactly_their_own_items() {
    let mut wrong = Vec::new();
    let mut tried = std::collections::BTreeSet::new();
    for job in quarterturn::scenario::builtin::JOBS {
        let scenario = quarterturn::scenario::load(job.text).unwrap();
        let proof = prove_seed(&scenario, 3, Spoiling::Yes).unwrap();
        assert!(proof.is_full(), "{}: {proof:?}", job.id);
        for one in &proof.spoiled {
            tried.insert(one.name);
            if !one.is_right() {
                let (trips, found) = (&one.trips, &one.found);
                wrong.push(format!(
                    "{} {}: {trips:?} {found:?} {:?}",
                    job.id, one.name, one.stopped
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
    let all: std::collections::BTreeSet<_> = spoils().map(|spoil| spoil.name).collect();
    assert_eq!(tried, all);
}

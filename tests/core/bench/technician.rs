//! The reference technician on the healthy rigs.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::bench::action::Action;
use quarterturn::bench::event::{Event, Happening};
use quarterturn::bench::refusal::Refusal;
use quarterturn::technician::drive::{Stopped, Witness};
use quarterturn::technician::{Technician, play};

use quarterturn::technician::proof::{Spoiling, alike, prove_seed};
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

/// The ways of spoiling have names of their own, and each finds occasion on some shipped job.
#[test]
fn every_way_of_spoiling_finds_occasion() {
    let names: Vec<&str> = spoils().map(|spoil| spoil.name).collect();
    let unique: std::collections::BTreeSet<&str> = names.iter().copied().collect();
    assert_eq!(unique.len(), names.len());
    let mut left = unique;
    for id in [
        "propane-cold-morning",
        "natural-gas-busy-kitchen",
        "healthy-natural",
        "moved-with-the-house",
    ] {
        let text = quarterturn::scenario::builtin::find(id).unwrap().text;
        let scenario = quarterturn::scenario::load(text).unwrap();
        let proof = prove_seed(&scenario, 3, Spoiling::Yes).unwrap();
        assert!(proof.is_full(), "{id}: {proof:?}");
        for one in &proof.spoiled {
            left.remove(one.name);
            assert!(one.is_right(), "{id}, {}: {:?} {:?}", one.name, one.trips, one.found);
        }
    }
    assert!(left.is_empty(), "{left:?}");
}

/// A blocked filter and closed registers starve the exchanger of air alike: nothing that is read at
/// any test point tells them apart. Narrowed flow of air is nothing that a sound bench shows.
#[test]
fn faults_with_the_same_signs_are_found() {
    for id in ["healthy-natural", "healthy-propane"] {
        let j = quarterturn::scenario::load(quarterturn::scenario::builtin::find(id).unwrap().text)
            .unwrap()
            .draw_sound(0);
        for p in quarterturn::technician::proof::alike_pairs(&j) {
            println!("{id} {p:?}");
        }
    }
    let look = |id: &str| {
        let text = quarterturn::scenario::builtin::find(id).unwrap().text;
        alike(&quarterturn::scenario::load(text).unwrap(), 0)
    };
    let names: Vec<&str> = look("stops-when-warm").iter().map(|one| one.fault).collect();
    assert_eq!(names, ["closed_registers"]);
    assert!(look("healthy-natural").is_empty());
}

//! The reference technician on the healthy rigs.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::{Event, EventKind};
use quarterturn::hands::refusal::Refusal;
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
                EventKind::Did { .. } | EventKind::Refused { .. } => {}
                EventKind::Ended { hand_over, .. } => self.0.push(format!("Ended {hand_over:?}")),
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
fn slow_every_way_of_spoiling_finds_occasion() {
    let names: Vec<&str> = spoils().map(|spoil| spoil.name()).collect();
    let unique: std::collections::BTreeSet<&str> = names.iter().copied().collect();
    assert_eq!(unique.len(), names.len());
    let mut left = unique;
    for id in [
        "propane-cold-morning",
        "natural-gas-busy-kitchen",
        "healthy-natural",
        "healthy-propane",
        "after-a-quiet-summer",
        "a-letter-about-the-yard",
        "moved-with-the-house",
        "one-screw-one-number",
        "short-spells",
        "behind-the-cupboard",
        "torn_regulator_diaphragm",
        "missing_stage_cap",
        "pinched_meter_hose",
    ] {
        // No job that ships has gas in the air, or one of the others alone.
        let text = quarterturn::scenario::builtin::find(id).map_or_else(
            || {
                let text = quarterturn::scenario::builtin::find("healthy-propane").unwrap().text;
                let ending = if id.starts_with("torn") { "[ShutOff]" } else { "[InService]" };
                let faults = format!("faults: [{id}],\n    card: (");
                text.replace("card: (", &faults).replace("[InService]", ending)
            },
            |one| one.text.to_owned(),
        );
        let scenario = quarterturn::scenario::load(&text).unwrap();
        let proof = prove_seed(&scenario, 3, Spoiling::Yes).unwrap();
        assert!(proof.is_full(), "{id}: {proof:?}");
        for one in &proof.spoiled {
            left.remove(one.name);
            assert!(one.is_right(), "{id}, {}: {:?} {:?}", one.name, one.trips, one.found);
        }
    }
    assert!(left.is_empty(), "{left:?}");
}

/// A stage screw that is turned in to the bottom and one that is set as high show the same at every
/// test point; a pressure switch that stays open and a hose that is off are told apart by a look, a
/// dirty rod and a poor ground by the ohms. Nothing is alike to a sound bench.
#[test]
fn slow_faults_with_the_same_signs_are_found() {
    let look = |fault: &str| {
        let text = quarterturn::scenario::builtin::find("healthy-natural").unwrap().text;
        let text = text.replacen("    card: (", &format!("    faults: [{fault}],\n    card: ("), 1);
        let found = alike(&quarterturn::scenario::load(&text).unwrap(), 0);
        found.iter().map(|one| one.fault).collect::<Vec<_>>()
    };
    assert_eq!(look("bottomed_high_screw"), ["high_stage_set_high"]);
    assert!(look("low_pressure_switch_open").is_empty());
    assert!(look("dirty_flame_rod").is_empty());
    assert!(look("").is_empty());
}

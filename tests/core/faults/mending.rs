//! Repairs as actions: their list, what refuses them, and what they leave alone.

use std::collections::BTreeSet;

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault;
use quarterturn::catalogue::fault::remedy::{Operation, Remedy};
use quarterturn::catalogue::repair::{Nature, Repair};
use quarterturn::hands::action::Action;
use quarterturn::hands::event::{EventKind, Outcome};
use quarterturn::hands::refusal::Refusal;
use quarterturn::parts::{HandValve, Level, Place, Port, Screw};
use quarterturn::scenario::builtin::healthy_for;

use super::hand::{act, isolate, isolate_furnace, mend, open, put_back, set, wait};

fn bench(fuel: Fuel) -> Bench {
    Bench::new(healthy_for(Fault::KinkedConnector, fuel).unwrap())
}

/// Ids are one each, the record writes the same word, and every name is a phrase.
#[test]
fn every_repair_has_one_id() {
    let mut ids = BTreeSet::new();
    for &repair in Repair::ALL {
        assert!(ids.insert(repair.id()), "{}", repair.id());
        assert_eq!(Repair::from_id(repair.id()), Some(repair));
        assert_eq!(serde_json::to_string(&repair).unwrap(), format!("\"{}\"", repair.id()));
        assert!(repair.label().starts_with(char::is_uppercase), "{}", repair.label());
    }
}

/// Every fault knows a right remedy and a wrong one, none of them twice; every repair and every
/// operation is a remedy of some fault, or undoes one.
#[test]
fn every_fault_has_remedies() {
    let mut named = BTreeSet::new();
    let mut operated = BTreeSet::new();
    for &fault in Fault::ALL {
        let entry = fault.entry();
        assert!(!entry.right.is_empty() && !entry.wrong.is_empty(), "{}", entry.name);
        let mut once = BTreeSet::new();
        for remedy in entry.right.iter().copied().chain(entry.wrong.iter().map(|it| it.remedy)) {
            assert!(once.insert(remedy.id()), "{}: {} twice", entry.name, remedy.id());
            match remedy {
                Remedy::Mend(repair) => drop(named.insert(repair)),
                Remedy::Operate(operation) => drop(operated.insert(operation.id())),
                Remedy::Turn(_) | Remedy::CallOwner | Remedy::ShutOffAndTag => {}
            }
        }
        for remedy in entry.right {
            if let Remedy::Mend(repair) = remedy {
                let nature = repair.nature();
                assert!(matches!(nature, Nature::Care | Nature::Part), "{}", entry.name);
            }
        }
        for wrong in entry.wrong {
            assert!(wrong.danger.len() > 20 && wrong.danger.ends_with('.'), "{}", entry.name);
        }
    }
    let unnamed: Vec<_> = Repair::ALL.iter().filter(|it| !named.contains(it)).collect();
    assert!(unnamed.is_empty(), "{unnamed:?}");
    assert_eq!(operated.len(), Operation::ALL.len());
}

/// What is not isolated is refused with its reason, and nothing changes.
#[test]
fn work_without_isolation_is_refused() {
    for (repair, why) in [
        (Repair::ReplaceSupplyRegulator, Refusal::ShutFirst(HandValve::Supply)),
        (Repair::ReplaceConnector, Refusal::ShutFirst(HandValve::Furnace)),
        (Repair::ReplaceGasValve, Refusal::DoorInTheWay),
        (Repair::ReplaceIgniter, Refusal::DoorInTheWay),
        (Repair::PurgeLine, Refusal::PowerOn),
        (Repair::ReplaceFilter, Refusal::DoorInTheWay),
        (Repair::MendThermostatWire, Refusal::PowerOn),
        (Repair::ReplaceFirstStage, Refusal::NotFitted),
        (Repair::RemoveBypasses, Refusal::NotFitted),
        (Repair::BypassLowGasSwitch, Refusal::NotFitted),
    ] {
        let mut bench = bench(Fuel::Natural);
        let before = bench.setup().clone();
        assert_eq!(
            bench.apply(&Action::Mend(repair)).err(),
            match repair.place() {
                Place::Yard => Some(why),
                Place::PlantRoom | Place::GasValve | Place::Hall | Place::Away => {
                    Some(Refusal::NotHere)
                }
            }
        );
        act(&mut bench, Action::Go(repair.place()));
        assert_eq!(bench.apply(&Action::Mend(repair)), Err(why), "{repair:?}");
        assert_eq!(bench.setup_now(), &before);
        assert!(!why.text().is_empty());
    }
}

/// Gas that is left behind the shut manual valve keeps a joint shut until it is let off.
#[test]
fn trapped_gas_is_let_off_first() {
    let mut bench = bench(Fuel::Natural);
    wait(&mut bench, 1);
    act(&mut bench, Action::Go(Place::PlantRoom));
    act(&mut bench, Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 });
    let connector = Action::Mend(Repair::ReplaceConnector);
    assert_eq!(bench.apply(&connector), Err(Refusal::PressureLeft));
    isolate(&mut bench);
    act(&mut bench, Action::Go(Place::PlantRoom));
    assert_eq!(bench.apply(&connector), Ok(()));
}

/// A hole is cleaned through the open port only.
#[test]
fn a_tap_is_cleaned_through_the_open_port() {
    let mut bench = bench(Fuel::Natural);
    isolate(&mut bench);
    let clean = Action::Mend(Repair::CleanManifoldTap);
    assert_eq!(bench.apply(&clean), Err(Refusal::PortNotOpen));
    open(&mut bench, Port::Manifold);
    assert_eq!(bench.apply(&clean), Ok(()));
}

/// A part swapped on a sound bench changes nothing and says so; the pressures go on as they were.
#[test]
fn a_sound_part_swapped_changes_nothing() {
    let mut bench = bench(Fuel::Natural);
    isolate(&mut bench);
    for repair in [Repair::ReplaceIgniter, Repair::ReplaceConnector, Repair::ReplaceGasValve] {
        bench.take_events();
        mend(&mut bench, repair);
        let told = bench.take_events();
        let nothing = EventKind::Mended { repair, outcome: Outcome::Nothing, plate: None };
        assert!(told.iter().any(|event| event.what == nothing), "{repair:?}");
    }
    assert_eq!(bench.mended().len(), 3);
}

/// Turned screws, trapped gas and meter stand after work elsewhere as before it.
#[test]
fn what_is_not_touched_stays() {
    let fault = Fault::WaterInLine;
    let mut setup = healthy_for(fault, Fuel::Propane).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Propane));
    let mut bench = Bench::new(setup);
    let found = bench.truth();
    set(&mut bench, Screw::High, found.set_pa[Level::High] + 100.0);
    set(&mut bench, Screw::Supply, found.supply_set_pa + 150.0);
    isolate_furnace(&mut bench);
    let before = bench.truth();
    assert!(before.tee_pa > 1000.0);
    mend(&mut bench, Repair::EmptyDripLeg);
    let after = bench.truth();
    assert_eq!(after.set_pa[Level::High], before.set_pa[Level::High]);
    assert_eq!(after.screw_turns, before.screw_turns);
    assert_eq!(after.supply_set_pa, before.supply_set_pa);
    assert_eq!(after.supply_pa, before.supply_pa);
    assert_eq!(after.tee_pa, before.tee_pa);
    assert!((after.inlet_pa - before.inlet_pa).abs() < 1e-9);
    put_back(&mut bench);
    // At rest the regulator locks up where its turned screw has it.
    let rest_pa = bench.truth().supply_pa;
    assert!(rest_pa > before.supply_set_pa, "{rest_pa} {}", before.supply_set_pa);
}

/// The bench can be built again from what it was built from, repairs or not.
#[test]
fn what_it_was_built_from_is_kept() {
    let fault = Fault::BlockedInletScreen;
    let mut setup = healthy_for(fault, Fuel::Natural).unwrap();
    fault.apply(&mut setup, fault.entry().severity.typical(Fuel::Natural));
    let run = |mut bench: Bench| {
        isolate(&mut bench);
        mend(&mut bench, Repair::CleanInletScreen);
        put_back(&mut bench);
        bench
    };
    let once = run(Bench::new(setup.clone()));
    assert_eq!(once.setup(), &setup);
    assert_ne!(once.setup_now(), &setup);
    let again = run(Bench::new(once.setup().clone()));
    assert_eq!(again.digest(), once.digest());
    assert!(once.worst_imbalance() <= 1e-9, "{}", once.worst_imbalance());
}

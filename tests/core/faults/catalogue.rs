//! The catalogue itself: complete, readable, and true to its ranges.

use std::collections::BTreeSet;

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::{Fault, Scale};
use quarterturn::parts::{Fitted, Screw};
use quarterturn::scenario::builtin::healthy_for;

use super::{control, measuring, supply, valve};

/// Running numbers of the trade's faults that are no change to the model: a hose on the wrong port
/// and a misread U-tube are things that people do. Their reasons stand in `docs/faults.md`.
const NOT_A_CHANGE: [u8; 2] = [63, 66];

/// Names are plain words, one each; every running number from 1 to 70 is there but for those that
/// people do; every severity can be read and stands in its order; a cause is a sentence.
#[test]
fn the_catalogue_is_complete() {
    let mut names = BTreeSet::new();
    let mut numbers = BTreeSet::new();
    for &fault in Fault::ALL {
        let entry = fault.entry();
        assert!(names.insert(entry.name), "{} stands twice", entry.name);
        let plain = |c: char| c.is_ascii_lowercase() || c == '_';
        assert!(entry.name.chars().all(plain), "{}", entry.name);
        assert_eq!(Fault::from_name(entry.name), Some(fault));
        numbers.insert(entry.number);
        assert!(entry.cause.len() > 40 && entry.cause.ends_with('.'), "{}", entry.name);
        let severity = &entry.severity;
        if severity.scale == Scale::Plain {
            continue;
        }
        let read = |text: &str| severity.parse(text).unwrap_or_else(|why| panic!("{text}: {why}"));
        let (low, high) = (read(severity.least), read(severity.most));
        assert!(low < high, "{}", entry.name);
        for text in severity.typical {
            assert!((low..=high).contains(&read(text)), "{} {text}", entry.name);
            let again = read(&severity.show(read(text)));
            approx::assert_relative_eq!(again, read(text), max_relative = 1e-5);
        }
    }
    let wanted: BTreeSet<u8> = (0..=74).filter(|n| !NOT_A_CHANGE.contains(n)).collect();
    assert_eq!(numbers, wanted);
}

/// Each fault has its rows: on each fuel that it fits, but for the manometer's, which are the same
/// on both.
#[test]
fn every_fault_has_its_rows() {
    let tables = [supply::ALL, control::ALL, measuring::ALL];
    let rows: BTreeSet<(Fault, bool)> = tables
        .iter()
        .chain(valve::ALL)
        .copied()
        .flatten()
        .map(|row| (row.0, row.1 == Fuel::Natural))
        .collect();
    for &fault in Fault::ALL {
        for fuel in [Fuel::Natural, Fuel::Propane] {
            let natural = fuel == Fuel::Natural;
            let meter_only = fault >= Fault::MeterZeroOff
                && (fault <= Fault::SmallMeterRange || fault == Fault::FadedOdorant);
            if healthy_for(fault, fuel).is_some() && (natural || !meter_only) {
                assert!(rows.contains(&(fault, natural)), "{} on {fuel:?}", fault.name());
            }
        }
    }
}

/// A severity is kept within its range, and a fault that does not fit changes nothing.
#[test]
fn severities_are_kept_and_misfits_refused() {
    let mut setup = healthy_for(Fault::KinkedConnector, Fuel::Natural).unwrap();
    let before = setup.clone();
    Fault::NearlyEmptyTank.apply(&mut setup, 0.05);
    assert_eq!(setup, before);
    Fault::KinkedConnector.apply(&mut setup, 7.0);
    assert_eq!(setup.condition.line.connector_kinked, 0.97);
    assert_eq!(setup.faults, [(Fault::KinkedConnector, 0.97)]);
    Fault::MissingStageCap.apply(&mut setup, f64::NAN);
    let off = setup.found.caps.iter().filter(|(_, cap)| **cap == Fitted::Off);
    assert_eq!(off.map(|(screw, _)| screw).collect::<Vec<_>>(), [Screw::High]);
}

/// Every fault at both ends of its range gives a bench that runs: finite, balanced, convergent.
#[test]
fn both_ends_of_every_range_run() {
    for &fault in Fault::ALL {
        for fuel in [Fuel::Natural, Fuel::Propane] {
            let Some(healthy) = healthy_for(fault, fuel) else { continue };
            let (low, high) = fault.entry().severity.range();
            for severity in [low, high] {
                let mut setup = healthy.clone();
                fault.apply(&mut setup, severity);
                setup.house.setpoint_half_f = 160;
                let mut bench = Bench::new(setup);
                for _ in 0..150 * 50 {
                    bench.step();
                }
                let truth = bench.truth();
                let name = fault.name();
                assert!(truth.inlet_pa.is_finite() && truth.manifold_pa.is_finite(), "{name}");
                assert!(bench.worst_imbalance() <= 1e-9, "{name} {}", bench.worst_imbalance());
                let failed = |event: &quarterturn::hands::event::Event| {
                    event.what == quarterturn::hands::event::EventKind::NotConverged
                };
                assert!(!bench.take_events().iter().any(failed), "{name} {severity}");
            }
        }
    }
}

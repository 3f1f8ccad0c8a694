//! Measuring faults, on as many threads as there are.

use std::sync::Mutex;

use super::looks::{Sight, differing, looked};
use crate::appliance::plate::Fuel;
use crate::catalogue::fault::{Family, Fault};
use crate::measure::pattern::{Pattern, Start, measure};
use crate::parts::Port;
use crate::scenario::builtin::healthy_for;
use crate::senses::seen::Display;
use crate::setup::Setup;

/// A fault with what it does on each fuel that it fits.
pub(super) struct Measured {
    pub fault: Fault,
    pub cases: Vec<Case>,
}

/// A healthy and a faulty bench of one fuel.
pub(super) struct Case {
    pub fuel: Fuel,
    /// The fault's severity in the SI unit of its scale.
    pub severity: f64,
    /// The setup with the fault.
    pub setup: Setup,
    pub healthy: Pattern,
    pub faulty: Pattern,
    /// What the manometer shows on the inlet port and on the manifold port, for faults of the
    /// measuring chain.
    pub shown: Option<[Vec<Display>; 2]>,
    /// What is seen by eye and not on the healthy bench.
    pub looks: Vec<Sight>,
}

/// Patterns and sights of healthy benches, each measured once.
type Known = Mutex<Vec<(Setup, Pattern, Vec<Sight>)>>;

/// Measures faults; the order stays.
pub(super) fn measure_all(faults: &[Fault]) -> Vec<Measured> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let share = faults.len().div_ceil(threads).max(1);
    let known = &Known::default();
    std::thread::scope(|scope| {
        let running: Vec<_> = faults
            .chunks(share)
            .map(|chunk| {
                scope.spawn(move || chunk.iter().map(|&it| one(it, known)).collect::<Vec<_>>())
            })
            .collect();
        running.into_iter().filter_map(|thread| thread.join().ok()).flatten().collect()
    })
}

fn one(fault: Fault, known: &Known) -> Measured {
    let cases = [Fuel::Natural, Fuel::Propane].into_iter().filter_map(|fuel| {
        let healthy = healthy_for(fault, fuel)?;
        let mut setup = healthy.clone();
        let severity = fault.entry().severity.typical(fuel);
        fault.apply(&mut setup, severity);
        let shown = (fault.entry().family == Family::Measuring && fault.entry().number <= 65)
            .then(|| [Port::Inlet, Port::Manifold].map(|port| shown(&setup, port)));
        let (healthy, seen) = measured_once(healthy, known);
        Some(Case {
            fuel,
            severity,
            healthy,
            looks: differing(&seen, &looked(setup.clone())),
            faulty: measure(setup.clone(), Start::AsFound),
            shown,
            setup,
        })
    });
    Measured { fault, cases: cases.collect() }
}

fn measured_once(setup: Setup, known: &Known) -> (Pattern, Vec<Sight>) {
    let find = |list: &[(Setup, Pattern, Vec<Sight>)]| {
        list.iter().find(|(it, ..)| *it == setup).map(|(_, it, seen)| (it.clone(), seen.clone()))
    };
    if let Some(known) = known.lock().ok().and_then(|list| find(&list)) {
        return known;
    }
    // Two threads may measure the same one; they come to the same.
    let pattern = measure(setup.clone(), Start::AsFound);
    let seen = looked(setup.clone());
    if let Ok(mut list) = known.lock() {
        list.push((setup, pattern.clone(), seen.clone()));
    }
    (pattern, seen)
}

fn shown(setup: &Setup, port: Port) -> Vec<Display> {
    let pattern = measure(setup.clone(), Start::Hooked(port));
    pattern.points.into_iter().map(|point| point.display).collect()
}

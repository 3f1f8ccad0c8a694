//! Measuring faults, on as many threads as there are.

use crate::appliance::plate::Fuel;
use crate::bench::fault::pattern::{Hands, Pattern, measure};
use crate::bench::fault::{Family, Fault};
use crate::bench::part::Port;
use crate::bench::seen::Display;
use crate::bench::setup::Setup;
use crate::scenario::builtin::healthy_for;

/// A fault with what it does on each fuel that it fits.
pub(super) struct Measured {
    pub fault: Fault,
    pub cases: Vec<Case>,
}

/// A healthy and a faulty bench of one fuel.
pub(super) struct Case {
    pub fuel: Fuel,
    /// In SI.
    pub severity: f64,
    /// Heating value of the gas, in J/m³.
    pub setup: Setup,
    pub healthy: Pattern,
    pub faulty: Pattern,
    /// What the manometer shows on the inlet port and on the manifold port, for faults of the
    /// measuring chain.
    pub shown: Option<[Vec<Display>; 2]>,
}

/// Measures faults; the order stays.
pub(super) fn measure_all(faults: &[Fault]) -> Vec<Measured> {
    let threads = std::thread::available_parallelism().map_or(1, usize::from);
    let share = faults.len().div_ceil(threads).max(1);
    std::thread::scope(|scope| {
        let running: Vec<_> = faults
            .chunks(share)
            .map(|chunk| scope.spawn(move || chunk.iter().map(|&it| one(it)).collect::<Vec<_>>()))
            .collect();
        running.into_iter().filter_map(|thread| thread.join().ok()).flatten().collect()
    })
}

fn one(fault: Fault) -> Measured {
    let cases = [Fuel::Natural, Fuel::Propane].into_iter().filter_map(|fuel| {
        let healthy = healthy_for(fault, fuel)?;
        let mut setup = healthy.clone();
        let severity = fault.entry().severity.typical(fuel);
        fault.apply(&mut setup, severity);
        let shown = (fault.entry().family == Family::Measuring && fault.entry().number <= 65)
            .then(|| [Port::Inlet, Port::Manifold].map(|port| shown(&setup, port)));
        Some(Case {
            fuel,
            severity,
            healthy: measure(healthy, Hands::AsFound, None),
            faulty: measure(setup.clone(), Hands::AsFound, None),
            shown,
            setup,
        })
    });
    Measured { fault, cases: cases.collect() }
}

fn shown(setup: &Setup, port: Port) -> Vec<Display> {
    let pattern = measure(setup.clone(), Hands::AsFound, Some(port));
    pattern.points.into_iter().map(|point| point.display).collect()
}

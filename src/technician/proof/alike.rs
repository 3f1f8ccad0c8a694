//! Which faults of the catalogue show the same signs as a job's own: nobody could tell them apart by
//! what is read, seen and heard at any test point.

mod signs;

use serde::Serialize;

use self::signs::Watched;
use super::catalogue::catalogue;
use crate::scenario::Scenario;
use crate::setup::Setup;

/// A fault that looks like another, as the job's own.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Alike {
    /// Its name in the catalogue.
    pub fault: &'static str,
    /// How severe, as an author writes it; empty for one that is there or not.
    pub severity: String,
}

/// Faults of the catalogue, one at a time at their lowest, typical and highest severity, that show
/// what this job shows on this seed. The job's own fault is left out, and so are faults that change
/// nothing that shows on this site.
#[must_use]
pub fn alike(scenario: &Scenario, seed: u64) -> Vec<Alike> {
    let job = scenario.draw(seed);
    let sound = scenario.draw_sound(seed);
    let own = Watched::new(job.clone());
    if own.same(&Watched::new(sound.clone())) {
        return Vec::new();
    }
    let mut found: Vec<Alike> = Vec::new();
    for (fault, severity, setup) in catalogue(&sound) {
        let named = found.last().is_some_and(|last| last.fault == fault.name());
        let present = job.faults.iter().any(|(one, _)| *one == fault);
        if !named && !present && own.same(&Watched::new(setup)) {
            found.push(Alike { fault: fault.name(), severity });
        }
    }
    found
}

/// Faults of the catalogue that show the same signs as another one on this sound bench, each at its
/// lowest, typical and highest severity: pairs in the order of the catalogue, each pair of faults once.
/// What shows the signs of the sound bench is left out.
#[must_use]
pub fn alike_pairs(sound: &Setup) -> Vec<(Alike, Alike)> {
    let healthy = Watched::new(sound.clone());
    let all: Vec<(Alike, Watched)> = catalogue(sound)
        .map(|(fault, severity, setup)| {
            (Alike { fault: fault.name(), severity }, Watched::new(setup))
        })
        .filter(|(_, bench)| !bench.same(&healthy))
        .collect();
    let mut pairs: Vec<(Alike, Alike)> = Vec::new();
    for (i, (one, bench)) in all.iter().enumerate() {
        for (other, others) in all.iter().skip(i + 1) {
            let told =
                |pair: &(Alike, Alike)| (pair.0.fault, pair.1.fault) == (one.fault, other.fault);
            if one.fault != other.fault && !pairs.iter().any(told) && bench.same(others) {
                pairs.push((one.clone(), other.clone()));
            }
        }
    }
    pairs
}

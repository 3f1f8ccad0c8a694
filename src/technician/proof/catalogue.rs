//! The faults of the catalogue, each on a sound bench.

use crate::catalogue::fault::Fault;
use crate::setup::Setup;

/// Every fault that fits a sound bench, at its lowest, typical and highest severity, with the bench
/// that has it.
pub(super) fn catalogue(sound: &Setup) -> impl Iterator<Item = (Fault, String, Setup)> {
    let fits = Fault::ALL.iter().copied().filter(|fault| fault.misfit(sound).is_none());
    fits.flat_map(move |fault| {
        let severity = &fault.entry().severity;
        let (lower, upper) = severity.range();
        [lower, severity.typical(sound.fuel), upper].map(|value| {
            let mut setup = sound.clone();
            fault.apply(&mut setup, value);
            (fault, severity.show(value), setup)
        })
    })
}

//! What a job's sheet has to name: what is really wrong on the bench, as far as it can be felt.

use super::felt::SoundBench;
use super::pattern::{Start, measure};
use crate::catalogue::cause::{ORDINARY_ZERO_PA, Origin, TrueCause, set, true_causes};
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::parts::{Cause, Port, Stage};
use crate::setup::{Setup, SupplyRight};

/// Everything wrong on a bench that a finding has to name.
#[must_use]
pub fn to_be_named(setup: &Setup) -> Vec<TrueCause> {
    let sound = SoundBench::new(setup.sound.as_deref().unwrap_or(setup));
    true_causes(setup).into_iter().filter(|it| is_shown(setup, &sound, it)).collect()
}

/// Whether anything that is read, seen, heard or smelt tells of it. A fault is asked of alone, on
/// the bench without the others; how things stand shows to whoever looks; a level that is set wrong
/// shows where the supply lets it. A zero as manometers come with it belongs to every reading.
#[must_use]
pub fn is_to_be_named(setup: &Setup, it: &TrueCause) -> bool {
    is_shown(setup, &SoundBench::new(setup.sound.as_deref().unwrap_or(setup)), it)
}

fn is_shown(setup: &Setup, sound: &SoundBench<'_>, it: &TrueCause) -> bool {
    match it.origin {
        Origin::Fault(Fault::MeterZeroOff | Fault::MeterZeroedUnderPressure, pa)
            if pa.abs() <= ORDINARY_ZERO_PA =>
        {
            false
        }
        // What a hand has to open or switch on shows in how it stands, to whoever looks.
        Origin::Fault(fault, _) if is_only_operated(fault) => true,
        Origin::Fault(fault, severity) => sound.shows(fault, severity),
        Origin::Found => !is_of_a_level(it.cause) || shows(setup, it.cause),
    }
}

/// Whether all that helps against a fault is to open or to switch on.
fn is_only_operated(fault: Fault) -> bool {
    fault.entry().right.iter().all(|remedy| matches!(remedy, Remedy::Operate(_)))
}

fn is_of_a_level(cause: Cause) -> bool {
    matches!(
        cause,
        Cause::LowSetLow
            | Cause::LowSetHigh
            | Cause::HighSetLow
            | Cause::HighSetHigh
            | Cause::ManifoldSetLow
            | Cause::ManifoldSetHigh
    )
}

/// Whether the manifold reads out of its band on that side, or the supply that holds it down is the
/// trainee's to put right.
fn shows(setup: &Setup, cause: Cause) -> bool {
    if setup.card.supply == SupplyRight::Trainee {
        return true;
    }
    let figures = setup.furnace.plate.figures();
    let pattern = measure(setup.clone(), Start::Hooked(Port::Manifold));
    pattern.points.iter().any(|point| {
        let Stage::Firing(level) = point.stage else { return false };
        let band = figures.manifold[level].band();
        let pa = point.truth.manifold_pa;
        (band.is_below(pa) && cause == set(level, false))
            || (band.is_above(pa) && cause == set(level, true))
    })
}

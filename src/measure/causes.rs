//! What a job's sheet has to name: what is really wrong on the bench, as far as it can be felt.

use std::sync::OnceLock;

use super::felt::{PRESSURE_PA, SoundBench};
use super::pattern::{Point, Start, measure};
use crate::catalogue::cause::{ORDINARY_ZERO_PA, Origin, TrueCause, set, set_level, true_causes};
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

/// What a bench shows of what is wrong with it, measured when it is first asked for: a job is marked
/// again and again, and what it was built from stays.
#[derive(Debug, Default)]
pub struct Shown {
    to_be_named: OnceLock<Vec<TrueCause>>,
    cured_by_setting: OnceLock<bool>,
}

impl Shown {
    /// Everything wrong on the bench that a finding has to name. It is always asked of the same setup.
    pub fn to_be_named(&self, setup: &Setup) -> &[TrueCause] {
        self.to_be_named.get_or_init(|| to_be_named(setup))
    }

    /// Whether the supply's setting alone puts the bench right. It is always asked of the same setup.
    pub fn is_cured_by_setting(&self, setup: &Setup) -> bool {
        *self.cured_by_setting.get_or_init(|| is_cured_by_setting(setup))
    }
}

/// Whether anything that is read, seen, heard or smelt tells of it. A fault is asked of alone, on
/// the bench without the others; how things stand shows to whoever looks; a level that is set wrong
/// shows where the supply lets it. A zero as manometers come with it belongs to every reading.
fn is_shown(setup: &Setup, sound: &SoundBench<'_>, it: &TrueCause) -> bool {
    match it.origin {
        Origin::Fault(Fault::MeterZeroOff | Fault::MeterZeroedUnderPressure, pa)
            if pa.abs() <= ORDINARY_ZERO_PA =>
        {
            false
        }
        // What a hand has to open or switch on shows in how it stands, to whoever looks.
        Origin::Fault(fault, _) if is_only_operated(fault) => true,
        Origin::Fault(fault, severity) if set_level(it.cause).is_some() => {
            is_out_of_band(&sound.with(fault, severity), it.cause)
        }
        Origin::Fault(fault, severity) => sound.shows(fault, severity),
        Origin::Found => set_level(it.cause).is_none() || shows(setup, it.cause),
    }
}

/// Whether all that helps against a fault is to open or to switch on.
fn is_only_operated(fault: Fault) -> bool {
    fault.entry().right.iter().all(|remedy| matches!(remedy, Remedy::Operate(_)))
}

/// Whether the manifold reads out of its band on that side, or the supply that holds it down is the
/// trainee's to put right.
fn shows(setup: &Setup, cause: Cause) -> bool {
    setup.card.supply == SupplyRight::Trainee || is_out_of_band(setup, cause)
}

/// Whether the manifold reads out of its band on that side.
fn is_out_of_band(setup: &Setup, cause: Cause) -> bool {
    let figures = setup.furnace.plate.figures();
    let pattern = measure(setup.clone(), Start::Hooked(Port::Manifold));
    pattern.points.iter().any(|point| {
        let Stage::Firing(level) = point.stage else { return false };
        let target = figures.manifold[level];
        let pa = point.truth.manifold_pa;
        // A pressure that an ordinary meter does not tell from the band asks for no name.
        target.band().out_by_pa(pa) > PRESSURE_PA && cause == set(level, pa > target.pa)
    })
}

/// Whether the supply regulator, set higher, would carry every load inside what plate and nameplate
/// allow. Whoever takes a supply that is drawn down so little for one that is set low is not wrong:
/// its setting is what puts it right.
fn is_cured_by_setting(setup: &Setup) -> bool {
    let figures = setup.furnace.plate.figures();
    let supply = &setup.supply;
    let band = |stage| figures.allows(Port::Inlet, stage, Some(supply.lockup_max_pa));
    let inlet = |setup: &Setup| {
        let pattern = measure(setup.clone(), Start::Hooked(Port::Inlet));
        pattern.points
    };
    let short = |it: &Point| band(it.stage).least_pa - it.truth.inlet_pa;
    let raise_pa = inlet(setup).iter().map(short).fold(0.0, f64::max) + PRESSURE_PA;
    let mut raised = setup.clone();
    raised.supply.set_pa += raise_pa;
    raised.supply.lockup_pa += raise_pa;
    let most_pa = supply.delivery_limits_pa.1;
    inlet(&raised).iter().all(|it| {
        let rests = matches!(it.stage, Stage::Rest | Stage::RestAgain);
        let delivers = rests || it.truth.supply_pa <= most_pa;
        // Where the burners do not come, the line rests, and its pressure tells nothing of a load.
        let burns = it.missed.is_none();
        burns && delivers && band(it.stage).contains(it.truth.inlet_pa)
    })
}

//! Evidence of what was proven of plate, label, springs and orifices, and of burners that were lit
//! though they do not agree with the gas in the pipes.

use super::deed::lower;
use super::ledger::{Hit, Ledger};
use super::repairs::mended;
use super::{grounds, safety};
use crate::appliance::plate::Fuel;
use crate::catalogue::cause::true_causes;
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::hands::action::Action;
use crate::hands::event::{EventKind, Outcome};
use crate::parts::{Cause, Subject};

/// Whether it was left shut off after gas in the air: nobody looks for springs then.
pub(super) fn left_for_gas(l: &Ledger) -> bool {
    l.said_shut_off() && safety::alarm_before(l, l.events.len())
}

/// Whether nothing more needs to be looked at: left shut off for gas in the air, or for papers or parts
/// that do not fit the gas in the pipes. One that does not fit settles it.
pub(super) fn is_settled(l: &Ledger) -> bool {
    left_for_gas(l) || (l.said_shut_off() && grounds::conversion_found_wrong(l))
}

/// What has to be looked at before a screw is turned.
fn needed(l: &Ledger) -> Vec<Subject> {
    let mut needed =
        vec![Subject::Plate, Subject::ConversionLabel, Subject::SpringMark, Subject::Orifices];
    if l.setup.fuel == Fuel::Propane {
        needed.push(Subject::LowGasSwitch);
    }
    needed
}

/// What proves fuel and conversion and was not looked at, or only after a firing level's screw was
/// turned: proof after setting is none.
pub(super) fn not_proven(l: &Ledger) -> Vec<Hit> {
    if is_settled(l) {
        return Vec::new();
    }
    let turns =
        |action: &Action| matches!(action, Action::Turn { screw, .. } if screw.level().is_some());
    let turned = l.did().find(|did| turns(did.action)).map(|did| (did.index, did.tick));
    let by = turned.map_or(l.events.len(), |(index, _)| index);
    let looked = |subject: &Subject| {
        l.did().any(|did| did.index < by && *did.action == Action::Look(*subject))
    };
    let missing = needed(l).into_iter().filter(|subject| !looked(subject)).map(Subject::label);
    let missing: Vec<&str> = missing.collect();
    if missing.is_empty() {
        return Vec::new();
    }
    let subjects = lower(&missing.join(", "));
    let (tick, seen) = match turned {
        Some((_, tick)) => (tick, t!("seen-not-looked-at-before-turning", subjects = subjects)),
        None => (l.last_tick(), t!("seen-not-looked-at", subjects = subjects)),
    };
    vec![Hit::new(tick, seen, t!("true-not-looked-at"))]
}

/// Faults of the parts that a conversion changes.
const CONVERSION: [Fault; 5] = [
    Fault::NaturalSpringsOnPropane,
    Fault::NaturalOrificesOnPropane,
    Fault::UnconvertedOnPropane,
    Fault::PropaneOrificesOnNatural,
    Fault::PropaneSpringsOnNatural,
];

/// The causes that name these faults.
const PARTS: [Cause; 3] =
    [Cause::NotConverted, Cause::SpringsForOtherGas, Cause::OrificesForOtherGas];

/// Whether springs, orifices or papers are not for the gas in the pipes, as they stood before an
/// event.
pub(super) fn is_wrong(l: &Ledger, before: usize) -> bool {
    let papers = l.events[..before].iter().rev().find_map(|event| {
        let EventKind::Mended { plate, .. } = &event.what else { return None };
        plate.as_deref()
    });
    let papers = papers.unwrap_or(&l.setup.furnace.plate);
    let mends = |right: &[Remedy]| {
        mended(l).any(|it| {
            let answers = right.contains(&Remedy::Mend(it.repair));
            it.index < before && answers && it.outcome == Outcome::Changed
        })
    };
    let faults = l.setup.faults.iter().map(|(fault, _)| *fault);
    let mut parts = faults.filter(|fault| CONVERSION.contains(fault));
    papers.figures().fuel != l.setup.fuel || parts.any(|fault| !mends(fault.entry().right))
}

/// The first time that burners were lit on parts for another gas, by whoever had a hand on the
/// furnace already; what runs by itself on arrival is not their doing.
pub(super) fn wrong_conversion_fired(l: &Ledger) -> Vec<Hit> {
    let Some(first) = safety::first_hand(l) else { return Vec::new() };
    let lit = l.events.iter().enumerate().skip(first.index).find(|(index, event)| {
        let lights = matches!(event.what, EventKind::Fired { from: None, to: Some(_) });
        lights && is_wrong(l, *index)
    });
    let wrong = true_causes(&l.setup).into_iter().map(|it| it.cause);
    let wrong = wrong.filter(|cause| PARTS.contains(cause)).map(|cause| lower(cause.label()));
    let wrong: Vec<String> = wrong.collect();
    let truth = match wrong.is_empty() {
        true => t!("true-wrong-parts-fired").to_owned(),
        false => t!("true-wrong-part-fired", cause = wrong.join("; ")),
    };
    let hit = |tick| Hit::new(tick, t!("seen-wrong-parts-fired"), &*truth);
    lit.map(|(_, event)| hit(event.tick)).into_iter().collect()
}

//! Whether the endings that are called right can be right for what is wrong.

use super::context::Cross;
use crate::appliance::test_point::{Port, Stage};
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::parts::{Ending, Screw};
use crate::scenario::format::Scenario;
use crate::setup::{Setup, SupplyKind, SupplyRight};

/// Seeds for which faults are drawn.
const TRIED_SEEDS: u64 = 8;
/// Level of a tank below which its owner has to fill it (common practice: a tenth, and a margin).
const LOW_LEVEL: f64 = 0.15;

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let endings = &scenario.marking.endings;
    if scenario.faults.is_empty() || endings.is_empty() {
        // Without faults the author's own numbers decide, which only the bench can tell.
        return;
    }
    let setups: Vec<Setup> = (0..TRIED_SEEDS).map(|seed| scenario.draw(seed)).collect();
    let mut told = false;
    for (i, ending) in endings.iter().enumerate() {
        // Who smells gas may shut off too: beside another ending it is not questioned.
        let asked = *ending != Ending::ShutOff || endings.len() == 1;
        if asked && setups.iter().all(|setup| !possible(setup, *ending)) {
            told = true;
            let told_so = [never(*ending)];
            let helps = setups.first().filter(|_| *ending == Ending::InService).and_then(helps);
            let more = helps.into_iter().chain(instead(endings, &setups));
            let message = told_so.into_iter().chain(more).collect::<Vec<_>>().join(" ");
            cross.warn(&format!("marking.endings[{i}]"), message);
        }
    }
    let some = |setup: &&Setup| endings.iter().any(|ending| possible(setup, *ending));
    if let Some(setup) = setups.iter().find(|setup| !some(setup)).filter(|_| !told) {
        let names: Vec<_> = setup.faults.iter().map(|(fault, _)| fault.name()).collect();
        let none_right = t!("problem-no-ending-right", faults = names.join(t!("list-with")));
        let sentences: Vec<String> = core::iter::once(none_right).chain(helps(setup)).collect();
        let message = sentences.join(" ");
        cross.warn("marking.endings", message);
    }
}

/// What may be right for every seed, and is not in the list; a sentence, or nothing.
fn instead(endings: &[Ending], setups: &[Setup]) -> Option<String> {
    let all = [
        (Ending::InService, "InService"),
        (Ending::SupplyOwnerCalled, "SupplyOwnerCalled"),
        (Ending::ShutOff, "ShutOff"),
    ];
    let may = |ending: Ending| setups.iter().all(|setup| possible(setup, ending));
    let names: Vec<String> = all
        .into_iter()
        .filter(|(ending, _)| !endings.contains(ending) && may(*ending))
        .map(|(_, name)| format!("`{name}`"))
        .collect();
    let endings = (!names.is_empty()).then(|| names.join(t!("list-or")))?;
    Some(t!("problem-ending-instead", endings = endings))
}

fn never(ending: Ending) -> String {
    match ending {
        Ending::InService => t!("problem-in-service"),
        Ending::SupplyOwnerCalled => t!("problem-owner-called"),
        Ending::ShutOff => t!("problem-shut-off"),
    }
    .to_owned()
}

/// Whether an ending can be right on this bench.
fn possible(setup: &Setup, ending: Ending) -> bool {
    let any = |remedy: Remedy| {
        setup.faults.iter().any(|(fault, _)| fault.entry().right.contains(&remedy))
    };
    match ending {
        Ending::InService => unmended(setup).is_none(),
        Ending::SupplyOwnerCalled => any(Remedy::CallOwner) || supply_is_off(setup),
        Ending::ShutOff => {
            any(Remedy::ShutOffAndTag)
                || any(Remedy::CallOwner)
                || supply_is_off(setup)
                || is_mixed(setup)
        }
    }
}

/// The first fault that the trainee has no remedy for.
fn unmended(setup: &Setup) -> Option<Fault> {
    let mut faults = setup.faults.iter().map(|(fault, _)| *fault);
    faults.find(|fault| !fault.entry().right.iter().any(|remedy| is_allowed(setup, *remedy)))
}

/// Whether the trainee may do it, and the furnace runs afterwards.
fn is_allowed(setup: &Setup, remedy: Remedy) -> bool {
    let theirs = setup.card.supply == SupplyRight::OwnerOnly;
    match remedy {
        Remedy::Mend(repair) => !(theirs && repair.is_on_supply()),
        Remedy::Turn(Screw::Supply) => !theirs,
        Remedy::Turn(Screw::Only | Screw::Low | Screw::High) | Remedy::Operate(_) => true,
        Remedy::CallOwner | Remedy::ShutOffAndTag => false,
    }
}

/// What helps against the first fault that the trainee has no remedy for, as a sentence.
fn helps(setup: &Setup) -> Option<String> {
    let fault = unmended(setup)?;
    let right: Vec<String> = fault.entry().right.iter().map(|it| it.label()).collect();
    let (fault, remedies) = (fault.name(), right.join(t!("list-comma-or")));
    Some(match setup.card.supply {
        SupplyRight::OwnerOnly => t!("problem-helps-theirs", fault = fault, remedies = remedies),
        SupplyRight::Trainee => t!("problem-helps", fault = fault, remedies = remedies),
    })
}

/// Whether the supply is found out of its own limits or the plate's, by its figures.
fn supply_is_off(setup: &Setup) -> bool {
    let supply = &setup.supply;
    let (least, most) = supply.delivery_limits_pa;
    let figures = setup.furnace.plate.figures();
    let allows = |stage| figures.allows(Port::Inlet, stage, Some(supply.lockup_max_pa));
    let load_w = setup.furnace.plate.input.top().si()
        + setup.other_appliances.values().map(|it| it.input_w).sum::<f64>();
    let flow_m3_s = load_w / setup.gas.heating_value_j_m3;
    let loaded_pa = supply.set_pa - supply.droop_pa * flow_m3_s / supply.droop_flow_m3_s.max(1e-9);
    let empty = match supply.kind {
        SupplyKind::Tank { level, .. } => level <= LOW_LEVEL,
        SupplyKind::Meter { .. } => false,
    };
    empty
        || supply.set_pa < least
        || supply.set_pa > most
        || allows(Stage::Rest).is_above(supply.lockup_pa)
        || allows(Stage::FullLoad).is_below(loaded_pa)
        || supply.capacity_m3_s < flow_m3_s
}

/// Whether gas, label, springs and orifices do not belong together.
fn is_mixed(setup: &Setup) -> bool {
    let figures = setup.furnace.plate.figures();
    figures.fuel != setup.fuel
        || setup.furnace.springs_for != setup.fuel
        || setup.furnace.orifice_stamp != figures.orifice_stamp
}

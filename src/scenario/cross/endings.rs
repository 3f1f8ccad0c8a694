//! Whether the endings that are called right can be right for what is wrong.

use super::context::Cross;
use crate::catalogue::fault::Fault;
use crate::catalogue::fault::remedy::Remedy;
use crate::measure::endings::{can_be_right, remedies, right_as_well, unmended};
use crate::parts::Ending;
use crate::scenario::format::Scenario;
use crate::setup::{Setup, SupplyRight};

/// Seeds for which faults are drawn.
const TRIED_SEEDS: u64 = 8;

pub(super) fn check(scenario: &Scenario, cross: &mut Cross<'_, '_>) {
    let endings = &scenario.marking.endings;
    if scenario.faults.is_empty() || endings.is_empty() {
        // Without faults the author's own numbers decide, which only the bench can tell.
        return;
    }
    let mut setups: Vec<Setup> = (0..TRIED_SEEDS).map(|seed| scenario.draw(seed)).collect();
    setups.dedup();
    let mut told = false;
    for (i, ending) in endings.iter().enumerate() {
        // Who smells gas may shut off too: beside another ending it is not questioned.
        let asked = *ending != Ending::ShutOff || endings.len() == 1;
        if asked && setups.iter().all(|setup| !can_be_right(setup, *ending)) {
            told = true;
            let told_so = [never(*ending)];
            let helps = setups.first().filter(|_| *ending == Ending::InService).and_then(helps);
            let more = helps.into_iter().chain(instead(endings, &setups));
            let message = told_so.into_iter().chain(more).collect::<Vec<_>>().join(" ");
            cross.warn(&format!("marking.endings[{i}]"), message);
        }
    }
    if !told && endings.contains(&Ending::InService) {
        beside_in_service(endings, &setups, cross);
    }
    // Faults that ask for the same are looked at once.
    let mut asks: Vec<Vec<(Fault, &[Remedy])>> = Vec::new();
    let mut is_new = |setup: &&Setup| {
        let ask = setup.faults.iter().map(|&it| (it.0, remedies(setup, it))).collect();
        let is_new = !asks.contains(&ask);
        asks.push(ask);
        is_new
    };
    let none = |setup: &&Setup| !endings.iter().any(|ending| can_be_right(setup, *ending));
    if !told && let Some(setup) = setups.iter().find(|setup| is_new(setup) && none(setup)) {
        let names: Vec<_> = setup.faults.iter().map(|(fault, _)| fault.name()).collect();
        let none_right = t!("problem-no-ending-right", faults = names.join(t!("list-with")));
        let sentences: Vec<String> = core::iter::once(none_right).chain(helps(setup)).collect();
        let message = sentences.join(" ");
        cross.warn("marking.endings", message);
    }
}

/// `InService`, and not beside it the ending of somebody who is not wrong either.
fn beside_in_service(endings: &[Ending], setups: &[Setup], cross: &mut Cross<'_, '_>) {
    let Some(other) = setups.iter().find_map(right_as_well) else { return };
    if endings.contains(&other) {
        return;
    }
    let message = match other {
        Ending::ShutOff => t!("problem-too-narrow-shut-off"),
        Ending::SupplyOwnerCalled => t!("problem-too-narrow-owner"),
        Ending::InService => return,
    };
    cross.warn("marking.endings", message.to_owned());
}

/// The endings by name.
const ALL: [(Ending, &str); 3] = [
    (Ending::InService, "InService"),
    (Ending::SupplyOwnerCalled, "SupplyOwnerCalled"),
    (Ending::ShutOff, "ShutOff"),
];

/// What may be right for every seed, and is not in the list; a sentence, or nothing.
fn instead(endings: &[Ending], setups: &[Setup]) -> Option<String> {
    let may = |ending: Ending| setups.iter().all(|setup| can_be_right(setup, ending));
    let names: Vec<String> = ALL
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

/// What helps against the first fault that the trainee has no remedy for, as a sentence.
fn helps(setup: &Setup) -> Option<String> {
    let found = unmended(setup)?;
    let right: Vec<String> = remedies(setup, found).iter().map(|it| it.label()).collect();
    let (fault, remedies) = (found.0.name(), right.join(t!("list-comma-or")));
    Some(match setup.card.supply {
        SupplyRight::OwnerOnly => t!("problem-helps-theirs", fault = fault, remedies = remedies),
        SupplyRight::Trainee => t!("problem-helps", fault = fault, remedies = remedies),
    })
}

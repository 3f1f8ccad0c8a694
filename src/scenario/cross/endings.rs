//! Whether the endings that are called right can be right for what is wrong.

use super::Cross;
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
            let message = format!("{}{}", never(*ending, &setups), instead(endings, &setups));
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
        let message = format!(
            "No ending of the list is right where {} is drawn.{}",
            names.join(" with "),
            helps(setup)
        );
        cross.warn("marking.endings", message);
    }
}

/// `InService`, and not beside it the ending of somebody who is not wrong either.
fn beside_in_service(endings: &[Ending], setups: &[Setup], cross: &mut Cross<'_, '_>) {
    let Some(other) = setups.iter().find_map(right_as_well) else { return };
    if endings.contains(&other) {
        return;
    }
    let why = match other {
        Ending::ShutOff => "what is wrong may be left shut off",
        Ending::SupplyOwnerCalled => "what is wrong may be left to the owner of the supply",
        Ending::InService => return,
    };
    let message = format!(
        "`InService` alone is too narrow: {why}, and nobody who does that is wrong. List `{}` beside it.",
        ALL.iter().find(|(it, _)| *it == other).map_or("", |(_, name)| name)
    );
    cross.warn("marking.endings", message);
}

/// The endings by name.
const ALL: [(Ending, &str); 3] = [
    (Ending::InService, "InService"),
    (Ending::SupplyOwnerCalled, "SupplyOwnerCalled"),
    (Ending::ShutOff, "ShutOff"),
];

/// What may be right for every seat, and is not in the list; a sentence, or nothing.
fn instead(endings: &[Ending], setups: &[Setup]) -> String {
    let may = |ending: Ending| setups.iter().all(|setup| can_be_right(setup, ending));
    let names: Vec<&str> = ALL
        .into_iter()
        .filter(|(ending, _)| !endings.contains(ending) && may(*ending))
        .map(|(_, name)| name)
        .collect();
    if names.is_empty() {
        return String::new();
    }
    format!(" By what is drawn here, `{}` can be right.", names.join("` or `"))
}

fn never(ending: Ending, setups: &[Setup]) -> String {
    match ending {
        Ending::InService => {
            format!("`InService` cannot be right.{}", setups.first().map(helps).unwrap_or_default())
        }
        Ending::SupplyOwnerCalled => {
            "`SupplyOwnerCalled` is hardly right: no fault of the list that shows is \
                                      one for the owner of the supply, and the supply is not \
                                      found out of its limits."
                .to_owned()
        }
        Ending::ShutOff => {
            "`ShutOff` is hardly right: no fault of the list that shows asks for it, fuel and \
                            conversion agree, and the supply is not found out of its limits."
                .to_owned()
        }
    }
}

/// What helps against the first fault that the trainee has no remedy for, as a sentence.
fn helps(setup: &Setup) -> String {
    let Some(found) = unmended(setup) else { return String::new() };
    let right: Vec<String> = remedies(setup, found).iter().map(|it| it.label()).collect();
    let whose = match setup.card.supply {
        SupplyRight::OwnerOnly => ", and the supply is its owner's",
        SupplyRight::Trainee => "",
    };
    format!(" What helps against `{}`: {}{whose}.", found.0.name(), right.join(", or "))
}

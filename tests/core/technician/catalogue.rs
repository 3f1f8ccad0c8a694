//! Every fault of the catalogue at its least, typical and greatest severity, on both healthy
//! benches: the reference technician has full marks with an ending that the check of scenarios lets
//! an author call right. Where the check allows more than one ending by itself, the figures decide:
//! shut off, or its owner called. Severities, figures and endings are the catalogue's own; nothing
//! here is a measured figure.

use std::collections::BTreeMap;
use std::sync::Mutex;

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::Fault;
use quarterturn::measure::endings::{can_be_right, right_as_well};
use quarterturn::parts::Ending::{self, InService, ShutOff, SupplyOwnerCalled};
use quarterturn::technician::proof::Spoiling;

use super::{faulty, prove};

/// Severities between the least and the greatest at which something else happens: each drill size
/// from one to six over `#44` about (7, 18, 25, 30, 34, 39 per cent more area; ASME B94.11M), and
/// what gas valves let by on both sides of the alarm.
const BETWEEN: &[(Fault, &[&str])] = &[
    (Fault::OversizeOrifices, &["0.07", "0.2", "0.25", "0.3", "0.4", "0.5", "0.6"]),
    (Fault::HoledExchanger, &["0.1"]),
    (Fault::LeakingGasValve, &["5 ft3/h", "8 ft3/h", "12 ft3/h", "20 ft3/h"]),
];

/// Rows that the technician does not solve, each with its cause. A row that is solved has to be taken
/// off the list.
const MISSES: &[(&str, &str, &str)] = &[];

/// Whether the technician is known not to solve a bench.
pub fn is_missed(fuel: Fuel, fault: &str, severity: &str) -> bool {
    let name = format!("{fault}({severity})");
    let fuel = if fuel == Fuel::Propane { "propane" } else { "natural" };
    MISSES.iter().any(|it| (it.0, it.1) == (fuel, name.as_str()))
}

/// The texts of a fault at the severities that are asked for.
fn severities(fault: Fault, fuel: &str) -> Vec<String> {
    let severity = fault.entry().severity;
    let typical = severity.typical[usize::from(fuel == "propane")];
    let mut texts = vec![severity.least, typical, severity.most];
    let between = BETWEEN.iter().filter(|(it, _)| *it == fault);
    texts.extend(between.flat_map(|(_, texts)| texts.iter().copied()));
    texts.sort_unstable();
    texts.dedup();
    let write = |text: &str| match (text.is_empty(), severity.is_bare()) {
        (true, _) => fault.name().to_owned(),
        (false, true) => format!("{}({text})", fault.name()),
        (false, false) => format!("{}(\"{text}\")", fault.name()),
    };
    texts.into_iter().map(write).collect()
}

/// Plays a row: none where the fault does not fit the bench, else what is wrong with it, if
/// anything.
fn play(fuel: &str, fault: &str) -> Option<Option<String>> {
    const ENDINGS: [Ending; 3] = [InService, ShutOff, SupplyOwnerCalled];
    let text = faulty(fuel, fault, "InService, ShutOff, SupplyOwnerCalled");
    let setup = quarterturn::scenario::load(&text).ok()?.draw(0);
    let right: Vec<Ending> =
        ENDINGS.into_iter().filter(|ending| can_be_right(&setup, *ending)).collect();
    // No decision of the technician's hangs on what the author calls right; the marks do.
    let ending = prove(&text, Spoiling::No).ending;
    let Some(ending) = ending.filter(|ending| right.contains(ending)) else {
        return Some(Some(format!("{ending:?}, right: {right:?}")));
    };
    // Where all may be mended, another ending is one that the check wants beside `InService`.
    if right.contains(&InService) && ending != InService && right_as_well(&setup) != Some(ending) {
        return Some(Some(format!("{ending:?}, not in service, of {right:?}")));
    }
    let proof = prove(&faulty(fuel, fault, &format!("{ending:?}")), Spoiling::No);
    Some((!proof.is_full()).then(|| {
        let what = (proof.points, &proof.stopped, &proof.findings, &proof.refused);
        format!("{ending:?} {what:?} {:?}", proof.diagnosis)
    }))
}

/// Every row that fits, by fuel and fault.
fn rows() -> BTreeMap<(&'static str, String), Option<String>> {
    let wanted: Vec<(&'static str, String)> = ["natural", "propane"]
        .into_iter()
        .flat_map(|fuel| Fault::ALL.iter().map(move |&fault| (fuel, fault)))
        .flat_map(|(fuel, fault)| severities(fault, fuel).into_iter().map(move |it| (fuel, it)))
        .collect();
    let waiting = Mutex::new(wanted);
    let played = Mutex::new(BTreeMap::new());
    let work = || {
        loop {
            let Some((fuel, fault)) = waiting.lock().unwrap().pop() else { return };
            if let Some(row) = play(fuel, &fault) {
                let _ = played.lock().unwrap().insert((fuel, fault), row);
            }
        }
    };
    let hands = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    std::thread::scope(|scope| {
        for _ in 0..hands {
            scope.spawn(work);
        }
    });
    played.into_inner().unwrap()
}

#[test]
fn slow_the_whole_catalogue_is_solved() {
    let rows = rows();
    // Both benches take more than half of the catalogue's 81 faults, most at three severities.
    assert!(rows.len() > 300, "{}", rows.len());
    let listed = |fuel: &str, fault: &str| MISSES.iter().find(|it| (it.0, it.1) == (fuel, fault));
    let mut told = Vec::new();
    for ((fuel, fault), wrong) in &rows {
        match (wrong, listed(fuel, fault)) {
            (Some(how), None) => told.push(format!("missed: {fuel} {fault}: {how}")),
            (None, Some((_, _, cause))) => {
                told.push(format!("solved, take it off the list: {fuel} {fault} ({cause})"));
            }
            (Some(_), Some(_)) | (None, None) => {}
        }
    }
    for (fuel, fault, _) in MISSES {
        if !rows.contains_key(&(*fuel, (*fault).to_owned())) {
            told.push(format!("no such row: {fuel} {fault}"));
        }
    }
    assert!(told.is_empty(), "{}", told.join("\n"));
}

//! The ladder of jobs that ship: steps, fuels, families, competencies, and that nothing is given
//! away.

use std::collections::{BTreeMap, BTreeSet};

use quarterturn::appliance::plate::Fuel;
use quarterturn::catalogue::fault::{Family, Fault};
use quarterturn::parts::Ending;
use quarterturn::rules::competency;
use quarterturn::scenario::{Scenario, Step, builtin, load};

/// Competencies that no job may claim, with the reason; each of the others is asked for by some job,
/// as far as a simulator goes (the feel of a thread, for one, it cannot give).
const NOT_EVIDENCED: [(&str, &str); 3] = [
    ("C09", "no shipped job asks for the rate; who times the dial shows it by the rules"),
    ("C13", "no shipped job interrupts the gas of an appliance that burns and gives it back"),
    ("C17", "no rule speaks for it: pipe is looked at, not calculated"),
];

/// Seeds whose draws are looked at.
const SEEDS: u64 = 20;

fn ladder() -> Vec<(&'static str, Scenario)> {
    let read = |one: &builtin::Builtin| load(one.text).unwrap_or_else(|why| panic!("{why:#?}"));
    builtin::LADDER.iter().map(|one| (one.id, read(one))).collect()
}

/// Every file of the folder ships, and every shipped job is one of its files.
#[test]
fn the_folder_is_the_ladder() {
    let folder = std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("scenarios");
    let files: BTreeSet<String> = std::fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().file_name().into_string().unwrap())
        .map(|name| name.strip_suffix(".ron").unwrap().to_owned())
        .collect();
    let ids: BTreeSet<String> = builtin::LADDER.iter().map(|one| one.id.to_owned()).collect();
    assert_eq!(files, ids);
}

/// At least 24 jobs, in the order of their steps; at least four on each, with both fuels on each
/// and neither fuel rare.
#[test]
fn four_steps_and_two_fuels() {
    let ladder = ladder();
    assert!(ladder.len() >= 24);
    assert!(ladder.windows(2).all(|two| two[0].1.step_of_ladder() <= two[1].1.step_of_ladder()));
    let mut fuels: BTreeMap<Step, [usize; 2]> = BTreeMap::new();
    for (_, scenario) in &ladder {
        let both = fuels.entry(scenario.step_of_ladder()).or_default();
        for fuel in scenario.fuels() {
            both[usize::from(fuel == Fuel::Propane)] += 1;
        }
    }
    for step in Step::ALL {
        let [natural, propane] = fuels[&step];
        assert!(natural + propane >= 4 && natural >= 2 && propane >= 2, "{step:?}");
    }
    let propane: usize = fuels.values().map(|both| both[1]).sum();
    assert!((ladder.len() * 2 / 5..=ladder.len() * 3 / 5).contains(&propane), "{propane}");
}

/// Every family of the catalogue occurs, three jobs or more have two faults at once, and some must
/// end shut off.
#[test]
fn every_family_occurs() {
    let ladder = ladder();
    let faults = |it: &Scenario| it.faults.iter().flat_map(|one| one.choices.clone()).count();
    let families: BTreeSet<Family> = ladder
        .iter()
        .flat_map(|(_, scenario)| &scenario.faults)
        .flat_map(|one| &one.choices)
        .map(|choice| choice.fault.entry().family)
        .collect();
    assert!(Family::ALL.iter().all(|family| families.contains(family)));
    assert!(ladder.iter().filter(|(_, it)| it.faults.len() >= 2).count() >= 3);
    for fuel in [Fuel::Natural, Fuel::Propane] {
        let sound = |it: &Scenario| it.gas.fuel == fuel && faults(it) == 0 && it.step.least() < 1.5;
        assert!(ladder.iter().any(|(_, it)| sound(it)), "a sound appliance on {fuel:?}");
        // Not for want of a supply: for what the furnace itself is.
        let stop = |it: &Scenario| {
            let endings = &it.marking.endings;
            let owner = endings.contains(&Ending::SupplyOwnerCalled);
            it.gas.fuel == fuel && endings.contains(&Ending::ShutOff) && !owner
        };
        assert!(ladder.iter().any(|(_, it)| stop(it)), "one to shut off on {fuel:?}");
    }
    assert!(ladder.iter().any(|(_, it)| it.marking.endings == [Ending::ShutOff]));
}

/// Each job has an aim, hints from gentle to plain, a note and competencies; each competency is
/// asked for by some job.
#[test]
fn every_job_teaches_something() {
    let mut asked = BTreeSet::new();
    for (id, it) in ladder() {
        let aim = it.aim.as_deref().unwrap_or_default();
        assert!(aim.ends_with('.') && aim.matches(". ").count() == 0, "{id}: one sentence");
        assert!((2..=6).contains(&it.hints.len()), "{id}: {} hints", it.hints.len());
        assert!(it.debrief.is_some_and(|note| note.len() > 120), "{id}: no note");
        assert!(it.competencies.len() >= 3, "{id}");
        asked.extend(it.competencies);
    }
    for one in &competency::ALL {
        let excused = NOT_EVIDENCED.iter().any(|(id, _)| *id == one.id);
        assert!(asked.contains(one.id) != excused, "{}", one.id);
    }
}

/// Two seeds differ, on every job that has a range or a choice: all of them but the two sound
/// benches, which are the model's own.
#[test]
fn every_seat_differs() {
    for (id, scenario) in ladder() {
        if builtin::HEALTHY.iter().any(|one| one.id == id) {
            continue;
        }
        let draws: Vec<_> = (0..SEEDS).map(|seed| scenario.draw(seed)).collect();
        for (i, draw) in draws.iter().enumerate() {
            assert!(draws[..i].iter().all(|before| before != draw), "{id} seed {i}");
        }
        // What is written as a fault is there in every draw.
        assert!(draws.iter().all(|draw| draw.faults.len() == scenario.faults.len()), "{id}");
    }
}

/// Words of the catalogue's names that the trade uses for sound things too.
const PLAIN_WORDS: [&str; 37] = [
    "supply",
    "regulator",
    "pressure",
    "manual",
    "valve",
    "line",
    "main",
    "tank",
    "gas",
    "switch",
    "stage",
    "set",
    "low",
    "high",
    "second",
    "call",
    "inlet",
    "natural",
    "springs",
    "propane",
    "meter",
    "zero",
    "water",
    "manifold",
    "furnace",
    "hose",
    "flame",
    "first",
    "heat",
    "off",
    "open",
    "house",
    "port",
    "thermostat",
    "room",
    "air",
    "closed",
];

/// What somebody reads before the job, and the first hint, call no fault of it by its name, nor by
/// any word of the name that would give it away; nor does the file's name.
#[test]
fn nothing_is_given_away() {
    for (id, it) in ladder() {
        let aim = it.aim.clone().unwrap_or_default();
        let first = it.hints.first().cloned().unwrap_or_default();
        let texts = [id, &it.title, &it.about, &aim, &it.card.text, &first];
        let faults: Vec<Fault> = it
            .faults
            .iter()
            .flat_map(|one| one.choices.iter().map(|choice| choice.fault))
            .collect();
        for text in texts {
            let text = text.to_lowercase();
            let words: BTreeSet<&str> = text
                .split(|c: char| !c.is_alphanumeric())
                .filter(|word| !word.is_empty())
                .collect();
            for fault in &faults {
                let telling = fault.name().split('_').filter(|word| word.len() > 2);
                let telling = telling.filter(|word| !PLAIN_WORDS.contains(word));
                for word in telling {
                    let spoken =
                        words.contains(word) || words.contains(format!("{word}s").as_str());
                    assert!(!spoken, "{id}: `{word}` of {} in: {text}", fault.name());
                }
                assert!(!text.contains(&fault.name().replace('_', " ")), "{id}: {text}");
            }
        }
    }
}

/// The card tells whose the supply is, and which other appliances there are and what they draw.
#[test]
fn the_cards_are_fair() {
    for (id, it) in ladder() {
        assert!(!it.card.supply_owner.is_empty());
        if builtin::HEALTHY.iter().any(|one| one.id == id) {
            continue;
        }
        let text = &it.card.text;
        assert!(text.contains("belong to") || text.contains("is the householder's own"), "{id}");
        assert!(text.contains("40,000 Btu/h") && text.contains("Btu/ft3"), "{id}");
        assert!(text.contains(" ft.") || text.contains(" ft "), "{id}: no height");
    }
}

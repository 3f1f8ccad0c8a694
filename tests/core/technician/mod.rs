//! The reference technician beyond the jobs that ship: a sound bench with one thing changed, written
//! as an author would write it.

mod catalogue;
mod causes;
mod fairness;
mod faults;
mod lock_up;
mod looks;
mod manners;
mod piping;
mod sound;
mod spoiling;
mod valve;

use quarterturn::parts::Ending;
use quarterturn::scenario::builtin::find;
use quarterturn::technician::diagnosis::Diagnosis;
use quarterturn::technician::proof::{SeedProof, Spoiling, prove_seed};

/// The text of a healthy bench, the only one of its fuel.
fn healthy(fuel: &str) -> String {
    find(&format!("healthy-{fuel}")).unwrap().text.to_owned()
}

/// The same with something in it replaced.
fn with(text: &str, what: &str, by: &str) -> String {
    assert!(text.contains(what), "{what}");
    text.replacen(what, by, 1)
}

/// A healthy bench with faults, and the endings that are right then.
fn faulty(fuel: &str, faults: &str, endings: &str) -> String {
    let text = with(&healthy(fuel), "endings: [InService]", &format!("endings: [{endings}]"));
    with(&text, "    card: (\n", &format!("    faults: [{faults}],\n    card: (\n"))
}

/// The card states this heating value of natural gas, in Btu/ft³.
fn stating_heat(text: &str, btu_ft3: u32) -> String {
    let said = format!("Gas here has {btu_ft3} Btu/ft3.");
    let text = with(text, "Nothing should need setting.", &said);
    let field = format!("    card: (\n        heating_value: (natural: \"{btu_ft3} Btu/ft3\"),\n");
    with(&text, "    card: (\n", &field)
}

fn prove(text: &str, spoiling: Spoiling) -> SeedProof {
    let scenario = quarterturn::scenario::load(text).unwrap();
    prove_seed(&scenario, 0, spoiling).unwrap()
}

/// Full marks with this ending; what it took the job for.
fn full(text: &str, ending: Ending) -> Vec<Diagnosis> {
    let proof = prove(text, Spoiling::No);
    assert!(proof.is_full() && proof.ending == Some(ending), "{proof:?}\n{text}");
    proof.diagnosis
}

/// Full marks, and every spoiled run loses exactly its own items.
fn spoiled(text: &str) -> SeedProof {
    let proof = prove(text, Spoiling::Yes);
    assert!(proof.is_full(), "{proof:?}\n{text}");
    for one in &proof.spoiled {
        assert!(one.is_right(), "{}: {:?} {:?} {:?}", one.name, one.trips, one.found, one.stopped);
    }
    proof
}

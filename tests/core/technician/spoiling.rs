//! Ways of spoiling good work on jobs that ship.

use std::collections::BTreeSet;

use quarterturn::scenario::builtin::find;
use quarterturn::technician::proof::{Spoiling, prove_seed};

/// A repair that is dangerous in itself is tried on the single-stage job too, and what it costs does not
/// hang on the seed.
#[test]
fn slow_a_dangerous_repair_costs_the_same_on_every_seed() {
    let text = find("one-screw-one-number").unwrap().text;
    let scenario = quarterturn::scenario::load(text).unwrap();
    let mut found = BTreeSet::new();
    for seed in 0..5 {
        let proof = prove_seed(&scenario, seed, Spoiling::Yes).unwrap();
        let dangerous: Vec<_> =
            proof.spoiled.iter().filter(|one| one.trips == ["dangerous-repair"]).collect();
        assert!(!dangerous.is_empty(), "seed {seed}");
        for one in dangerous {
            assert!(one.is_right(), "seed {seed}: {one:?}");
            found.insert(one.found.clone());
        }
    }
    assert_eq!(found.len(), 1, "{found:?}");
}

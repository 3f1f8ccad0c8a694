//! The scenarios that ship.

use std::collections::BTreeSet;

use quarterturn::appliance::plate::Fuel;
use quarterturn::parts::Ending;
use quarterturn::rng::stream;
use quarterturn::scenario::{Scenario, builtin, check, load, to_text};
use quarterturn::setup::{Setup, SupplyRight};
use quarterturn::units::{M_PER_FT, PA_PER_INWC};

use super::{natural, spoiled};

fn scenario(id: &str) -> Scenario {
    let text = builtin::find(id).unwrap().text;
    load(text).unwrap_or_else(|problems| panic!("{id}: {problems:#?}"))
}

/// Every shipped scenario loads without a problem and without a warning.
#[test]
fn shipped_scenarios_are_clean() {
    let mut ids = BTreeSet::new();
    for one in &builtin::LADDER {
        assert!(ids.insert(one.id));
        let problems = check(one.id, one.text);
        assert!(problems.is_empty(), "{}", to_text(&problems, one.text));
        assert!(load(one.text).is_ok());
        // An ordinary job fits on two screens.
        assert!(one.text.lines().count() <= 100, "{} lines", one.text.lines().count());
    }
    assert!(builtin::find("no-such-job").is_none());
}

/// Two seeds give different jobs, the same seed the same one.
#[test]
fn seeds_differ_and_repeat() {
    for job in &builtin::JOBS {
        let scenario = scenario(job.id);
        let draws: Vec<Setup> = (0..20).map(|seed| scenario.draw(seed)).collect();
        for (i, draw) in draws.iter().enumerate() {
            assert_eq!(*draw, scenario.draw(i as u64));
            assert!(draws[..i].iter().all(|before| before != draw), "{} seed {i}", job.id);
        }
    }
}

/// A field's draw depends on its own name alone: another range elsewhere shifts nothing.
#[test]
fn a_new_range_shifts_nothing_else() {
    let plain = load(&natural()).unwrap();
    let text = spoiled(
        &natural(),
        "droop: \"0.35",
        "per_turn: Between(\"0.9 inH2O\", \"1.1 inH2O\"), droop: \"0.35",
    );
    let varied = load(&text).unwrap();
    for seed in 0..10 {
        let (mut a, b) = (plain.draw(seed), varied.draw(seed));
        assert_ne!(a.supply.pa_per_turn, b.supply.pa_per_turn);
        a.supply.pa_per_turn = b.supply.pa_per_turn;
        assert_eq!(a, b);
    }
}

/// A field draws from the stream that is named after its path: records depend on that.
#[test]
fn streams_are_named_after_paths() {
    let setup = scenario("propane-cold-morning").draw(7);
    let found = stream(7, "supply.found").between(10.0 * PA_PER_INWC, 10.5 * PA_PER_INWC);
    assert_eq!(setup.supply.set_pa.to_bits(), found.to_bits());
    let feet = stream(7, "trunk[0].length").between(40.0 * M_PER_FT, 46.0 * M_PER_FT);
    assert_eq!(setup.trunk[0].length_m.to_bits(), feet.to_bits());
}

/// Draws stay inside their ranges and use them: of a hundred seeds some come near each end.
#[test]
fn draws_fill_their_range() {
    let scenario = scenario("propane-cold-morning");
    let sets: Vec<f64> =
        (0..100).map(|seed| scenario.draw(seed).supply.set_pa / PA_PER_INWC).collect();
    assert!(sets.iter().all(|set| (10.0..=10.5).contains(set)));
    assert!(sets.iter().any(|&set| set < 10.05) && sets.iter().any(|&set| set > 10.45));
}

/// The two jobs are what they say: whose supply, which endings, which stage is out of its band.
#[test]
fn the_jobs_are_what_they_say() {
    let cold = scenario("propane-cold-morning");
    assert_eq!(cold.marking.endings, [Ending::SupplyOwnerCalled, Ending::ShutOff]);
    let kitchen = scenario("natural-gas-busy-kitchen");
    assert_eq!(kitchen.marking.endings, [Ending::InService]);
    for seed in 0..50 {
        let setup = cold.draw(seed);
        assert_eq!((setup.fuel, setup.card.supply), (Fuel::Propane, SupplyRight::OwnerOnly));
        assert_eq!(bands(&setup), [false, true]);
        assert!(setup.supply.set_pa < setup.supply.delivery_limits_pa.0);
        let setup = kitchen.draw(seed);
        assert_eq!((setup.fuel, setup.card.supply), (Fuel::Natural, SupplyRight::Trainee));
        assert_eq!(bands(&setup), [true, false]);
        assert!(setup.supply.set_pa < setup.supply.delivery_limits_pa.0);
    }
}

/// Whether low and high are found inside their bands.
fn bands(setup: &Setup) -> [bool; 2] {
    let set_pa = setup.furnace.valve.set_pa();
    let manifold = &setup.furnace.plate.figures().manifold;
    [
        manifold.first().band().contains(*set_pa.first()),
        manifold.top().band().contains(*set_pa.top()),
    ]
}

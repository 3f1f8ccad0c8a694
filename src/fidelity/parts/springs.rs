//! Springs of the shipped benches: pressure per turn and range.

use super::{CHAPTER, RANGE, in_range, setup};
use crate::fidelity::{Check, Row, Tolerance, Truth};
use crate::setup::{SpringSetup, Stacking};
use crate::units::PA_PER_INWC;

pub(super) fn checks() -> Vec<Check> {
    vec![per_turn(), range(), span()]
}

const SHIPPED: [&str; 4] =
    ["healthy-natural", "healthy-propane", "natural-gas-busy-kitchen", "propane-cold-morning"];

fn per_turn() -> Check {
    let mut rows = Vec::new();
    for id in SHIPPED {
        let Some(setup) = setup(id) else { continue };
        let propane = setup.gas.specific_gravity > 1.0;
        let usual = if propane { [0.5, 2.0] } else { [0.2, 0.7] };
        let valve = &setup.furnace.valve;
        for (stage, spring) in [("low", &valve.low), ("high", &valve.high)] {
            let turn = spring.pa_per_turn / PA_PER_INWC;
            rows.push(in_range(&format!("{id}, {stage} screw"), usual, turn));
        }
    }
    Check {
        id: "parts.spring.per-turn".into(),
        chapter: CHAPTER,
        claim: "A turn of a stage screw moves the manifold by a few tenths on natural gas, by half an inch to two on propane.".into(),
        truth: Truth::Memory,
        source: "No publication found; order of size from memory, and k·pitch/A of usual parts (0.26 natural, 0.69 propane)".into(),
        condition: "shipped benches at seed 1".into(),
        tolerance: Tolerance::Absolute(0.0),
        reason: RANGE.into(),
        unit: "in. w.c. per turn",
        rows,
        known_miss: None,
    }
}

/// What a spring gives at its bottom, short of coil bind.
fn most_inwc(spring: &SpringSetup) -> f64 {
    (spring.turns - 1.0) * spring.pa_per_turn / PA_PER_INWC
}

fn range() -> Check {
    let mut rows = Vec::new();
    for id in SHIPPED {
        let Some(setup) = setup(id) else { continue };
        let valve = &setup.furnace.valve;
        let plate = setup.furnace.plate.figures();
        let stacked = match valve.stacking {
            Stacking::Independent => 0.0,
            Stacking::HighOnLow => plate.low.pa / PA_PER_INWC,
        };
        for (stage, spring, target, below) in
            [("low", &valve.low, plate.low, 0.0), ("high", &valve.high, plate.high, stacked)]
        {
            let wanted = (target.pa + target.tolerance_pa) / PA_PER_INWC;
            let found = below + most_inwc(spring);
            rows.push(Row::new(format!("{id}, {stage} screw"), wanted, found));
        }
    }
    Check {
        id: "parts.spring.range".into(),
        chapter: CHAPTER,
        claim: "Each stage spring reaches the top of the plate's band with a turn to spare.".into(),
        truth: Truth::Practice,
        source: "Common practice: a valve can be set to what its plate asks for".into(),
        condition: "shipped benches at seed 1, one turn before the bottom".into(),
        tolerance: Tolerance::AtLeast,
        reason: "A limit.".into(),
        unit: "in. w.c.",
        rows,
        known_miss: None,
    }
}

fn span() -> Check {
    let mut rows = Vec::new();
    for (id, usual) in [("healthy-natural", [7.0, 9.0]), ("healthy-propane", [10.0, 12.0])] {
        if let Some(setup) = setup(id) {
            rows.push(in_range(id, usual, setup.supply.set_pa / PA_PER_INWC));
        }
    }
    Check {
        id: "parts.supply.set-point".into(),
        chapter: CHAPTER,
        claim: "The healthy benches' supply regulators are set within the usual span of a pounds-to-inches regulator.".into(),
        truth: Truth::Published,
        source: "Design guide of a corrugated tubing system (maker withheld): adjustment span 7 to 9 in. w.c. natural gas, 10 to 12 in. w.c. propane".into(),
        condition: "healthy benches".into(),
        tolerance: Tolerance::Absolute(1e-9),
        reason: RANGE.into(),
        unit: "in. w.c.",
        rows,
        known_miss: None,
    }
}

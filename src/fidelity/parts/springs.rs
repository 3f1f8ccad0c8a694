//! Springs of the shipped benches: pressure per turn and range.

use super::bench::{in_range, setup};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
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
        for (level, spring) in valve.springs.iter() {
            let stage = level.label();
            let turn = spring.pa_per_turn / PA_PER_INWC;
            rows.push(in_range(&t!("row-screw", id = id, stage = stage), usual, turn));
        }
    }
    check("parts.spring.per-turn", rows)
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
        for (level, spring) in valve.springs.iter() {
            let (stage, target) = (level.label(), plate.manifold[level]);
            let below = match valve.stacking {
                Stacking::NextOnFirst if !level.is_first() => {
                    plate.manifold.first().pa / PA_PER_INWC
                }
                Stacking::NextOnFirst | Stacking::Independent => 0.0,
            };
            let wanted = target.band().most_pa / PA_PER_INWC;
            let found = below + most_inwc(spring);
            rows.push(Row::new(t!("row-screw", id = id, stage = stage), wanted, found));
        }
    }
    check("parts.spring.range", rows)
}

fn span() -> Check {
    let mut rows = Vec::new();
    for (id, usual) in [("healthy-natural", [7.0, 9.0]), ("healthy-propane", [10.0, 12.0])] {
        if let Some(setup) = setup(id) {
            rows.push(in_range(id, usual, setup.supply.set_pa / PA_PER_INWC));
        }
    }
    check("parts.supply.set-point", rows)
}

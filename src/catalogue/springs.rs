//! Other springs in the gas valve: what both a wrong conversion and a repair fit.

use crate::appliance::plate::Fuel;
use crate::parts::{Level, Levels};
use crate::setup::{Setup, Stacking};
use crate::units::PA_PER_INWC;
use enum_map::{EnumMap, enum_map};

/// Inches of water for a turn of each level's screw with springs for a fuel (our own valve).
pub(crate) fn per_turn_inwc(fuel: Fuel) -> EnumMap<Level, f64> {
    match fuel {
        Fuel::Natural => enum_map! { Level::Low => 0.4, Level::Only | Level::High => 0.6 },
        Fuel::Propane => enum_map! { Level::Low => 1.2, Level::Only | Level::High => 1.6 },
    }
}

/// Other springs, for this fuel, that set the levels to these pressures, in pascals.
pub(crate) fn fit_springs(setup: &mut Setup, fuel: Fuel, set_pa: Levels<f64>) {
    setup.furnace.springs_for = fuel;
    let valve = &mut setup.furnace.valve;
    for (level, &pa) in set_pa.iter() {
        let below_pa = match valve.stacking {
            Stacking::NextOnFirst if !level.is_first() => *set_pa.first(),
            Stacking::NextOnFirst | Stacking::Independent => 0.0,
        };
        let spring = &mut valve.springs[level];
        spring.pa_per_turn = per_turn_inwc(fuel)[level] * PA_PER_INWC;
        spring.found_turns = ((pa - below_pa) / spring.pa_per_turn).clamp(0.0, spring.turns);
    }
}

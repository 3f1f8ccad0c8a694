//! Other springs in the gas valve: what both a wrong conversion and a repair fit.

use crate::appliance::plate::Fuel;
use crate::parts::{Level, Levels};
use crate::setup::{Setup, Stacking};
use crate::units::PA_PER_INWC;

/// Inches of water for a turn of a level's screw with springs for a fuel (our own valve): of the full
/// rate, and of a level below it.
pub(crate) fn per_turn_inwc(fuel: Fuel, level: Level) -> f64 {
    let (full, below) = match fuel {
        Fuel::Natural => (0.6, 0.4),
        Fuel::Propane => (1.6, 1.2),
    };
    if level.is_top() { full } else { below }
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
        spring.pa_per_turn = per_turn_inwc(fuel, level) * PA_PER_INWC;
        spring.found_turns = ((pa - below_pa) / spring.pa_per_turn).clamp(0.0, spring.turns);
    }
}

//! Other springs in the gas valve: what both a wrong conversion and a repair fit.

use crate::appliance::plate::Fuel;
use crate::setup::{Setup, Stacking};
use crate::units::PA_PER_INWC;

/// Other springs, for this fuel, set to these pressures on low and on high, in pascals.
pub(crate) fn fit_springs(setup: &mut Setup, fuel: Fuel, [low_pa, high_pa]: [f64; 2]) {
    // Inches of water for a turn (our own valve).
    let per_turn_inwc = match fuel {
        Fuel::Natural => [0.4, 0.6],
        Fuel::Propane => [1.2, 1.6],
    };
    setup.furnace.springs_for = fuel;
    let valve = &mut setup.furnace.valve;
    let high_pa = match valve.stacking {
        Stacking::Independent => high_pa,
        Stacking::HighOnLow => high_pa - low_pa,
    };
    let stages = [(&mut valve.low, low_pa), (&mut valve.high, high_pa)];
    for ((spring, set_pa), per_turn_inwc) in stages.into_iter().zip(per_turn_inwc) {
        spring.pa_per_turn = per_turn_inwc * PA_PER_INWC;
        spring.found_turns = (set_pa / spring.pa_per_turn).clamp(0.0, spring.turns);
    }
}

//! Air for the gas that nobody acts on: what the flue gas of a sound furnace of this kind may show on
//! high, by what the job card says of the gas.

use crate::appliance::plate::Fuel;
use crate::setup::JobCard;
use crate::units::J_M3_PER_BTU_FT3;

/// Air for the gas against what the gas needs, on high, of a furnace of this kind: below, too much
/// gas for its air; above, too little (the model's furnace has about 1.42 on its plate; the band is
/// from memory).
const AIR: (f64, f64) = (1.34, 1.52);
/// Heating values that the plate's orifices are made for, in Btu/ft³: natural gas, propane (what
/// the job cards here give; NFPA 54 reckons with 2,516 for propane).
const USUAL_BTU_FT3: [f64; 2] = [1030.0, 2516.0];
/// Heating values of piped natural gas that nobody is called for, in Btu/ft³, where the card states
/// none: it is sold with 950 to 1,150 (a range that handbooks give; from memory). Richer than this,
/// and it could not be told from orifices a size too large.
const SOLD_BTU_FT3: (f64, f64) = (950.0, 1100.0);
/// How far the air of one gas may lie off for the furnace's own reasons, where the range of gases
/// takes the rest.
const SOLD_SLACK: f64 = 1.02;

/// Least and most air that is right for the gas on a job with this card. The heating value that the
/// card states is taken at its word: the same orifices then pass more heat or less, and the flue
/// shows that and no fault.
#[must_use]
pub fn limits(card: &JobCard, fuel: Fuel) -> (f64, f64) {
    let usual = USUAL_BTU_FT3[usize::from(fuel == Fuel::Propane)];
    let (leanest, richest) = match (card.heating_value.of(fuel), fuel) {
        (Some(j_m3), _) => (j_m3 / J_M3_PER_BTU_FT3, j_m3 / J_M3_PER_BTU_FT3),
        (None, Fuel::Propane) => (usual, usual),
        (None, Fuel::Natural) => SOLD_BTU_FT3,
    };
    // The margin of the band is for one gas; a range of gases has its own.
    let most = if leanest < richest { (AIR.0 + AIR.1) / 2.0 * SOLD_SLACK } else { AIR.1 };
    let least = if leanest < richest { (AIR.0 + AIR.1) / 2.0 / SOLD_SLACK } else { AIR.0 };
    ((least * usual / richest).min(AIR.0), (most * usual / leanest).max(AIR.1))
}

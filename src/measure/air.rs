//! Air for the gas that nobody acts on: what the flue gas of a sound furnace of this kind may show on
//! high, by what the job card says of the gas.

use crate::appliance::plate::Fuel;

/// Air for the gas against what the gas needs, on high, of a furnace of this kind: below, too much
/// gas for its air; above, too little (the model's furnace has about 1.42 on its plate; the band is
/// from memory).
const AIR: (f64, f64) = (1.34, 1.52);
/// Heating values that the plate's orifices are made for, in Btu/ft³: natural gas, propane (what
/// the job cards here give; NFPA 54 reckons with 2,516 for propane).
const USUAL_BTU_FT3: [f64; 2] = [1030.0, 2516.0];
/// Heating values of piped natural gas that nobody is called for, in Btu/ft³, where the card names
/// none: it is sold with 950 to 1,150 (a range that handbooks give; from memory). Richer than this,
/// and it could not be told from orifices a size too large.
const SOLD_BTU_FT3: (f64, f64) = (950.0, 1100.0);
/// How far a number on the card may lie from a gas's usual heat to speak of that gas.
const OF_THIS_GAS: f64 = 0.4;
/// How far the air of one gas may lie off for the furnace's own reasons, where the range of gases
/// takes the rest.
const SOLD_SLACK: f64 = 1.02;

/// Least and most air that is right for the gas on a job with this card. What the card says of its
/// heat is taken at its word: the same orifices then pass more heat or less, and the flue shows that
/// and no fault.
#[must_use]
pub fn limits(card: &str, fuel: Fuel) -> (f64, f64) {
    let usual = USUAL_BTU_FT3[usize::from(fuel == Fuel::Propane)];
    let (leanest, richest) = match (heat_on_card(card, usual), fuel) {
        (Some(btu_ft3), _) => (btu_ft3, btu_ft3),
        (None, Fuel::Propane) => (usual, usual),
        (None, Fuel::Natural) => SOLD_BTU_FT3,
    };
    // The margin of the band is for one gas; a range of gases has its own.
    let most = if leanest < richest { (AIR.0 + AIR.1) / 2.0 * SOLD_SLACK } else { AIR.1 };
    let least = if leanest < richest { (AIR.0 + AIR.1) / 2.0 / SOLD_SLACK } else { AIR.0 };
    ((least * usual / richest).min(AIR.0), (most * usual / leanest).max(AIR.1))
}

/// The heating value that the card gives for a gas of about this one: the card may name those of
/// several gases, and other numbers besides.
fn heat_on_card(text: &str, usual: f64) -> Option<f64> {
    if !text.contains("Btu/ft3") {
        return None;
    }
    text.replace(',', "")
        .split(|c: char| !c.is_ascii_digit() && c != '.')
        .filter_map(|word| word.trim_matches('.').parse().ok())
        .find(|btu: &f64| (btu / usual - 1.0).abs() < OF_THIS_GAS)
}

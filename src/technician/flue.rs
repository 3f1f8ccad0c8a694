//! What the flue gas tells with both stages set: too little air, too much, a hole in the exchanger.

use super::burn::mend_at_manifold;
use super::close::close_open;
use super::mend::{hands_free, mend_all};
use super::no_fire::give_up;
use super::open::isolate;
use super::plan::{Step, Technician, act, go, inlet_as_found, think, with};
use super::run_furnace::{run_high, stop};
use super::task::pause;
use crate::bench::action::{Action, Stage};
use crate::bench::part::{Place, Spot, Tool};
use crate::bench::repair::Repair;
use crate::bench::seen::Seen;
use crate::instrument::figure::Quantity;

/// Time until the analyser shows what the flue gas is, in seconds.
const DRAWS_S: f64 = 120.0;
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
/// Carbon monoxide in the flue at which nothing may go on burning, in parts per million air-free
/// (ANSI Z21.47's limit, from memory).
const MOST_CO_PPM: f64 = 400.0;
/// Height above the sea from which a furnace is derated, in feet (common practice).
pub(super) const DERATE_FT: i32 = 2000;

/// The analyser's probe in the flue while high burns.
pub(super) fn check() -> Vec<Step> {
    let mut steps = run_high();
    steps.push(go(Place::PlantRoom));
    steps.extend(with(
        Tool::FlueAnalyser,
        vec![
            act(Action::Measure(Spot::Flue)),
            pause(DRAWS_S),
            act(Action::WriteMeasured(Spot::Flue)),
            think(judge),
        ],
    ));
    steps
}

/// Air that is right for the gas on this job. What the card says of its heat is taken at its word:
/// the same orifices then pass more heat or less, and the flue shows that and no fault.
fn band(me: &Technician) -> (f64, f64) {
    let usual = USUAL_BTU_FT3[usize::from(me.know.supply_is_propane)];
    let (leanest, richest) = match heat_on_card(&me.card.text, usual) {
        Some(btu_ft3) => (btu_ft3, btu_ft3),
        None if me.know.supply_is_propane => (usual, usual),
        None => SOLD_BTU_FT3,
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

fn judge(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let written = seen.sheet.measured.iter().rev().find(|one| one.spot == Spot::Flue);
    let figure = |quantity| {
        written.and_then(|one| one.figures.iter().find(|it| it.quantity == quantity)?.value())
    };
    let Some(excess) = figure(Quantity::ExcessAir) else { return Vec::new() };
    let air = 1.0 + excess / 100.0;
    let (least, most) = band(me);
    // Under its pressure and yet too little air: that is too much gas all the more.
    let rich = air < least && !me.is_over(Stage::High);
    if me.careless || (me.set_aside() && !rich) {
        return Vec::new();
    }
    let under = rich && me.is_under(Stage::High);
    if !under && figure(Quantity::CarbonMonoxideAirFree).is_some_and(|ppm| ppm > MOST_CO_PPM) {
        return give_up(me, "carbon monoxide in the flue at the right pressure");
    }
    if air > most {
        me.know.note("too little heat in the gas");
        me.know.owner_needed = true;
        return Vec::new();
    }
    if air >= least {
        return Vec::new();
    }
    let high = seen.altitude_ft > DERATE_FT;
    let (words, repair) = if high {
        ("nothing changed for the altitude", Repair::FitAltitudeOrifices)
    } else {
        ("too much gas at the right pressure", Repair::FitOrifices)
    };
    if me.know.has_mended(repair) {
        return give_up(me, "flue gas stays wrong");
    }
    me.plan_repair(words, repair);
    // A supply that was judged under too much flow is judged anew.
    if me.supply_is_bad() { mend_and_judge_supply() } else { mend_at_manifold() }
}

/// Closes the manifold port, mends, and begins again at the inlet.
fn mend_and_judge_supply() -> Vec<Step> {
    vec![think(|me, _| {
        let mut steps = vec![think(hands_free)];
        steps.extend(stop());
        steps.extend([go(Place::GasValve), think(close_open)]);
        steps.extend(isolate());
        steps.push(mend_all());
        steps.push(think(|_, _| inlet_as_found()));
        me.start_over(steps);
        Vec::new()
    })]
}

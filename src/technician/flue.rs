//! What the flue gas tells with both stages set: too little air, too much, a hole in the exchanger.

use super::burn::mend_at_manifold;
use super::no_fire::give_up;
use super::plan::{Step, Technician, act, go, think, with};
use super::run_furnace::run_high;
use super::task::pause;
use crate::bench::action::Action;
use crate::bench::part::{Place, Spot, Tool};
use crate::bench::repair::Repair;
use crate::bench::seen::Seen;
use crate::instrument::figure::Quantity;

/// Time until the analyser shows what the flue gas is, in seconds.
const DRAWS_S: f64 = 120.0;
/// Excess air of a furnace of this kind on high, per cent: below, too much gas for its air; above,
/// too little (the model's furnace has about 42 on its plate; the band is from memory).
const AIR: (f64, f64) = (34.0, 52.0);
/// Carbon monoxide in the flue at which nothing may go on burning, in parts per million air-free
/// (ANSI Z21.47's limit, from memory).
const MOST_CO_PPM: f64 = 400.0;
/// Height above the sea from which a furnace is derated, in feet (common practice).
const DERATE_FT: i32 = 2000;

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

fn judge(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let written = seen.sheet.measured.iter().rev().find(|one| one.spot == Spot::Flue);
    let figure = |quantity| {
        written.and_then(|one| one.figures.iter().find(|it| it.quantity == quantity)?.value())
    };
    let Some(air) = figure(Quantity::ExcessAir) else { return Vec::new() };
    if me.careless || me.set_aside() {
        return Vec::new();
    }
    if figure(Quantity::CarbonMonoxideAirFree).is_some_and(|ppm| ppm > MOST_CO_PPM) {
        return give_up(me, "carbon monoxide in the flue at the right pressure");
    }
    if air > AIR.1 {
        me.know.note("too little heat in the gas");
        me.know.owner_needed = true;
        return Vec::new();
    }
    if air >= AIR.0 {
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
    mend_at_manifold()
}

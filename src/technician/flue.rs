//! What the flue gas tells with both stages set: too little air, too much, a hole in the exchanger.

use super::burn::mend_at_manifold;
use super::close::close_open;
use super::mend::{hands_free, mend_all};
use super::no_fire::give_up;
use super::open::isolate;
use super::plan::{Step, Technician, act, go, inlet_as_found, think, with};
use super::run_furnace::{run_high, stop};
use super::task::pause;
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::instrument::figure::Quantity;
use crate::measure::air;
use crate::parts::{Place, Spot, Stage, Tool};
use crate::senses::seen::Seen;

/// Time until the analyser shows what the flue gas is, in seconds.
const DRAWS_S: f64 = 120.0;
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

fn judge(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let written = seen.sheet.measured.iter().rev().find(|one| one.spot == Spot::Flue);
    let figure = |quantity| {
        written.and_then(|one| one.figures.iter().find(|it| it.quantity == quantity)?.value())
    };
    let Some(excess) = figure(Quantity::ExcessAir) else { return Vec::new() };
    let air = 1.0 + excess / 100.0;
    let fuel = if me.know.supply_is_propane { Fuel::Propane } else { Fuel::Natural };
    let (least, most) = air::limits(&me.card.text, fuel);
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

//! What the flue gas tells with both stages set: too little air, too much, a hole in the exchanger.

use super::by_eye::DERATE_FT;
use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::mend_all;
use super::mind::Mind;
use super::run_furnace::run_full;
use super::step::{
    Step, act, give_up, go, isolate, pause, reach, start_over, stop, take, think, with,
};
use crate::appliance::plate::Fuel;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::instrument::figure::Quantity;
use crate::measure::air;
use crate::parts::{Place, Spot, Stage, Tool};
use crate::procedure::{DRAWS_S, Goal};
use crate::senses::seen::Seen;

/// Carbon monoxide in the flue at which nothing may go on burning, in parts per million air-free
/// (ANSI Z21.47's limit, from memory).
const MOST_CO_PPM: f64 = 400.0;

/// The analyser's probe in the flue while high burns.
pub(super) fn check() -> Vec<Step> {
    let mut steps = run_full();
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

fn judge(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let written = seen.sheet.measured.iter().rev().find(|one| one.spot == Spot::Flue);
    let figure = |quantity| {
        written.and_then(|one| one.figures.iter().find(|it| it.quantity == quantity)?.value())
    };
    let Some(excess) = figure(Quantity::ExcessAir) else { return Vec::new() };
    let air = 1.0 + excess / 100.0;
    let fuel = if me.know.papers.supply_is_propane { Fuel::Propane } else { Fuel::Natural };
    let (least, most) = air::limits(&me.card, fuel);
    // Under its pressure and yet too little air: that is too much gas all the more.
    let rich = air < least && !me.is_over(Stage::FullLoad);
    if me.careless || (me.set_aside() && !rich) {
        return Vec::new();
    }
    let high = seen.altitude_ft > DERATE_FT;
    let (words, repair) = if high {
        (Diagnosis::NotDerated, Repair::FitAltitudeOrifices)
    } else {
        (Diagnosis::TooMuchGas, Repair::FitOrifices)
    };
    // Too much gas is mended at the orifices, with the gas shut off meanwhile; carbon monoxide that
    // has another cause, or stays with the right orifices, leaves the furnace shut off.
    let fits_orifices = rich && !me.know.has_mended(repair);
    if !fits_orifices
        && figure(Quantity::CarbonMonoxideAirFree).is_some_and(|ppm| ppm > MOST_CO_PPM)
    {
        return give_up(me, Diagnosis::CarbonMonoxide);
    }
    if air > most {
        me.know.note(Diagnosis::TooLittleHeat);
        me.know.supply.owner_needed = true;
        return Vec::new();
    }
    if air >= least {
        return Vec::new();
    }
    if !fits_orifices {
        return give_up(me, Diagnosis::FlueStaysWrong);
    }
    me.plan_repair(words, repair);
    // A supply that was judged under too much flow is judged anew.
    if me.supply_is_bad() { mend_and_judge_supply() } else { take(Course::MendAtManifold) }
}

/// Closes the manifold port, mends, and begins again at the inlet.
fn mend_and_judge_supply() -> Vec<Step> {
    let mut steps = vec![reach(Goal::HandEmpty)];
    steps.extend(stop());
    steps.extend([go(Place::GasValve), Step::Take(Course::CloseOpenPort)]);
    steps.extend(isolate());
    steps.push(mend_all());
    steps.extend(take(Course::InletAsFound));
    start_over(steps)
}

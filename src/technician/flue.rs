//! What the flue gas tells with both stages set: too little air, too much, a hole in the exchanger.

use super::burn::mend_at_manifold;
use super::mend::hands_free;
use super::no_fire::give_up;
use super::plan::{Step, Technician, act, go, think, until_at_rest, with};
use super::run_furnace::{run_high, run_low, stop};
use super::task::{Until, pause, wait};
use crate::bench::action::Action;
use crate::bench::part::{Place, Spot, Subject, Tool};
use crate::bench::repair::Repair;
use crate::bench::seen::{Condition, Finding, Seen, Sound};
use crate::instrument::figure::Quantity;

/// Time until the analyser shows what the flue gas is, in seconds.
const DRAWS_S: f64 = 120.0;
/// Excess air of a furnace of this kind on high, per cent: below, too much gas for its air; above,
/// too little (about 42 on its plate, as the manual of a two-stage furnace gives; maker withheld).
const AIR: (f64, f64) = (34.0, 52.0);
/// Height above the sea from which a furnace is derated, in feet (IFGC 2018, 402.2 and common
/// practice).
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
    let air = written.and_then(|one| {
        let figure = one.figures.iter().find(|it| it.quantity == Quantity::ExcessAir)?;
        figure.value()
    });
    let Some(air) = air else { return Vec::new() };
    if me.careless || me.set_aside() {
        return Vec::new();
    }
    if air > AIR.1 {
        me.know.note("too little heat in the gas");
        me.know.owner_needed = true;
        return Vec::new();
    }
    if air >= AIR.0 {
        return Vec::new();
    }
    let mut steps = vec![think(hands_free)];
    steps.extend(stop());
    steps.push(until_at_rest());
    // The flames as they are before the blower starts, and after.
    steps.extend(run_low());
    steps.extend([
        go(Place::GasValve),
        act(Action::Look(Subject::Flames)),
        think(|me, seen| {
            me.know.flames_before = flames(seen);
            Vec::new()
        }),
        wait(Until::Heard(Sound::Blower), 120.0),
        pause(20.0),
        act(Action::Look(Subject::Flames)),
        think(before_and_after),
    ]);
    steps
}

fn flames(seen: &Seen) -> Option<Condition> {
    match &seen.sheet.note(Subject::Flames)?.finding {
        Finding::Condition(condition) => Some(*condition),
        _ => None,
    }
}

fn before_and_after(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let changed =
        me.know.flames_before == Some(Condition::Good) && flames(seen) == Some(Condition::Bad);
    if changed {
        return give_up(me, "flames change when the blower starts");
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

//! Running the furnace on each stage, and writing what the meter shows.

use super::burn::{look_at_flames, stays_on};
use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::check;
use super::mind::Mind;
use super::no_fire::{if_not_lit, if_not_raised, mend_air};
use super::sequence::Sequence;
use super::step::{
    Step, act, give_up, go, others, pause, reach, take, think, until_at_rest, until_steady, wait,
};
use super::{hose, judge};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Level, OnOff, OtherAppliance, Phase, Place, Port, Reading, Stage, is_staged};
use crate::procedure::{Goal, LIGHT_UP_S, Means, Until, number};
use crate::senses::seen::{Display, Seen, Sound};
use crate::site::house::settable_half_f;
use crate::units::PressureUnit;

/// How long everything burns on propane before it is read, in seconds.
const LASTING_S: f64 = 150.0;
/// How long the furnace runs at its full rate before it is left, in seconds: time enough for the
/// limit.
const FULL_S: f64 = 240.0;
/// How long the inlet is watched at rest after flow before it is written, in seconds: a minute (common
/// practice: one to three), and a breath.
const AGAIN_S: f64 = 65.0;
/// How long the inlet is watched with the burners out, in seconds: what comes back at once was pipe
/// or regulator.
const SEEPS_S: f64 = 6.0;

/// Lights the furnace at the level of light-up.
pub(super) fn run_first() -> Vec<Step> {
    vec![think(|_, seen| seen.levels.first().map_or_else(Vec::new, |&level| run(level)))]
}

/// Brings the furnace to its full rate.
pub(super) fn run_full() -> Vec<Step> {
    vec![think(|_, seen| seen.levels.last().map_or_else(Vec::new, |&level| run(level)))]
}

/// Calls for heat so that it burns at a level; above the first one the jumper at the control forces
/// it.
fn run(level: Level) -> Vec<Step> {
    if level.is_first() {
        return vec![reach(Goal::Burning(Some(level), Means::Thermostat)), if_not_lit()];
    }
    vec![
        think(|me, _| {
            me.know.since_call.next_switch_ticks = 0;
            me.know.since_call.limit = false;
            Vec::new()
        }),
        reach(Goal::Burning(Some(level), Means::Wire)),
        if_not_raised(),
        pause(5.0),
    ]
}

/// Reads at each level, the weakest first: brought to it, waited until the number stands. It burns at
/// the full rate in the end.
fn at_each_level(read: impl Fn(Level) -> Vec<Step> + Send + Sync + Clone + 'static) -> Step {
    think(move |me, seen| {
        let full_first = me.works(Sequence::FullRateFirst) && is_staged(seen.levels);
        let mut levels = seen.levels.to_vec();
        let mut steps = Vec::new();
        if full_first {
            levels.reverse();
            steps.extend(run_first());
        }
        for level in levels {
            steps.extend(run(level));
            steps.push(until_settled());
            steps.extend(read(level));
        }
        if full_first {
            steps.extend(run_full());
        }
        steps
    })
}

/// Until the number stands, for as long as the card asks.
fn until_settled() -> Step {
    think(|me, _| until_steady(me.card.settle_s + 2.0))
}

/// Writes what the manometer shows, in its unit.
pub(super) fn write(port: Port, stage: Stage, phase: Phase, seen: &Seen) -> Vec<Step> {
    let Some(pa) = number(seen) else { return Vec::new() };
    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
    let thousandths = (pa / PressureUnit::InWc.pa() * 1000.0).round() as i32;
    vec![act(Action::Write(Reading { port, stage, phase, thousandths, unit: PressureUnit::InWc }))]
}

/// At rest, at each level and at full load, at the inlet port. Written and remembered.
pub(super) fn inlet_series(phase: Phase) -> Vec<Step> {
    let mut steps = others(OnOff::Off);
    steps.extend([until_at_rest(), reach(Goal::MeterInSight)]);
    steps.push(think(move |me, _| {
        me.know.read.phase = Some(phase);
        me.know.read.inlet[Stage::RestAgain] = None;
        // The number runs up for a while when flow has only just ended.
        let settles_s = (me.card.hold_s / 2.0).max(15.0).min(me.card.hold_s);
        let began = think(|me, seen| {
            me.know.read.rest_began = number(seen);
            Vec::new()
        });
        vec![pause(settles_s), began, pause(me.card.hold_s + 5.0 - settles_s)]
    }));
    steps.push(think(|me, seen| {
        let rise = me.know.read.rest_began.take().zip(number(seen)).map(|(began, now)| now - began);
        me.know.read.rest_rise = rise;
        Vec::new()
    }));
    steps.push(remember(Stage::Rest, phase));
    steps.push(at_each_level(move |level| vec![remember(Stage::Firing(level), phase)]));
    steps.extend(others(OnOff::On));
    // A tank or an icing regulator shows under a load that lasts.
    steps.push(think(|me, _| {
        if me.know.papers.supply_is_propane {
            vec![go(Place::PlantRoom), pause(LASTING_S)]
        } else {
            Vec::new()
        }
    }));
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(remember(Stage::FullLoad, phase));
    steps
}

/// At rest again with everything out, the meter still on the inlet port.
pub(super) fn inlet_again(phase: Phase) -> Vec<Step> {
    vec![go(Place::GasValve), pause(AGAIN_S), remember(Stage::RestAgain, phase)]
}

fn remember(stage: Stage, phase: Phase) -> Step {
    think(move |me, seen| keep(me, seen, stage, phase))
}

fn keep(me: &mut Mind, seen: &Seen, stage: Stage, phase: Phase) -> Vec<Step> {
    if matches!(seen.display(), Some(Display::OverRange | Display::Dark)) {
        return take(Course::AnotherMeter);
    }
    if burns(seen, stage)
        && let Some(steps) = hose::shows_nothing(me, seen, stage, Port::Inlet)
    {
        return steps;
    }
    me.know.read.inlet[stage] = number(seen);
    if !burns(seen, stage) && !me.careless {
        if stage == Stage::FullLoad {
            return vec![go(Place::PlantRoom), pause(SEEPS_S), think(out_with_others)];
        }
        if matches!(stage, Stage::Firing(level) if !level.is_first()) {
            return judge::lost_at_full(me);
        }
        return take(Course::LookForReason);
    }
    write(Port::Inlet, stage, phase, seen)
}

/// With the others on the burners are out: the limit, or there is no gas left for them.
fn out_with_others(me: &mut Mind, _: &Seen) -> Vec<Step> {
    if me.know.since_call.limit {
        return take(Course::LimitOpened);
    }
    me.know.read.collapsed = true;
    Vec::new()
}

/// Whether what is heard fits the stage.
fn burns(seen: &Seen, stage: Stage) -> bool {
    let heard = |sound| seen.sounds.contains(&sound);
    match stage {
        Stage::Rest | Stage::RestAgain => {
            !seen.levels.iter().any(|&level| heard(Sound::Burners(level)))
        }
        Stage::Firing(_) | Stage::FullLoad => {
            stage.level(seen.levels).is_some_and(|level| heard(Sound::Burners(level)))
        }
    }
}

/// Each level at the manifold port, as found; the joint is checked in the first minute of
/// firing. The others are off.
pub(super) fn manifold_found() -> Vec<Step> {
    let mut steps = others(OnOff::Off);
    steps.extend(run_first());
    steps.extend(check(Port::Manifold.joint()));
    steps.extend(hose::quick(Port::Manifold));
    steps.push(read_manifold(Phase::Found));
    steps.extend(look_at_flames());
    steps
}

/// Reads the manifold at each level.
pub(super) fn read_manifold(phase: Phase) -> Step {
    at_each_level(move |level| {
        vec![think(move |me, seen| keep_manifold(me, seen, Stage::Firing(level), phase))]
    })
}

/// Writes a manifold reading and remembers it.
fn keep_manifold(me: &mut Mind, seen: &Seen, stage: Stage, phase: Phase) -> Vec<Step> {
    if !burns(seen, stage) && !me.careless {
        return take(Course::LookForReason);
    }
    if let Some(steps) = hose::shows_nothing(me, seen, stage, Port::Manifold) {
        return steps;
    }
    if let Some(steps) = hose::never_rests(me, seen, Port::Manifold) {
        return steps;
    }
    if let Some(level) = stage.level(seen.levels) {
        me.know.read.manifold[level] = number(seen);
    }
    write(Port::Manifold, stage, phase, seen)
}

/// A whole cycle from the thermostat: up to the full rate by its own call, and to rest again.
pub(super) fn final_cycle() -> Vec<Step> {
    vec![
        reach(Goal::HeatOff),
        until_at_rest(),
        think(|_, seen| {
            let full = seen.levels.last().copied();
            vec![reach(Goal::Called(full, Means::Thermostat))]
        }),
        go(Place::PlantRoom),
        think(|_, seen| {
            let heard = |&level: &Level| Until::Heard(Sound::Burners(level));
            let full = seen.levels.last().map(heard);
            full.map(|full| wait(full, 2.0 * LIGHT_UP_S)).into_iter().collect()
        }),
        think(no_second_stage),
        think(|me, _| {
            // It burns at its full rate: a limit that was open on the way here has closed.
            me.know.since_call.limit = false;
            Vec::new()
        }),
        pause(FULL_S),
        think(went_out),
        others_before_rest(),
        // The way to the thermostat; the end of it is heard there.
        go(Place::Hall),
        think(|_, seen| {
            // Satisfied: the setpoint goes below the room, as a warm room would have it.
            let Some(hall) = &seen.hall else { return Vec::new() };
            vec![act(Action::Setpoint(settable_half_f(hall.room_half_f - 4)))]
        }),
        until_at_rest(),
        reach(Goal::AsFound),
    ]
}

/// The other appliances as they were found, while it still burns.
fn others_before_rest() -> Step {
    think(|me, _| {
        if !me.works(Sequence::OthersBeforeRest) {
            return Vec::new();
        }
        let found = me.memory.found;
        let back = |which, was: Option<OnOff>| was.map(|to| reach(Goal::Other(which, to)));
        let heater = back(OtherAppliance::WaterHeater, found.water_heater);
        heater.into_iter().chain(back(OtherAppliance::Range, found.range)).collect()
    })
}

/// The thermostat calls for the full rate and the furnace stays below it: its wire, or its set-up.
fn no_second_stage(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    if !me.too_long || me.careless {
        return Vec::new();
    }
    me.too_long = false;
    if me.know.since_call.limit {
        return limit_again(me);
    }
    if let Some(steps) = stays_on(me) {
        return steps;
    }
    if !is_staged(seen.levels) {
        return take(Course::LookForReason);
    }
    if me.know.has_mended(Repair::MendSecondStageWire) {
        return give_up(me, Diagnosis::NoSecondStage);
    }
    me.plan_repair(Diagnosis::SecondStageNeverCalled, Repair::MendSecondStageWire);
    take(Course::MendClosed)
}

/// The burners went out in the middle of the call, or the blower is heard to labor.
fn went_out(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let short_of_air = me.know.since_call.limit || seen.sounds.contains(&Sound::BlowerSlow);
    if short_of_air && !me.careless { limit_again(me) } else { Vec::new() }
}

/// The limit has opened: too little air over the exchanger.
fn limit_again(me: &mut Mind) -> Vec<Step> {
    mend_air(me, Course::MendClosed)
}

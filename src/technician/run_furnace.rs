//! Running the furnace on each stage, and writing what the meter shows.

use super::burn::{look_at_flames, stays_on};
use super::no_fire::{another_meter, give_up, if_not_high, if_not_low, limit, look_for_reason};
use super::open::switch;
use super::plan::{
    Step, Technician, act, go, mend_closed, restore_thermostat, think, until_at_rest, until_steady,
};
use super::task::{Task, Until, number, pause, wait};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Fitted, Neighbor, OnOff, Phase, Place, Port, Reading, Stage};
use crate::senses::seen::{Burning, Call, Display, Seen, Sound};
use crate::units::PressureUnit;

/// Longest time from a call to a lit stage, in seconds.
const LIGHT_UP_S: f64 = 240.0;
/// How long everything burns on propane before it is read, in seconds.
const LASTING_S: f64 = 150.0;
/// How long the furnace runs on high before it is left, in seconds: time enough for the limit.
const FULL_S: f64 = 240.0;
/// How far above the room the setpoint stands for a first-stage call, in half degrees.
const FIRST_STAGE_HALF_F: i16 = 3;
/// How far above the room for both stages, in half degrees.
const BOTH_STAGES_HALF_F: i16 = 10;

/// Heat switch off, unless it is.
pub(super) fn call_off(seen: &Seen) -> Vec<Step> {
    match &seen.hall {
        Some(hall) if hall.mode == OnOff::On => vec![act(Action::ThermostatMode(OnOff::Off))],
        Some(_) | None => Vec::new(),
    }
}

fn call(seen: &Seen, above_half_f: i16) -> Vec<Step> {
    let Some(hall) = &seen.hall else { return Vec::new() };
    let mut steps = Vec::new();
    let wanted = (hall.room_half_f + above_half_f).clamp(90, 180);
    if hall.setpoint_half_f != wanted {
        steps.push(act(Action::Setpoint(wanted)));
    }
    if hall.mode == OnOff::Off {
        steps.push(act(Action::ThermostatMode(OnOff::On)));
    }
    steps
}

/// A second-stage call holds until the room is near the setpoint: bring the setpoint to the room
/// for a moment, the first stage stays.
fn drop_second_stage(seen: &Seen) -> Vec<Step> {
    match &seen.hall {
        Some(hall) if hall.call == Call::Second => {
            vec![act(Action::Setpoint(hall.room_half_f.clamp(90, 180))), pause(1.0)]
        }
        Some(_) | None => Vec::new(),
    }
}

/// The wire between R and W2, unless it is so.
pub(super) fn jumper(seen: &Seen, to: Fitted) -> Vec<Step> {
    let stands = seen.furnace.as_ref().map(|f| f.stage_jumper);
    if stands == Some(to) { Vec::new() } else { vec![act(Action::StageJumper(to))] }
}

/// A neighbour on or off, unless it is so.
pub(super) fn neighbor(seen: &Seen, which: Neighbor, to: OnOff) -> Vec<Step> {
    let burning = match which {
        Neighbor::WaterHeater => seen.furnace.as_ref().map(|f| f.water_heater.burning),
        Neighbor::Range => seen.hall.as_ref().map(|h| h.range.burning),
    };
    let is_on = burning.is_some_and(|b| b != Burning::Off);
    if is_on == (to == OnOff::On) {
        Vec::new()
    } else {
        vec![act(Action::Neighbor { neighbor: which, to })]
    }
}

pub(super) fn others(to: OnOff) -> Vec<Step> {
    match to {
        OnOff::On => vec![
            go(Place::PlantRoom),
            think(|_, seen| neighbor(seen, Neighbor::WaterHeater, OnOff::On)),
            go(Place::Hall),
            think(|_, seen| neighbor(seen, Neighbor::Range, OnOff::On)),
        ],
        OnOff::Off => vec![
            go(Place::PlantRoom),
            think(|_, seen| neighbor(seen, Neighbor::WaterHeater, OnOff::Off)),
            go(Place::Hall),
            think(|_, seen| neighbor(seen, Neighbor::Range, OnOff::Off)),
        ],
    }
}

/// Calls for heat so that low burns.
pub(super) fn run_low() -> Vec<Step> {
    vec![
        go(Place::PlantRoom),
        think(|_, seen| jumper(seen, Fitted::Off)),
        go(Place::GasValve),
        think(|_, seen| switch(seen, OnOff::On)),
        go(Place::Hall),
        think(|_, seen| drop_second_stage(seen)),
        think(|_, seen| call(seen, FIRST_STAGE_HALF_F)),
        wait(Until::Heard(Sound::BurnersLow), LIGHT_UP_S),
        if_not_low(),
    ]
}

/// Forces high by the wire at the control, with a call for heat.
pub(super) fn run_high() -> Vec<Step> {
    let mut steps = vec![
        think(|me, _| {
            me.know.watch.high_switch_ticks = 0;
            me.know.watch.limit = false;
            Vec::new()
        }),
        go(Place::Hall),
        think(|_, seen| call(seen, BOTH_STAGES_HALF_F)),
        go(Place::PlantRoom),
        think(|_, seen| jumper(seen, Fitted::On)),
    ];
    steps.push(wait(Until::Heard(Sound::BurnersHigh), LIGHT_UP_S));
    steps.push(if_not_high());
    steps.push(pause(5.0));
    steps
}

/// Ends the forced stage and the call.
pub(super) fn stop() -> Vec<Step> {
    vec![
        go(Place::PlantRoom),
        think(|_, seen| jumper(seen, Fitted::Off)),
        go(Place::Hall),
        think(|_, seen| call_off(seen)),
    ]
}

/// Writes what the manometer shows, in its unit.
pub(super) fn write(port: Port, stage: Stage, phase: Phase, seen: &Seen) -> Vec<Step> {
    let Some(pa) = number(seen) else { return Vec::new() };
    #[expect(clippy::cast_possible_truncation, reason = "a display's number")]
    let thousandths = (pa / PressureUnit::InWc.pa() * 1000.0).round() as i32;
    vec![act(Action::Write(Reading { port, stage, phase, thousandths, unit: PressureUnit::InWc }))]
}

/// At rest, low, high, high with the others, at the inlet port. Written and remembered.
pub(super) fn inlet_series(phase: Phase) -> Vec<Step> {
    let mut steps = others(OnOff::Off);
    steps.push(until_at_rest());
    steps.push(think(|me, _| {
        // The number runs up for a while when flow has only just ended.
        let settles_s = (me.card.hold_s / 2.0).max(15.0).min(me.card.hold_s);
        let began = think(|me, seen| {
            me.know.rest_began = number(seen);
            Vec::new()
        });
        vec![pause(settles_s), began, pause(me.card.hold_s + 5.0 - settles_s)]
    }));
    steps.push(think(|me, seen| {
        let rise = me.know.rest_began.take().zip(number(seen)).map(|(began, now)| now - began);
        me.know.rest_rise = rise;
        Vec::new()
    }));
    steps.push(remember(Stage::Rest, phase));
    steps.extend(run_low());
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(remember(Stage::Low, phase));
    steps.extend(run_high());
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(remember(Stage::High, phase));
    steps.extend(others(OnOff::On));
    // A tank or an icing regulator shows under a load that lasts.
    steps.push(think(|me, _| {
        if me.know.supply_is_propane {
            vec![go(Place::PlantRoom), pause(LASTING_S)]
        } else {
            Vec::new()
        }
    }));
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(remember(Stage::HighWithOthers, phase));
    steps
}

fn remember(stage: Stage, phase: Phase) -> Step {
    type Decide = fn(&mut Technician, &Seen) -> Vec<Step>;
    let decide: Decide = match (stage, phase) {
        (Stage::Rest, Phase::Found) => |me, seen| keep(me, seen, Stage::Rest, Phase::Found),
        (Stage::Rest, Phase::Left) => |me, seen| keep(me, seen, Stage::Rest, Phase::Left),
        (Stage::Low, Phase::Found) => |me, seen| keep(me, seen, Stage::Low, Phase::Found),
        (Stage::Low, Phase::Left) => |me, seen| keep(me, seen, Stage::Low, Phase::Left),
        (Stage::High, Phase::Found) => |me, seen| keep(me, seen, Stage::High, Phase::Found),
        (Stage::High, Phase::Left) => |me, seen| keep(me, seen, Stage::High, Phase::Left),
        (Stage::HighWithOthers, Phase::Found) => {
            |me, seen| keep(me, seen, Stage::HighWithOthers, Phase::Found)
        }
        (Stage::HighWithOthers, Phase::Left) => {
            |me, seen| keep(me, seen, Stage::HighWithOthers, Phase::Left)
        }
    };
    Task::Think(decide)
}

fn keep(me: &mut Technician, seen: &Seen, stage: Stage, phase: Phase) -> Vec<Step> {
    if matches!(seen.meter.display, Display::OverRange | Display::Dark) {
        return another_meter(me, seen);
    }
    if burns(seen, stage)
        && let Some(steps) = super::hose::shows_nothing(me, seen, stage, Port::Inlet)
    {
        return steps;
    }
    me.know.inlet[stage as usize] = number(seen);
    if !burns(seen, stage) && !me.careless {
        if stage == Stage::HighWithOthers {
            return vec![go(Place::PlantRoom), think(out_with_others)];
        }
        return look_for_reason();
    }
    write(Port::Inlet, stage, phase, seen)
}

/// With the others on the burners are out: the limit, or there is no gas left for them.
fn out_with_others(me: &mut Technician, _: &Seen) -> Vec<Step> {
    if me.know.watch.limit {
        return limit(me);
    }
    me.know.collapsed = true;
    Vec::new()
}

/// Whether what is heard fits the stage.
fn burns(seen: &Seen, stage: Stage) -> bool {
    let heard = |sound| seen.sounds.contains(&sound);
    match stage {
        Stage::Rest => !heard(Sound::BurnersLow) && !heard(Sound::BurnersHigh),
        Stage::Low => heard(Sound::BurnersLow),
        Stage::High | Stage::HighWithOthers => heard(Sound::BurnersHigh),
    }
}

/// Low and high at the manifold port, as found; the joint is checked in the first minute of
/// firing. The others are off.
pub(super) fn manifold_found() -> Vec<Step> {
    let mut steps = others(OnOff::Off);
    steps.extend(run_low());
    steps.extend(super::open::check_joint(Port::Manifold));
    steps.extend(super::hose::quick(Port::Manifold));
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(think(|me, seen| keep_manifold(me, seen, Stage::Low, Phase::Found)));
    steps.extend(run_high());
    steps.push(think(|me, _| until_steady(me.card.settle_s + 2.0)));
    steps.push(think(|me, seen| keep_manifold(me, seen, Stage::High, Phase::Found)));
    steps.extend(look_at_flames());
    steps
}

/// Writes a manifold reading and remembers it.
pub(super) fn keep_manifold(
    me: &mut Technician,
    seen: &Seen,
    stage: Stage,
    phase: Phase,
) -> Vec<Step> {
    if !burns(seen, stage) && !me.careless {
        return look_for_reason();
    }
    if let Some(steps) = super::hose::shows_nothing(me, seen, stage, Port::Manifold) {
        return steps;
    }
    let i = usize::from(stage != Stage::Low);
    me.know.manifold[i] = number(seen);
    write(Port::Manifold, stage, phase, seen)
}

/// A whole cycle from the thermostat: low, high by its own call, and to rest again.
pub(super) fn final_cycle() -> Vec<Step> {
    vec![
        go(Place::Hall),
        think(|_, seen| call_off(seen)),
        until_at_rest(),
        think(|_, seen| call(seen, BOTH_STAGES_HALF_F)),
        go(Place::PlantRoom),
        wait(Until::Heard(Sound::BurnersHigh), 2.0 * LIGHT_UP_S),
        think(no_second_stage),
        pause(FULL_S),
        think(went_out),
        go(Place::Hall),
        think(|_, seen| {
            // Satisfied: the setpoint goes below the room, as a warm room would have it.
            let Some(hall) = &seen.hall else { return Vec::new() };
            vec![act(Action::Setpoint((hall.room_half_f - 4).clamp(90, 180)))]
        }),
        until_at_rest(),
        think(restore_thermostat),
    ]
}

/// The thermostat calls for both stages and the furnace stays on low: its wire, or its set-up.
fn no_second_stage(me: &mut Technician, _: &Seen) -> Vec<Step> {
    if !me.too_long || me.careless {
        return Vec::new();
    }
    me.too_long = false;
    if me.know.watch.limit {
        return limit_again(me);
    }
    if let Some(steps) = stays_on(me) {
        return steps;
    }
    if me.know.has_mended(Repair::MendSecondStageWire) {
        return give_up(me, "no second stage from the thermostat");
    }
    me.plan_repair("second stage never called", Repair::MendSecondStageWire);
    mend_closed()
}

/// The burners went out in the middle of the call.
fn went_out(me: &mut Technician, _: &Seen) -> Vec<Step> {
    if me.know.watch.limit && !me.careless { limit_again(me) } else { Vec::new() }
}

/// The limit has opened: too little air over the exchanger.
fn limit_again(me: &mut Technician) -> Vec<Step> {
    me.know.watch.limit = false;
    if me.know.has_mended(Repair::OpenRegisters) {
        return give_up(me, "limit opens again");
    }
    me.plan_repair("limit opens with the filter clean", Repair::OpenRegisters);
    mend_closed()
}

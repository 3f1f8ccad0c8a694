//! Caps and screws.

use super::done::{Done, plain};
use super::event::EventKind;
use super::reach;
use super::refusal::Refusal;
use crate::model::Model;
use crate::parts::{Fitted, Port, Screw, Tool};
use crate::senses::meter::metered;
use crate::units::TICK_S;

/// Most that one action turns a screw, in eighths.
const MOST_EIGHTHS: u16 = 16;

pub(super) fn set_cap(model: &mut Model, screw: Screw, to: Fitted) -> Done {
    reach::screw(model, screw)?;
    reach::tool(model, Tool::SlottedDriver)?;
    let cap = &mut model.things.caps[screw];
    if *cap == to {
        return Err(Refusal::AlreadySo);
    }
    *cap = to;
    plain()
}

pub(super) fn turn(model: &mut Model, screw: Screw, eighths: i16) -> Done {
    reach::screw(model, screw)?;
    reach::tool(model, Tool::SlottedDriver)?;
    if eighths == 0 || eighths.unsigned_abs() > MOST_EIGHTHS {
        return Err(Refusal::Absurd);
    }
    if model.things.caps[screw] == Fitted::On {
        return Err(Refusal::CapOn);
    }
    let turns = f64::from(eighths) / 8.0;
    let before = set_pa(model, screw);
    let turned_before = turns_of(model, screw);
    let stopped = match screw.level() {
        Some(level) => model.gas.springs_mut().turn(level, turns),
        None => model.gas.turn_supply(turns),
    };
    let moved = turns_of(model, screw) - turned_before;
    if stopped && moved.abs() < 1e-9 {
        return Err(Refusal::AtStop);
    }
    #[expect(clippy::cast_possible_truncation, reason = "at most 16 eighths")]
    let moved_eighths = (moved * 8.0).round() as i32;
    model.things.turned_eighths[screw] += moved_eighths;
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    let since_turn_s = model.things.last_turn_tick.map(|then| (model.tick - then) as f64 * TICK_S);
    model.things.last_turn_tick = Some(model.tick);
    Ok(vec![EventKind::Turned {
        screw,
        eighths,
        set_pa: (before, set_pa(model, screw)),
        bottomed: stopped && eighths > 0,
        firing: model.firing(),
        inlet_pa: model.gas.pressure_pa(Port::Inlet),
        metered: metered(model).map(|at| at.port),
        since_turn_s,
    }])
}

/// What a screw sets, in pascals.
fn set_pa(model: &Model, screw: Screw) -> f64 {
    match screw.level() {
        Some(level) => model.gas.springs().set_pa()[level],
        None => model.gas.supply_set_pa(),
    }
}

/// Turns of a screw: of a stage screw from fully out, of the supply screw since the start.
fn turns_of(model: &Model, screw: Screw) -> f64 {
    match screw.level() {
        Some(level) => model.gas.springs().turns()[level],
        None => model.gas.supply_turned(),
    }
}

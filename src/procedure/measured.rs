//! Work beyond the pressures that a card asks for: looks on arrival, temperature rise, combustion,
//! gas rate. Instruments held to their spots while the furnace burns on a level.

use super::goal::{Goal, Means, Step, at, in_hand};
use super::{Awaited, Memory};
use crate::hands::action::{Action, StartStop};
use crate::instrument::figure::Quantity;
use crate::parts::{ARRIVAL_LOOKS, Door, Duty, Fitted, Level, OnOff, Spot, Tool};
use crate::senses::seen::Seen;

/// How long the furnace burns on a level before its air is measured, in seconds: exchanger and ducts
/// have warmed up by then (common practice: five minutes at least).
const AIR_RESTS_S: f64 = 330.0;
/// How long a bead is held in the air before it is read, in seconds: ten times its own lag in moving
/// air.
const BEAD_S: f64 = 60.0;
/// Time until the analyzer shows what the flue gas is, in seconds.
pub const DRAWS_S: f64 = 120.0;
/// Time over which a dial is timed at least, in seconds: a finger is late by a tenth or two (common
/// practice: half a minute).
const TIMES_S: f64 = 30.0;
/// Share of a turn within which the hand stands at its mark.
const AT_MARK: f64 = 0.02;

/// What is measured at a level for the work that is asked for.
fn spots(required: &[Duty], level: Level) -> Vec<Spot> {
    let mut spots = Vec::new();
    if required.contains(&Duty::TemperatureRise) {
        spots.extend([Spot::SupplyAir, Spot::ReturnAir]);
    }
    if level.is_top() && required.contains(&Duty::Combustion) {
        spots.push(Spot::Flue);
    }
    if level.is_top() && required.contains(&Duty::GasRate) {
        spots.push(Spot::MeterDial);
    }
    spots
}

/// The goals of what is still to be measured, level by level, the weakest first. For the dial
/// everything else is turned off.
#[must_use]
pub fn to_measure(required: &[Duty], levels: &[Level], memory: &Memory) -> Vec<Goal> {
    let mut goals = Vec::new();
    for &level in levels {
        let missing = spots(required, level);
        let missing: Vec<Spot> =
            missing.into_iter().filter(|&spot| !memory.has_written(spot, level)).collect();
        if missing.is_empty() {
            continue;
        }
        if missing.contains(&Spot::MeterDial) {
            goals.push(Goal::Others(OnOff::Off));
        }
        // At the dial nobody hears the burners: there it rests on what was heard last.
        if missing != [Spot::MeterDial] || !memory.burns(level) {
            goals.push(Goal::Burning(Some(level), Means::Thermostat));
        }
        if missing.iter().any(|spot| spot.tool() == Tool::Thermometer) {
            goals.push(Goal::Door(Door::Burner, Fitted::On));
        }
        goals.extend(missing.into_iter().map(|spot| Goal::Measured(spot, level)));
    }
    goals
}

/// Work of a card that was not done, and the leak check of the whole piping, whoever asks for it: what
/// is said at hand-over.
#[must_use]
pub fn undone(required: &[Duty], seen: &Seen, memory: &Memory) -> Vec<Duty> {
    let is_done = |duty: Duty| match duty {
        Duty::ArrivalLooks => {
            ARRIVAL_LOOKS.iter().all(|subject| seen.sheet.note(*subject).is_some())
        }
        Duty::Combustion | Duty::TemperatureRise | Duty::GasRate => {
            seen.levels.iter().all(|&level| {
                spots(&[duty], level).into_iter().all(|spot| memory.has_written(spot, level))
            })
        }
        Duty::PipingLeakCheck => memory.piping_checked,
    };
    Duty::ALL
        .iter()
        .copied()
        .filter(|duty| required.contains(duty) || *duty == Duty::PipingLeakCheck)
        .filter(|&duty| !is_done(duty))
        .collect()
}

/// What an instrument shows at a spot, written while the furnace burns on a level.
pub(super) fn written(seen: &Seen, memory: &Memory, spot: Spot, level: Level) -> Step {
    if memory.has_written(spot, level) {
        return Step::Met;
    }
    let Some(burned_s) = memory.burned_s(level) else { return Step::Wait(Awaited::Light) };
    let in_place = at(seen, spot.places())
        .then(memory, || in_hand(seen, spot.tool()))
        .then(memory, || held(seen, spot));
    in_place.then(memory, || {
        let steady = match spot.tool() {
            Tool::Thermometer if burned_s < AIR_RESTS_S => Step::Wait(Awaited::AirRests),
            Tool::Thermometer => shown_for(memory, spot, BEAD_S),
            Tool::FlueAnalyser => shown_for(memory, spot, DRAWS_S),
            Tool::Stopwatch => timed(seen, memory),
            Tool::HexKey
            | Tool::SlottedDriver
            | Tool::Adapter
            | Tool::Hose
            | Tool::LeakFluid
            | Tool::GasDetector
            | Tool::Microammeter
            | Tool::ElectricalMeter => Step::Met,
        };
        steady.then(memory, || Step::Do(Action::WriteMeasured(spot)))
    })
}

/// The instrument in hand held to a spot.
fn held(seen: &Seen, spot: Spot) -> Step {
    let there = seen.measured.as_ref().is_some_and(|shown| shown.spot == spot);
    if there { Step::Met } else { Step::Do(Action::Measure(spot)) }
}

/// Held there for so long.
fn shown_for(memory: &Memory, spot: Spot, seconds: f64) -> Step {
    let since = memory.held.filter(|(one, _)| *one == spot);
    let rests = since.is_some_and(|(_, tick)| memory.since_s(tick) >= seconds);
    if rests { Step::Met } else { Step::Wait(Awaited::Reads) }
}

/// Whole turns of the dial on the stopwatch.
fn timed(seen: &Seen, memory: &Memory) -> Step {
    let stopped = seen.measured.as_ref().is_some_and(|shown| {
        shown
            .figures
            .iter()
            .any(|it| it.quantity == Quantity::SecondsPerTurn && it.value().is_some())
    });
    if stopped {
        return Step::Met;
    }
    let dial = seen.yard.as_ref().and_then(|yard| yard.dial_turns);
    let (Some(dial), Some((tick, from))) = (dial, memory.timed_from) else {
        return Step::Do(Action::Stopwatch(StartStop::Start));
    };
    let turns = dial - from;
    let at_mark = turns >= 1.0 - AT_MARK / 2.0 && (turns - turns.floor()) < AT_MARK;
    if at_mark && memory.since_s(tick) >= TIMES_S {
        Step::Do(Action::Stopwatch(StartStop::Stop))
    } else {
        Step::Wait(Awaited::Turns)
    }
}

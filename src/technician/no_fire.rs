//! When the burners do not light, or not on the stage that is called: what the control says, what is
//! seen and heard, and what may mend it. What does no harm comes before a part is swapped.

use super::burn::stays_on;
use super::course::Course;
use super::diagnosis::Diagnosis;
use super::mend::hose_back_on;
use super::mind::Mind;
use super::step::{Step, act, give_up, go, hose_off, isolate, pause, stop, take, think, wait};
use super::{by_eye, judge};
use crate::appliance::ignition::ControlStatus;
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{OnOff, Place, Port};
use crate::procedure::Until;
use crate::senses::seen::{Display, Seen};
use crate::units::TICKS_PER_S;

/// Longest time that a whole try to light is watched, in seconds.
const WATCH_S: f64 = 150.0;
/// Glow below which an igniter is weak.
const DIM: f64 = 0.8;
/// Glow from which there is nothing to better about it.
const BRIGHT: f64 = 0.97;
/// Most attempts to get the burners lit.
const MOST_ATTEMPTS: u32 = 8;
/// Seconds of waiting for the next level's pressure switch that tell of it.
const SWITCH_S: u32 = 20;

/// After a call: goes on when the first level burns, else looks for the reason.
pub(super) fn if_not_lit() -> Step {
    think(|me, _| {
        if !me.too_long || me.careless {
            return Vec::new();
        }
        me.too_long = false;
        take(Course::LookForReason)
    })
}

/// From the gas valve: what the control does and says.
pub(super) fn look_for_reason() -> Vec<Step> {
    vec![go(Place::PlantRoom), go(Place::GasValve), think(stuck_above)]
}

/// The second stage burns at a first-stage call.
fn stuck_above(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    if me.know.since_call.limit {
        return limit_opened(me);
    }
    if status(seen).is_some_and(burns_above_first) {
        me.plan_repair(Diagnosis::SecondStageAlwaysCalled, Repair::ReplaceControlBoard);
        return take(Course::MendAndReadAgain);
    }
    // A try from its beginning: power off and on again, and look.
    let mut steps = vec![
        go(Place::PlantRoom),
        act(Action::FurnaceSwitch(OnOff::Off)),
        pause(5.0),
        act(Action::FurnaceSwitch(OnOff::On)),
        think(|me, _| {
            me.know.since_call = super::know::SinceCall::default();
            Vec::new()
        }),
        go(Place::GasValve),
    ];
    steps.push(wait(Until::Status(burning_on_a_stage()), WATCH_S));
    steps.push(think(no_flame));
    steps
}

/// Burning at any level, whatever the current through the flame.
fn burning_on_a_stage() -> Vec<ControlStatus> {
    let on_a_stage = |it: &ControlStatus| it.burns_at().is_some();
    ControlStatus::ALL.into_iter().filter(on_a_stage).collect()
}

/// Whether it says that it burns above the level of light-up.
fn burns_above_first(status: ControlStatus) -> bool {
    status.burns_at().is_some_and(|level| !level.is_first())
}

fn status(seen: &Seen) -> Option<ControlStatus> {
    seen.furnace.as_ref().map(|furnace| furnace.status)
}

/// Nothing burns: by what the control says.
fn no_flame(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    if !me.too_long {
        // It burned this time, but late: what delays it is looked for too.
        if me.know.since_call.bang {
            me.plan_repair(Diagnosis::LightsLate, Repair::CleanBurners);
            return take(Course::MendAndReadAgain);
        }
        return take(Course::ReadAgain);
    }
    me.too_long = false;
    me.know.screws.tries += 1;
    if me.know.screws.tries > MOST_ATTEMPTS {
        return give_up(me, Diagnosis::NoReasonFound);
    }
    let says = status(seen);
    // A flame that stays on with the gas shut has its gas.
    if let Some(steps) = stays_on(me) {
        return steps;
    }
    if let Some(steps) = judge::no_gas(me, seen) {
        return steps;
    }
    let found = if says == Some(ControlStatus::NoPower) {
        Some((Diagnosis::ControlFuseBlown, &[Repair::ReplaceControlFuse][..]))
    } else if says == Some(ControlStatus::NoCall) {
        Some((Diagnosis::NoCallAtControl, &[Repair::MendThermostatWire][..]))
    } else if says == Some(ControlStatus::SwitchClosedAtRest) {
        Some((Diagnosis::FirstSwitchStuckClosed, &[Repair::ReplaceFirstSwitch][..]))
    } else if me.know.since_call.low_gas && judge::is_short_of_gas(me, seen) {
        me.know.supply.owner_needed = true;
        return give_up(me, Diagnosis::LowGasSwitchForPressure);
    } else if me.know.since_call.low_gas {
        Some((Diagnosis::LowGasSwitchOpen, &[Repair::ReplaceLowGasSwitch][..]))
    } else if me.know.since_call.first_switch || says == Some(ControlStatus::AwaitsPressureSwitch) {
        return by_eye::first_switch();
    } else if me.know.since_call.rolled_out {
        return rolled_out(me);
    } else if me.know.since_call.lit > 0 {
        return by_eye::flame_lost();
    } else if me.know.since_call.glow < DIM {
        Some((Diagnosis::IgniterDim, &[Repair::ReplaceIgniter][..]))
    } else {
        // At its brightest an igniter lights whatever gas comes to it.
        let repairs = if me.know.since_call.glow < BRIGHT { NO_LIGHT_DULL } else { NO_LIGHT };
        Some((Diagnosis::GasButNoFlame, repairs))
    };
    let next = found.and_then(|(words, repairs)| Some((words, me.know.next_of(repairs)?)));
    match next {
        Some((words, repair)) => {
            me.plan_repair(words, repair);
            take(Course::MendAndReadAgain)
        }
        None => give_up(me, Diagnosis::RepairsInVain),
    }
}

/// From what does no harm to the part.
const NO_LIGHT: &[Repair] = &[Repair::PurgeLine, Repair::CleanBurners, Repair::CleanInletScreen];
const NO_LIGHT_DULL: &[Repair] = &[Repair::PurgeLine, Repair::CleanBurners, Repair::ReplaceIgniter];

fn rolled_out(me: &mut Mind) -> Vec<Step> {
    if me.know.since_call.flames_leaned {
        return give_up(me, Diagnosis::ExchangerHoled);
    }
    if me.know.diagnosis.contains(&Diagnosis::RolloutOpen) {
        return give_up(me, Diagnosis::RolloutOpensAgain);
    }
    me.know.note(Diagnosis::RolloutOpen);
    let mut steps = vec![go(Place::GasValve), act(Action::ResetRollout)];
    steps.extend(take(Course::ReadAgain));
    steps
}

/// After the next level was forced: goes on when it burns, else looks for the reason.
pub(super) fn if_not_raised() -> Step {
    think(|me, seen| {
        if !me.too_long || me.careless {
            return Vec::new();
        }
        me.too_long = false;
        me.know.screws.tries += 1;
        if me.know.screws.tries > MOST_ATTEMPTS {
            return give_up(me, Diagnosis::SecondStageDoesNotBurn);
        }
        if me.know.since_call.limit {
            return limit_opened(me);
        }
        let ticks = u32::try_from(TICKS_PER_S).unwrap_or(50);
        if status(seen).is_some_and(burns_above_first) {
            me.plan_repair(Diagnosis::SecondCoilDead, Repair::ReplaceSecondCoil);
        } else if me.know.since_call.next_switch_ticks > SWITCH_S * ticks {
            // In thin air the fan draws less: a switch that does not close there may be sound.
            let thin = seen.altitude_ft > by_eye::DERATE_FT;
            return by_eye::next_switch(thin);
        } else {
            let mut steps = vec![go(Place::GasValve)];
            steps.push(think(no_flame_above));
            return steps;
        }
        take(Course::MendAndReadAgain)
    })
}

/// The burners went out on the way to the next level.
fn no_flame_above(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    if let Some(steps) = judge::no_gas(me, seen) {
        return steps;
    }
    me.too_long = true;
    no_flame(me, seen)
}

/// The limit has opened with the manometer on.
pub(super) fn limit_opened(me: &mut Mind) -> Vec<Step> {
    mend_air(me, Course::MendAndReadAgain)
}

/// The limit has opened: too little air over the exchanger. Filter and registers were looked at on
/// arrival; a blower that was not heard, or only laboring, is next.
pub(super) fn mend_air(me: &mut Mind, then: Course) -> Vec<Step> {
    me.know.since_call.limit = false;
    let tried = [Repair::OpenRegisters, Repair::ReplaceBlowerMotor];
    if tried.into_iter().any(|repair| me.know.has_mended(repair)) {
        return give_up(me, Diagnosis::LimitOpensAgain);
    }
    if me.know.since_call.blower_heard {
        me.plan_repair(Diagnosis::LimitOpens, Repair::OpenRegisters);
    } else {
        me.plan_repair(Diagnosis::BlowerWeak, Repair::ReplaceBlowerMotor);
    }
    take(then)
}

/// The manometer is dark, or shows more than it can: a fresh battery, or one of greater range.
pub(super) fn another_meter(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let (words, repair) = match seen.display() {
        Some(Display::Dark) => (Diagnosis::MeterBatteryFlat, Repair::ReplaceMeterBattery),
        Some(Display::OverRange | Display::Number(_)) | None => {
            (Diagnosis::MeterRangeTooSmall, Repair::BorrowMeter)
        }
    };
    if me.know.has_mended(repair) {
        return give_up(me, Diagnosis::MeterOfNoUse);
    }
    me.know.note(words);
    me.know.repairs.done.push(repair);
    let mut steps = stop();
    steps.extend(isolate());
    steps.push(go(Place::GasValve));
    steps.extend(hose_off());
    steps.push(act(Action::Mend(repair)));
    steps.extend(hose_back_on(Port::Inlet));
    steps.extend(take(Course::ReadAgain));
    steps
}

//! When the burners do not light, or not on the stage that is called: what the control says, what is
//! seen and heard, and what may mend it. What does no harm comes before a part is swapped.

use super::burn::{mend_at_manifold, stays_on};
use super::by_eye;
use super::judge;
use super::mend::mend_all;
use super::open::{give_gas, isolate};
use super::plan::{Step, Technician, act, go, think};
use super::run_furnace;
use super::task::{Until, pause, wait};
use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::parts::{Fitted, OnOff, Place, Port, Screw};
use crate::senses::seen::{Display, Seen};
use crate::units::{PA_PER_INWC, TICKS_PER_S};

/// Longest time that a whole try to light is watched, in seconds.
const WATCH_S: f64 = 150.0;
/// Glow below which an igniter is weak.
const DIM: f64 = 0.8;
/// Glow from which there is nothing to better about it.
const BRIGHT: f64 = 0.97;
/// Most attempts to get the burners lit.
const MOST_ATTEMPTS: u32 = 8;
/// Most times that the readings are begun anew.
const MOST_ROUNDS: u32 = 14;
/// Seconds of waiting for the high pressure switch that tell of it.
const SWITCH_S: u32 = 20;

/// After a first-stage call: goes on when low burns, else looks for the reason.
pub(super) fn if_not_low() -> Step {
    think(|me, _| {
        if !me.too_long || me.careless {
            return Vec::new();
        }
        me.too_long = false;
        look_for_reason()
    })
}

/// From the gas valve: what the control does and says.
pub(super) fn look_for_reason() -> Vec<Step> {
    vec![go(Place::PlantRoom), go(Place::GasValve), think(stuck_in_high)]
}

/// The second stage burns at a first-stage call.
fn stuck_in_high(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    if me.know.watch.limit {
        return limit(me);
    }
    if status(seen).starts_with("burning on high") {
        me.plan_repair("second stage always called", Repair::ReplaceControlBoard);
        return mend_and_read_again(me);
    }
    // A try from its beginning: power off and on again, and look.
    let mut steps = vec![
        go(Place::PlantRoom),
        act(Action::FurnaceSwitch(OnOff::Off)),
        pause(5.0),
        act(Action::FurnaceSwitch(OnOff::On)),
        think(|me, _| {
            me.know.watch = super::know::Watch::default();
            Vec::new()
        }),
        go(Place::GasValve),
    ];
    steps.push(wait(Until::Status("burning on".to_owned()), WATCH_S));
    steps.push(think(no_flame));
    steps
}

fn status(seen: &Seen) -> &'static str {
    seen.furnace.as_ref().map_or("", |furnace| furnace.status)
}

/// Nothing burns: by what the control says.
fn no_flame(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    if !me.too_long {
        // It burned this time, but late: what delays it is looked for too.
        if me.know.watch.bang {
            me.plan_repair("gas lights late", Repair::CleanBurners);
            return mend_and_read_again(me);
        }
        return read_again();
    }
    me.too_long = false;
    me.know.tries += 1;
    if me.know.tries > MOST_ATTEMPTS {
        return give_up(me, "no reason found");
    }
    let says = status(seen);
    // A flame that stays on with the gas shut has its gas.
    if let Some(steps) = stays_on(me) {
        return steps;
    }
    if let Some(steps) = judge::no_gas(me, seen) {
        return steps;
    }
    let found = if says.contains("no call for heat") {
        Some(("no call at the control", &[Repair::MendThermostatWire][..]))
    } else if says.contains("closed at rest") {
        Some(("pressure switch stuck closed", &[Repair::ReplaceLowSwitch][..]))
    } else if me.know.watch.low_gas && judge::is_short_of_gas(me, seen) {
        me.know.owner_needed = true;
        return give_up(me, "low-gas switch open for want of pressure");
    } else if me.know.watch.low_gas {
        Some(("low-gas switch open with gas there", &[Repair::ReplaceLowGasSwitch][..]))
    } else if me.know.watch.low_switch || says.contains("waiting for the pressure switch") {
        return by_eye::low_switch();
    } else if me.know.watch.rolled_out {
        return rolled_out(me);
    } else if me.know.watch.lit > 0 {
        return by_eye::flame_lost();
    } else if me.know.watch.glow < DIM {
        Some(("igniter does not glow bright", &[Repair::ReplaceIgniter][..]))
    } else {
        // At its brightest an igniter lights whatever gas comes to it.
        let repairs = if me.know.watch.glow < BRIGHT { NO_LIGHT_DULL } else { NO_LIGHT };
        Some(("gas there, igniter bright, no flame", repairs))
    };
    let next = found.and_then(|(words, repairs)| Some((words, me.know.next_of(repairs)?)));
    match next {
        Some((words, repair)) => {
            me.plan_repair(words, repair);
            mend_and_read_again(me)
        }
        None => give_up(me, "every likely repair done in vain"),
    }
}

/// From what does no harm to the part.
const NO_LIGHT: &[Repair] = &[Repair::PurgeLine, Repair::CleanBurners, Repair::CleanInletScreen];
const NO_LIGHT_DULL: &[Repair] = &[Repair::PurgeLine, Repair::CleanBurners, Repair::ReplaceIgniter];

fn rolled_out(me: &mut Technician) -> Vec<Step> {
    if me.know.diagnosis.iter().any(|one| one == "roll-out switch open") {
        return give_up(me, "roll-out switch opens again");
    }
    me.know.note("roll-out switch open");
    let mut steps = vec![go(Place::GasValve), act(Action::ResetRollout)];
    steps.extend(read_again());
    steps
}

/// Leaves the furnace shut off: nothing more can be done here.
pub(super) fn give_up(me: &mut Technician, words: &str) -> Vec<Step> {
    me.know.note(words);
    me.start_over(Vec::new());
    me.know.leave_shut_off = true;
    vec![think(|_, _| judge::close_and_leave())]
}

/// Isolates, mends, gives gas back and reads the inlet from the beginning.
pub(super) fn mend_and_read_again(_: &Technician) -> Vec<Step> {
    vec![think(|me, seen| match seen.meter.hose {
        Some((Port::Manifold, _)) => mend_at_manifold(),
        Some((Port::Inlet, _)) if !me.know.to_mend_open.is_empty() => {
            super::hose::mend_in_open_line()
        }
        Some((Port::Inlet, _)) => mend_at_inlet(),
        // All is closed up already.
        None => super::plan::mend_closed(),
    })]
}

fn mend_at_inlet() -> Vec<Step> {
    let mut steps = isolate();
    steps.push(mend_all());
    steps.extend(give_gas());
    steps.push(super::mend::check_opened());
    steps.extend(read_again());
    steps
}

/// The series from its beginning, with the hose where it is.
pub(super) fn read_again() -> Vec<Step> {
    vec![think(|me, seen| {
        me.know.rounds += 1;
        if me.know.rounds > MOST_ROUNDS {
            return give_up(me, "no end of it");
        }
        let mut steps = run_furnace::stop();
        match seen.meter.hose {
            Some((Port::Inlet, _)) => {
                steps.extend(run_furnace::inlet_series(crate::parts::Phase::Found));
                steps.push(think(judge::supply));
            }
            Some((Port::Manifold, _)) => {
                steps.extend(run_furnace::manifold_found());
                steps.push(think(super::set::set_stages));
            }
            None => steps.extend(super::plan::mend_closed()),
        }
        me.start_over(steps);
        Vec::new()
    })]
}

/// After high was forced: goes on when it burns, else looks for the reason.
pub(super) fn if_not_high() -> Step {
    think(|me, seen| {
        if !me.too_long || me.careless {
            return Vec::new();
        }
        me.too_long = false;
        me.know.tries += 1;
        if me.know.tries > MOST_ATTEMPTS {
            return give_up(me, "high does not burn");
        }
        if me.know.watch.limit {
            return limit(me);
        }
        let says = status(seen);
        let ticks = u32::try_from(TICKS_PER_S).unwrap_or(50);
        if says.starts_with("burning on high") {
            me.plan_repair("control gives high, burners stay low", Repair::ReplaceHighCoil);
        } else if me.know.watch.high_switch_ticks > SWITCH_S * ticks {
            // In thin air the fan draws less: a switch that does not close there may be sound.
            let thin = seen.altitude_ft > super::flue::DERATE_FT;
            return by_eye::high_switch(thin);
        } else {
            let mut steps = vec![go(Place::GasValve)];
            steps.push(think(no_flame_on_high));
            return steps;
        }
        mend_and_read_again(me)
    })
}

/// The burners went out on the way to high.
fn no_flame_on_high(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    if let Some(steps) = judge::no_gas(me, seen) {
        return steps;
    }
    me.too_long = true;
    no_flame(me, seen)
}

/// The limit has opened: too little air over the exchanger.
pub(super) fn limit(me: &mut Technician) -> Vec<Step> {
    me.know.watch.limit = false;
    if me.know.has_mended(Repair::OpenRegisters) {
        return give_up(me, "limit opens again");
    }
    me.plan_repair("limit opens with the filter clean", Repair::OpenRegisters);
    mend_and_read_again(me)
}

/// The manometer is dark, or shows more than it can: a fresh battery, or one of greater range.
pub(super) fn another_meter(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let (words, repair) = match seen.meter.display {
        Display::Dark => ("manometer's battery flat", Repair::ReplaceMeterBattery),
        Display::OverRange | Display::Number(_) => {
            ("manometer's range too small", Repair::BorrowMeter)
        }
    };
    if me.know.has_mended(repair) {
        return give_up(me, "manometer of no use here");
    }
    me.know.note(words);
    me.know.mended.push(repair);
    me.know.meter_warm = false;
    let mut steps = run_furnace::stop();
    steps.extend(isolate());
    steps.push(go(Place::GasValve));
    steps.extend(super::open::hose_off(Port::Inlet));
    steps.push(act(Action::Mend(repair)));
    steps.extend(super::open::hose_back_on(Port::Inlet));
    steps.extend(read_again());
    steps
}

/// Whether a cap is off that should be on.
pub(super) fn caps_missing(seen: &Seen) -> Vec<Screw> {
    let Some(burners) = seen.furnace.as_ref().and_then(|f| f.burners.as_ref()) else {
        return Vec::new();
    };
    let off = burners.caps.iter().filter(|(_, cap)| **cap == Fitted::Off);
    off.map(|(level, _)| level.screw()).collect()
}

/// One inch of water, the head that a gas valve needs.
pub(super) const HEAD_PA: f64 = PA_PER_INWC;

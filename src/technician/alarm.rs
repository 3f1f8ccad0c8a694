//! Gas in the air: out, shut off from outside, call, wait, and only then back in to leave it safe.

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::findings;
use super::mend::mend;
use super::mind::Mind;
use super::step::{Step, act, go, pause, reach, take, think};
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact, HandOver, Topic};
use crate::parts::{Ending, HandValve, Height, Opening, Place, Window};
use crate::procedure::Goal;
use crate::senses::seen::{Seen, Sound};

/// How long a house airs before anybody goes in again, in seconds (from memory).
const AIRS_S: f64 = 1800.0;
/// Most alarms that are answered by going in again.
const MOST_ALARMS: u32 = 3;

/// Whether an alarm says that nobody may stay inside; it calls at a strong smell too.
fn is_alarming(seen: &Seen) -> bool {
    let inside = matches!(seen.place, Place::PlantRoom | Place::GasValve | Place::Hall);
    inside && seen.sounds.contains(&Sound::Alarm)
}

/// What replaces the plan when gas is in the air; none where nothing calls, or it was answered.
pub(super) fn heed(me: &mut Mind, seen: &Seen) -> Option<Vec<Step>> {
    let answered = me.know.alarm.answered;
    if !is_alarming(seen) {
        if answered && matches!(seen.place, Place::Yard | Place::Away) {
            me.know.alarm.answered = false;
        }
        return None;
    }
    if answered || me.careless {
        return None;
    }
    me.know.alarm.answered = true;
    me.know.alarm.count += 1;
    me.know.note(Diagnosis::GasInTheAir);
    let mut steps = get_out();
    steps.extend(if me.know.alarm.count > MOST_ALARMS { stay_out() } else { come_back() });
    Some(steps)
}

/// No switch, no flame: a shout, the furnace's valve if it is at hand, out, the supply shut, a call.
fn get_out() -> Vec<Step> {
    vec![
        act(Action::Tell(Topic::GetOut)),
        reach(Goal::HandEmpty),
        think(|_, seen| match &seen.furnace {
            Some(furnace) if furnace.manual_valve.feeds() => {
                vec![act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 0 })]
            }
            Some(_) | None => Vec::new(),
        }),
        think(|_, seen| match &seen.furnace {
            Some(furnace) if furnace.window == Opening::Closed => {
                vec![act(Action::Window { window: Window::PlantRoom, to: Opening::Open })]
            }
            Some(_) | None => Vec::new(),
        }),
        go(Place::Yard),
        think(shut_supply),
        act(Action::Call(Contact::Emergency)),
        think(|me, _| {
            if me.know.supply.owner_needed {
                vec![act(Action::Call(Contact::SupplyOwner))]
            } else {
                Vec::new()
            }
        }),
        go(Place::Away),
    ]
}

/// When the air is clean, in again.
fn come_back() -> Vec<Step> {
    vec![pause(AIRS_S), think(after_airing)]
}

/// Gas comes again and again: nobody goes in any more. It is left from outside, with the supply shut,
/// to those who were called.
fn stay_out() -> Vec<Step> {
    let said = HandOver { ending: Ending::ShutOff, not_done: Vec::new() };
    vec![
        think(|me, seen| {
            me.know.leave_shut_off = true;
            findings::write(me, seen, true)
        }),
        act(Action::HandOver(said)),
    ]
}

fn shut_supply(_: &mut Mind, seen: &Seen) -> Vec<Step> {
    match &seen.yard {
        Some(yard) if yard.supply_valve.feeds() => {
            vec![act(Action::HandValve { hand_valve: HandValve::Supply, degrees: 0 })]
        }
        Some(_) | None => Vec::new(),
    }
}

/// The air is clean again. A regulator that may be renewed is renewed and the job begun anew; else
/// the furnace is left shut off and the supply with it.
fn after_airing(me: &mut Mind, _: &Seen) -> Vec<Step> {
    let regulator = Repair::ReplaceSupplyRegulator;
    if me.know.repairs.isolated.contains(&regulator) && me.know.alarm.count < MOST_ALARMS {
        me.know.repairs.isolated.retain(|&one| one != regulator);
        let mut steps = vec![go(Place::Yard)];
        steps.extend(mend(me, regulator));
        steps.push(go(Place::Yard));
        steps.extend(take(Course::Arrive));
        return steps;
    }
    me.know.leave_shut_off = true;
    vec![
        go(Place::PlantRoom),
        act(Action::Sniff(Height::Floor)),
        act(Action::Sniff(Height::Head)),
        go(Place::GasValve),
        Step::Take(Course::CloseOpenPort),
        Step::Take(Course::LeaveShutOff),
    ]
}

//! Gas in the air: out, shut off from outside, call, wait, and only then back in to leave it safe.

use super::close::close_open;
use super::mend::{hands_free, mend};
use super::plan::{Step, Technician, act, go, leave_shut_off, think};
use super::task::pause;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact, HandOver, Topic};
use crate::parts::{Cock, Ending, Height, Opening, Place, Window};
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

impl Technician {
    /// Drops everything when gas is in the air.
    pub(super) fn heed_alarm(&mut self, seen: &Seen) {
        let answered = self.know.alarm_answered;
        if !is_alarming(seen) {
            if answered && matches!(seen.place, Place::Yard | Place::Away) {
                self.know.alarm_answered = false;
            }
            return;
        }
        if answered || self.careless {
            return;
        }
        self.know.alarm_answered = true;
        self.know.alarms += 1;
        self.know.note("gas in the air: everybody out");
        let mut steps = get_out();
        steps.extend(if self.know.alarms > MOST_ALARMS { stay_out() } else { come_back() });
        self.start_over(steps);
    }
}

/// No switch, no flame: a shout, the furnace's valve if it is at hand, out, the supply shut, a call.
fn get_out() -> Vec<Step> {
    vec![
        act(Action::Tell(Topic::GetOut)),
        think(hands_free),
        think(|_, seen| match &seen.furnace {
            Some(furnace) if furnace.cock_deg != 0 => {
                vec![act(Action::Cock { cock: Cock::Furnace, degrees: 0 })]
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
            if me.know.owner_needed {
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
    vec![act(Action::HandOver(said))]
}

fn shut_supply(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    match &seen.yard {
        Some(yard) if yard.cock_deg != 0 => {
            vec![act(Action::Cock { cock: Cock::Supply, degrees: 0 })]
        }
        Some(_) | None => Vec::new(),
    }
}

/// The air is clean again. A regulator that may be renewed is renewed and the job begun anew; else
/// the furnace is left shut off and the supply with it.
fn after_airing(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let regulator = Repair::ReplaceSupplyRegulator;
    if me.know.to_mend.contains(&regulator) && me.know.alarms < MOST_ALARMS {
        me.know.to_mend.retain(|&one| one != regulator);
        let mut steps = vec![go(Place::Yard)];
        steps.extend(mend(me, regulator));
        steps.push(go(Place::Yard));
        steps.extend(super::arrive::arrival());
        return steps;
    }
    me.know.leave_shut_off = true;
    vec![
        go(Place::PlantRoom),
        act(Action::Sniff(Height::Floor)),
        act(Action::Sniff(Height::Head)),
        go(Place::GasValve),
        think(close_open),
        think(|_, _| leave_shut_off()),
    ]
}

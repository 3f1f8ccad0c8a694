//! Evidence of the last cycle: that the thermostat called and ended it, that no hand was on gas, controls
//! or doors since it began, and that it was seen.
//!
//! **Seen.** Whoever stands at the furnace when the burners light, and while they burn on each level, has
//! seen them. The thermostat hangs in the hall: the walk to it, to call or to end the call, is no fault,
//! and the end is heard from there. Who is in the yard or away from light-up to the end of the call has
//! not seen what happened meanwhile.

use super::control;
use super::ended::in_use;
use super::ledger::{Hit, Ledger};
use crate::appliance::ignition::ControlState;
use crate::hands::action::Action;
use crate::hands::event::EventKind;
use crate::parts::{HandValve, Level, Place};
use crate::rules::evidence::Leaving;
use crate::rules::{Evidence, Grade};
use crate::units::TICKS_PER_S;

/// How soon a furnace answers the thermostat, in ticks: within two seconds.
const ANSWERS: u64 = 2 * TICKS_PER_S;

/// The place in the list of the last hand on the furnace's gas, controls, springs or doors.
fn last_touch(l: &Ledger) -> Option<usize> {
    let touches = |action: &Action| {
        matches!(
            action,
            Action::Turn { .. }
                | Action::Cap { .. }
                | Action::Plug { .. }
                | Action::Adapter { .. }
                | Action::ValveSwitch(_)
                | Action::FurnaceSwitch(_)
                | Action::StageJumper(_)
                | Action::Mend(_)
                | Action::HandValve { hand_valve: HandValve::Furnace | HandValve::Supply, .. }
                | Action::Door { .. }
        )
    };
    l.did().filter(|did| touches(did.action)).map(|did| did.index).last()
}

/// A cycle that came to rest: places in the list.
#[derive(Debug, Clone, Copy)]
struct Cycle {
    /// The control took up the call.
    began: usize,
    /// The call ended at the thermostat; none where something else put the burners out.
    call_ended: Option<usize>,
    /// The furnace was at rest.
    rested: usize,
}

/// Every cycle that came to rest, in order.
fn cycles(l: &Ledger) -> Vec<Cycle> {
    let mut all = Vec::new();
    let (mut began, mut call_ended) = (0, None);
    for (index, event) in l.events.iter().enumerate() {
        if let EventKind::Control { from, to } = event.what {
            if from == ControlState::Standby || to == ControlState::InducerStart {
                (began, call_ended) = (index, None);
            } else if from.burning() && to == ControlState::PostPurge {
                call_ended = Some(index);
            }
        } else if matches!(event.what, EventKind::Cycle) {
            all.push(Cycle { began, call_ended, rested: index });
        }
    }
    all
}

/// Where somebody stood when an event happened; a job begins in the yard.
fn place_at(l: &Ledger, index: usize) -> Place {
    went(l).take_while(|(at, _)| *at < index).last().map_or(Place::Yard, |(_, place)| place)
}

/// Every way that was gone, with its place in the list.
fn went(l: &Ledger) -> impl Iterator<Item = (usize, Place)> + '_ {
    l.did().filter_map(|did| {
        let Action::Go(place) = did.action else { return None };
        Some((did.index, *place))
    })
}

fn is_at_furnace(place: Place) -> bool {
    match place {
        Place::PlantRoom | Place::GasValve => true,
        Place::Hall | Place::Yard | Place::Away => false,
    }
}

fn is_in_the_house(place: Place) -> bool {
    match place {
        Place::PlantRoom | Place::GasValve | Place::Hall => true,
        Place::Yard | Place::Away => false,
    }
}

impl Cycle {
    /// Whether the thermostat ended it and no hand was on the furnace from its beginning on.
    fn is_whole(&self, touched: usize) -> bool {
        self.began > touched && self.call_ended.is_some()
    }

    /// The hand at the thermostat that ended the call, or its end where the room did.
    fn call_taken_away(&self, l: &Ledger) -> usize {
        let end = self.call_ended.unwrap_or(self.rested);
        let since = l.events[end].tick.saturating_sub(ANSWERS);
        let hand =
            |action: &Action| matches!(action, Action::Setpoint(_) | Action::ThermostatMode(_));
        let acts = l.did().filter(|did| hand(did.action) && did.tick >= since);
        let before = acts.map(|did| did.index).take_while(|index| *index < end);
        before.last().filter(|index| *index > self.began).unwrap_or(end)
    }

    /// Whether it was seen lighting and on each level, from light-up to the end of the call.
    fn is_seen(&self, l: &Ledger) -> bool {
        let end = self.call_taken_away(l);
        let fired: Vec<(usize, Option<Level>)> = (self.began..end)
            .filter_map(|index| {
                let EventKind::Fired { to, .. } = l.events[index].what else { return None };
                Some((index, to))
            })
            .collect();
        let Some(&(lit, _)) = fired.iter().find(|(_, to)| to.is_some()) else { return false };
        let comes = |from: usize, to: usize| {
            went(l).any(|(at, place)| (from..to).contains(&at) && is_at_furnace(place))
        };
        let on_level = |level: Level| {
            fired.iter().enumerate().any(|(i, &(from, now))| {
                let to = fired.get(i + 1).map_or(end, |next| next.0);
                now == Some(level) && (is_at_furnace(place_at(l, from)) || comes(from, to))
            })
        };
        let left = went(l).any(|(at, place)| (lit..end).contains(&at) && !is_in_the_house(place));
        is_at_furnace(place_at(l, lit)) && !left && l.levels().iter().all(|level| on_level(*level))
    }
}

/// The cycle that was seen after the last hand on the furnace: its place in the list.
pub(super) fn final_cycle(l: &Ledger) -> Option<usize> {
    let touched = last_touch(l)?;
    let all = cycles(l);
    all.iter().find(|it| it.is_whole(touched) && it.is_seen(l)).map(|it| it.rested)
}

pub(super) fn no_final_cycle(l: &Ledger) -> Vec<Hit> {
    let Some(touched) = last_touch(l).filter(|_| in_use(l)) else { return Vec::new() };
    if final_cycle(l).is_some() {
        return Vec::new();
    }
    let seen = match cycles(l).last() {
        Some(it) if it.is_whole(touched) => t!("seen-cycle-unseen"),
        Some(it) if it.call_ended.is_none() => t!("seen-cycle-cut-off"),
        Some(_) | None => t!("seen-no-cycle"),
    };
    // A valve that is left shut is the slip; one left a little aslant asks for a cycle as any touch does.
    let shut = control::hand_valve_not_open(l).iter().any(|hit| hit.grade == Grade::Grave);
    let cause = shut.then_some(Evidence::Leaving(Leaving::CockNotOpen));
    vec![Hit::new(l.last_tick(), seen, t!("true-no-cycle")).following(cause)]
}

/// The last cycle came to rest while nobody was in the house.
pub(super) fn shut_down_unwatched(l: &Ledger) -> Vec<Hit> {
    let Some(cycle) = final_cycle(l) else { return Vec::new() };
    if is_in_the_house(place_at(l, cycle)) {
        return Vec::new();
    }
    let tick = l.events[cycle].tick;
    vec![Hit::new(tick, t!("seen-shut-down-unwatched"), t!("true-shut-down-unwatched"))]
}

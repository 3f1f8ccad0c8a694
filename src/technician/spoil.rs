//! Good work spoiled in one place: a step dropped, swapped, hurried or botched. Each way names the
//! rules that it must trip, and no others.

mod leaving;
mod reading;

use super::drive::Player;
use super::plan::Technician;
use crate::bench::action::{
    Action, Contact, Ending, Fitted, HandOver, Height, OnOff, Opening, Phase, PlugStep, Push,
    Reading, Stage,
};
use crate::bench::part::{Cock, Door, Joint, Neighbor, Place, Port, Screw, Subject, Tool};
use crate::bench::refusal::Refusal;
use crate::bench::repair::Repair;
use crate::bench::seen::Seen;
use crate::units::PressureUnit;

/// One way of spoiling good work.
#[derive(Debug, Clone, Copy)]
pub struct Spoil {
    /// Its name.
    pub name: &'static str,
    /// Scenario on which it is tried.
    pub job: &'static str,
    /// Rules that it must trip, sorted.
    pub trips: &'static [&'static str],
    /// What becomes of an action of the good run.
    change: fn(&Progress, &Action) -> Change,
    /// How many times faster the wait before the next action passes for the one who waits.
    hurry: fn(&Progress) -> u32,
}

/// What becomes of an action.
#[derive(Debug, Clone)]
enum Change {
    Keep,
    Drop,
    Instead(Vec<Action>),
    /// First these, then the action itself.
    Before(Vec<Action>),
    /// The action itself, then these.
    After(Vec<Action>),
}

/// How far the good run has come.
#[derive(Debug, Clone, Default)]
struct Progress {
    /// Actions of the good run so far.
    done: Vec<Action>,
    place: Option<Place>,
}

impl Progress {
    fn count(&self, action: &Action) -> usize {
        self.done.iter().filter(|one| *one == action).count()
    }

    fn last_is(&self, when: impl Fn(&Action) -> bool) -> bool {
        self.done.last().is_some_and(when)
    }

    /// Whether the burner door is on again: only the last cycle is left.
    fn closing(&self) -> bool {
        self.done.contains(&Action::Door { door: Door::Burner, to: Fitted::On })
    }
}

/// A technician who spoils one thing.
#[derive(Debug, Clone)]
pub struct Spoiled {
    good: Technician,
    spoil: Spoil,
    progress: Progress,
    queue: Vec<Action>,
    refused: Vec<(Action, Refusal)>,
}

impl Spoiled {
    /// A technician who spoils one thing.
    #[must_use]
    pub fn new(good: Technician, spoil: Spoil) -> Self {
        Self { good, spoil, progress: Progress::default(), queue: Vec::new(), refused: Vec::new() }
    }

    /// What was refused.
    #[must_use]
    pub fn refused(&self) -> &[(Action, Refusal)] {
        &self.refused
    }
}

impl Player for Spoiled {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        if !self.queue.is_empty() {
            return Some(self.queue.remove(0));
        }
        loop {
            let mut action = self.good.next(seen);
            // The same sight, looked at more than once a tick: the wait runs out early.
            let mut looks = (self.spoil.hurry)(&self.progress);
            while action.is_none() && looks > 0 {
                action = self.good.next(seen);
                looks -= 1;
            }
            let action = action?;
            let change = (self.spoil.change)(&self.progress, &action);
            if let Action::Go(place) = action {
                self.progress.place = Some(place);
            }
            self.progress.done.push(action.clone());
            let mut actions = match change {
                Change::Keep => vec![action],
                Change::Drop => continue,
                Change::Instead(others) => others,
                Change::Before(mut others) => {
                    others.push(action);
                    others
                }
                Change::After(others) => {
                    let mut all = vec![action];
                    all.extend(others);
                    all
                }
            };
            if actions.is_empty() {
                continue;
            }
            let first = actions.remove(0);
            self.queue = actions;
            return Some(first);
        }
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        self.refused.push((action.clone(), why));
    }

    fn finished(&self) -> bool {
        self.queue.is_empty() && self.good.finished()
    }
}

impl Progress {
    /// Whether the good run is putting the thermostat back for good.
    fn closing_restores(&self) -> bool {
        self.done
            .iter()
            .rev()
            .take_while(|a| **a != BURNER_DOOR_ON)
            .any(|a| *a == Action::Setpoint(136))
    }
}

/// All ways of spoiling.
pub fn spoils() -> impl Iterator<Item = &'static Spoil> {
    reading::SPOILS.iter().chain(leaving::SPOILS)
}

const PROPANE: &str = "propane-cold-morning";
const NATURAL: &str = "natural-gas-busy-kitchen";

fn never(_: &Progress) -> u32 {
    0
}

fn at_once_if(now: bool) -> u32 {
    if now { AT_ONCE } else { 0 }
}

fn keep(_: &Progress, _: &Action) -> Change {
    Change::Keep
}

fn drop_if(drop: bool) -> Change {
    if drop { Change::Drop } else { Change::Keep }
}

fn is_write(action: &Action, port: Port, stage: Stage, phase: Phase) -> bool {
    matches!(action, Action::Write(r) if r.port == port && r.stage == stage && r.phase == phase)
}

fn rewrite(action: &Action, change: fn(&mut Reading)) -> Vec<Action> {
    let mut action = action.clone();
    if let Action::Write(reading) = &mut action {
        change(reading);
    }
    vec![action]
}

/// Something done at the gas valve while the good run stands elsewhere.
fn kneel(progress: &Progress, actions: Vec<Action>) -> Vec<Action> {
    let back = progress.place.unwrap_or(Place::Yard);
    if back == Place::GasValve {
        return actions;
    }
    let mut all = vec![Action::Go(Place::GasValve)];
    all.extend(actions);
    all.push(Action::Go(back));
    all
}

fn joint_work(action: &Action, joint: Joint) -> bool {
    matches!(action, Action::LeakFluid(at) | Action::Wipe(at) if *at == joint)
        || matches!(action, Action::WriteJoint { joint: at, .. } if *at == joint)
}

const TIGHTEN_INLET: Action = Action::Plug { port: Port::Inlet, step: PlugStep::Tighten(6) };
const START_INLET: Action = Action::Plug { port: Port::Inlet, step: PlugStep::StartByHand };
const BURNER_DOOR_ON: Action = Action::Door { door: Door::Burner, to: Fitted::On };

/// No wait at all.
const AT_ONCE: u32 = 20_000;

//! Good work spoiled in one place: a step dropped, swapped, hurried or botched. Each way names the
//! rules that it must trip, and no others.

mod at;
mod finding;
mod good;
mod leaving;
mod more;
mod rarer;
mod reading;

pub use good::Good;

use std::collections::VecDeque;
use std::sync::Arc;

use at::At;

use super::drive::Player;
use super::plan::Technician;
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact, HandOver, PlugStep, Topic};
use crate::hands::refusal::Refusal;
use crate::parts::{
    Door, Ending, Fitted, Gauge, HandValve, Height, Joint, JointVerdict, OnOff, Opening,
    OtherAppliance, Phase, Place, Port, Push, Reading, Screw, Stage, Subject, Tool,
};
use crate::procedure::{Goal, Means, Move, Pursuit};
use crate::senses::seen::Seen;
use crate::units::{PressureUnit, TICKS_PER_S};
use crate::words::Id;

/// One way of spoiling good work.
#[derive(Debug, Clone, Copy)]
pub struct Spoil {
    /// Its name.
    name: Id,
    /// What else must be so of the good run, so that it loses these items and no others.
    besides: fn(&Good) -> bool,
    /// Rules that it must trip, sorted.
    pub trips: &'static [&'static str],
    /// Whether it still sees what is wrong.
    heeds: Heeds,
    /// What becomes of an action of the good run.
    change: fn(&Progress, &Action) -> Change,
    /// How many times faster the wait before the next action passes for the one who waits.
    hurry: fn(&Progress) -> u32,
}

impl Spoil {
    /// Whether a good run gives occasion for it: it does what is spoiled here, and by what the rules look
    /// at there is something to lose.
    fn has_occasion(&self, good: &Arc<Good>) -> bool {
        self.trips.iter().all(|rule| good.gives(rule)) && (self.besides)(good) && self.forks(good)
    }

    /// Whether it leaves the good run anywhere.
    fn forks(&self, good: &Arc<Good>) -> bool {
        let mut progress = Progress::new(good);
        good.actions.iter().any(|action| {
            let changes = !matches!((self.change)(&progress, action), Change::Keep);
            progress.add(action);
            changes || (self.hurry)(&progress) > 0
        })
    }

    /// Its name for people.
    #[must_use]
    pub fn name(&self) -> &'static str {
        self.name.text()
    }
}

/// What the one who spoils it still heeds.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
enum Heeds {
    /// As the good technician does.
    Faults,
    /// Goes on with the plan, whatever shows.
    Nothing,
}

/// What becomes of an action.
#[derive(Debug, Clone)]
enum Change {
    Keep,
    Drop,
    Instead(Vec<Piece>),
    /// First these, then the action itself.
    Before(Vec<Piece>),
    /// The action itself, then these.
    After(Vec<Piece>),
}

/// What is lined up to be done.
#[derive(Debug, Clone)]
enum Piece {
    Do(Action),
    /// A goal of the procedure, reached as the technician reaches it.
    Reach(Pursuit),
    /// So many ticks pass.
    Wait(u64),
}

impl From<Action> for Piece {
    fn from(action: Action) -> Self {
        Self::Do(action)
    }
}

impl From<Goal> for Piece {
    fn from(goal: Goal) -> Self {
        Self::Reach(Pursuit::new(goal))
    }
}

/// How far the good run has come.
#[derive(Debug, Clone)]
struct Progress {
    /// The whole of it.
    good: Arc<Good>,
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

impl Progress {
    fn new(good: &Arc<Good>) -> Self {
        Self { good: Arc::clone(good), done: Vec::new(), place: None }
    }

    fn add(&mut self, action: &Action) {
        if let Action::Go(place) = action {
            self.place = Some(*place);
        }
        self.done.push(action.clone());
    }
}

/// Follows the good run, and finds where each way of spoiling it leaves it.
#[derive(Debug, Clone)]
pub struct Forks {
    progress: Progress,
    waiting: Vec<Spoil>,
}

impl Forks {
    /// All ways for which the good run gives occasion.
    #[must_use]
    pub fn new(good: &Arc<Good>) -> Self {
        let waiting = spoils().filter(|spoil| spoil.has_occasion(good)).copied().collect();
        Self { progress: Progress::new(good), waiting }
    }

    /// The good run is about to do `action`: those who do otherwise from here on. `after` is the
    /// good technician, who has decided on it.
    pub fn at(&mut self, action: &Action, after: &Technician) -> Vec<Spoiled> {
        let progress = &self.progress;
        // Who heeds nothing mends nothing: not before all is mended.
        // The mending that is spoiled itself does not count.
        let mending = progress.good.mends_after(progress.done.len() + 1);
        self.waiting.retain(|spoil| {
            let forks = !matches!((spoil.change)(progress, action), Change::Keep);
            !(forks && mending && spoil.heeds == Heeds::Nothing)
        });
        let (leave, stay) = self
            .waiting
            .iter()
            .partition(|spoil| !matches!((spoil.change)(progress, action), Change::Keep));
        self.waiting = stay;
        let leave: Vec<Spoil> = leave;
        let made = leave.into_iter().map(|spoil| {
            let mut spoiled = Spoiled::new(after, spoil, progress);
            spoiled.change(action.clone());
            spoiled
        });
        let made = made.collect();
        self.progress.add(action);
        made
    }

    /// The good run has done something: those who hurry from here on.
    pub fn hurried(&mut self, good: &Technician) -> Vec<Spoiled> {
        let progress = &self.progress;
        let mending = progress.good.mends_after(progress.done.len());
        self.waiting.retain(|spoil| {
            let forks = (spoil.hurry)(progress) > 0;
            !(forks && mending && spoil.heeds == Heeds::Nothing)
        });
        let (leave, stay): (Vec<Spoil>, Vec<Spoil>) =
            self.waiting.iter().partition(|spoil| (spoil.hurry)(progress) > 0);
        self.waiting = stay;
        leave.into_iter().map(|spoil| Spoiled::new(good, spoil, progress)).collect()
    }
}

/// A technician who spoils one thing.
#[derive(Debug, Clone)]
pub struct Spoiled {
    good: Technician,
    spoil: Spoil,
    progress: Progress,
    queue: VecDeque<Piece>,
    refused: Vec<(Action, Refusal)>,
}

impl Spoiled {
    fn new(good: &Technician, spoil: Spoil, progress: &Progress) -> Self {
        let mut good = good.clone();
        if spoil.heeds == Heeds::Nothing {
            good.close_eyes();
        }
        Self {
            good,
            spoil,
            progress: progress.clone(),
            queue: VecDeque::new(),
            refused: Vec::new(),
        }
    }

    /// What is spoiled.
    #[must_use]
    pub fn spoil(&self) -> &Spoil {
        &self.spoil
    }

    /// What was refused.
    #[must_use]
    pub fn refused(&self) -> &[(Action, Refusal)] {
        &self.refused
    }

    /// Takes an action of the good run and lines up what becomes of it.
    fn change(&mut self, action: Action) {
        let change = (self.spoil.change)(&self.progress, &action);
        let call = Action::Call(Contact::SupplyOwner);
        let calls = self.progress.good.does(|a| *a == call) && self.progress.count(&call) == 0;
        if matches!(action, Action::HandOver(_)) && self.spoil.heeds == Heeds::Nothing && calls {
            // Called as in the good run, whatever was not seen on the way.
            self.queue.push_back(call.into());
        }
        self.progress.add(&action);
        let action = match (action, self.spoil.heeds, self.progress.good.ending) {
            // Said as in the good run, whatever was misread on the way.
            (Action::HandOver(said), Heeds::Nothing, Some(ending)) => {
                Action::HandOver(HandOver { ending, ..said })
            }
            (action, _, _) => action,
        };
        match change {
            Change::Keep => self.queue.push_back(action.into()),
            Change::Drop => {}
            Change::Instead(others) => self.queue.extend(others),
            Change::Before(others) => {
                self.queue.extend(others);
                self.queue.push_back(action.into());
            }
            Change::After(others) => {
                self.queue.push_back(action.into());
                self.queue.extend(others);
            }
        }
    }
}

impl Player for Spoiled {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            match self.queue.pop_front() {
                Some(Piece::Do(action)) => return Some(action),
                Some(Piece::Reach(mut pursuit)) => match self.good.pursue(&mut pursuit, seen) {
                    Move::Reached | Move::TooLong(_) => continue,
                    Move::LetPass => {
                        self.queue.push_front(Piece::Reach(pursuit));
                        return None;
                    }
                    Move::Act(action) => {
                        self.queue.push_front(Piece::Reach(pursuit));
                        return Some(action);
                    }
                },
                Some(Piece::Wait(ticks)) if ticks > 0 => {
                    self.queue.push_front(Piece::Wait(ticks - 1));
                    return None;
                }
                Some(Piece::Wait(_)) => continue,
                None => {}
            }
            let mut action = self.good.next(seen);
            // The same sight, looked at more than once a tick: the wait runs out early.
            let mut looks = (self.spoil.hurry)(&self.progress);
            while action.is_none() && looks > 0 {
                action = self.good.next(seen);
                looks -= 1;
            }
            let action = action?;
            match self.written_as_in_the_good_run(&action, seen) {
                Some(findings) => findings.into_iter().for_each(|one| self.change(one)),
                None => self.change(action),
            }
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
    /// Whether the thermostat is being put back for good: its setpoint is, or the call of the last cycle
    /// has been made or left out.
    fn closing_restores(&self) -> bool {
        self.done.iter().rev().take_while(|a| **a != BURNER_DOOR_ON).any(|a| match a {
            Action::Setpoint(half_f) => Some(*half_f) == self.good.setpoint(),
            other => *other == Action::ThermostatMode(OnOff::On),
        })
    }
}

/// All ways of spoiling.
pub fn spoils() -> impl Iterator<Item = &'static Spoil> {
    reading::SPOILS
        .iter()
        .chain(leaving::SPOILS)
        .chain(more::SPOILS)
        .chain(rarer::SPOILS)
        .chain(finding::SPOILS)
}

fn any(_: &Good) -> bool {
    true
}

/// Leaves the furnace in use, with nothing mended and no level set.
fn uses_and_mends_nothing(good: &Good) -> bool {
    good.in_use() && good.mends_nothing() && good.turns_no_stage()
}

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

fn turns(action: &Action, wanted: Screw) -> bool {
    matches!(action, Action::Turn { screw, .. } if *screw == wanted)
}

fn is_write(action: &Action, port: Port, at: At, phase: Phase) -> bool {
    matches!(action, Action::Write(r) if r.port == port && at.is(r.stage) && r.phase == phase)
}

fn rewrite(action: &Action, change: fn(&mut Reading)) -> Vec<Piece> {
    let mut action = action.clone();
    if let Action::Write(reading) = &mut action {
        change(reading);
    }
    vec![action.into()]
}

/// So many seconds pass.
fn wait(seconds: u64) -> Piece {
    Piece::Wait(seconds * TICKS_PER_S)
}

/// Back to where the good run goes on.
fn back(progress: &Progress) -> Piece {
    Goal::At(progress.place.unwrap_or(Place::Yard)).into()
}

/// A screw turned out of turn: its cap off, these turns, its cap on, and back.
fn turned(progress: &Progress, screw: Screw, eighths: &[i16]) -> Vec<Piece> {
    let mut pieces: Vec<Piece> = vec![Goal::Uncapped(screw).into()];
    pieces.extend(eighths.iter().map(|&eighths| Action::Turn { screw, eighths }.into()));
    pieces.extend([Goal::Capped(screw).into(), Goal::HandEmpty.into(), back(progress)]);
    pieces
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

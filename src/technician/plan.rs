//! The job from arrival to hand-over, as a plan that decides on what it sees.

use std::collections::VecDeque;

use super::course::Course;
use super::diagnosis::Diagnosis;
use super::drive::Player;
use super::edit::{Deed, Edit, Edits};
use super::mend::mend_all;
use super::mind::Mind;
use super::sequence::Sequence;
use super::step::{Step, act, give_gas, go, isolate, reach, think};
use super::{again, alarm, arrive, close, duties, findings, no_fire, open, run_furnace, set};
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact, HandOver, Topic};
use crate::hands::refusal::Refusal;
use crate::parts::{Door, Ending, Fitted, HandValve, Opening, Phase, Place, Port};
use crate::procedure::{Goal, Move, Pursuit, Waiting, undone};
use crate::senses::seen::Seen;
use crate::setup::JobCard;

/// The reference technician, with the plan that is left to it.
#[derive(Debug, Clone)]
pub struct Technician {
    mind: Mind,
    queue: VecDeque<Step>,
    /// What is done out of turn, as it stands, before the plan goes on.
    out_of_turn: VecDeque<Step>,
    edits: Edits,
    /// What the plan came to so far, each with its tick.
    deeds: Vec<(u64, Deed)>,
    refused: Vec<(Action, Refusal)>,
}

impl Technician {
    /// A technician with the job card in hand.
    #[must_use]
    pub fn new(card: &JobCard) -> Self {
        Self {
            mind: Mind::new(card),
            queue: VecDeque::from([Step::Take(Course::Arrive)]),
            out_of_turn: VecDeque::new(),
            edits: Edits::default(),
            deeds: Vec::new(),
            refused: Vec::new(),
        }
    }

    /// What was refused so far; a good job has none.
    #[must_use]
    pub fn refused(&self) -> &[(Action, Refusal)] {
        &self.refused
    }

    /// What it took the job's faults for, in the order in which it found them.
    #[must_use]
    pub fn diagnosis(&self) -> Vec<Diagnosis> {
        self.mind.know.diagnosis.clone()
    }

    /// What its plan came to so far, each with its tick.
    pub(super) fn deeds(&self) -> &[(u64, Deed)] {
        &self.deeds
    }

    /// The same technician, who from now on does the job with these edits.
    pub(super) fn with_edits(&self, edits: Vec<Edit>) -> Self {
        Self { edits: Edits(edits), ..self.clone() }
    }

    /// The same technician, who works in these sequences.
    pub(super) fn in_sequence(mut self, sequences: Vec<Sequence>) -> Self {
        self.mind.sequences = sequences;
        self
    }

    /// From now on it goes on with its plan, whatever shows.
    pub(super) fn close_eyes(&mut self) {
        self.mind.careless = true;
    }

    /// Notes what the plan comes to. Whether an edit puts something else in its place, or nothing; an
    /// action that falls to it is taken as done.
    fn is_edited(&mut self, deed: Deed, seen: &Seen) -> bool {
        let steps = self.edits.in_place_of(&deed);
        if let (Some(_), Some(action)) = (&steps, deed.action()) {
            self.does(action);
        }
        self.deeds.push((seen.tick, deed));
        let Some(steps) = steps else { return false };
        if !steps.is_empty() {
            self.out_of_turn.extend(steps);
            self.out_of_turn.push_back(go(seen.place));
        }
        true
    }

    /// Takes in what is seen and heard.
    pub(super) fn keep_watch(&mut self, seen: &Seen) {
        self.mind.know.since_call.take_in(seen);
        self.mind.noticed.look(seen);
        self.mind.memory.notice(seen);
    }

    /// Takes in what is being done at this moment: what it remembers counts from here.
    pub(super) fn does(&mut self, action: &Action) {
        self.mind.memory.did(action);
        self.mind.noticed.did(action);
    }

    /// Pursues a goal that is not of its plan, with what it remembers.
    pub(super) fn pursue(&mut self, pursuit: &mut Pursuit, seen: &Seen) -> Move {
        let next = pursuit.next(seen, &mut self.mind.memory);
        if let Move::Act(action) = &next {
            self.does(action);
        }
        next
    }

    /// The next action of its plan, not taken as done yet: a player that follows the plan may do it
    /// later, or do something else in its place, and tells what it does when it does it.
    pub(super) fn propose(&mut self, seen: &Seen) -> Option<Action> {
        self.keep_watch(seen);
        if let Some(steps) = alarm::heed(&mut self.mind, seen) {
            self.queue = steps.into();
        }
        let mut action = self.decide(seen);
        // The same sight, looked at more than once a tick: the wait runs out early.
        for _ in 0..self.edits.looks() {
            if action.is_some() || self.finished() {
                break;
            }
            action = self.decide(seen);
        }
        action
    }

    /// Puts steps before what comes next.
    fn go_on_with(&mut self, planned: bool, steps: Vec<Step>) {
        for step in steps.into_iter().rev() {
            self.put_back(planned, step);
        }
    }

    /// Puts a step before what comes next.
    fn put_back(&mut self, planned: bool, step: Step) {
        let queue = if planned { &mut self.queue } else { &mut self.out_of_turn };
        queue.push_front(step);
    }

    /// The next action; none where a tick passes, or nothing is left.
    fn decide(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            let planned = self.out_of_turn.is_empty();
            let queue = if planned { &mut self.queue } else { &mut self.out_of_turn };
            match queue.pop_front()? {
                Step::Do(action) => {
                    if !planned || !self.is_edited(Deed::Does(None, action.clone()), seen) {
                        return Some(action);
                    }
                }
                Step::Think(think) => {
                    let steps = think(&mut self.mind, seen);
                    self.go_on_with(planned, steps);
                }
                Step::Take(course) => {
                    let steps = steps_of(course, &mut self.mind, seen);
                    self.go_on_with(planned, steps);
                }
                Step::Instead(steps) => self.queue = steps.into(),
                Step::Reach(mut pursuit) => {
                    let goal = pursuit.goal();
                    let begins = planned && !pursuit.has_begun();
                    if begins && self.is_edited(Deed::Begins(goal), seen) {
                        continue;
                    }
                    let next = pursuit.next(seen, &mut self.mind.memory);
                    match next {
                        Move::Reached => self.mind.too_long = false,
                        Move::TooLong(_) => self.mind.too_long = true,
                        Move::LetPass => {
                            self.put_back(planned, Step::Reach(pursuit));
                            return None;
                        }
                        Move::Act(action) => {
                            self.put_back(planned, Step::Reach(pursuit));
                            let deed = Deed::Does(Some(goal), action.clone());
                            if !planned || !self.is_edited(deed, seen) {
                                return Some(action);
                            }
                        }
                    }
                }
                Step::Wait(mut waiting) => match waiting.look(seen) {
                    Waiting::Met => self.mind.too_long = false,
                    Waiting::TooLong => self.mind.too_long = true,
                    Waiting::On => {
                        self.put_back(planned, Step::Wait(waiting));
                        return None;
                    }
                },
            }
        }
    }
}

impl Player for Technician {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        let action = self.propose(seen)?;
        self.does(&action);
        Some(action)
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        self.refused.push((action.clone(), why));
    }

    fn finished(&self) -> bool {
        self.queue.is_empty() && self.out_of_turn.is_empty()
    }
}

/// The steps of a course.
fn steps_of(course: Course, me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let open_line = !me.know.repairs.in_open_line.is_empty();
    match course {
        Course::Arrive => arrive::arrival(me),
        Course::InletAsFound => inlet_as_found(),
        Course::InletAsLeft => again::inlet(Phase::Left),
        Course::InletAfterFlow => again::lock_up(me),
        Course::OnToManifold => on_to_manifold(me),
        Course::ManifoldAsFound => again::manifold_as_found(),
        Course::SetLevels => set::set_stages(me, seen),
        Course::Finish => finish(),
        Course::MendClosed => again::mend_closed(finish_again()),
        Course::MendAndReadAgain => again::mend_and_read_again(me, open_line),
        Course::MendAtManifold => again::mend_at_manifold(open_line),
        Course::MendInOpenLine => again::mend_in_open_line(),
        Course::ReadAgain => vec![again::read_again()],
        Course::LookForReason => no_fire::look_for_reason(),
        Course::LimitOpened => no_fire::limit_opened(me),
        Course::AnotherMeter => no_fire::another_meter(me, seen),
        Course::CloseOpenPort => close::close_open(seen),
        Course::CloseAndLeave => vec![
            reach(Goal::HandEmpty),
            go(Place::GasValve),
            Step::Take(Course::CloseOpenPort),
            Step::Take(Course::LeaveShutOff),
        ],
        Course::LeaveShutOff => leave_shut_off(),
    }
}

/// Inlet port: at rest, on each firing level, under full load; then decide about the supply.
fn inlet_as_found() -> Vec<Step> {
    let mut steps = open::open_port(Port::Inlet);
    steps.extend(again::inlet(Phase::Found));
    steps
}

/// After the supply is settled: close the inlet port, work at the manifold.
fn on_to_manifold(me: &Mind) -> Vec<Step> {
    let together = me.works(Sequence::JointsTogether);
    let close = if together { close::shut_port } else { close::close_port };
    let mut steps = close(Port::Inlet);
    steps.extend(isolate());
    steps.push(think(|me, _| {
        if me.know.since_call.bang && !me.know.has_mended(Repair::CleanBurners) {
            me.plan_repair(Diagnosis::LightsLate, Repair::CleanBurners);
        }
        Vec::new()
    }));
    steps.push(mend_all());
    steps.extend(open::open_port(Port::Manifold));
    if together {
        steps.extend(close::prove(Port::Inlet));
    }
    steps.extend(again::manifold_as_found());
    steps
}

/// After the stages are set: close the manifold port, see a cycle, put everything back.
fn finish() -> Vec<Step> {
    let mut steps = close::close_port(Port::Manifold);
    steps.extend(finish_again());
    steps
}

/// The last steps once the ports are closed.
fn finish_again() -> Vec<Step> {
    let mut steps = give_gas();
    steps.extend([go(Place::PlantRoom), go(Place::GasValve), reach(Goal::ClosedUp)]);
    steps.extend(duties::measure());
    steps.extend(run_furnace::final_cycle());
    steps.extend([reach(Goal::AsFound), think(hand_over)]);
    steps
}

fn hand_over(me: &mut Mind, seen: &Seen) -> Vec<Step> {
    let not_done = undone(&me.card.required, seen, &me.memory);
    let supply_bad = me.supply_is_bad() || me.know.supply.owner_needed;
    let called = supply_bad;
    let ending = if me.know.leave_shut_off {
        Ending::ShutOff
    } else if called {
        Ending::SupplyOwnerCalled
    } else {
        Ending::InService
    };
    let calls = ending == Ending::SupplyOwnerCalled;
    let call = calls.then(|| act(Action::Call(Contact::SupplyOwner)));
    let write = think(move |me, seen| findings::write(me, seen, called));
    let tell = if me.works(Sequence::DrillFirst) {
        reach(Goal::Told(Topic::GasSmellDrill))
    } else {
        act(Action::Tell(Topic::GasSmellDrill))
    };
    let mut steps = vec![go(Place::Hall)];
    if me.works(Sequence::FindingsFirst) {
        steps.extend(call);
        steps.extend([write, tell]);
    } else {
        steps.push(tell);
        steps.extend(call);
        steps.push(write);
    }
    steps.push(act(Action::HandOver(HandOver { ending, not_done })));
    steps
}

/// Shut off, tagged, told.
fn leave_shut_off() -> Vec<Step> {
    vec![
        go(Place::PlantRoom),
        reach(Goal::Jumper(Fitted::Off)),
        reach(Goal::Valve(HandValve::Furnace, Opening::Closed)),
        reach(Goal::Door(Door::Burner, Fitted::On)),
        reach(Goal::Tagged),
        reach(Goal::Aired(Opening::Closed)),
        reach(Goal::AsFound),
        reach(Goal::Told(Topic::Unsafe)),
        think(|me, _| {
            // Whose the fault is has to come.
            if me.supply_is_bad() || me.know.supply.owner_needed {
                vec![act(Action::Call(Contact::SupplyOwner))]
            } else {
                Vec::new()
            }
        }),
        think(hand_over),
    ]
}

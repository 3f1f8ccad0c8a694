//! The job from arrival to hand-over, as a plan that decides on what it sees.

use std::collections::VecDeque;
use std::sync::Arc;

use super::diagnosis::Diagnosis;
use super::drive::Player;
use super::know::Know;
use super::mend::{check_opened, mend_all};
use super::task::{Task, pause, reach, wait};
use super::{arrive, close, judge, open, run_furnace, set};
use crate::bench::action::{Action, Contact, Ending, Fitted, HandOver, NotDone, Opening, Topic};
use crate::bench::part::{Cock, Door, Place, Port, Spot, Tool};
use crate::bench::refusal::Refusal;
use crate::bench::repair::Repair;
use crate::bench::seen::Seen;
use crate::bench::setup::JobCard;
use crate::procedure::{Goal, Memory, Move, Until, Waiting};

/// A piece of the technician's plan.
pub type Step = Task<Technician>;

/// The reference technician.
#[derive(Debug, Clone)]
pub struct Technician {
    pub(super) card: JobCard,
    queue: VecDeque<Step>,
    pub(super) know: Know,
    pub(super) memory: Memory,
    refused: Vec<(Action, Refusal)>,
    pub(super) too_long: bool,
    /// Whether it no longer heeds what is wrong.
    pub(super) careless: bool,
}

impl Technician {
    /// A technician with the job card in hand.
    #[must_use]
    pub fn new(card: &JobCard) -> Self {
        Self {
            card: card.clone(),
            queue: arrive::arrival().into(),
            know: Know::default(),
            memory: Memory::default(),
            refused: Vec::new(),
            too_long: false,
            careless: false,
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
        self.know.diagnosis.clone()
    }

    /// From now on it goes on with its plan, whatever shows.
    pub(super) fn close_eyes(&mut self) {
        self.careless = true;
    }

    /// Drops the rest of the plan for another.
    pub(super) fn start_over(&mut self, steps: Vec<Step>) {
        self.queue = steps.into();
    }

    fn push_front(&mut self, steps: Vec<Step>) {
        for step in steps.into_iter().rev() {
            self.queue.push_front(step);
        }
    }
}

impl Technician {
    /// The next action of the plan; none where a tick passes, or nothing is left.
    fn decide(&mut self, seen: &Seen) -> Option<Action> {
        loop {
            match self.queue.pop_front()? {
                Task::Do(action) => return Some(action),
                Task::Think(think) => {
                    let steps = think(self, seen);
                    self.push_front(steps);
                }
                Task::Reach(mut pursuit) => match pursuit.next(seen, &mut self.memory) {
                    Move::Reached => self.too_long = false,
                    Move::TooLong(_) => self.too_long = true,
                    Move::LetPass => {
                        self.queue.push_front(Task::Reach(pursuit));
                        return None;
                    }
                    Move::Act(action) => {
                        self.queue.push_front(Task::Reach(pursuit));
                        return Some(action);
                    }
                },
                Task::Wait(mut waiting) => match waiting.look(seen) {
                    Waiting::Met => self.too_long = false,
                    Waiting::TooLong => self.too_long = true,
                    Waiting::On => {
                        self.queue.push_front(Task::Wait(waiting));
                        return None;
                    }
                },
            }
        }
    }
}

impl Player for Technician {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        self.know.watch.look(seen);
        self.memory.notice(seen);
        self.heed_alarm(seen);
        let action = self.decide(seen)?;
        self.memory.did(&action);
        Some(action)
    }

    fn refused(&mut self, action: &Action, why: Refusal) {
        self.refused.push((action.clone(), why));
    }

    fn finished(&self) -> bool {
        self.queue.is_empty()
    }
}

/// One action as a step.
pub(super) fn act(action: Action) -> Step {
    Task::Do(action)
}

/// A decision as a step.
pub(super) fn think(
    decide: impl Fn(&mut Technician, &Seen) -> Vec<Step> + Send + Sync + 'static,
) -> Step {
    Task::Think(Arc::new(decide))
}

/// Walks somewhere unless there already.
pub(super) fn go(place: Place) -> Step {
    reach(Goal::At(place))
}

/// Takes a tool, does something with it, puts it down.
pub(super) fn with(tool: Tool, steps: Vec<Step>) -> Vec<Step> {
    let mut all = vec![act(Action::Take(tool))];
    all.extend(steps);
    all.push(reach(Goal::HandEmpty));
    all
}

/// Inlet port: at rest, low, high, high with the others; then decide about the supply.
pub(super) fn inlet_as_found() -> Vec<Step> {
    let mut steps = open::open_port(Port::Inlet);
    steps.extend(run_furnace::inlet_series(crate::bench::action::Phase::Found));
    steps.push(think(judge::supply));
    steps
}

/// After the supply is settled: close the inlet port, work at the manifold.
pub(super) fn on_to_manifold() -> Vec<Step> {
    let mut steps = close::close_port(Port::Inlet);
    steps.extend(open::isolate());
    steps.push(think(|me, _| {
        if me.know.watch.bang && !me.know.has_mended(Repair::CleanBurners) {
            me.plan_repair(Diagnosis::LightsLate, Repair::CleanBurners);
        }
        Vec::new()
    }));
    steps.push(mend_all());
    steps.extend(open::open_port(Port::Manifold));
    steps.extend(run_furnace::manifold_found());
    steps.push(think(set::set_stages));
    steps
}

/// After the stages are set: close the manifold port, see a cycle, put everything back.
pub(super) fn finish() -> Vec<Step> {
    let mut steps = close::close_port(Port::Manifold);
    steps.extend(finish_again());
    steps
}

/// Mends with both ports closed already, proves the manifold joint again and sees the cycle.
pub(super) fn mend_closed() -> Vec<Step> {
    vec![think(|me, _| {
        let mut steps = run_furnace::stop();
        steps.push(until_at_rest());
        steps.push(mend_all());
        steps.extend(open::give_gas());
        steps.push(check_opened());
        steps.extend(close::prove(Port::Manifold));
        steps.extend(finish_again());
        me.start_over(steps);
        Vec::new()
    })]
}

/// The last steps once the ports are closed.
pub(super) fn finish_again() -> Vec<Step> {
    let mut steps = open::give_gas();
    steps.extend([go(Place::PlantRoom), go(Place::GasValve), reach(Goal::ClosedUp)]);
    steps.extend(run_furnace::final_cycle());
    steps.extend([reach(Goal::AsFound), think(hand_over)]);
    steps
}

fn hand_over(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    // What was analysed was done, and is not named.
    let analysed = seen.sheet.measured.iter().any(|it| it.spot == Spot::Flue);
    let mut not_done = vec![NotDone::TemperatureRise, NotDone::GasRate, NotDone::PipingLeakCheck];
    if !analysed {
        not_done.insert(0, NotDone::Combustion);
    }
    let supply_bad = me.supply_is_bad() || me.know.owner_needed;
    let mut steps = vec![go(Place::Hall), act(Action::Tell(Topic::GasSmellDrill))];
    let ending = if me.know.leave_shut_off {
        Ending::ShutOff
    } else if supply_bad {
        steps.push(act(Action::Call(Contact::SupplyOwner)));
        Ending::SupplyOwnerCalled
    } else {
        Ending::InService
    };
    steps.push(act(Action::HandOver(HandOver { ending, not_done })));
    steps
}

/// Shut off, tagged, told.
pub(super) fn leave_shut_off() -> Vec<Step> {
    vec![
        go(Place::PlantRoom),
        reach(Goal::Jumper(Fitted::Off)),
        reach(Goal::Valve(Cock::Furnace, Opening::Closed)),
        reach(Goal::Door(Door::Burner, Fitted::On)),
        reach(Goal::Tagged),
        reach(Goal::Aired(Opening::Closed)),
        reach(Goal::AsFound),
        reach(Goal::Told(Topic::Unsafe)),
        think(|me, _| {
            // Whose the fault is has to come.
            if me.supply_is_bad() || me.know.owner_needed {
                vec![act(Action::Call(Contact::SupplyOwner))]
            } else {
                Vec::new()
            }
        }),
        think(hand_over),
    ]
}

/// Waits until no burner is heard and the fans have stopped.
pub(super) fn until_at_rest() -> Step {
    reach(Goal::Standing)
}

/// Waits until the manometer has come to rest.
pub(super) fn until_steady(settle_s: f64) -> Vec<Step> {
    vec![pause(settle_s), wait(Until::MeterSteady { within_pa: 4.0, for_s: 15.0 }, 180.0)]
}

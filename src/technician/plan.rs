//! The job from arrival to hand-over, as a plan that decides on what it sees.

use std::collections::VecDeque;

use super::drive::Player;
use super::know::Know;
use super::mend::{check_opened, mend_all};
use super::task::{Task, Until, Wait, Waiting, pause, wait};
use super::{arrive, close, judge, no_fire, open, run_furnace, set};
use crate::catalogue::repair::Repair;
use crate::hands::action::{Action, Contact, HandOver, NotDone, Topic};
use crate::hands::refusal::Refusal;
use crate::parts::{
    Cock, Door, Ending, Fitted, Neighbor, OnOff, Opening, Place, Port, Spot, Tool, Window,
};
use crate::senses::seen::{Seen, Sound};
use crate::setup::JobCard;

/// A piece of the technician's plan.
pub type Step = Task<Technician>;

/// The reference technician.
#[derive(Debug, Clone)]
pub struct Technician {
    pub(super) card: JobCard,
    queue: VecDeque<Step>,
    pub(super) know: Know,
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

    /// What it took the job's faults for, in words, in the order in which it found them.
    #[must_use]
    pub fn diagnosis(&self) -> Vec<String> {
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

impl Player for Technician {
    fn next(&mut self, seen: &Seen) -> Option<Action> {
        self.know.watch.look(seen);
        self.heed_alarm(seen);
        loop {
            match self.queue.pop_front()? {
                Task::Do(action) => return Some(action),
                Task::Think(think) => {
                    let steps = think(self, seen);
                    self.push_front(steps);
                }
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
pub(super) fn think(decide: fn(&mut Technician, &Seen) -> Vec<Step>) -> Step {
    Task::Think(decide)
}

/// Walks somewhere unless there already.
pub(super) fn go(place: Place) -> Step {
    match place {
        Place::Yard => think(|_, seen| walk(seen, Place::Yard)),
        Place::PlantRoom => think(|_, seen| walk(seen, Place::PlantRoom)),
        Place::GasValve => think(|_, seen| walk(seen, Place::GasValve)),
        Place::Hall => think(|_, seen| walk(seen, Place::Hall)),
        Place::Away => think(|_, seen| walk(seen, Place::Away)),
    }
}

fn walk(seen: &Seen, to: Place) -> Vec<Step> {
    if seen.place == to { Vec::new() } else { vec![act(Action::Go(to)), pause(2.0)] }
}

/// Takes a tool, does something with it, puts it down.
pub(super) fn with(tool: Tool, steps: Vec<Step>) -> Vec<Step> {
    let mut all = vec![act(Action::Take(tool))];
    all.extend(steps);
    all.push(think(
        |_, seen| {
            if seen.hand.is_some() { vec![act(Action::PutDown)] } else { Vec::new() }
        },
    ));
    all
}

/// Inlet port: at rest, low, high, high with the others; then decide about the supply.
pub(super) fn inlet_as_found() -> Vec<Step> {
    let mut steps = open::open_port(Port::Inlet);
    steps.extend(run_furnace::inlet_series(crate::parts::Phase::Found));
    steps.push(think(judge::supply));
    steps
}

/// After the supply is settled: close the inlet port, work at the manifold.
pub(super) fn on_to_manifold() -> Vec<Step> {
    let mut steps = close::close_port(Port::Inlet);
    steps.extend(open::isolate());
    steps.push(think(|me, _| {
        if me.know.watch.bang && !me.know.has_mended(Repair::CleanBurners) {
            me.plan_repair("gas lights late", Repair::CleanBurners);
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
    steps.extend([
        go(Place::PlantRoom),
        go(Place::GasValve),
        think(caps_on),
        go(Place::PlantRoom),
        think(|_, seen| {
            let off = seen.furnace.as_ref().is_some_and(|f| f.burner_door == Fitted::Off);
            if off {
                vec![act(Action::Door { door: Door::Burner, to: Fitted::On })]
            } else {
                Vec::new()
            }
        }),
        think(close_window),
    ]);
    steps.extend(run_furnace::final_cycle());
    steps.push(think(restore));
    steps.push(think(hand_over));
    steps
}

/// Every cap that is missing.
fn caps_on(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    let missing = no_fire::caps_missing(seen);
    if missing.is_empty() {
        return Vec::new();
    }
    let cap = |screw| act(Action::Cap { screw, to: Fitted::On });
    with(Tool::SlottedDriver, missing.into_iter().map(cap).collect())
}

fn close_window(_: &mut Technician, seen: &Seen) -> Vec<Step> {
    let open = seen.furnace.as_ref().is_some_and(|f| f.window == Opening::Open);
    if open {
        vec![act(Action::Window { window: Window::PlantRoom, to: Opening::Closed })]
    } else {
        Vec::new()
    }
}

/// Neighbours and thermostat as they were found.
fn restore(me: &mut Technician, _: &Seen) -> Vec<Step> {
    let mut steps = vec![go(Place::PlantRoom)];
    steps.push(match me.know.neighbors[0] {
        Some(OnOff::On) => {
            think(|_, seen| run_furnace::neighbor(seen, Neighbor::WaterHeater, OnOff::On))
        }
        Some(OnOff::Off) | None => {
            think(|_, seen| run_furnace::neighbor(seen, Neighbor::WaterHeater, OnOff::Off))
        }
    });
    steps.push(go(Place::Hall));
    steps.push(match me.know.neighbors[1] {
        Some(OnOff::On) => think(|_, seen| run_furnace::neighbor(seen, Neighbor::Range, OnOff::On)),
        Some(OnOff::Off) | None => {
            think(|_, seen| run_furnace::neighbor(seen, Neighbor::Range, OnOff::Off))
        }
    });
    steps.push(think(restore_thermostat));
    steps
}

pub(super) fn restore_thermostat(me: &mut Technician, seen: &Seen) -> Vec<Step> {
    let Some(hall) = &seen.hall else { return Vec::new() };
    let mut steps = Vec::new();
    if let Some(setpoint) = me.know.setpoint.filter(|&s| s != hall.setpoint_half_f) {
        steps.push(act(Action::Setpoint(setpoint)));
    }
    if let Some(mode) = me.know.mode.filter(|&m| m != hall.mode) {
        steps.push(act(Action::ThermostatMode(mode)));
    }
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
        think(|_, seen| run_furnace::jumper(seen, Fitted::Off)),
        think(|_, seen| {
            let open = seen.furnace.as_ref().is_some_and(|f| f.cock_deg != 0);
            if open {
                vec![act(Action::Cock { cock: Cock::Furnace, degrees: 0 })]
            } else {
                Vec::new()
            }
        }),
        think(|_, seen| {
            let off = seen.furnace.as_ref().is_some_and(|f| f.burner_door == Fitted::Off);
            if off {
                vec![act(Action::Door { door: Door::Burner, to: Fitted::On })]
            } else {
                Vec::new()
            }
        }),
        act(Action::Tag(Fitted::On)),
        think(close_window),
        think(restore),
        go(Place::Hall),
        act(Action::Tell(Topic::Unsafe)),
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

/// Sounds of a burning furnace.
pub(super) fn burner_sounds() -> Vec<Sound> {
    vec![Sound::BurnersLow, Sound::BurnersHigh]
}

/// Waits until no burner is heard and the fans have stopped.
pub(super) fn until_at_rest() -> Step {
    let mut sounds = burner_sounds();
    sounds.extend([Sound::Inducer, Sound::InducerHigh, Sound::Igniter, Sound::Blower]);
    Task::Wait(Wait::new(Until::Quiet(sounds), 600.0))
}

/// Waits until the manometer has come to rest.
pub(super) fn until_steady(settle_s: f64) -> Vec<Step> {
    vec![pause(settle_s), wait(Until::MeterSteady { within_pa: 4.0, for_s: 15.0 }, 180.0)]
}

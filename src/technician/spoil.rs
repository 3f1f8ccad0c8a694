//! Good work spoiled in one place: a step dropped, swapped, hurried or botched. Each way names the
//! rules that it must trip, and no others.

use super::drive::Player;
use super::plan::Technician;
use crate::bench::action::{
    Action, Contact, Ending, Fitted, HandOver, Height, OnOff, Phase, PlugStep, Reading, Stage,
};
use crate::bench::part::{Cock, Door, Joint, Neighbor, Place, Port, Screw, Subject, Tool};
use crate::bench::refusal::Refusal;
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

/// No wait at all.
const AT_ONCE: u32 = 20_000;

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

/// All ways of spoiling.
pub const SPOILS: &[Spoil] = &[
    Spoil {
        name: "nothing smelt or probed",
        job: PROPANE,
        trips: &["no-sniff-on-arrival"],
        change: |_, a| drop_if(matches!(a, Action::Sniff(_) | Action::Probe(_))),
        hurry: never,
    },
    Spoil {
        name: "smelt and probed at head height only",
        job: PROPANE,
        trips: &["head-height-only"],
        change: |_, a| {
            drop_if(matches!(a, Action::Sniff(Height::Floor) | Action::Probe(Height::Floor)))
        },
        hurry: never,
    },
    Spoil {
        name: "manual valve not shut before the inlet port",
        job: NATURAL,
        trips: &["opened-inlet-under-gas"],
        change: |p, a| {
            let shut = Action::Cock { cock: Cock::Furnace, degrees: 0 };
            drop_if(*a == shut && p.count(&shut) == 0)
        },
        hurry: never,
    },
    Spoil {
        name: "no wait after breaking the inlet plug loose",
        job: NATURAL,
        trips: &["opened-on-trapped-gas"],
        change: keep,
        hurry: |p| {
            at_once_if(
                p.last_is(|a| *a == Action::Plug { port: Port::Inlet, step: PlugStep::BreakLoose }),
            )
        },
    },
    Spoil {
        name: "power left on",
        job: NATURAL,
        trips: &["power-left-on"],
        change: |_, a| drop_if(*a == Action::FurnaceSwitch(OnOff::Off)),
        hurry: never,
    },
    Spoil {
        name: "meter never zeroed",
        job: NATURAL,
        trips: &["meter-off"],
        change: |_, a| drop_if(*a == Action::MeterZero),
        hurry: never,
    },
    Spoil {
        name: "zeroed with the manifold pressure on it",
        job: PROPANE,
        trips: &["zeroed-under-pressure"],
        change: |_, a| {
            if is_write(a, Port::Manifold, Stage::Low, Phase::Left) {
                Change::After(vec![Action::MeterZero])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet with the others on not written",
        job: PROPANE,
        trips: &["never-read-with-others"],
        change: |_, a| drop_if(is_write(a, Port::Inlet, Stage::HighWithOthers, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: "inlet at rest only",
        job: PROPANE,
        trips: &["never-read-running", "turned-before-inlet"],
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Inlet && r.stage != Stage::Rest))
        },
        hurry: never,
    },
    Spoil {
        name: "high never written",
        job: PROPANE,
        trips: &["stage-never-read"],
        change: |_, a| {
            drop_if(matches!(a, Action::Write(r)
                if r.port == Port::Manifold && r.stage == Stage::High))
        },
        hurry: never,
    },
    Spoil {
        name: "hold at rest cut short",
        job: PROPANE,
        trips: &["hold-too-short"],
        change: keep,
        hurry: |p| {
            let at_rest = p.done.iter().any(|a| matches!(a, Action::HoseOn { .. }));
            let written =
                p.done.iter().any(|a| is_write(a, Port::Inlet, Stage::Rest, Phase::Found));
            let waits = p
                .last_is(|a| *a == Action::Go(Place::Hall) || matches!(a, Action::Neighbor { .. }));
            // Long enough for the meter to settle, far too short for a seat that creeps.
            let now = at_rest && !written && waits && p.count(&Action::Wipe(Joint::InletPort)) > 0;
            if now { 5 } else { 0 }
        },
    },
    Spoil {
        name: "a number for the wrong port",
        job: NATURAL,
        trips: &["wrong-port"],
        change: |_, a| {
            if is_write(a, Port::Inlet, Stage::Low, Phase::Found) {
                Change::After(rewrite(a, |reading| {
                    reading.port = Port::Manifold;
                    reading.thousandths += 900;
                }))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "a low number written for high",
        job: PROPANE,
        trips: &["wrong-stage"],
        change: |_, a| {
            if is_write(a, Port::Manifold, Stage::Low, Phase::Found) {
                Change::After(rewrite(a, |reading| reading.stage = Stage::High))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "the number in the wrong unit",
        job: NATURAL,
        trips: &["wrong-unit"],
        change: |_, a| {
            if is_write(a, Port::Inlet, Stage::High, Phase::Found) {
                Change::Instead(rewrite(a, |reading| reading.unit = PressureUnit::Mbar))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "a number that no meter showed",
        job: NATURAL,
        trips: &["invented"],
        change: |_, a| {
            if is_write(a, Port::Inlet, Stage::Low, Phase::Found) {
                Change::Instead(rewrite(a, |reading| reading.thousandths += 3000))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "low turned before it was written as found",
        job: PROPANE,
        trips: &["turned-before-found"],
        change: |_, a| drop_if(is_write(a, Port::Manifold, Stage::Low, Phase::Found)),
        hurry: never,
    },
    Spoil {
        name: "a big jump there and back",
        job: PROPANE,
        trips: &["big-jumps"],
        change: |p, a| {
            let first = !p.done.iter().any(|a| matches!(a, Action::Turn { .. }));
            if matches!(a, Action::Turn { screw: Screw::Low, .. }) && first {
                Change::Before(vec![
                    Action::Turn { screw: Screw::Low, eighths: 6 },
                    Action::Turn { screw: Screw::Low, eighths: -6 },
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "the high screw cranked against a low supply",
        job: PROPANE,
        trips: &["big-jumps", "cranked"],
        change: |p, a| {
            if is_write(a, Port::Manifold, Stage::High, Phase::Found) {
                let turn = Action::Turn { screw: Screw::High, eighths: 16 };
                Change::After(kneel(
                    p,
                    vec![
                        Action::Take(Tool::SlottedDriver),
                        Action::Cap { screw: Screw::High, to: Fitted::Off },
                        turn,
                        Action::Cap { screw: Screw::High, to: Fitted::On },
                        Action::PutDown,
                    ],
                ))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "the low screw turned while high burns",
        job: PROPANE,
        trips: &["wrong-screw"],
        change: |p, a| {
            if is_write(a, Port::Manifold, Stage::High, Phase::Found) {
                Change::After(kneel(
                    p,
                    vec![
                        Action::Take(Tool::SlottedDriver),
                        Action::Cap { screw: Screw::Low, to: Fitted::Off },
                        Action::Turn { screw: Screw::Low, eighths: 1 },
                        Action::Cap { screw: Screw::Low, to: Fitted::On },
                        Action::PutDown,
                    ],
                ))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "low cap left off",
        job: PROPANE,
        trips: &["cap-off"],
        change: |_, a| drop_if(*a == Action::Cap { screw: Screw::Low, to: Fitted::On }),
        hurry: never,
    },
    Spoil {
        name: "low not written again with the cap on",
        job: PROPANE,
        trips: &["not-read-with-cap"],
        change: |_, a| drop_if(is_write(a, Port::Manifold, Stage::Low, Phase::Left)),
        hurry: never,
    },
    Spoil {
        name: "the supplier's regulator turned",
        job: PROPANE,
        trips: &["supply-not-yours"],
        change: |_, a| {
            if *a == Action::Look(Subject::SupplyVent) {
                Change::After(vec![
                    Action::PutDown,
                    Action::Take(Tool::SlottedDriver),
                    Action::Cap { screw: Screw::Supply, to: Fitted::Off },
                    Action::Turn { screw: Screw::Supply, eighths: 1 },
                    Action::Cap { screw: Screw::Supply, to: Fitted::On },
                    Action::PutDown,
                    Action::Take(Tool::GasDetector),
                ])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "supply not written again at rest after it was set",
        job: NATURAL,
        trips: &["supply-not-rechecked"],
        change: |_, a| drop_if(is_write(a, Port::Inlet, Stage::Rest, Phase::Left)),
        hurry: never,
    },
    Spoil {
        name: "low gas switch not looked at",
        job: PROPANE,
        trips: &["conversion-not-proven"],
        change: |_, a| drop_if(*a == Action::Look(Subject::LowGasSwitch)),
        hurry: never,
    },
    Spoil {
        name: "inlet plug started with the key",
        job: NATURAL,
        trips: &["cross-thread-left"],
        change: |_, a| match a {
            a if *a == START_INLET => Change::Instead(vec![Action::Plug {
                port: Port::Inlet,
                step: PlugStep::StartByKey,
            }]),
            Action::Plug { port: Port::Inlet, step: PlugStep::SpinIn } => Change::Drop,
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: "inlet plug cross-threaded, taken out and started again",
        job: NATURAL,
        trips: &["cross-thread-caught"],
        change: |_, a| {
            if *a == START_INLET {
                let step = |step| Action::Plug { port: Port::Inlet, step };
                Change::Before(vec![step(PlugStep::StartByKey), step(PlugStep::SpinOut)])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet plug left short of snug, bubbles ignored",
        job: NATURAL,
        trips: &["bubbles-left", "plug-loose"],
        change: |_, a| {
            if *a == TIGHTEN_INLET {
                Change::Instead(vec![Action::Plug {
                    port: Port::Inlet,
                    step: PlugStep::Tighten(2),
                }])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet boss cracked, bubbles ignored",
        job: NATURAL,
        trips: &["boss-cracked", "bubbles-left"],
        change: |_, a| {
            if *a == TIGHTEN_INLET { Change::After(vec![TIGHTEN_INLET]) } else { Change::Keep }
        },
        hurry: never,
    },
    Spoil {
        name: "inlet plug not leak-checked",
        job: NATURAL,
        trips: &["joint-unchecked"],
        change: |p, a| drop_if(p.count(&TIGHTEN_INLET) > 0 && joint_work(a, Joint::InletPort)),
        hurry: never,
    },
    Spoil {
        name: "manifold plug wiped at once",
        job: NATURAL,
        trips: &["joint-checked-wrongly"],
        change: keep,
        hurry: |p| {
            let second = p.count(&Action::LeakFluid(Joint::ManifoldPort)) == 2;
            at_once_if(second && p.last_is(|a| *a == Action::LeakFluid(Joint::ManifoldPort)))
        },
    },
    Spoil {
        name: "wire between R and W2 left on",
        job: NATURAL,
        trips: &["jumper-left"],
        change: |p, a| {
            let closed =
                p.count(&Action::Plug { port: Port::Manifold, step: PlugStep::Tighten(6) }) > 0;
            drop_if(closed && *a == Action::StageJumper(Fitted::Off))
        },
        hurry: never,
    },
    Spoil {
        name: "valve switch left off",
        job: NATURAL,
        trips: &["valve-switch-off"],
        change: |p, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(kneel(p, vec![Action::ValveSwitch(OnOff::Off)]))
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "manual valve left part open",
        job: NATURAL,
        trips: &["cock-not-open"],
        change: |_, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(vec![Action::Cock { cock: Cock::Furnace, degrees: 60 }])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "manual valve left closed",
        job: NATURAL,
        trips: &["cock-not-open"],
        change: |_, a| {
            if *a == BURNER_DOOR_ON {
                Change::Before(vec![Action::Cock { cock: Cock::Furnace, degrees: 0 }])
            } else {
                Change::Keep
            }
        },
        hurry: never,
    },
    Spoil {
        name: "burner door left off",
        job: NATURAL,
        trips: &["door-off"],
        change: |_, a| drop_if(*a == BURNER_DOOR_ON),
        hurry: never,
    },
    Spoil {
        name: "range left off",
        job: NATURAL,
        trips: &["others-not-restored"],
        change: |p, a| {
            let on = Action::Neighbor { neighbor: Neighbor::Range, to: OnOff::On };
            drop_if(p.closing() && *a == on)
        },
        hurry: never,
    },
    Spoil {
        name: "thermostat not set back",
        job: PROPANE,
        trips: &["controls-not-restored"],
        change: |p, a| {
            // The found setpoint of this job is 68 °F.
            drop_if(p.closing() && *a == Action::Setpoint(136))
        },
        hurry: never,
    },
    Spoil {
        name: "no final cycle",
        job: PROPANE,
        trips: &["no-final-cycle"],
        change: |p, a| {
            let call = matches!(a, Action::Setpoint(half_f) if *half_f != 136)
                || (*a == Action::ThermostatMode(OnOff::On) && !p.closing_restores());
            drop_if(p.closing() && call)
        },
        hurry: |p| at_once_if(p.closing()),
    },
    Spoil {
        name: "supplier not called",
        job: PROPANE,
        trips: &["owner-not-called"],
        change: |_, a| drop_if(*a == Action::Call(Contact::SupplyOwner)),
        hurry: never,
    },
    Spoil {
        name: "handed over as if all were well",
        job: PROPANE,
        trips: &["wrong-ending"],
        change: |_, a| match a {
            Action::HandOver(said) => Change::Instead(vec![Action::HandOver(HandOver {
                ending: Ending::InService,
                not_done: said.not_done.clone(),
            })]),
            _ => Change::Keep,
        },
        hurry: never,
    },
    Spoil {
        name: "work not done not named",
        job: NATURAL,
        trips: &["not-done-unsaid"],
        change: |_, a| match a {
            Action::HandOver(said) => Change::Instead(vec![Action::HandOver(HandOver {
                ending: said.ending,
                not_done: Vec::new(),
            })]),
            _ => Change::Keep,
        },
        hurry: never,
    },
];

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

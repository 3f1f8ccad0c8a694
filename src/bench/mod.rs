//! The whole station: supply, piping, house, furnace, instruments and hands, behind two doors.
//!
//! Everything done is an [`action::Action`] through [`Bench::apply`]; everything that comes out is a
//! [`seen::Seen`] for people and programs that play, a [`truth::Truth`] for marking and teaching,
//! and a list of [`event::Event`]s. At a tick, actions come first, then one [`Bench::step`].

pub mod action;
mod apply;
mod cycle;
pub mod event;
pub mod fault;
mod furnace;
mod gas;
mod kit;
mod look;
pub mod night;
pub mod part;
mod perceive;
mod port;
pub mod refusal;
pub mod repair;
pub mod run;
pub mod seen;
pub mod setup;
mod stand;
mod step;
pub mod truth;
mod watch;

use action::{Action, Fitted, JointVerdict, LowSide, OnOff, Opening, Reading};
use event::{Event, Happening};
use part::{Joint, Place, Tool};
use refusal::Refusal;
use seen::{DetectorSeen, Note, Over};
use setup::Setup;

use crate::instrument::leak_fluid::LeakFluid;
use crate::instrument::manometer::Manometer;
use crate::physics::room::{Nose, Room};
use crate::physics::valve::HandleAngle;
use crate::site::house::{House, Thermostat};

/// The bench. Its state is private: it changes through `apply` and `step` only.
#[derive(Debug, Clone)]
pub struct Bench {
    setup: Setup,
    /// What it was built from, once a repair has changed `setup`.
    built_from: Option<Box<Setup>>,
    /// The repairs done, in order.
    mended: Vec<repair::Repair>,
    tick: u64,
    gas: gas::GasSide,
    furnace: furnace::Furnace,
    house: House,
    thermostat: Thermostat,
    room: Room,
    meter: Manometer,
    low_side: LowSide,
    kit: kit::Kit,
    person: Person,
    things: Things,
    sheet: Sheet,
    watch: watch::Watch,
    cycle: cycle::CycleWatch,
    events: Vec<Event>,
    alerts: Alerts,
    over: Option<Over>,
}

/// Where the person is and what is in the hand.
#[derive(Debug, Clone, PartialEq)]
struct Person {
    place: Place,
    hand: Option<Tool>,
    detector: Option<DetectorSeen>,
    sniffed: Option<(action::Height, seen::Smell)>,
    nose: Nose,
}

/// Things that hands have put into a state.
#[derive(Debug, Clone, PartialEq)]
struct Things {
    manual_valve: HandleAngle,
    supply_valve: HandleAngle,
    neighbor_valves: [HandleAngle; 2],
    neighbors: [OnOff; 2],
    /// Seconds that a neighbour has been turned on without gas to burn.
    starved_s: [f64; 2],
    valve_switch: OnOff,
    furnace_switch: OnOff,
    doors: [Fitted; 2],
    caps: [Fitted; 3],
    ports: [port::PortState; 2],
    windows: [Opening; 2],
    stage_jumper: Fitted,
    setpoint_half_f: i16,
    heating: OnOff,
    tag: Fitted,
    fluid: [Option<Brushed>; 4],
    /// Turns of low, high and supply screw since the start, in eighths.
    turned_eighths: [i32; 3],
    last_turn_tick: Option<u64>,
}

/// Leak fluid on a joint, with what was so while it was on.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Brushed {
    fluid: LeakFluid,
    /// The stretch of time that goes on now.
    now: Stretch,
    /// The best one before it.
    best: Option<Stretch>,
}

/// A stretch of time in which burners and manual valve stayed as they were.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Stretch {
    firing: truth::Firing,
    manual_valve: HandleAngle,
    lowest_pa: f64,
    dwell_s: f64,
}

/// What is written down.
#[derive(Debug, Clone, PartialEq, Default)]
struct Sheet {
    readings: Vec<Reading>,
    joints: Vec<(Joint, JointVerdict)>,
    notes: Vec<Note>,
    measured: Vec<seen::WrittenMeasured>,
    /// What was mended. Not in the digest: [`Bench::mended`] is.
    done: Vec<seen::Done>,
}

impl Sheet {
    /// What is written, for a digest.
    fn digest(&self, sink: &mut impl FnMut(u64)) {
        for reading in &self.readings {
            let place = (reading.port as u64) << 8 | (reading.stage as u64) << 4;
            sink(place | (reading.phase as u64) << 2 | reading.unit as u64);
            sink(u64::from(reading.thousandths.unsigned_abs()) << 1);
        }
        for (joint, verdict) in &self.joints {
            sink((*joint as u64) << 1 | *verdict as u64);
        }
        for note in &self.notes {
            sink((note.subject as u64) << 48 | note.tick);
        }
        for written in &self.measured {
            sink((written.spot as u64) << 48 | written.tick);
            for figure in &written.figures {
                sink(u64::from(figure.steps.map_or(u32::MAX, i32::cast_unsigned)));
            }
        }
    }
}

/// Which alarms stand, so that each is told once.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Alerts {
    alarm: bool,
    from_port: [bool; 2],
    valve_over: bool,
    meter_over: bool,
}

impl Bench {
    /// Builds the bench as found, settled, at tick 0.
    #[must_use]
    pub fn new(setup: Setup) -> Self {
        stand::bench(setup)
    }

    /// What it was built from. For marking, preview and reports; players get [`Bench::seen`].
    #[must_use]
    pub fn setup(&self) -> &Setup {
        self.built_from.as_deref().unwrap_or(&self.setup)
    }

    /// The setup as repairs have left it. For tests, reports and the debrief.
    #[must_use]
    pub fn setup_now(&self) -> &Setup {
        &self.setup
    }

    /// The repairs done so far, in order.
    #[must_use]
    pub fn mended(&self) -> &[repair::Repair] {
        &self.mended
    }

    /// Steps since the job began; 50 a second.
    #[must_use]
    pub fn tick(&self) -> u64 {
        self.tick
    }

    /// How the job ended, if it did.
    #[must_use]
    pub fn over(&self) -> Option<Over> {
        self.over
    }

    /// Does something, at the current tick.
    ///
    /// # Errors
    /// The reason why it cannot be done; nothing changed then but the list of events.
    pub fn apply(&mut self, action: &Action) -> Result<(), Refusal> {
        let before = self.truth();
        let result = if self.over.is_some() { Err(Refusal::Over) } else { self.act(action) };
        match result {
            Ok(follow) => {
                self.tell(Happening::Did { action: action.clone(), before: Box::new(before) });
                for what in follow {
                    self.tell(what);
                }
                self.after_act(action);
                Ok(())
            }
            Err(why) => {
                self.tell(Happening::Refused { action: action.clone(), why });
                Err(why)
            }
        }
    }

    /// Everything that happened since the last call, in order.
    pub fn take_events(&mut self) -> Vec<Event> {
        core::mem::take(&mut self.events)
    }

    /// The largest imbalance of gas in any step so far, relative to the throughput.
    #[must_use]
    pub fn worst_imbalance(&self) -> f64 {
        self.gas.worst_imbalance()
    }

    fn tell(&mut self, what: Happening) {
        self.events.push(Event { tick: self.tick, what });
    }
}

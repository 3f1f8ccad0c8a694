//! The whole station: supply, piping, house, furnace, instruments and hands, behind two doors.
//!
//! Everything done is an [`Action`] through [`Bench::apply`]; everything that comes out is a
//! [`Seen`](crate::senses::seen::Seen) for people and programs that play, a
//! [`Truth`](crate::model::truth::Truth) for marking and teaching, and a list of [`Event`]s. At a
//! tick, actions come first, then one [`Bench::step`].

use crate::catalogue::repair::Repair;
use crate::hands::action::Action;
use crate::hands::cycle;
use crate::hands::event::{Event, Happening};
use crate::hands::refusal::Refusal;
use crate::instrument::leak_fluid::LeakFluid;
use crate::instrument::manometer::Manometer;
use crate::model::{furnace, gas, kit, port, stand};
use crate::parts::{
    Firing, Fitted, Height, Joint, JointVerdict, LowSide, OnOff, Opening, Place, Reading, Tool,
};
use crate::physics::room::{Nose, Room};
use crate::senses::seen::{self, DetectorSeen, Note, Over};
use crate::senses::watch;
use crate::setup::Setup;
use crate::site::house::{House, Thermostat};

/// The bench. Its state is private: it changes through `apply` and `step` only.
#[derive(Debug, Clone)]
pub struct Bench {
    pub(crate) setup: Setup,
    /// What it was built from, once a repair has changed `setup`.
    pub(crate) built_from: Option<Box<Setup>>,
    /// The repairs done, in order.
    pub(crate) mended: Vec<Repair>,
    pub(crate) tick: u64,
    pub(crate) gas: gas::GasSide,
    pub(crate) furnace: furnace::Furnace,
    pub(crate) house: House,
    pub(crate) thermostat: Thermostat,
    pub(crate) room: Room,
    pub(crate) meter: Manometer,
    pub(crate) low_side: LowSide,
    pub(crate) kit: kit::Kit,
    pub(crate) person: Person,
    pub(crate) things: Things,
    pub(crate) sheet: Sheet,
    pub(crate) watch: watch::Watch,
    pub(crate) cycle: cycle::CycleWatch,
    pub(crate) events: Vec<Event>,
    pub(crate) alerts: Alerts,
    pub(crate) over: Option<Over>,
}

/// Where the person is and what is in the hand.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Person {
    pub(crate) place: Place,
    pub(crate) hand: Option<Tool>,
    pub(crate) detector: Option<DetectorSeen>,
    pub(crate) sniffed: Option<(Height, seen::Smell)>,
    pub(crate) nose: Nose,
}

/// Things that hands have put into a state.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Things {
    pub(crate) furnace_cock_deg: i16,
    pub(crate) supply_cock_deg: i16,
    pub(crate) neighbor_cock_deg: [i16; 2],
    pub(crate) neighbors: [OnOff; 2],
    /// Seconds that a neighbour has been turned on without gas to burn.
    pub(crate) starved_s: [f64; 2],
    pub(crate) valve_switch: OnOff,
    pub(crate) furnace_switch: OnOff,
    pub(crate) doors: [Fitted; 2],
    pub(crate) caps: [Fitted; 3],
    pub(crate) ports: [port::PortState; 2],
    pub(crate) windows: [Opening; 2],
    pub(crate) stage_jumper: Fitted,
    pub(crate) setpoint_half_f: i16,
    pub(crate) heating: OnOff,
    pub(crate) tag: Fitted,
    pub(crate) fluid: [Option<Brushed>; 4],
    /// Turns of low, high and supply screw since the start, in eighths.
    pub(crate) turned_eighths: [i32; 3],
    pub(crate) last_turn_tick: Option<u64>,
}

/// Leak fluid on a joint, with what was so while it was on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Brushed {
    pub(crate) fluid: LeakFluid,
    /// The stretch of time that goes on now.
    pub(crate) now: Stretch,
    /// The best one before it.
    pub(crate) best: Option<Stretch>,
}

/// A stretch of time in which burners and manual valve stayed as they were.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Stretch {
    pub(crate) firing: Firing,
    pub(crate) cock_deg: i16,
    pub(crate) lowest_pa: f64,
    pub(crate) dwell_s: f64,
}

/// What is written down.
#[derive(Debug, Clone, PartialEq, Default)]
pub(crate) struct Sheet {
    pub(crate) readings: Vec<Reading>,
    pub(crate) joints: Vec<(Joint, JointVerdict)>,
    pub(crate) notes: Vec<Note>,
    pub(crate) measured: Vec<seen::WrittenMeasured>,
    /// What was mended. Not in the digest: [`Bench::mended`] is.
    pub(crate) done: Vec<seen::Done>,
}

impl Sheet {
    /// What is written, for a digest.
    pub(crate) fn digest(&self, sink: &mut impl FnMut(u64)) {
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
pub(crate) struct Alerts {
    pub(crate) alarm: bool,
    pub(crate) from_port: [bool; 2],
    pub(crate) valve_over: bool,
    pub(crate) meter_over: bool,
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
    pub fn mended(&self) -> &[Repair] {
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

    pub(crate) fn tell(&mut self, what: Happening) {
        self.events.push(Event { tick: self.tick, what });
    }
}

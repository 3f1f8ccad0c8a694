//! The pattern of a bench: what is read and seen at rest, on each firing level, under full load,
//! and at rest again.
//!
//! The bench is driven through actions only, as by a person; what is noted is the truth, and what
//! the job's own manometer shows when its hose is on a port.

use crate::appliance::ignition::ControlState;
use crate::bench::{Bench, run};
use crate::hands::action::{Action, PlugStep};
use crate::hands::event::{Event, EventKind};
use crate::model::truth::Truth;
use crate::parts::{
    Door, Fitted, HandValve, Level, OnOff, OtherAppliance, Place, Port, Push, Stage, Tool,
};
use crate::senses::seen::{Display, Over, Sound};
use crate::setup::Setup;
use crate::units::TICKS_PER_S;
use enum_map::EnumMap;

/// Longest time from a call to a lit stage, in seconds: more than the tries before a lockout take.
const LIGHT_UP_S: u64 = 440;
/// Time from a lit stage to a reading, in seconds.
const SETTLE_S: u64 = 60;
/// Time at rest before a reading, in seconds.
const REST_S: u64 = 361;
/// Time at the end of a stage over which the swing of the pressures is noted, in seconds.
const SWING_S: u64 = 12;
/// Time after the end of the call before the second reading at rest, in seconds.
const AGAIN_S: u64 = 240;
/// How far above the room the setpoint stands for a first-stage call, in half degrees.
const FIRST_STAGE_HALF_F: i16 = 3;
/// The same for both stages.
const BOTH_STAGES_HALF_F: i16 = 12;

/// What is done before the readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Hands {
    /// Everything is left as it is found, but for doors, service switch and thermostat.
    AsFound,
    /// Valves are opened and switches turned on first.
    OpenUp,
}

/// A state of the furnace with what was so at its end.
#[derive(Debug, Clone, PartialEq)]
pub struct Point {
    /// The state wanted.
    pub stage: Stage,
    /// What was true.
    pub truth: Truth,
    /// The plate's input on high, in watts.
    pub rated_w: f64,
    /// What the manometer showed, when its hose was on a port.
    pub display: Display,
    /// What the burners did not come to, if so: the state of the control then.
    pub missed: Option<ControlState>,
    /// Whether its flames are seen to lean with the blower's wind.
    pub flames_lean: bool,
    /// Lowest and highest inlet and manifold pressure in the last seconds, in pascals.
    pub swing_pa: EnumMap<Port, (f64, f64)>,
}

/// What happened on the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Signs {
    /// Times the control purged for another try.
    pub retries: u32,
    /// Lockouts.
    pub lockouts: u32,
    /// Times the limit opened.
    pub limits: u32,
    /// Times a roll-out switch opened.
    pub rollouts: u32,
    /// Times the next level's pressure switch was waited for in vain.
    pub next_given_up: u32,
    /// Whether a hard light was heard.
    pub banged: bool,
    /// Whether gas was lit where it must not be.
    pub ignited: bool,
    /// Whether the gas valve saw more pressure than it may.
    pub over_pressure: bool,
}

impl Signs {
    fn note_control(&mut self, from: ControlState, to: ControlState) {
        let count = match to {
            ControlState::Retry => &mut self.retries,
            ControlState::Lockout => &mut self.lockouts,
            ControlState::LimitOpen => &mut self.limits,
            ControlState::RolloutOpen => &mut self.rollouts,
            ControlState::Burning(level)
                if level.is_first() && from == ControlState::NextSwitchProving =>
            {
                &mut self.next_given_up
            }
            ControlState::Standby
            | ControlState::InducerStart
            | ControlState::PressureSwitchProving
            | ControlState::PrePurge
            | ControlState::IgniterWarmUp
            | ControlState::TrialForIgnition
            | ControlState::FlameProving
            | ControlState::BlowerOnDelay
            | ControlState::Burning(_)
            | ControlState::NextLevelCall
            | ControlState::InducerUp
            | ControlState::NextSwitchProving
            | ControlState::PostPurge
            | ControlState::BlowerOffDelay => return,
        };
        *count += 1;
    }
}

impl run::Witness for Signs {
    fn ticked(&mut self, _: &Bench, events: Vec<Event>) {
        for event in events {
            if let EventKind::Control { from, to } = event.what {
                self.note_control(from, to);
            }
            self.over_pressure |= matches!(event.what, EventKind::ValveOverPressure { .. });
            self.ignited |= matches!(event.what, EventKind::Ignition { .. });
        }
    }
}

/// A pattern.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern {
    /// At rest, at each firing level, at full load, at rest again.
    pub points: Vec<Point>,
    /// What happened on the way.
    pub signs: Signs,
}

impl Pattern {
    /// Its states in words, in order.
    #[must_use]
    pub fn states(&self) -> Vec<&'static str> {
        let mut states: Vec<_> = self.points.iter().map(|point| point.stage.label()).collect();
        if let Some(last) = states.last_mut() {
            *last = "at rest again";
        }
        states
    }
}

/// Measures the pattern of a setup. With a port, the manometer's hose is on it all the time, and the
/// zero button is not touched.
#[must_use]
pub fn measure(setup: Setup, hands: Hands, hose_on: Option<Port>) -> Pattern {
    measure_on(Bench::new(setup), hands, hose_on).0
}

/// The same on a bench on which something has been done already; gives the bench back as the
/// measuring leaves it.
#[must_use]
pub fn measure_on(bench: Bench, hands: Hands, hose_on: Option<Port>) -> (Pattern, Bench) {
    let mut driver = Driver { bench, signs: Signs::default() };
    driver.bench.take_events();
    driver.prepare(hands, hose_on);
    let points = driver.points();
    (Pattern { points, signs: driver.signs }, driver.bench)
}

/// Brings a bench to its states through actions.
struct Driver {
    bench: Bench,
    signs: Signs,
}

impl Driver {
    /// Does something; what is so already is refused and is no trouble.
    fn act(&mut self, action: Action) {
        let _ = self.bench.apply(&action);
    }

    fn wait(&mut self, seconds: u64) {
        for _ in 0..seconds {
            run::wait(&mut self.bench, TICKS_PER_S, &mut self.signs);
            self.note();
        }
    }

    /// Notes what happened in the last second.
    fn note(&mut self) {
        run::tell(&mut self.bench, &mut self.signs);
        self.signs.ignited |= self.bench.over() == Some(Over::Ignition);
        self.signs.banged |= self.bench.seen().sounds.contains(&Sound::Bang);
    }

    fn call(&mut self, above_half_f: i16) {
        self.act(Action::Go(Place::Hall));
        if let Some(hall) = self.bench.seen().hall {
            self.act(Action::Setpoint((hall.room_half_f + above_half_f).clamp(90, 180)));
        }
        self.act(Action::ThermostatMode(OnOff::On));
    }

    fn others(&mut self, to: OnOff) {
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to });
        self.act(Action::Go(Place::Hall));
        self.act(Action::OtherAppliance { appliance: OtherAppliance::Range, to });
    }

    fn prepare(&mut self, hands: Hands, hose_on: Option<Port>) {
        if hands == Hands::OpenUp {
            self.act(Action::Go(Place::Yard));
            self.act(Action::HandValve { hand_valve: HandValve::Supply, degrees: 90 });
        }
        self.act(Action::Go(Place::Hall));
        self.act(Action::ThermostatMode(OnOff::Off));
        self.others(OnOff::Off);
        self.act(Action::Go(Place::PlantRoom));
        self.act(Action::Door { door: Door::Burner, to: Fitted::Off });
        self.act(Action::Door { door: Door::Blower, to: Fitted::On });
        self.act(Action::FurnaceSwitch(OnOff::On));
        if hands == Hands::OpenUp {
            self.act(Action::HandValve { hand_valve: HandValve::Furnace, degrees: 90 });
            self.act(Action::StageJumper(Fitted::Off));
            self.act(Action::Go(Place::GasValve));
            self.act(Action::ValveSwitch(OnOff::On));
        }
        if let Some(port) = hose_on {
            self.hook_up(port);
        }
    }

    /// Puts the hose on a port within one tick, so that nothing escapes.
    fn hook_up(&mut self, port: Port) {
        let plug = |step| Action::Plug { port, step };
        for action in [
            Action::Go(Place::GasValve),
            Action::Take(Tool::HexKey),
            plug(PlugStep::BreakLoose),
            plug(PlugStep::SpinOut),
            Action::PutDown,
            Action::Take(Tool::Adapter),
            Action::Adapter { port, to: Fitted::On },
            Action::Take(Tool::Hose),
            Action::HoseOn { port, push: Push::Fully },
            Action::MeterPower(OnOff::On),
        ] {
            self.act(action);
        }
    }

    /// Waits until the burners are at a stage, and then until all has settled.
    fn fire(&mut self, firing: Option<Level>, settle_s: u64) {
        for _ in 0..LIGHT_UP_S {
            if self.bench.truth().firing == firing {
                break;
            }
            self.wait(1);
        }
        self.wait(settle_s);
    }

    fn points(&mut self) -> Vec<Point> {
        self.wait(REST_S);
        let levels = self.bench.setup().furnace.plate.input.list();
        let mut points = vec![self.point(Stage::Rest, None)];
        for &level in levels {
            self.call(if level.is_first() { FIRST_STAGE_HALF_F } else { BOTH_STAGES_HALF_F });
            self.fire(Some(level), SETTLE_S);
            points.push(self.point(Stage::Firing(level), Some(level)));
        }
        self.others(OnOff::On);
        self.wait(2 * SETTLE_S);
        points.push(self.point(Stage::FullLoad, levels.last().copied()));
        self.others(OnOff::Off);
        self.act(Action::ThermostatMode(OnOff::Off));
        self.wait(AGAIN_S);
        points.push(self.point(Stage::Rest, None));
        points
    }

    /// A look at the flames from where they are seen, and back.
    fn flames_lean(&mut self) -> bool {
        let place = self.bench.seen().place;
        self.act(Action::Go(Place::GasValve));
        let burners = self.bench.seen().furnace.and_then(|furnace| furnace.burners);
        self.act(Action::Go(place));
        burners.is_some_and(|it| {
            it.signs.flames_lean() && it.flames.iter().any(|flame| flame.height > 0.0)
        })
    }

    fn point(&mut self, stage: Stage, wanted: Option<Level>) -> Point {
        let mut swing_pa = EnumMap::from_fn(|_| (f64::INFINITY, f64::NEG_INFINITY));
        // A meter has to settle too; a swing shows within a few seconds.
        for _ in 0..SWING_S * TICKS_PER_S {
            run::pass(&mut self.bench, &mut self.signs);
            for (port, swing) in &mut swing_pa {
                let pa = self.bench.pressure_pa(port);
                *swing = (swing.0.min(pa), swing.1.max(pa));
            }
        }
        self.note();
        let flames_lean = self.flames_lean();
        let truth = self.bench.truth();
        Point {
            stage,
            rated_w: self.bench.setup().furnace.plate.input.top().si(),
            missed: (truth.firing != wanted).then_some(truth.control),
            display: self.bench.seen().meter.display,
            flames_lean,
            truth,
            swing_pa,
        }
    }
}

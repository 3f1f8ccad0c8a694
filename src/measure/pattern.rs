//! The pattern of a bench: what is read and seen at rest, on each firing level, under full load,
//! and at rest again after it, soon and late.
//!
//! Somebody brings the bench from goal to goal ([`Driver`]); what is noted is the truth, and what the
//! job's own manometer shows when its hose is on a port.

use super::driver::Driver;
use crate::appliance::ignition::ControlState;
use crate::bench::Bench;
use crate::bench::run::Witness;
use crate::hands::event::{Event, EventKind};
use crate::model::truth::Truth;
use crate::parts::{Door, Fitted, HandValve, Level, OnOff, Opening, Place, Port, Stage};
use crate::procedure::{Awaited, Goal, Means, Pursuit};
use crate::senses::seen::{Display, Over, Sound};
use crate::setup::Setup;
use crate::units::TICKS_PER_S;
use enum_map::EnumMap;

/// Longest time from a call to a lit stage, in seconds: more than the tries before a lockout take.
const LIGHT_UP_S: f64 = 440.0;
/// Time from a lit stage to a reading, in seconds.
const SETTLE_S: u64 = 60;
/// Time at rest before a reading, in seconds.
const REST_S: u64 = 361;
/// Time at the end of a stage over which the swing of the pressures is noted, in seconds: a meter has
/// to settle too; a swing shows within a few seconds.
const SWING_S: u64 = 12;
/// Times after the burners stopped at which it is read at rest again, in seconds: as soon as anybody
/// reads a lock-up, and when a seat that creeps has had time to show it.
const AGAIN_S: [u64; 2] = [60, 300];

/// What is done before the readings.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Start {
    /// Everything is left as it is found, but for doors, service switch and thermostat.
    AsFound,
    /// Valves are opened and switches turned on.
    GasOn,
    /// The same with the manometer's hose put on a port; its zero and its unit are not touched.
    Hooked(Port),
}

impl Start {
    /// What is reached before the readings, in this order: from there on the furnace answers to the
    /// thermostat, its burners in view.
    fn goals(self) -> Vec<Goal> {
        let still = [Goal::HeatOff, Goal::Others(OnOff::Off)];
        let gas_on =
            [Goal::Valve(HandValve::Supply, Opening::Open), Goal::Jumper(Fitted::Off), Goal::GasOn];
        let live = [
            Goal::Door(Door::Burner, Fitted::Off),
            Goal::Door(Door::Blower, Fitted::On),
            Goal::Power(OnOff::On),
        ];
        match self {
            Self::AsFound => [&still[..], &live].concat(),
            Self::GasOn => [&still[..], &gas_on, &live].concat(),
            Self::Hooked(port) => {
                let hooked = [Goal::HoseOnAsFound(port)];
                [&still[..], &hooked, &gas_on, &[Goal::MeterOn], &live].concat()
            }
        }
    }
}

/// A state of the furnace with what was so at its end.
#[derive(Debug, Clone, PartialEq)]
pub struct Point {
    /// State that the furnace was brought to.
    pub stage: Stage,
    /// Seconds since the burners stopped, where it is at rest again.
    pub again_s: Option<u64>,
    /// Truth of the bench at its end.
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

impl Point {
    /// Its state in words.
    #[must_use]
    pub fn state(&self) -> String {
        match self.again_s {
            Some(seconds) => {
                t!("stage-rest-again-after", minutes = (seconds / 60).to_string())
            }
            None => self.stage.label().to_owned(),
        }
    }
}

/// What happened on the way.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Signs {
    /// Times the control purged for another try.
    pub retries: u32,
    /// Times the control locked out.
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

impl Witness for Signs {
    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        for event in events {
            if let EventKind::Control { from, to } = event.what {
                self.note_control(from, to);
            }
            self.over_pressure |= matches!(event.what, EventKind::ValveOverPressure { .. });
        }
        // A bang is heard for more than a second.
        if bench.tick().is_multiple_of(TICKS_PER_S) {
            self.banged |= bench.seen().sounds.contains(&Sound::Bang);
        }
    }
}

/// Everything that was measured on a bench, state by state.
#[derive(Debug, Clone, PartialEq)]
pub struct Pattern {
    /// At rest, at each firing level, at full load, at rest again after each of two times.
    pub points: Vec<Point>,
    /// What happened on the way.
    pub signs: Signs,
}

impl Pattern {
    /// Its states in words, in order.
    #[must_use]
    pub fn states(&self) -> Vec<String> {
        self.points.iter().map(Point::state).collect()
    }
}

/// Measures the pattern of a setup.
#[must_use]
pub fn measure(setup: Setup, start: Start) -> Pattern {
    measure_on(Bench::new(setup), start).0
}

/// The same on a bench on which something has been done already; gives the bench back as the
/// measuring leaves it.
#[must_use]
pub fn measure_on(mut bench: Bench, start: Start) -> (Pattern, Bench) {
    bench.take_events();
    let mut measuring = Measuring { by: Driver::new(bench), signs: Signs::default() };
    measuring.reach(&start.goals());
    let points = measuring.points();
    let Measuring { by, mut signs } = measuring;
    signs.ignited = by.bench().over() == Some(Over::Ignition);
    (Pattern { points, signs }, by.leave())
}

/// A bench on its way through its states.
struct Measuring {
    by: Driver,
    signs: Signs,
}

impl Measuring {
    fn reach(&mut self, goals: &[Goal]) {
        self.by.reach(goals, &mut self.signs);
    }

    fn wait(&mut self, seconds: u64) {
        self.by.wait(seconds, &mut self.signs);
    }

    /// Every state in turn. Whoever measures waits at the gas valve, where the flames are seen.
    fn points(&mut self) -> Vec<Point> {
        let before_valve = Goal::At(Place::GasValve);
        self.reach(&[before_valve]);
        self.wait(REST_S);
        let levels = self.by.bench().setup().furnace.plate.input.list();
        let mut points = vec![self.point(Stage::Rest, None)];
        for &level in levels {
            self.reach(&[Goal::Called(Some(level), Means::LeastSetpoint), before_valve]);
            let lit = Pursuit::new(Goal::Lit(Some(level))).patient(Awaited::Light, LIGHT_UP_S);
            self.by.pursue(lit, &mut self.signs);
            self.wait(SETTLE_S);
            points.push(self.point(Stage::Firing(level), Some(level)));
        }
        self.reach(&[Goal::Others(OnOff::On), before_valve]);
        self.wait(2 * SETTLE_S);
        points.push(self.point(Stage::FullLoad, levels.last().copied()));
        self.reach(&[Goal::Others(OnOff::Off), Goal::HeatOff, before_valve]);
        let mut passed_s = 0;
        for again_s in AGAIN_S {
            self.wait(again_s - SWING_S - passed_s);
            let point = self.point(Stage::RestAgain, None);
            points.push(Point { again_s: Some(again_s), ..point });
            passed_s = again_s;
        }
        points
    }

    /// Notes what is so at the end of a state.
    fn point(&mut self, stage: Stage, wanted: Option<Level>) -> Point {
        let mut swing_pa = EnumMap::from_fn(|_| (f64::INFINITY, f64::NEG_INFINITY));
        let mut swing = |bench: &Bench, events: Vec<Event>| {
            self.signs.ticked(bench, events);
            for (port, swing) in &mut swing_pa {
                let pa = bench.pressure_pa(port);
                *swing = (swing.0.min(pa), swing.1.max(pa));
            }
        };
        self.by.wait(SWING_S, &mut swing);
        let bench = self.by.bench();
        let truth = bench.truth();
        let seen = bench.seen();
        let display = seen.display().unwrap_or(Display::Dark);
        let burners = seen.furnace.and_then(|furnace| furnace.burners);
        Point {
            stage,
            again_s: None,
            rated_w: bench.setup().furnace.plate.input.top().si(),
            missed: (truth.firing != wanted).then_some(truth.control),
            display,
            flames_lean: burners.is_some_and(|it| {
                it.signs.flames_lean() && it.flames.iter().any(|flame| flame.height > 0.0)
            }),
            truth,
            swing_pa,
        }
    }
}

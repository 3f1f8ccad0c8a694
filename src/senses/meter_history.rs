//! What the manometer showed, where and in which state: the measure of a written reading.
//!
//! A reading is right if it rounds to a number that the meter showed at that port and stage since
//! it settled there. So the bench remembers, for each port and stage, the lowest and the highest
//! number shown since the last change that could move it.

use enum_map::EnumMap;
use serde::Serialize;

use crate::parts::{Level, Port, Stage};
use crate::units::TICK_S;

/// How far a smoothed pressure may differ from the present one in a settled state, in pascals.
const STEADY_PA: f64 = 4.0;
/// Time constant of that smoothing, in seconds.
const STEADY_S: f64 = 1.5;
/// A no-flow hold begins anew when the pressure moves faster than this against its smoothed
/// course, in pascals: gas was only just let in.
const HOLD_STEADY_PA: f64 = 60.0;
/// Shortest hold worth telling, in seconds.
const HOLD_REPORT_S: f64 = 10.0;

/// What the furnace and the other appliances draw, as far as a reading's stage depends on it.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub(crate) struct GasDemand {
    /// What the furnace does.
    pub firing: Option<Level>,
    /// Number of other appliances that burn, of two.
    pub burning: u8,
    /// Whether gas flows anywhere.
    pub any_flow: bool,
    /// Whether the inlet is joined to the supply: shut-off and manual valve open.
    pub fed: bool,
}

impl GasDemand {
    /// Whether a reading of `stage` at `port` can be taken in this state. A level may be read
    /// with another appliance burning as it was found; at rest the inlet must feel the supply, not
    /// gas shut in behind a valve.
    pub(crate) fn is(self, port: Port, stage: Stage) -> bool {
        match (stage, port) {
            (Stage::Rest, Port::Inlet) => self.fed && !self.any_flow && self.firing.is_none(),
            (Stage::Rest, Port::Manifold) => !self.any_flow && self.firing.is_none(),
            (Stage::Firing(level), _) => self.firing == Some(level),
            (Stage::FullLoad, _) => self.firing.is_some_and(Level::is_top) && self.burning == 2,
        }
    }

    /// The stage that describes this state best, if one does.
    pub(crate) fn stage(self, port: Port) -> Option<Stage> {
        // The most demanding first.
        Stage::ALL.iter().copied().rev().find(|&stage| self.is(port, stage))
    }
}

/// Lowest and highest number shown, and the true mean, at one port and stage.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
struct Span {
    least_pa: f64,
    most_pa: f64,
    true_sum_pa: f64,
    count: u32,
    /// The meter's error when it was last shown.
    error_pa: f64,
    /// When it was last shown, in ticks.
    tick: u64,
}

/// What the meter does in one tick.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct MeterSample {
    /// The number on the display, in pascals.
    pub shown_pa: f64,
    /// The true difference, in pascals.
    pub true_pa: f64,
    /// What the meter reads too high, in pascals.
    pub error_pa: f64,
    /// Moment of the sample, in ticks.
    pub tick: u64,
}

/// Why what was shown before no longer holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub(crate) enum Since {
    /// The meter was zeroed or its low side moved: what it showed stays shown.
    MeterMoved,
    /// A screw was turned: the pressure itself is another one.
    PressureMoved,
}

impl Span {
    fn add(slot: &mut Option<Self>, sample: MeterSample) {
        let MeterSample { shown_pa, true_pa, error_pa, tick } = sample;
        let span = slot.get_or_insert(Self {
            least_pa: shown_pa,
            most_pa: shown_pa,
            true_sum_pa: 0.0,
            count: 0,
            error_pa,
            tick,
        });
        span.least_pa = span.least_pa.min(shown_pa);
        span.most_pa = span.most_pa.max(shown_pa);
        span.true_sum_pa += true_pa;
        span.count += 1;
        span.error_pa = error_pa;
        span.tick = tick;
    }
}

/// Something for each port and stage.
type AtStages<T> = EnumMap<Port, EnumMap<Stage, T>>;

/// Remembers what was shown.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct MeterHistory {
    settle_s: f64,
    settled: AtStages<Option<Span>>,
    any: AtStages<Option<Span>>,
    /// What was settled before the last change, and what changed since then.
    before: AtStages<Option<(Span, Since)>>,
    demand: Option<(Port, GasDemand)>,
    since_s: f64,
    smooth_pa: f64,
    /// A no-flow hold with the hose on the inlet, while it lasts.
    hold: Option<Holding>,
}

/// A no-flow hold under way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
struct Holding {
    seconds: f64,
    start_pa: f64,
    now_pa: f64,
}

/// A no-flow hold that ended or went on long enough to report.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Hold {
    /// Its length so far, in seconds.
    pub seconds: f64,
    /// Rise during it, in pascals.
    pub rise_pa: f64,
}

/// What is known for a written reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Shown {
    /// Lowest and highest number while settled, in pascals.
    pub settled_pa: Option<(f64, f64)>,
    /// Lowest and highest number at all, in pascals.
    pub any_pa: Option<(f64, f64)>,
    /// Mean true pressure while settled, in pascals.
    pub true_pa: Option<f64>,
    /// The meter's error when it was settled there last, in pascals.
    pub error_pa: Option<f64>,
    /// When it was settled there last, in ticks.
    pub tick: Option<u64>,
    /// Lowest and highest number while settled before the last change, its error, and what changed.
    pub before: Option<((f64, f64), f64, Since)>,
}

impl MeterHistory {
    pub(crate) fn new(settle_s: f64) -> Self {
        Self {
            settle_s,
            settled: AtStages::default(),
            any: AtStages::default(),
            before: AtStages::default(),
            demand: None,
            since_s: 0.0,
            smooth_pa: 0.0,
            hold: None,
        }
    }

    /// Begins anew: something was done that can move what is shown. What was settled stays known
    /// as what was shown before.
    pub(crate) fn forget(&mut self, since: Since) {
        let settled = self.settled.values().flat_map(EnumMap::values);
        let before = self.before.values_mut().flat_map(EnumMap::values_mut);
        for (before, settled) in before.zip(settled) {
            *before = match (*settled, *before) {
                (Some(span), _) => Some((span, since)),
                (None, Some((span, Since::MeterMoved))) => Some((span, since)),
                (None, old) => old,
            };
        }
        self.settled = AtStages::default();
        self.any = AtStages::default();
        self.since_s = 0.0;
    }

    /// Starts the settling anew without forgetting what was shown before.
    pub(crate) fn unsettle(&mut self) {
        self.since_s = 0.0;
    }

    /// One tick with the hose on `port`, the meter on and in range; `None` when it is not.
    /// Returns the hold that this tick ended, if it did.
    pub(crate) fn step(
        &mut self,
        at: Option<(Port, GasDemand)>,
        sample: MeterSample,
    ) -> Option<Hold> {
        let true_pa = sample.true_pa;
        if at != self.demand {
            self.demand = at;
            self.since_s = 0.0;
            self.smooth_pa = true_pa;
        }
        self.since_s += TICK_S;
        self.smooth_pa += (true_pa - self.smooth_pa) * TICK_S / (STEADY_S + TICK_S);
        if let Some((port, demand)) = at {
            let settled =
                self.since_s >= self.settle_s && (self.smooth_pa - true_pa).abs() < STEADY_PA;
            for stage in Stage::ALL.iter().copied().filter(|&stage| demand.is(port, stage)) {
                Span::add(&mut self.any[port][stage], sample);
                if settled {
                    Span::add(&mut self.settled[port][stage], sample);
                }
            }
        }
        self.step_hold(at, true_pa)
    }

    fn step_hold(&mut self, at: Option<(Port, GasDemand)>, true_pa: f64) -> Option<Hold> {
        let holds =
            matches!(at, Some((Port::Inlet, demand)) if demand.is(Port::Inlet, Stage::Rest));
        if !holds {
            let ended = self.holding();
            self.hold = None;
            return ended;
        }
        let unsteady = (self.smooth_pa - true_pa).abs() > HOLD_STEADY_PA;
        match &mut self.hold {
            Some(hold) if !unsteady => {
                hold.seconds += TICK_S;
                hold.now_pa = true_pa;
            }
            Some(_) | None => {
                self.hold = Some(Holding { seconds: 0.0, start_pa: true_pa, now_pa: true_pa });
            }
        }
        None
    }

    /// The hold so far, if it is long enough to speak of.
    pub(crate) fn holding(&self) -> Option<Hold> {
        self.hold
            .filter(|hold| hold.seconds >= HOLD_REPORT_S)
            .map(|hold| Hold { seconds: hold.seconds, rise_pa: hold.now_pa - hold.start_pa })
    }

    /// What was shown at a port and stage.
    pub(crate) fn shown(&self, port: Port, stage: Stage) -> Shown {
        let range = |span: Option<Span>| span.map(|s| (s.least_pa, s.most_pa));
        Shown {
            settled_pa: range(self.settled[port][stage]),
            any_pa: range(self.any[port][stage]),
            true_pa: self.settled[port][stage].map(|s| s.true_sum_pa / f64::from(s.count.max(1))),
            error_pa: self.settled[port][stage].map(|s| s.error_pa),
            tick: self.settled[port][stage].map(|s| s.tick),
            before: self.before[port][stage]
                .map(|(s, since)| ((s.least_pa, s.most_pa), s.error_pa, since)),
        }
    }
}

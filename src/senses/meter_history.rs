//! What the manometer shows, spell by spell: the measure of a written reading.
//!
//! A spell is a stretch in which the hose stays as it is on one port and nothing is changed that the
//! number hangs on: no screw, hand valve, load, firing level, zero or low side. In it the number
//! runs to where it stands, and stays there or creeps. So a number that was shown in one state
//! says nothing of another, and every number belongs to one state.

use serde::Serialize;

use crate::parts::{Level, Port, Push, Stage};
use crate::units::{PressureUnit, TICK_S};

/// How far a smoothed pressure may differ from the present one in a settled state, in pascals.
const STEADY_PA: f64 = 4.0;
/// Time constant of that smoothing, in seconds.
const STEADY_S: f64 = 1.5;
/// Shortest spell in which anybody reads a number, in seconds: one number of the display.
const READABLE_S: f64 = 0.4;
/// A no-flow hold begins anew when the pressure moves faster than this against its smoothed
/// course, in pascals: gas was only just let in.
const HOLD_STEADY_PA: f64 = 60.0;
/// Shortest hold worth telling, in seconds.
const HOLD_REPORT_S: f64 = 10.0;

/// What the furnace and the other appliances draw, and through what, as far as the state of a reading
/// depends on it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub struct GasDemand {
    /// Level that the furnace fires at; none while it does not.
    pub firing: Option<Level>,
    /// Number of other appliances that burn, of two.
    pub burning: u8,
    /// Whether gas flows anywhere.
    pub any_flow: bool,
    /// Whether the inlet is joined to the supply: shut-off and manual valve not shut.
    pub fed: bool,
    /// Whether a hand put one of these two to neither open nor as it was found: what flows through
    /// it loses pressure there.
    pub throttled: bool,
}

impl GasDemand {
    /// Whether a reading of `stage` at `port` is taken in this state. Each level is read at the
    /// inlet with the furnace alone; the manifold is regulated, and may be read whatever else
    /// burns. At rest the inlet must feel the supply, not gas shut in behind a valve. At rest again
    /// nothing else is drawn than at rest: what burned before it, the spells before it tell.
    #[must_use]
    pub fn is(self, port: Port, stage: Stage) -> bool {
        let still = !self.any_flow && self.firing.is_none();
        match (stage, port) {
            (Stage::Rest | Stage::RestAgain, Port::Inlet) => self.fed && still,
            (Stage::Rest | Stage::RestAgain, Port::Manifold) => still,
            (Stage::Firing(level), Port::Inlet) => {
                self.firing == Some(level) && self.burning == 0 && !self.throttled
            }
            (Stage::Firing(level), Port::Manifold) => self.firing == Some(level) && !self.throttled,
            (Stage::FullLoad, _) => {
                let full = self.firing.is_some_and(Level::is_top) && self.burning == 2;
                full && !self.throttled
            }
        }
    }
}

/// What the meter does in one tick.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct MeterSample {
    /// The number on the display, in pascals.
    pub shown_pa: f64,
    /// Unit of the display.
    pub unit: PressureUnit,
    /// The true difference, in pascals.
    pub true_pa: f64,
    /// What the meter reads too high, in pascals.
    pub error_pa: f64,
    /// Moment of the sample, in ticks.
    pub tick: u64,
}

/// Where the hose is, and what is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize)]
pub(crate) struct At {
    /// Port that the hose is on.
    pub port: Port,
    /// How far the hose is pushed on.
    pub push: Push,
    /// State of the furnace and the other appliances.
    pub demand: GasDemand,
}

/// Lowest and highest of the numbers that were shown.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Span {
    /// Lowest number in it, in pascals.
    pub least_pa: f64,
    /// Highest number in it, in pascals.
    pub most_pa: f64,
    /// Moment of the first, in ticks.
    pub since: u64,
    /// Moment of the last, in ticks.
    pub until: u64,
}

impl Span {
    fn of(sample: MeterSample) -> Self {
        Self {
            least_pa: sample.shown_pa,
            most_pa: sample.shown_pa,
            since: sample.tick,
            until: sample.tick,
        }
    }

    fn add(&mut self, sample: MeterSample) {
        self.least_pa = self.least_pa.min(sample.shown_pa);
        self.most_pa = self.most_pa.max(sample.shown_pa);
        self.until = sample.tick;
    }
}

/// A stretch in which the meter was on one port and nothing was changed.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Spell {
    /// Port that the hose was on.
    pub port: Port,
    /// How far the hose was pushed on.
    pub push: Push,
    /// State of the furnace and the other appliances.
    pub demand: GasDemand,
    /// Unit that the display showed last.
    pub unit: PressureUnit,
    /// All numbers that were shown.
    pub shown: Span,
    /// Numbers that stood: those shown once the pressure had settled; none if it never did.
    pub stood: Option<Span>,
    /// What the meter read too high at the last of them, in pascals.
    pub error_pa: f64,
}

impl Spell {
    fn begin(at: At, sample: MeterSample) -> Self {
        Self {
            port: at.port,
            push: at.push,
            demand: at.demand,
            unit: sample.unit,
            shown: Span::of(sample),
            stood: None,
            error_pa: sample.error_pa,
        }
    }

    fn add(&mut self, sample: MeterSample, settled: bool) {
        self.shown.add(sample);
        self.unit = sample.unit;
        self.error_pa = sample.error_pa;
        match &mut self.stood {
            Some(stood) if settled => stood.add(sample),
            None if settled => self.stood = Some(Span::of(sample)),
            Some(_) | None => {}
        }
    }

    fn is_at(&self, at: At) -> bool {
        (self.port, self.push, self.demand) == (at.port, at.push, at.demand)
    }

    /// Whether it lasted long enough to read a number.
    #[expect(clippy::cast_precision_loss, reason = "ticks of one job")]
    fn is_readable(&self) -> bool {
        (self.shown.until - self.shown.since) as f64 * TICK_S >= READABLE_S
    }

    /// Whether a reading of `stage` at `port` is taken in it.
    #[must_use]
    pub fn is(&self, port: Port, stage: Stage) -> bool {
        self.port == port && self.demand.is(port, stage)
    }
}

/// Watches what is shown.
#[derive(Debug, Clone, Serialize)]
pub(crate) struct MeterHistory {
    settle_s: f64,
    spell: Option<Spell>,
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

/// What ended in a tick.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub(crate) struct Over {
    /// The spell that ended, if anybody could read a number in it.
    pub spell: Option<Spell>,
    /// The hold that ended, if it is long enough to speak of.
    pub hold: Option<Hold>,
}

impl MeterHistory {
    pub(crate) fn new(settle_s: f64) -> Self {
        Self { settle_s, spell: None, since_s: 0.0, smooth_pa: 0.0, hold: None }
    }

    /// Begins a spell anew: something was done that can move what is shown. Returns the one that
    /// this ends.
    pub(crate) fn begin_anew(&mut self) -> Option<Spell> {
        self.since_s = 0.0;
        self.spell.take().filter(Spell::is_readable)
    }

    /// The spell so far, if anybody can have read a number in it.
    pub(crate) fn spell(&self) -> Option<Spell> {
        self.spell.filter(Spell::is_readable)
    }

    /// One tick with the hose on a port, the meter on and in range; `None` when it is not. What the
    /// meter shows is asked for only where somebody can read it.
    #[inline]
    pub(crate) fn step(
        &mut self,
        at: Option<At>,
        true_pa: f64,
        sample: impl FnOnce() -> MeterSample,
    ) -> Over {
        let goes_on = match (&self.spell, at) {
            (Some(spell), Some(at)) => spell.is_at(at),
            (None, None) => true,
            (Some(_), None) | (None, Some(_)) => false,
        };
        let mut over = None;
        if !goes_on {
            over = self.begin_anew();
            self.smooth_pa = true_pa;
        }
        self.since_s += TICK_S;
        self.smooth_pa += (true_pa - self.smooth_pa) * TICK_S / (STEADY_S + TICK_S);
        if let Some(at) = at {
            let settled =
                self.since_s >= self.settle_s && (self.smooth_pa - true_pa).abs() < STEADY_PA;
            let sample = sample();
            self.spell.get_or_insert_with(|| Spell::begin(at, sample)).add(sample, settled);
        }
        Over { spell: over, hold: self.step_hold(at, true_pa) }
    }

    fn step_hold(&mut self, at: Option<At>, true_pa: f64) -> Option<Hold> {
        let holds =
            at.is_some_and(|at| at.port == Port::Inlet && at.demand.is(Port::Inlet, Stage::Rest));
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
}

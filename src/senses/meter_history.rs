//! What the manometer shows, spell by spell: the measure of a written reading.
//!
//! A spell is a stretch in which the hose stays as it is on one port and nothing is changed that the
//! number hangs on: no screw, hand valve, load, firing level, zero or low side. In it the number
//! runs to where it stands, and stays there or creeps. So a number that was shown in one state
//! says nothing of another, and every number belongs to one state.
//!
//! Only what somebody can see counts as shown: a spell runs from the first number that was seen to the
//! last, and goes on where nothing changed while the person was away. The pressure comes to rest
//! whether anybody looks or not, so that a number that stands is read at once on coming back.

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
    /// Whether what stands at the port comes to the hose: over a tap whose screw is turned in nothing
    /// does.
    pub tapped: bool,
}

impl GasDemand {
    /// Whether a reading of `stage` at `port` is taken in this state. Each level is read at the
    /// inlet with the furnace alone; the manifold is regulated, and may be read whatever else
    /// burns. At rest the inlet must feel the supply, not gas shut in behind a valve. At rest again
    /// nothing else is drawn than at rest: what burned before it, the spells before it tell.
    #[must_use]
    pub fn is(self, port: Port, stage: Stage) -> bool {
        if !self.tapped {
            return false;
        }
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
    /// Where the hose was at the last tick, seen or not, unless something was done since.
    at: Option<At>,
    spell: Option<Spell>,
    since_s: f64,
    smooth_pa: f64,
    /// A no-flow hold with the hose on the inlet, while it lasts.
    hold: Option<Holding>,
}

/// A no-flow hold under way.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
struct Holding {
    /// Seconds up to the last number that was seen.
    seconds: f64,
    /// Seconds since then with the instrument out of sight.
    unseen_s: f64,
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
        Self { settle_s, at: None, spell: None, since_s: 0.0, smooth_pa: 0.0, hold: None }
    }

    /// Begins a spell anew: something was done that can move what is shown. Returns the one that
    /// this ends.
    pub(crate) fn begin_anew(&mut self) -> Option<Spell> {
        (self.since_s, self.at) = (0.0, None);
        self.spell.take().filter(Spell::is_readable)
    }

    /// The spell so far, if anybody can have read a number in it.
    pub(crate) fn spell(&self) -> Option<Spell> {
        self.spell.filter(Spell::is_readable)
    }

    /// One tick with the hose on a port, the meter on and in range; `None` when it is not. `sample` is
    /// what it shows, none while it is out of sight; it is asked for only where somebody can read it.
    #[inline]
    pub(crate) fn step(
        &mut self,
        at: Option<At>,
        true_pa: f64,
        sample: Option<impl FnOnce() -> MeterSample>,
    ) -> Over {
        let mut over = None;
        if self.at != at {
            over = self.begin_anew();
            (self.at, self.smooth_pa) = (at, true_pa);
        }
        self.since_s += TICK_S;
        self.smooth_pa += (true_pa - self.smooth_pa) * TICK_S / (STEADY_S + TICK_S);
        let in_sight = sample.is_some();
        if let Some((at, sample)) = at.zip(sample) {
            let settled =
                self.since_s >= self.settle_s && (self.smooth_pa - true_pa).abs() < STEADY_PA;
            let sample = sample();
            self.spell.get_or_insert_with(|| Spell::begin(at, sample)).add(sample, settled);
        }
        Over { spell: over, hold: self.step_hold(at, true_pa, in_sight) }
    }

    /// A hold goes on while nobody looks; it is as long as the time from its first number to its last.
    fn step_hold(&mut self, at: Option<At>, true_pa: f64, in_sight: bool) -> Option<Hold> {
        let holds =
            at.is_some_and(|at| at.port == Port::Inlet && at.demand.is(Port::Inlet, Stage::Rest));
        if !holds {
            let ended = self.holding();
            self.hold = None;
            return ended;
        }
        let unsteady = (self.smooth_pa - true_pa).abs() > HOLD_STEADY_PA;
        match &mut self.hold {
            Some(hold) if !unsteady && in_sight => {
                hold.seconds += core::mem::take(&mut hold.unseen_s) + TICK_S;
                hold.now_pa = true_pa;
            }
            Some(hold) if !unsteady => hold.unseen_s += TICK_S,
            Some(_) | None => {
                self.hold = in_sight.then_some(Holding {
                    seconds: 0.0,
                    unseen_s: 0.0,
                    start_pa: true_pa,
                    now_pa: true_pa,
                });
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

//! The night after: the model run on for a day with the job as it was left, nobody at it.
//!
//! **Equation.** The same as a step's, of the same parts. While nothing happens, what is slow (house,
//! fans and exchanger, tank, room) goes on in fifths of a second, as ever, and what is fast and has
//! come to rest (gas network, control, burners) in one implicit step as long as the stretch.
//! **Assumptions.** Nobody touches anything; neighbours stay as they were left.
//! **Valid range.** Any state of the bench. A day by such strides agrees with one by ticks: counts
//! exactly, times of the control within 1 s, gas and heat within 0.5 %.
//! **Regularisation.** A stretch that changes a contact, a flame, a call or the air's danger, or moves
//! a pressure by more than a pascal or the fire by more than a thousandth, is taken back and tried
//! shorter, down to single ticks.
//! **Source.** Backward Euler is stable at any length (any text on numerical analysis). The bounds of
//! a stretch are our own.
//! **Left out.** Night set-back, sun, people, draughts; what a fire would do after it began.
//! **Checked.** `tests/core/bench/night.rs`: several states left behind, by strides and by ticks.

mod account;
mod stride;

use crate::appliance::ignition::ControlState;
use crate::bench::Bench;
use crate::units::TICK_S;

use account::Account;

/// Most changes of the control that are kept in the report.
pub const MOST_CHANGES: usize = 1_000;

/// How the time is gone through.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Pace {
    /// In strides from event to event.
    Strides,
    /// Tick by tick: what the strides are measured against.
    Ticks,
}

/// What the time after a job brought.
#[derive(Debug, Clone, PartialEq)]
pub struct Night {
    /// How long it went on, in seconds: shorter than asked for when gas ignited.
    pub seconds: f64,
    /// What the furnace did.
    pub furnace: FurnaceNight,
    /// What the gas did.
    pub gas: GasNight,
    /// What the air of the plant room was like.
    pub room: RoomNight,
    /// What the house was like.
    pub house: HouseNight,
    /// The tank, if there is one.
    pub tank: Option<TankNight>,
    /// Every change of the control, up to [`MOST_CHANGES`]: when, in seconds, and to what.
    pub changes: Vec<(f64, ControlState)>,
}

/// What the furnace did.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FurnaceNight {
    /// Times the burners lit.
    pub runs: u32,
    /// Times it came to rest after a run, called off by the thermostat.
    pub cycles: u32,
    /// Time burning, in seconds.
    pub lit_s: f64,
    /// Of that on high, in seconds.
    pub high_s: f64,
    /// Heat of the gas that burned, in joules.
    pub heat_j: f64,
    /// Tries that failed, or flames that were lost.
    pub retries: u32,
    /// Lockouts.
    pub lockouts: u32,
    /// Times the limit opened.
    pub limits: u32,
    /// Times a roll-out switch opened.
    pub rollouts: u32,
    /// Most carbon monoxide in the flue, air-free, in parts per million.
    pub co_air_free_ppm: f64,
}

/// What the gas did.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct GasNight {
    /// Gas drawn from the supply, in standard m³.
    pub drawn_m3: f64,
    /// Gas that escaped into the room, in standard m³.
    pub escaped_m3: f64,
    /// Lowest and highest pressure after the supply regulator, in pascals.
    pub supply_pa: Span,
    /// Lowest and highest pressure at the inlet port, in pascals.
    pub inlet_pa: Span,
    /// Lowest and highest manifold pressure while burning steadily on low, in pascals.
    pub low_pa: Span,
    /// Lowest and highest manifold pressure while burning steadily on high, in pascals.
    pub high_pa: Span,
    /// Neighbours whose flame went out and whose guard shut: water heater, range.
    pub went_out: [bool; 2],
}

/// What the air of the plant room was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct RoomNight {
    /// Most gas in vestibule, floor zone and breathing zone, as shares of the lower limit.
    pub most_of_lower_limit: [f64; 3],
    /// When it could first be smelt plainly by anyone breathing in the plant room, in seconds.
    pub smelt_s: Option<f64>,
    /// When a gas alarm at breathing height would first have sounded, in seconds.
    pub alarm_s: Option<f64>,
    /// When gas met a flame or a hot igniter, in seconds. The night ends there.
    pub ignition_s: Option<f64>,
}

/// What the house was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct HouseNight {
    /// Lowest and highest temperature, in kelvins.
    pub inside_k: Span,
    /// Temperature at the end, in kelvins.
    pub end_k: f64,
    /// Time more than 2 K below the setpoint, in seconds.
    pub cold_s: f64,
}

/// What the tank was like.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct TankNight {
    /// Level at the beginning and at the end, as fractions.
    pub level: [f64; 2],
    /// Lowest pressure, in pascals.
    pub lowest_pa: f64,
}

/// Lowest and highest of something.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Span {
    /// Lowest.
    pub low: f64,
    /// Highest.
    pub high: f64,
}

impl Default for Span {
    /// Nothing seen yet.
    fn default() -> Self {
        Self { low: f64::INFINITY, high: f64::NEG_INFINITY }
    }
}

impl Span {
    /// Whether anything was seen.
    #[must_use]
    pub fn is_seen(&self) -> bool {
        self.low <= self.high
    }

    fn see(&mut self, value: f64) {
        self.low = self.low.min(value);
        self.high = self.high.max(value);
    }
}

impl Bench {
    /// Runs a copy of the bench on for `seconds` (rounded to ticks) and tells what came of it. The
    /// bench itself stays where it is.
    #[must_use]
    pub fn night(&self, seconds: f64, pace: Pace) -> Night {
        let mut bench = self.clone();
        bench.events = Vec::new();
        let mut account = Account::new(&bench);
        let end = bench.tick + ticks(seconds);
        let mut reach = stride::Reach::default();
        while bench.tick < end && !account.is_over() {
            let passed = match pace {
                Pace::Ticks => bench.plain_tick(),
                Pace::Strides => bench.go_on(&mut reach, end),
            };
            #[expect(clippy::cast_precision_loss, reason = "ticks of one day")]
            let dt_s = passed as f64 * TICK_S;
            account.see(&bench, dt_s);
        }
        account.close(&bench)
    }

    /// One ordinary tick whose events nobody reads.
    pub(crate) fn plain_tick(&mut self) -> u64 {
        self.step();
        self.events.clear();
        1
    }
}

#[expect(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "kept within ten days of ticks"
)]
fn ticks(seconds: f64) -> u64 {
    (seconds.clamp(0.0, 864_000.0) / TICK_S).round() as u64
}

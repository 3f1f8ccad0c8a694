//! Digital manometer: two ports, zero, unit; it lags, drifts as it warms, and learns a wrong zero
//! when it is zeroed under pressure.
//!
//! **Equation.** `shown = lag₁(high − low) + e₀ + e_d·(1 − exp(−t/τ_d)) − z` in Pa, `z` what the
//! zero button learned; a new number every 20 ticks (0.4 s), rounded to the display (0.01 in. w.c.,
//! 0.001 kPa, 0.01 mbar). Water in the hose lets the sensor feel a change only beyond the head
//! that a drop holds back (play of `± h`, in Pa). A battery near its end lets the display stand
//! still before it goes out.
//! **Assumptions.** One first-order lag for hose and sensor; drift runs from the start of the job,
//! whether it is on or not. The zero button takes all that is felt and in error at that moment.
//! **Valid range.** Up to its range, by the pressure felt; beyond it the display says so. Lags well
//! above a step.
//! **Regularisation.** Lag and drift by one rational step each (`dt/(τ + dt)`, error below 1 %).
//! **Source.** Resolution 0.01 in. w.c., zeroing with both ports vented and again after warm-up:
//! common practice. Size and time of drift: the scenario's.
//! **Left out.** Span error, tilt.
//! **Checked.** `src/instrument/manometer.rs`: `zero_learns_whatever_presses_on_it()`,
//! `over_range_shows_no_number()`, `display_lags_first_order()` (closed form); readings on the
//! healthy rigs in `tests/core/bench/calibrated.rs`.

use crate::units::{PA_PER_INWC, PressureUnit, Shown};
use serde::Serialize;

/// Ticks between two numbers on the display.
const DISPLAY_TICKS: u64 = 20;

/// How long the display stands still before a flat battery lets it go out, in seconds (from memory).
const FROZEN_S: f64 = 240.0;

/// What is wrong inside a manometer or its hose, or with how it is found set.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Wear {
    /// What the zero button learned the last time somebody pressed it, in pascals.
    pub learned_pa: f64,
    /// Head that water in the hose holds back either way, in pascals.
    pub water_pa: f64,
    /// Time that its battery still drives the display, in seconds; none for a good battery.
    pub battery_s: Option<f64>,
    /// The unit that it is found set to, if not inches of water.
    pub unit: Option<PressureUnit>,
}

/// A digital manometer: reads the difference between two ports, with its errors.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Manometer {
    range_pa: f64,
    zero_error_pa: f64,
    drift_pa: f64,
    drift_s: f64,
    lag_s: f64,
    on: bool,
    unit: PressureUnit,
    learned_pa: f64,
    felt_pa: f64,
    shown_pa: f64,
    warm: f64,
    water_pa: f64,
    /// What is felt behind the water, in pascals.
    behind_pa: f64,
    battery_s: Option<f64>,
}

/// What a manometer shows.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum MeterDisplay {
    /// Nothing: it is off.
    Dark,
    /// The difference between the ports, rounded to the display.
    Number(Shown),
    /// More than its range.
    OverRange,
}

impl Manometer {
    /// A manometer that is off: range, zero error and final drift in pascals, time constants of drift
    /// and of hose with sensor in seconds.
    #[must_use]
    pub fn new(range_pa: f64, zero_error_pa: f64, drift_pa: f64, drift_s: f64, lag_s: f64) -> Self {
        Self {
            range_pa,
            zero_error_pa,
            drift_pa,
            drift_s,
            lag_s,
            on: false,
            unit: PressureUnit::InWc,
            learned_pa: 0.0,
            felt_pa: 0.0,
            shown_pa: 0.0,
            warm: 0.0,
            water_pa: 0.0,
            behind_pa: 0.0,
            battery_s: None,
        }
    }

    /// The same manometer with this wear.
    #[must_use]
    pub fn worn(mut self, wear: Wear) -> Self {
        self.learned_pa = wear.learned_pa;
        self.water_pa = wear.water_pa.max(0.0);
        self.battery_s = wear.battery_s;
        self.unit = wear.unit.unwrap_or(self.unit);
        self
    }

    /// Takes water and battery of `wear`, and this lag (s), as after work on hose or battery; what
    /// the zero button learned and the unit stay.
    pub fn refit(&mut self, wear: Wear, lag_s: f64) {
        if self.water_pa != wear.water_pa.max(0.0) {
            self.water_pa = wear.water_pa.max(0.0);
            self.behind_pa = 0.0;
        }
        if wear.battery_s.is_none() {
            self.battery_s = None;
        }
        self.lag_s = lag_s;
    }

    /// Whether it is on; with a flat battery it is not.
    #[must_use]
    pub fn is_on(&self) -> bool {
        self.on && !self.is_flat()
    }

    /// Whether its battery is flat.
    fn is_flat(&self) -> bool {
        self.battery_s.is_some_and(|left_s| left_s <= -FROZEN_S)
    }

    /// Turns it on or off. What the zero button learned is kept.
    pub fn set_on(&mut self, on: bool) {
        self.on = on;
    }

    /// The unit that the display counts in.
    #[must_use]
    pub fn unit(&self) -> PressureUnit {
        self.unit
    }

    /// Chooses the unit of the display; what is felt and learned stays.
    pub fn set_unit(&mut self, unit: PressureUnit) {
        self.unit = unit;
    }

    /// What it reads too high, in pascals.
    #[must_use]
    pub fn error_pa(&self) -> f64 {
        self.zero_error_pa + self.drift_pa * self.warm - self.learned_pa
    }

    /// Takes what it feels now as nothing.
    pub fn zero(&mut self) {
        self.learned_pa = self.felt_pa + self.zero_error_pa + self.drift_pa * self.warm;
        self.shown_pa = 0.0;
    }

    /// Goes on by `dt_s` with a true difference between its ports, in pascals.
    pub fn step(&mut self, tick: u64, dt_s: f64, difference_pa: f64) {
        // Both lags are far longer than a step, so one rational step serves (error below 1 %).
        let reaches_pa = self.behind_water(difference_pa);
        self.felt_pa += (reaches_pa - self.felt_pa) * dt_s / (self.lag_s + dt_s);
        self.warm += (1.0 - self.warm) * dt_s / (self.drift_s + dt_s);
        if let Some(left_s) = &mut self.battery_s
            && self.on
        {
            *left_s -= dt_s;
        }
        let frozen = self.battery_s.is_some_and(|left_s| left_s <= 0.0);
        if tick.is_multiple_of(DISPLAY_TICKS) && !frozen {
            self.shown_pa = self.felt_pa + self.error_pa();
        }
    }

    /// What gets past the water in the hose, in pascals.
    fn behind_water(&mut self, difference_pa: f64) -> f64 {
        if self.water_pa <= 0.0 {
            return difference_pa;
        }
        let slack = difference_pa - self.behind_pa;
        self.behind_pa += (slack.abs() - self.water_pa).max(0.0).copysign(slack);
        self.behind_pa
    }

    /// The number on the display in pascals, rounded as the display rounds.
    #[must_use]
    pub fn shown_pa(&self) -> f64 {
        self.shown().pa()
    }

    /// What is felt, true and lagged, in pascals.
    #[must_use]
    pub fn felt_pa(&self) -> f64 {
        self.felt_pa
    }

    /// Whether the pressure is beyond its range.
    #[must_use]
    pub fn over_range(&self) -> bool {
        self.felt_pa.abs() > self.range_pa
    }

    fn shown(&self) -> Shown {
        let (value, step) = match self.unit {
            PressureUnit::InWc => (self.shown_pa / PA_PER_INWC, 100.0),
            PressureUnit::KPa => (self.shown_pa / 1_000.0, 1_000.0),
            PressureUnit::Mbar => (self.shown_pa / 100.0, 100.0),
        };
        // Adding zero turns −0.00 into 0.00.
        Shown { value: (value * step).round() / step + 0.0, unit: self.unit }
    }

    /// What the display shows now: nothing, a number or over-range.
    #[must_use]
    pub fn face(&self) -> MeterDisplay {
        if !self.is_on() {
            MeterDisplay::Dark
        } else if self.over_range() {
            MeterDisplay::OverRange
        } else {
            MeterDisplay::Number(self.shown())
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn meter() -> Manometer {
        let mut meter = Manometer::new(15.0 * PA_PER_INWC, 100.0, 0.0, 600.0, 0.3);
        meter.set_on(true);
        meter
    }

    fn run(meter: &mut Manometer, seconds: u64, pa: f64) {
        for tick in 0..seconds * 50 {
            meter.step(tick, 0.02, pa);
        }
    }

    /// Zeroed in the open air it reads true; zeroed under pressure it carries that pressure along.
    #[test]
    fn zero_learns_whatever_presses_on_it() {
        let mut good = meter();
        run(&mut good, 10, 0.0);
        good.zero();
        run(&mut good, 20, 871.81);
        approx::assert_abs_diff_eq!(good.shown_pa(), 871.81, epsilon = 1.3);

        let mut bad = meter();
        run(&mut bad, 20, 871.81);
        bad.zero();
        run(&mut bad, 20, 871.81);
        approx::assert_abs_diff_eq!(bad.shown_pa(), 0.0, epsilon = 1.3);
        run(&mut bad, 20, 0.0);
        approx::assert_abs_diff_eq!(bad.shown_pa(), -871.81, epsilon = 1.3);
    }

    /// Beyond its range it shows no number, and it comes back.
    #[test]
    fn over_range_shows_no_number() {
        let mut meter = meter();
        run(&mut meter, 5, 20.0 * PA_PER_INWC);
        assert_eq!(meter.face(), MeterDisplay::OverRange);
        run(&mut meter, 5, 0.0);
        assert!(matches!(meter.face(), MeterDisplay::Number(_)));
    }

    /// First-order lag: after one time constant 63 % of a step is felt (closed form).
    #[test]
    fn display_lags_first_order() {
        let mut meter = Manometer::new(1e6, 0.0, 0.0, 600.0, 1.0);
        for tick in 0..50 {
            meter.step(tick, 0.02, 1000.0);
        }
        approx::assert_relative_eq!(meter.felt_pa(), 632.1, max_relative = 0.01);
    }
}

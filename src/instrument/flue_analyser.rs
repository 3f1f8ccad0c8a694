//! Flue gas analyser: cells for oxygen and carbon monoxide, a probe for temperature; the rest is
//! reckoned.
//!
//! **Equation.** Each cell follows the flue first-order: 90 % of a step after 20 s (oxygen), 40 s
//! (carbon monoxide), 12 s (temperature). `CO₂ = CO₂max·(1 − O₂/20.9 %)`, excess air and air-free
//! carbon monoxide as in [`crate::physics::combustion`]. Air that comes in behind the burners
//! thins the flue gas, `1 + e' = (1 + e)/((1 − a)(1 − b)·w)`, `a` and `b` the shares that come
//! through a dry trap and a holed exchanger, `w` the share of the gas that burns.
//! **Assumptions.** The fuel is set as the furnace's; dry gas at the cells.
//! **Valid range.** Oxygen 0–20.9 %, carbon monoxide 0–4,000 ppm; above that the cell shows its end.
//! **Regularisation.** Above 18 % oxygen nothing is reckoned: the face shows dashes.
//! **Source.** Carbon dioxide from oxygen: stoichiometry, as in 1. BImSchV annex 2. Response times:
//! common practice (a reading is taken after one or two minutes). Resolution 0.1 %, 1 ppm: common
//! practice.
//! **Left out.** Ageing cells, a filter full of water, cross-sensitivity, unburned hydrocarbons.
//! **Checked.** `src/instrument/flue_analyser.rs`: `cells_follow_in_their_time()`;
//! `tests/core/instruments/flue.rs`: thermochemistry in
//! `a_healthy_flame_shows_the_published_relation()`,
//! `a_blocked_flue_takes_oxygen_and_makes_monoxide()`.

use super::figure::{Figure, Quantity};
use crate::physics::combustion::{co_air_free_ppm, excess_air_from_o2};
use crate::physics::fluid::Gas;
use crate::units::f_from_k;
use serde::Serialize;

/// Oxygen in fresh air as a volume fraction; the upper end of the oxygen cell.
pub const AIR_O2: f64 = 0.209;
/// Time constants: 90 % of a step is 2.3 of them, in seconds.
const O2_S: f64 = 20.0 / 2.303;
const CO_S: f64 = 40.0 / 2.303;
const PROBE_S: f64 = 12.0 / 2.303;
/// Most that the cell shows, in parts per million.
const MOST_CO_PPM: f64 = 4_000.0;
/// Oxygen above which there is no flue gas to reckon with.
const TOO_THIN: f64 = 0.18;

/// What comes past the probe.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Sample {
    /// Oxygen in the dry gas, as a fraction.
    pub o2: f64,
    /// Carbon monoxide as it is there, in parts per million.
    pub co_ppm: f64,
    /// Temperature of the flue gas, in kelvins.
    pub gas_k: f64,
}

/// A flue gas analyser.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct FlueAnalyser {
    felt: Sample,
}

impl FlueAnalyser {
    /// One that has run in fresh air of this temperature, in kelvins.
    #[must_use]
    pub fn new(air_k: f64) -> Self {
        Self { felt: Sample { o2: AIR_O2, co_ppm: 0.0, gas_k: air_k } }
    }

    /// Goes on by `dt_s` with this at its probe.
    pub fn step(&mut self, dt_s: f64, sample: Sample) {
        let near = |now: f64, end: f64, lag_s: f64| now + (end - now) * dt_s / (lag_s + dt_s);
        self.felt = Sample {
            o2: near(self.felt.o2, sample.o2.min(AIR_O2), O2_S),
            co_ppm: near(self.felt.co_ppm, sample.co_ppm, CO_S),
            gas_k: near(self.felt.gas_k, sample.gas_k, PROBE_S),
        };
    }

    /// What the cells feel now.
    #[must_use]
    pub fn felt(&self) -> Sample {
        self.felt
    }

    /// Its face, set to a fuel.
    #[must_use]
    pub fn face(&self, fuel: &Gas) -> Vec<Figure> {
        let Sample { o2, co_ppm, gas_k } = self.felt;
        let co_ppm = co_ppm.min(MOST_CO_PPM);
        let reckoned = |quantity, value: f64| {
            if o2 < TOO_THIN { Figure::new(quantity, value) } else { Figure::none(quantity) }
        };
        vec![
            Figure::new(Quantity::Oxygen, 100.0 * o2),
            reckoned(Quantity::CarbonDioxide, 100.0 * fuel.co2_max * (1.0 - o2 / AIR_O2)),
            Figure::new(Quantity::CarbonMonoxide, co_ppm),
            reckoned(Quantity::CarbonMonoxideAirFree, co_air_free_ppm(co_ppm, o2)),
            Figure::new(Quantity::FlueTemperature, f_from_k(gas_k)),
            reckoned(Quantity::ExcessAir, 100.0 * excess_air_from_o2(fuel, o2)),
        ]
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Nine tenths of a step are there after 20 s for oxygen and after 40 s for carbon monoxide
    /// (closed form), and what is reckoned waits for flue gas.
    #[test]
    fn cells_follow_in_their_time() {
        let fuel = Gas::natural();
        let mut it = FlueAnalyser::new(293.0);
        assert_eq!(it.face(&fuel)[1].steps, None);
        let sample = Sample { o2: 0.109, co_ppm: 100.0, gas_k: 450.0 };
        for _ in 0..20 * 50 {
            it.step(0.02, sample);
        }
        approx::assert_abs_diff_eq!(it.felt().o2, 0.119, epsilon = 0.001);
        for _ in 0..20 * 50 {
            it.step(0.02, sample);
        }
        approx::assert_abs_diff_eq!(it.felt().co_ppm, 90.0, epsilon = 0.5);
        assert!(it.face(&fuel)[1].steps.is_some());
    }
}

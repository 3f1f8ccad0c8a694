//! Inducer, blower and heat exchanger.
//!
//! **Equation.** Fans follow their speed first-order; the exchanger is [`Exchanger`].
//! **Source.** Blower sized by the 1.08 rule for a rise in the middle of the plate's range.
//! **Left out.** Motor current, duct pressure.

use super::burner::INDUCER_LOW;
use super::ignition::Speed;
use crate::physics::heat::{AIR_J_M3_K, Exchanger};

/// Heat capacity of the exchanger, in J/K (about 30 kg of steel, common practice).
const EXCHANGER_J_K: f64 = 15e3;
/// Run-up and coast-down of the fans, in seconds.
const INDUCER_S: f64 = 1.2;
const BLOWER_S: f64 = 3.0;
/// Blower on low, against high.
const BLOWER_LOW: f64 = 0.75;
/// Flue gas above the metal, in kelvins, at full input.
const FLUE_ABOVE_METAL_K: f64 = 110.0;

/// The air side.
#[derive(Debug, Clone, PartialEq)]
pub struct AirSide {
    exchanger: Exchanger,
    inducer: f64,
    blower: f64,
    full_air_m3_s: f64,
    to_air_w: f64,
}

impl AirSide {
    /// An air side whose blower on high gives `rise_k` at `useful_w`.
    #[must_use]
    pub fn new(useful_w: f64, rise_k: f64, start_k: f64) -> Self {
        Self {
            exchanger: Exchanger::new(EXCHANGER_J_K, start_k),
            inducer: 0.0,
            blower: 0.0,
            full_air_m3_s: useful_w / (AIR_J_M3_K * rise_k.max(5.0)),
            to_air_w: 0.0,
        }
    }

    /// Goes on by `dt_s` with the fans driven so and heat from the flame.
    pub fn step(&mut self, dt_s: f64, inducer: Speed, blower: Speed, heat_w: f64, return_k: f64) {
        let approach = |now: f64, end: f64, tau: f64| now + (end - now) * dt_s / (tau + dt_s);
        self.inducer = approach(self.inducer, speed(inducer, INDUCER_LOW), INDUCER_S);
        self.blower = approach(self.blower, speed(blower, BLOWER_LOW), BLOWER_S);
        let air = self.full_air_m3_s * self.blower;
        self.to_air_w = self.exchanger.step(dt_s, heat_w, air, return_k);
    }

    /// Inducer speed, 0–1.
    #[must_use]
    pub fn inducer(&self) -> f64 {
        self.inducer
    }

    /// Blower speed, 0–1.
    #[must_use]
    pub fn blower(&self) -> f64 {
        self.blower
    }

    /// Heat to the house, in watts.
    #[must_use]
    pub fn to_air_w(&self) -> f64 {
        self.to_air_w
    }

    /// Supply-air temperature at the limit, in kelvins.
    #[must_use]
    pub fn supply_air_k(&self) -> f64 {
        self.exchanger.supply_air_k()
    }

    /// Flue-gas temperature, in kelvins.
    #[must_use]
    pub fn flue_k(&self) -> f64 {
        self.exchanger.metal_k() + FLUE_ABOVE_METAL_K
    }

    /// Every number that changes.
    pub fn digest(&self, sink: &mut impl FnMut(u64)) {
        self.exchanger.digest(sink);
        sink(self.inducer.to_bits());
        sink(self.blower.to_bits());
    }
}

fn speed(speed: Speed, low: f64) -> f64 {
    match speed {
        Speed::Off => 0.0,
        Speed::Low => low,
        Speed::High => 1.0,
    }
}

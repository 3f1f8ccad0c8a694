//! How a flame on an aerated jet looks, whether it stays, and whether a mixture lights.
//!
//! **Equation.** A jet of gas from a hole of diameter `d` into a throat of diameter `D` draws in
//! primary air, `r = √s·(D/d − 1)` volumes per volume of gas of specific gravity `s`; as a share of
//! the air for complete burning, `λ = r/air_per_gas · p/(p + p₀)` with the jet's velocity head `p`.
//! Burning speed against its best: `S = 1 − ((λ − 1)/0.8)²`. Loading `U`: mixture flow at the ports
//! against that at rated input. `U/S` above 3 lifts the flame, above 5 blows it off; below 0.30 it
//! burns back, if the primary mixture lies below the upper flammable limit. A mixture lights where
//! the limits overlap what lies between the primary mixture and the fully diluted one.
//! **Assumptions.** Cold hole and throat; ports sized for a rated flame with λ = 0.55.
//! **Valid range.** Primary air 0.1–1.2; loads 0.1–2.5 of rated.
//! **Regularisation.** `S` is kept at or above 0.5: a rich flame holds on by the air around it.
//! `p₀` = 20 Pa takes the primary air away smoothly as the jet dies. Yellow rises over 0.25 of
//! primary or 0.3 of excess air.
//! **Source.** Entrainment after Prigg's formula (from memory); flammable limits NFPA 325 and NFPA
//! 58. Yellow tips below about 0.40 (natural) and 0.45 (propane) of primary air, limits of lifting
//! and burning back, `p₀`: trend and order from memory.
//! **Left out.** Port cooling, hydrogen, burner materials, noise.
//! **Checked.** `tests/core/appliance/burner.rs`: `wrong_orifices_look_wrong()`,
//! `far_too_much_pressure_blows_flames_off()`, `a_slow_rich_in_air_mixture_burns_back()`, NFPA 325
//! in `only_a_flammable_mixture_lights()`.

use super::super::fluid::Gas;
use super::Fraction;
use serde::Serialize;

/// Primary air that the ports are sized for.
const RATED_PRIMARY: Fraction = 0.55;
/// Velocity head at which friction halves the primary air, in pascals.
const JET_HALF_PA: f64 = 20.0;
/// Loading over burning speed from which a flame lifts, and from which it is blown off.
const LIFTS: f64 = 3.0;
const BLOWS_OFF: f64 = 5.0;
/// Loading over burning speed below which a flame burns back into the tube.
const BURNS_BACK: f64 = 0.30;

/// One jet of gas and its surroundings.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Jet {
    /// Diameter of the hole, in metres.
    pub hole_m: f64,
    /// Diameter of the throat that it blows into, in metres.
    pub throat_m: f64,
    /// Gas, in standard m³/s.
    pub flow_m3_s: f64,
    /// Gas at rated input, in standard m³/s.
    pub rated_m3_s: f64,
    /// All the air that this flame gets beyond what it needs, as a fraction.
    pub excess_air: f64,
}

/// Whether a flame stays on its ports.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Default, Serialize)]
pub enum Stability {
    /// Burns on its ports, neither lifting nor burning back.
    #[default]
    Steady,
    /// Lifting off its ports here and there.
    Lifting,
    /// Blown off: it goes out.
    BlownOff,
    /// Burning back inside the tube.
    BurningBack,
}

/// How a flame looks.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
pub struct Look {
    /// Height against a healthy flame at rated input.
    pub height: f64,
    /// Primary air, as a share of the air for complete burning.
    pub primary: Fraction,
    /// How yellow and lazy, 0–1.
    pub yellow: Fraction,
    /// How sooty, 0–1: more than zero once `yellow` is above a half.
    pub soot: Fraction,
    /// Whether it stays on its ports.
    pub stability: Stability,
}

impl Jet {
    /// Velocity head of the gas in the hole, in pascals (gas at standard density).
    #[must_use]
    pub fn head_pa(&self, gas: &Gas) -> f64 {
        let area = 0.25 * core::f64::consts::PI * self.hole_m * self.hole_m;
        let speed = self.flow_m3_s / area.max(1e-12);
        0.5 * gas.density_std_kg_m3() * speed * speed
    }

    /// Primary air, as a share of the air for complete burning.
    #[must_use]
    pub fn primary(&self, gas: &Gas) -> Fraction {
        let head = self.head_pa(gas);
        let drawn =
            gas.specific_gravity.sqrt() * (self.throat_m / self.hole_m.max(1e-6) - 1.0).max(0.0);
        drawn / gas.air_per_gas * head / (head + JET_HALF_PA)
    }

    /// How its flame looks.
    #[must_use]
    pub fn look(&self, gas: &Gas) -> Look {
        let primary = self.primary(gas);
        let enough = if gas.specific_gravity > 1.0 { 0.45 } else { 0.40 };
        // Too little air in all, or too little of it before the flame.
        let short_in_all = (0.22 - self.excess_air) / 0.3;
        let short_before = (enough - primary) / 0.25;
        let yellow = short_in_all.max(short_before).clamp(0.0, 1.0);
        let loading = self.loading(gas, primary) / burning_speed(primary);
        let stability = if loading > BLOWS_OFF {
            Stability::BlownOff
        } else if loading > LIFTS {
            Stability::Lifting
        } else if loading < BURNS_BACK && gas_share(gas, primary) <= gas.upper_limit {
            Stability::BurningBack
        } else {
            Stability::Steady
        };
        Look {
            height: self.flow_m3_s / self.rated_m3_s.max(1e-12),
            primary,
            yellow,
            soot: (2.0 * yellow - 1.0).clamp(0.0, 1.0),
            stability,
        }
    }

    /// Mixture at the ports against that at rated input.
    fn loading(&self, gas: &Gas, primary: Fraction) -> f64 {
        let mixture = |flow: f64, share: f64| flow * (1.0 + share * gas.air_per_gas);
        mixture(self.flow_m3_s, primary) / mixture(self.rated_m3_s, RATED_PRIMARY).max(1e-12)
    }

    /// Whether a source at the ports lights it: somewhere between the primary mixture and the
    /// fully diluted one there must be a mixture within the flammable limits.
    #[must_use]
    pub fn lights(&self, gas: &Gas) -> Flammable {
        let lean = gas_share(gas, 1.0 + self.excess_air);
        let rich = gas_share(gas, self.primary(gas)).max(lean);
        if rich < gas.lower_limit {
            Flammable::TooLean
        } else if lean > gas.upper_limit {
            Flammable::TooRich
        } else {
            Flammable::Yes
        }
    }
}

/// Whether a mixture can be lit.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Flammable {
    /// A mixture within the flammable limits can be had.
    Yes,
    /// Less gas than the lower limit.
    TooLean,
    /// More gas than the upper limit.
    TooRich,
}

/// Gas in a mixture with `air` times the air for complete burning, as a fraction.
fn gas_share(gas: &Gas, air: f64) -> Fraction {
    1.0 / (1.0 + air.max(0.0) * gas.air_per_gas)
}

/// Burning speed of a mixture against the fastest, by its primary air.
fn burning_speed(primary: Fraction) -> f64 {
    let off = (primary - 1.0) / 0.8;
    (1.0 - off * off).max(0.5)
}

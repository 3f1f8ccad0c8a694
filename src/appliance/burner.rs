//! Four burners in a row: lighting from the first to the last, flames, flame current, and gas that
//! gathers when it does not light.
//!
//! **Equation.** Heat = flow × heating value × burned share; igniter temperature first-order; a
//! burner lights when its neighbour burns (or the igniter is hot enough, at the first) and gas
//! comes; unburned gas gathers in the box and is carried off by the inducer.
//! **Assumptions.** Equal burners but for their orifices; air goes with the inducer's speed.
//! **Source.** Hot-surface igniter warm-up 7–20 s (trade practice); flame current 1.8–4 µA typical
//! (a furnace manual); excess air of a natural-draft-free induced furnace 30–60 % (common
//! practice). Lighting limits and carry-over times: from memory.
//! **Left out.** Flash-back, noise, wind.
//! **Checked.** Tests below.

use crate::physics::combustion::{efficiency, flue_gas};
use crate::physics::fluid::Gas;

/// Number of burners.
pub const BURNERS: usize = 4;
/// Igniter temperature that lights gas, and at full heat, in kelvins (from memory).
const LIGHTS_K: f64 = 1150.0;
const HOT_K: f64 = 1600.0;
/// Time from burner to burner, in seconds (from memory).
const CARRY_S: f64 = 0.25;
/// Share of a burner's rated flow below which it cannot burn.
const LEAST: f64 = 0.12;
/// Volume in which unburned gas gathers, in m³.
const BOX_M3: f64 = 0.012;
/// Air changes of that volume with the inducer on low, per second.
const BOX_CHANGES_S: f64 = 0.4;
/// Gathered gas that makes a hard light, as a share of the lower flammable limit.
const HARD_LIGHT: f64 = 0.9;
/// Flame current of a clean rod in a full flame, in microamperes.
const FULL_UA: f64 = 3.2;
/// Excess air at rated input with the inducer on high.
const RATED_EXCESS: f64 = 0.42;
/// Excess air at rated low input with the inducer on low.
const RATED_LOW_EXCESS: f64 = 0.55;

/// One burner.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
struct Burner {
    lit: bool,
    waited_s: f64,
    /// Share of the rated flow.
    load: f64,
}

/// What the burners get.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BurnerIn {
    /// Gas to all burners, in standard m³/s.
    pub flow_m3_s: f64,
    /// Igniter on.
    pub igniter: bool,
    /// Inducer speed, 0–1.
    pub inducer: f64,
}

/// The burners.
#[derive(Debug, Clone, PartialEq)]
pub struct Burners {
    burners: [Burner; BURNERS],
    /// Each orifice's share of the flow.
    shares: [f64; BURNERS],
    rated_m3_s: f64,
    low_share: f64,
    warm_up_s: f64,
    igniter_k: f64,
    gathered_m3: f64,
    excess_air: f64,
    input_w: f64,
    bang_s: f64,
}

impl Burners {
    /// Burners with the orifices that are fitted, the rated flow on high (standard m³/s), low as a
    /// share of high, and the igniter's warm-up.
    #[must_use]
    pub fn new(orifices_m: &[f64], rated_m3_s: f64, low_share: f64, warm_up_s: f64) -> Self {
        let area: f64 = orifices_m.iter().map(|d| d * d).sum::<f64>().max(1e-12);
        let mut shares = [0.0; BURNERS];
        for (share, d) in shares.iter_mut().zip(orifices_m) {
            *share = d * d / area;
        }
        Self {
            burners: [Burner::default(); BURNERS],
            shares,
            rated_m3_s,
            low_share,
            warm_up_s,
            igniter_k: 300.0,
            gathered_m3: 0.0,
            excess_air: RATED_EXCESS,
            input_w: 0.0,
            bang_s: 0.0,
        }
    }

    /// Goes on by `dt_s`.
    pub fn step(&mut self, dt_s: f64, gas: &Gas, input: &BurnerIn) {
        self.step_igniter(dt_s, input.igniter);
        let flow = input.flow_m3_s.max(0.0);
        self.step_air(gas, flow, input.inducer);
        let mut unlit_m3_s = 0.0;
        let mut neighbor_lit = self.igniter_k >= LIGHTS_K;
        let mut newly_lit = false;
        for (burner, share) in self.burners.iter_mut().zip(self.shares) {
            let own = flow * share;
            burner.load = own * BURNERS_F / self.rated_m3_s;
            let burns = burner.load > LEAST;
            if !burns {
                burner.lit = false;
                burner.waited_s = 0.0;
            } else if !burner.lit && neighbor_lit {
                burner.waited_s += dt_s;
                if burner.waited_s >= CARRY_S {
                    burner.lit = true;
                    newly_lit = true;
                }
            }
            if !burner.lit {
                unlit_m3_s += own;
            }
            neighbor_lit = burner.lit;
        }
        self.step_box(dt_s, gas, unlit_m3_s, input.inducer, newly_lit);
        let burned = flue_gas(gas, self.excess_air).burned;
        self.input_w = (flow - unlit_m3_s).max(0.0) * gas.heating_value_j_m3 * burned;
    }

    fn step_igniter(&mut self, dt_s: f64, on: bool) {
        // Four time constants within the warm-up.
        let tau = 0.25 * self.warm_up_s;
        let end = if on { HOT_K } else { 300.0 };
        self.igniter_k += (end - self.igniter_k) * dt_s / (tau + dt_s);
    }

    fn step_air(&mut self, gas: &Gas, flow: f64, inducer: f64) {
        let rated_air = self.rated_m3_s * gas.air_per_gas * (1.0 + RATED_EXCESS);
        let low_air = self.rated_m3_s * self.low_share * gas.air_per_gas * (1.0 + RATED_LOW_EXCESS);
        // Between still, low (0.7 of the speed) and high the air goes with the speed.
        let air = if inducer <= INDUCER_LOW {
            low_air * inducer / INDUCER_LOW
        } else {
            low_air + (rated_air - low_air) * (inducer - INDUCER_LOW) / (1.0 - INDUCER_LOW)
        };
        self.excess_air = if flow > 0.02 * self.rated_m3_s {
            (air / (flow * gas.air_per_gas) - 1.0).clamp(-0.9, 5.0)
        } else {
            RATED_EXCESS
        };
    }

    fn step_box(&mut self, dt_s: f64, gas: &Gas, unlit: f64, inducer: f64, newly_lit: bool) {
        let changes = BOX_CHANGES_S * inducer / INDUCER_LOW;
        self.gathered_m3 = (self.gathered_m3 + unlit * dt_s) / (1.0 + changes * dt_s);
        self.bang_s = (self.bang_s - dt_s).max(0.0);
        let share = self.gathered_m3 / BOX_M3 / gas.lower_limit;
        if newly_lit && share > HARD_LIGHT {
            self.bang_s = 1.5;
        }
        if newly_lit {
            self.gathered_m3 = 0.0;
        }
    }

    /// Flame current at the rod in the last burner, in microamperes.
    #[must_use]
    pub fn flame_ua(&self) -> f64 {
        let last = self.burners[BURNERS - 1];
        if last.lit { FULL_UA * last.load.clamp(0.0, 1.3).sqrt() } else { 0.0 }
    }

    /// Heat input that burns, in watts.
    #[must_use]
    pub fn input_w(&self) -> f64 {
        self.input_w
    }

    /// Excess air, as a fraction of the air for complete burning.
    #[must_use]
    pub fn excess_air(&self) -> f64 {
        self.excess_air
    }

    /// Heat that stays in the exchanger, in watts, with flue gas at `flue_k`.
    #[must_use]
    pub fn useful_w(&self, gas: &Gas, flue_k: f64) -> f64 {
        self.input_w * efficiency(gas, self.excess_air, flue_k)
    }

    /// Carbon monoxide in the flue, air-free, in parts per million; 0 with no flame.
    #[must_use]
    pub fn co_air_free_ppm(&self, gas: &Gas) -> f64 {
        if self.any_lit() { flue_gas(gas, self.excess_air).co_air_free_ppm } else { 0.0 }
    }

    /// Whether any burner burns.
    #[must_use]
    pub fn any_lit(&self) -> bool {
        self.burners.iter().any(|burner| burner.lit)
    }

    /// Whether gas would be lit here: a flame or a hot igniter.
    #[must_use]
    pub fn ignites(&self) -> bool {
        self.any_lit() || self.igniter_k >= LIGHTS_K
    }

    /// Height (1 at rated input) and yellowness of each flame.
    #[must_use]
    pub fn flames(&self) -> [(f64, f64); BURNERS] {
        let yellow = ((0.22 - self.excess_air) / 0.3).clamp(0.0, 1.0);
        self.burners.map(|burner| if burner.lit { (burner.load, yellow) } else { (0.0, 0.0) })
    }

    /// Flames too large for their air reach out of the tubes.
    #[must_use]
    pub fn rolls_out(&self) -> bool {
        self.any_lit() && self.excess_air < -0.3
    }

    /// Brightness of the igniter, 0–1.
    #[must_use]
    pub fn glow(&self) -> f64 {
        ((self.igniter_k - 850.0) / (HOT_K - 850.0)).clamp(0.0, 1.0)
    }

    /// Whether a hard light was heard just now.
    #[must_use]
    pub fn banged(&self) -> bool {
        self.bang_s > 0.0
    }

    /// Every number that changes.
    pub fn digest(&self, sink: &mut impl FnMut(u64)) {
        for burner in &self.burners {
            sink(u64::from(burner.lit));
            sink(burner.waited_s.to_bits());
        }
        for value in [self.igniter_k, self.gathered_m3, self.excess_air, self.input_w, self.bang_s]
        {
            sink(value.to_bits());
        }
    }
}

/// Inducer speed on low, against high.
pub const INDUCER_LOW: f64 = 0.7;
const BURNERS_F: f64 = 4.0;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::units::W_PER_BTU_H;

    fn burners() -> (Burners, Gas, f64) {
        let gas = Gas::natural();
        let rated = 80_000.0 * W_PER_BTU_H / gas.heating_value_j_m3;
        (Burners::new(&[2.3e-3; 4], rated, 0.7, 17.0), gas, rated)
    }

    /// With a hot igniter all four light within two seconds; without one none does, and the gas
    /// gathers to a hard light when the igniter comes late.
    #[test]
    fn burners_light_in_turn_and_a_late_light_is_hard() {
        let (mut good, gas, rated) = burners();
        let run = |b: &mut Burners, seconds: f64, flow: f64, igniter: bool| {
            for _ in 0..(seconds * 50.0) as u32 {
                b.step(0.02, &gas, &BurnerIn { flow_m3_s: flow, igniter, inducer: 0.7 });
            }
        };
        run(&mut good, 17.0, 0.0, true);
        run(&mut good, 2.0, 0.7 * rated, true);
        assert!(good.flames().iter().all(|flame| flame.0 > 0.6));
        assert!(good.flame_ua() > 2.0 && !good.banged());

        let (mut late, ..) = burners();
        run(&mut late, 4.0, 0.7 * rated, false);
        assert!(!late.any_lit() && late.flame_ua() == 0.0);
        for _ in 0..1000 {
            late.step(
                0.02,
                &gas,
                &BurnerIn { flow_m3_s: 0.7 * rated, igniter: true, inducer: 0.7 },
            );
            if late.any_lit() {
                break;
            }
        }
        assert!(late.banged());
    }

    /// Over-firing shortens the air: more carbon monoxide and yellow flames; input follows flow.
    #[test]
    fn over_firing_shows_in_flame_and_flue() {
        let (mut b, gas, rated) = burners();
        let at = |b: &mut Burners, flow: f64| {
            for _ in 0..2000 {
                b.step(0.02, &gas, &BurnerIn { flow_m3_s: flow, igniter: true, inducer: 1.0 });
            }
            (b.input_w() / W_PER_BTU_H, b.co_air_free_ppm(&gas), b.flames()[0].1)
        };
        let (input, co, yellow) = at(&mut b, rated);
        approx::assert_relative_eq!(input, 80_000.0, max_relative = 1e-9);
        assert!(co < 100.0 && yellow == 0.0);
        let (_, co_over, yellow_over) = at(&mut b, 1.35 * rated);
        assert!(co_over > 5.0 * co && yellow_over > 0.3);
    }
}

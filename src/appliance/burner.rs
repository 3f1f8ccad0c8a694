//! Burners in a row: lighting from the first to the last, flames, flame current, and gas that
//! gathers when it does not light.
//!
//! **Equation.** Each burner's gas is its orifice's share of the flow, `dᵢ²/Σd²`; each tube gets an
//! equal part of the air. Heat = flow × heating value × burned share. Air goes with the inducer's
//! speed, in a straight line to 42 % excess at the full rate, on a furnace with two levels bent
//! through 55 % at the first level, times the free way ([`Draft`]). Igniter temperature
//! first-order, a quarter of the warm-up as time constant. The first burner lights when the igniter
//! is at 1,150 K and a flammable mixture is there, the others from a burning neighbour, each after
//! 0.25 s, across a dark one after 1.2 s. Flame current `3.2 µA·√load` × reach × contact × rod ×
//! ground, the reach full from 35 % of rated, none below 12 %. Unburned gas gathers in a box of 12
//! l and is carried off by the inducer, 0.4 changes a second at the inducer's reduced speed; lit
//! late, it goes off at once.
//! **Assumptions.** Equal tubes, each of them with the jet of [`Jet`]; the last burner bears the
//! rod.
//! **Valid range.** 1 to 8 burners, up to about three times the rated input.
//! **Regularisation.** Flows under 2 % of rated count as none for the air's arithmetic. Flames are
//! worked out anew when gas or air has changed by a thousandth; heat follows the flow at once.
//! **Source.** Hot-surface igniter warm-up 7–20 s (trade practice); flame current 1.8–4 µA typical
//! (a furnace manual), its fall with a dirty rod or a poor ground: trade practice; excess air of an
//! induced-draft furnace 30–60 % (common practice). Lighting temperature, carry-over times, the
//! rod's reach, the box and its air changes, throat 16 mm: from memory, or our own appliance.
//! **Left out.** Noise, wind, a flame that wanders when the blower starts.
//! **Checked.** `tests/core/appliance/burner.rs`: `healthy_burners_burn_blue()`,
//! `flames_carry_over_in_turn()`, `a_plugged_orifice_is_a_dark_burner()`, `a_late_light_is_hard()`,
//! `rod_and_ground_scale_the_flame_current()`, `restricted_air_makes_carbon_monoxide()`, Wobbe
//! ratios in `wrong_orifices_look_wrong()`.

use super::draft::Draft;
use super::level::Levels;
use crate::physics::combustion::flame::{Flammable, Jet, Look, Stability};
use crate::physics::combustion::{burned_share, efficiency, flue_gas, weak_jet_co_ppm};
use crate::physics::fluid::Gas;
use serde::Serialize;

/// Number of burners that a drawing shows.
const BURNERS: usize = 4;
/// Most burners; more orifices than that are taken as none.
const MOST_BURNERS: usize = 24;
/// Inducer speed below the full rate, against its full speed.
pub const INDUCER_REDUCED: f64 = 0.7;
/// Igniter temperature that lights gas, at full heat, and in a cold box, in kelvins (from memory).
const LIGHTS_K: f64 = 1150.0;
const HOT_K: f64 = 1600.0;
const COLD_K: f64 = 300.0;
/// Igniter temperature from which it glows visibly, in kelvins.
const GLOWS_K: f64 = 850.0;
/// Time from a burning burner to its neighbour, and across one that does not burn, in seconds
/// (from memory).
const CARRY_S: f64 = 0.25;
const CARRY_ACROSS_S: f64 = 1.2;
/// Share of a burner's rated flow below which it cannot burn.
const LEAST: f64 = 0.12;
/// Share of a burner's rated flow from which its flame bathes the rod.
const REACHES_ROD: f64 = 0.35;
/// Throat of a burner tube, in metres (our own appliance).
const THROAT_M: f64 = 0.016;
/// Volume in which unburned gas gathers, in m³.
const BOX_M3: f64 = 0.012;
/// Air changes of that volume with the inducer at its reduced speed, per second.
const BOX_CHANGES_S: f64 = 0.4;
/// Gathered gas that makes a hard light, as a share of the lower flammable limit.
const HARD_LIGHT: f64 = 0.9;
/// How long a hard light is heard, in seconds.
const BANG_S: f64 = 1.5;
/// Flame current of a clean rod in a full flame, in microamperes.
const FULL_UA: f64 = 3.2;
/// Excess air at rated input with the inducer at full speed.
const RATED_EXCESS: f64 = 0.42;
/// Excess air at the rated input of a level below the full rate, with the inducer at its speed.
const REDUCED_EXCESS: f64 = 0.55;
/// Shortage of air from which a flame comes out of its tube.
const ROLLS_OUT_BELOW: f64 = -0.3;
/// Change of gas or air, against rated gas, from which the flames are worked out anew.
const NOTICED: f64 = 1e-3;

/// One burner of the row, with its own orifice and flame.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
struct Burner {
    hole_m: f64,
    /// Its orifice's share of the flow.
    share: f64,
    lit: bool,
    /// How long it has been about to light from beside, and from across a dark one.
    waited_s: [f64; 2],
    excess_air: f64,
    lights: bool,
    co_air_free_ppm: f64,
    look: Look,
}

/// What the burners that are lit come to together.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize)]
struct Sum {
    /// Share of the gas that goes to burners that are lit.
    lit: f64,
    /// Share of the gas that burns.
    burned: f64,
    co_air_free_ppm: f64,
}

impl Sum {
    fn of(burners: &[Burner]) -> Self {
        let mut sum = Self::default();
        for burner in burners.iter().filter(|burner| burner.lit) {
            sum.lit += burner.share;
            sum.burned += burner.share * burned_share(burner.excess_air);
            sum.co_air_free_ppm += burner.share * burner.co_air_free_ppm;
        }
        if sum.lit > 0.0 {
            sum.co_air_free_ppm /= sum.lit;
        }
        if burners.iter().all(|burner| burner.lit) {
            // The shares add up to one but for the last digit.
            sum.lit = 1.0;
        }
        sum
    }
}

/// What the burners get.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct BurnerIn {
    /// Gas to all burners, in standard m³/s.
    pub flow_m3_s: f64,
    /// Whether the control drives the igniter.
    pub igniter: bool,
    /// Inducer speed as a share of its full speed, 0–1.
    pub inducer: f64,
}

/// The condition that the burners are in.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Condition {
    /// The way of the combustion air.
    pub draft: Draft,
    /// Share of the flame current that a dirty rod lets through, 1 when clean.
    pub rod: f64,
    /// Share of the flame current that the burners' ground lets through, 1 when good.
    pub ground: f64,
    /// Share of its heat that the igniter still makes, 1 when new, 0 when cracked.
    pub igniter: f64,
    /// Time by which gas reaches the igniter late, in seconds: an igniter out of place, a dirty
    /// first burner.
    pub late_s: f64,
}

impl Default for Condition {
    fn default() -> Self {
        Self { draft: Draft::default(), rod: 1.0, ground: 1.0, igniter: 1.0, late_s: 0.0 }
    }
}

/// A late light of gathered gas.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HardLight {
    /// Gas that went off at once, in standard m³.
    pub gas_m3: f64,
    /// Its heat, in joules.
    pub heat_j: f64,
}

/// A row of burners on one manifold, the igniter at the first, the flame rod at the last.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct Burners {
    burners: Vec<Burner>,
    /// Rated flow at each level, in standard m³/s.
    rated_m3_s: Levels<f64>,
    warm_up_s: f64,
    condition: Condition,
    /// Gas and air that the flames were last worked out for, in standard m³/s.
    worked_out: (f64, f64),
    sum: Sum,
    /// From the condition: air against the clean way's, flame current against a clean rod's.
    air_share: f64,
    rod_share: f64,
    /// Share of the air that comes through a hole in the exchanger instead of past the burners.
    blown_in: f64,
    igniter_k: f64,
    gathered_m3: f64,
    excess_air: f64,
    input_w: f64,
    bang_s: f64,
    hard_light: HardLight,
}

impl Burners {
    /// Burners with the orifices that are fitted (diameters in m, 24 at most), the rated flow of
    /// all together at each level (standard m³/s), and the igniter's warm-up (s).
    #[must_use]
    pub fn new(orifices_m: &[f64], rated_m3_s: Levels<f64>, warm_up_s: f64) -> Self {
        let orifices_m = orifices_m.get(..MOST_BURNERS).unwrap_or(orifices_m);
        let area: f64 = orifices_m.iter().map(|d| d * d).sum::<f64>().max(1e-12);
        let burner = |&hole_m: &f64| Burner {
            hole_m,
            share: hole_m * hole_m / area,
            lit: false,
            waited_s: [0.0; 2],
            excess_air: RATED_EXCESS,
            lights: false,
            co_air_free_ppm: 0.0,
            look: Look::default(),
        };
        Self {
            burners: orifices_m.iter().map(burner).collect(),
            rated_m3_s,
            warm_up_s,
            condition: Condition::default(),
            worked_out: (-1.0, -1.0),
            sum: Sum::default(),
            air_share: 1.0,
            rod_share: 1.0,
            blown_in: 0.0,
            igniter_k: COLD_K,
            gathered_m3: 0.0,
            excess_air: RATED_EXCESS,
            input_w: 0.0,
            bang_s: 0.0,
            hard_light: HardLight { gas_m3: 0.0, heat_j: 0.0 },
        }
    }

    /// Puts other orifices in (diameters in m); the flames are out then.
    pub fn set_orifices(&mut self, orifices_m: &[f64]) {
        let Self { rated_m3_s, warm_up_s, .. } = *self;
        self.burners = Self::new(orifices_m, rated_m3_s, warm_up_s).burners;
        self.worked_out = (-1.0, -1.0);
    }

    /// Sets the condition that the burners are in.
    pub fn set_condition(&mut self, condition: Condition) {
        self.condition = condition;
        self.air_share = condition.draft.air_share();
        self.rod_share = condition.rod.clamp(0.0, 1.0) * condition.ground.clamp(0.0, 1.0);
    }

    /// Sets the share of the inducer's air that the blower pushes in through a hole in the
    /// exchanger, 0–1: the burners go without it.
    pub fn set_blown_in(&mut self, share: f64) {
        self.blown_in = share.clamp(0.0, 0.95);
    }

    /// Goes on by `dt_s`.
    pub fn step(&mut self, dt_s: f64, gas: &Gas, input: &BurnerIn) {
        self.step_igniter(dt_s, input.igniter);
        let flow = input.flow_m3_s.max(0.0);
        let air = self.air_m3_s(gas, input.inducer);
        self.excess_air = excess(gas, air, flow, *self.rated_m3_s.top());
        let noticed = NOTICED * self.rated_m3_s.top();
        let (gas_then, air_then) = self.worked_out;
        let changed =
            (flow - gas_then).abs() > noticed || (air - air_then).abs() > noticed * gas.air_per_gas;
        if changed {
            self.work_out_flames(gas, flow, air);
        }
        // With nothing changed, only burners that have gas and do not burn yet need a look.
        let waiting = flow > noticed && self.sum.lit < 1.0;
        let newly_lit = (changed || waiting) && self.step_lights(dt_s);
        self.step_box(dt_s, gas, flow * (1.0 - self.sum.lit), input.inducer, newly_lit);
        self.input_w = flow * self.sum.burned * gas.heating_value_j_m3;
    }

    fn step_igniter(&mut self, dt_s: f64, on: bool) {
        // Four time constants within the warm-up.
        let tau = 0.25 * self.warm_up_s;
        let rise = self.condition.igniter.clamp(0.0, 1.0) * (HOT_K - COLD_K);
        let end = if on { COLD_K + rise } else { COLD_K };
        self.igniter_k += (end - self.igniter_k) * dt_s / (tau + dt_s);
    }

    /// Air to all burners, in standard m³/s.
    fn air_m3_s(&self, gas: &Gas, inducer: f64) -> f64 {
        let rated_air = self.rated_m3_s.top() * gas.air_per_gas * (1.0 + RATED_EXCESS);
        // Between still, the reduced and the full speed the air goes with the speed.
        let reduced_air = if self.rated_m3_s.first_level().is_top() {
            rated_air * INDUCER_REDUCED
        } else {
            self.rated_m3_s.first() * gas.air_per_gas * (1.0 + REDUCED_EXCESS)
        };
        let clean = if inducer <= INDUCER_REDUCED {
            reduced_air * inducer / INDUCER_REDUCED
        } else {
            let above = (inducer - INDUCER_REDUCED) / (1.0 - INDUCER_REDUCED);
            reduced_air + (rated_air - reduced_air) * above
        };
        clean * self.air_share * (1.0 - self.blown_in)
    }

    fn work_out_flames(&mut self, gas: &Gas, flow: f64, air: f64) {
        self.worked_out = (flow, air);
        let tubes = self.tubes();
        let rated = self.rated_m3_s.top() / tubes;
        for burner in &mut self.burners {
            let own = flow * burner.share;
            burner.excess_air = excess(gas, air / tubes, own, rated);
            let jet = Jet {
                hole_m: burner.hole_m,
                throat_m: THROAT_M,
                flow_m3_s: own,
                rated_m3_s: rated,
                excess_air: burner.excess_air,
            };
            burner.look = jet.look(gas);
            burner.lights = jet.lights(gas) == Flammable::Yes;
            burner.co_air_free_ppm = flue_gas(gas, burner.excess_air).co_air_free_ppm
                + weak_jet_co_ppm(jet.head_pa(gas));
        }
    }

    /// Lights and puts out; says whether one lit just now.
    fn step_lights(&mut self, dt_s: f64) -> bool {
        let igniter = self.igniter_k >= LIGHTS_K;
        // One bit a burner, shifted by two so that neighbours beyond the ends are out.
        let lit: u32 =
            self.burners.iter().rev().fold(0, |bits, b| bits << 1 | u32::from(b.lit)) << 2;
        let mut newly_lit = false;
        for (i, burner) in self.burners.iter_mut().enumerate() {
            if burner.look.height <= LEAST || burner.look.stability == Stability::BlownOff {
                burner.lit = false;
                burner.waited_s = [0.0; 2];
                continue;
            }
            let around = lit >> i;
            let beside = around & 0b01010 != 0 || (i == 0 && igniter);
            let across = around & 0b10001 != 0;
            if burner.lit || !burner.lights || !(beside || across) {
                continue;
            }
            let [from_beside, from_across] = &mut burner.waited_s;
            *from_beside = if beside { *from_beside + dt_s } else { 0.0 };
            *from_across = if across { *from_across + dt_s } else { 0.0 };
            let carry_s = if i == 0 { CARRY_S + self.condition.late_s } else { CARRY_S };
            if *from_beside >= carry_s || *from_across >= CARRY_ACROSS_S {
                burner.lit = true;
                newly_lit = true;
            }
        }
        self.sum = Sum::of(&self.burners);
        newly_lit
    }

    fn step_box(&mut self, dt_s: f64, gas: &Gas, unlit: f64, inducer: f64, newly_lit: bool) {
        let changes = BOX_CHANGES_S * inducer / INDUCER_REDUCED;
        self.gathered_m3 = (self.gathered_m3 + unlit * dt_s) / (1.0 + changes * dt_s);
        self.bang_s = (self.bang_s - dt_s).max(0.0);
        if !newly_lit {
            return;
        }
        if self.gathered_m3 / BOX_M3 / gas.lower_limit > HARD_LIGHT {
            self.bang_s = BANG_S;
            let gas_m3 = self.gathered_m3;
            self.hard_light = HardLight { gas_m3, heat_j: gas_m3 * gas.heating_value_j_m3 };
        }
        self.gathered_m3 = 0.0;
    }

    #[expect(clippy::cast_precision_loss, reason = "a handful of burners")]
    fn tubes(&self) -> f64 {
        self.burners.len().max(1) as f64
    }

    /// Flame current at the rod in the last burner, in microamperes.
    #[must_use]
    pub fn flame_ua(&self) -> f64 {
        let Some(last) = self.burners.last().filter(|last| last.lit) else { return 0.0 };
        let load = last.look.height;
        let reach = ((load - LEAST) / (REACHES_ROD - LEAST)).clamp(0.0, 1.0);
        let contact = match last.look.stability {
            Stability::Steady => 1.0,
            Stability::Lifting => 0.5,
            Stability::BurningBack => 0.3,
            Stability::BlownOff => 0.0,
        };
        FULL_UA * load.clamp(0.0, 1.3).sqrt() * reach * contact * self.rod_share
    }

    /// Heat input that burns, in watts.
    #[must_use]
    pub fn input_w(&self) -> f64 {
        self.input_w
    }

    /// Excess air over all burners, as a fraction of the air for complete burning.
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
    pub fn co_air_free_ppm(&self) -> f64 {
        self.sum.co_air_free_ppm
    }

    /// Whether any burner burns.
    #[must_use]
    pub fn any_lit(&self) -> bool {
        self.sum.lit > 0.0
    }

    /// Whether gas would be lit here: a flame or a hot igniter.
    #[must_use]
    pub fn ignites(&self) -> bool {
        self.any_lit() || self.igniter_k >= LIGHTS_K
    }

    /// Height (1 at rated input) and yellowness of each flame that a drawing shows.
    #[must_use]
    pub fn flames(&self) -> [(f64, f64); BURNERS] {
        let mut flames = [(0.0, 0.0); BURNERS];
        for (flame, look) in flames.iter_mut().zip(self.looks()) {
            *flame = look.map_or((0.0, 0.0), |look| (look.height, look.yellow));
        }
        flames
    }

    /// How each burner's flame looks; `None` where none burns.
    pub fn looks(&self) -> impl Iterator<Item = Option<Look>> {
        self.burners.iter().map(|burner| burner.lit.then_some(burner.look))
    }

    /// Flames too large for their air reach out of the tubes.
    #[must_use]
    pub fn rolls_out(&self) -> bool {
        self.burners.iter().any(|burner| burner.lit && burner.excess_air < ROLLS_OUT_BELOW)
    }

    /// Brightness of the igniter, 0–1.
    #[must_use]
    pub fn glow(&self) -> f64 {
        ((self.igniter_k - GLOWS_K) / (HOT_K - GLOWS_K)).clamp(0.0, 1.0)
    }

    /// Whether a hard light was heard just now.
    #[must_use]
    pub fn banged(&self) -> bool {
        self.bang_s > 0.0
    }

    /// The hard light of just now.
    #[must_use]
    pub fn hard_light(&self) -> Option<HardLight> {
        self.banged().then_some(self.hard_light)
    }
}

/// Excess air of a gas flow; with next to no flow that of rated input.
fn excess(gas: &Gas, air_m3_s: f64, gas_m3_s: f64, rated_m3_s: f64) -> f64 {
    if gas_m3_s > 0.02 * rated_m3_s {
        (air_m3_s / (gas_m3_s * gas.air_per_gas) - 1.0).clamp(-0.9, 5.0)
    } else {
        RATED_EXCESS
    }
}

//! Spring-loaded pressure regulator.
//!
//! **Equation.** Balance on the diaphragm, in N:
//! `F(s − z) = A_d·(P_out − P_ref) − σ·A_s·(P_in − P_out)`, `s` the screwed-in spring compression,
//! `z` the lift, σ = +1 where the inlet opens the seat, −1 where it closes it, 0 for a balanced
//! seat; `F` the spring's force (`spring`) with a stacked spring or weight. The seat passes
//! `CdA(z)` and a leak, flow by [`OpeningLaw`]. The lift follows the balance with a lag τ, solved
//! inside the implicit step: `z' = (z + (dt/τ)·z*(P'))/(1 + dt/τ)`. The preload follows its setting
//! with a lag of its own. A bonnet whose vent is blocked is an air spring beside the coil spring:
//! `K = p·A_d²/V` in N/m, around a rest that follows the lift with the time in which the vent lets
//! air by ([`Bonnet`]).
//! **Assumptions.** Massless moving parts, constant areas, outlet sensed at the outlet node; the
//! inlet's push on the seat is that of the step's start (its effect is a fraction of a percent). A
//! spring let off beyond its free length pulls; that matters only with the outlet below the
//! reference.
//! **Valid range.** Any pressures; `A_d > |σ·A_s|`.
//! **Regularisation.** Seat toe and travel stops: [`SeatProfile`]. Onset of coil bind: [`Spring`].
//! Backward flow (outlet above inlet) sees the lift that follows from the step's start, so
//! `∂Q/∂P_out ≤ 0` and `∂Q/∂P_in ≥ 0` hold always.
//! **Source.** Force balance as in any text on self-operated regulators (e.g. Zafer and Luecke,
//! Applied Mathematical Modelling 32 (2008) 61–82). Set point, lock-up and droop are inputs of
//! [`RegulatorSpec::from_behaviour`].
//! **Left out.** Mass and hum, diaphragm area change over travel, hysteresis, the boost of a
//! sensing point in fast flow.
//! **Checked.** `tests/core/physics/regulator.rs`: `calibration_is_met()`, `locked_up_gas_stays()`,
//! `droop_is_linear_in_flow()`, `starved_outlet_follows_the_inlet()` and `nicked_seat_creeps()`
//! against closed forms, `inlet_effect_has_its_size_and_sign()`, `screw_from_end_to_end()`,
//! `reference_pressure_shifts_the_outlet()`, `lift_lags_in_first_order()`.

mod calibrate;
mod seat;
mod spring;

use super::orifice::{FlowSlopes, OpeningLaw};
use serde::Serialize;

pub use calibrate::{Behaviour, CalibrationError};
pub use seat::SeatProfile;
pub use spring::Spring;

/// Which way the inlet pressure pushes the seat.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Serialize, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum InletEffect {
    /// Towards open: the outlet rises with the inlet.
    Opens,
    /// Towards closed: the outlet falls as the inlet rises.
    Closes,
    /// Neither way: the seat is balanced.
    None,
}

/// The fixed parts of a regulator.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct RegulatorSpec {
    /// Main spring and its screw.
    pub spring: Spring,
    /// Effective diaphragm area, in m².
    pub diaphragm_area_m2: f64,
    /// Unbalanced seat area, in m².
    pub seat_area_m2: f64,
    /// Which way the inlet pushes.
    pub inlet_effect: InletEffect,
    /// Seat geometry: effective area against lift.
    pub seat: SeatProfile,
    /// Screw position at the start, in turns from the unscrewed end.
    pub turns: f64,
    /// Lag of the lift, in seconds.
    pub seat_lag_s: f64,
    /// Lag of the preload behind its setting, in seconds (0: at once).
    pub preload_lag_s: f64,
}

/// The air on the spring side of the diaphragm, where the vent does not let it go freely.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct Bonnet {
    /// Its volume, in m³.
    pub volume_m3: f64,
    /// Absolute pressure of the air in it, in Pa.
    pub air_abs_pa: f64,
    /// Time constant in which the vent lets it breathe, in seconds; infinite when it is shut.
    pub breathes_s: f64,
}

/// A bonnet at work.
#[derive(Debug, Clone, Copy, Default, Serialize)]
struct AirSpring {
    /// Stiffness over that of coil spring and air together.
    share: f64,
    breathes_s: f64,
    /// Lift at which the air stands at ambient pressure, in m.
    rest_m: f64,
}

/// A regulator in a network: its spec, its settings and its moving parts.
#[derive(Debug, Clone, Serialize)]
pub struct Regulator {
    spec: RegulatorSpec,
    turns: f64,
    extra_preload_n: f64,
    reference_pa: f64,
    leak_cd_area_m2: f64,
    lift_m: f64,
    spring_n: f64,
    /// Force that the spring is moving to, from screw and spec.
    target_spring_n: f64,
    extra_n: f64,
    bonnet: AirSpring,
    fixed: Fixed,
    step: StepConstants,
}

/// What stays the same from step to step of one length, worked out once.
#[derive(Debug, Clone, Copy, Default, Serialize)]
struct Fixed {
    /// The length that it is for, in s; zero when it is of no use.
    dt_s: f64,
    /// Shares of the ways to balance and target that are made in one step.
    lift_share: f64,
    preload_share: f64,
    give: spring::Give,
    bind_force_n: f64,
    /// Diaphragm and seat area that the outlet acts on, in m².
    outlet_area_m2: f64,
    /// Rise of the balance per rise of the inlet.
    by_inlet: f64,
    /// Share of the way to the present lift that the bonnet's rest makes in one step.
    breathed: f64,
}

/// What stays the same within one implicit step, and the lift that it comes to.
#[derive(Debug, Clone, Copy, Default, Serialize)]
struct StepConstants {
    /// Outlet pressure at which the balance puts the lift at zero without an inlet pressure, in Pa
    /// gauge, and what the inlet adds to it: apart, so that a drifting inlet moves the balance
    /// smoothly and not by the last digit of their sum.
    zero_pa: f64,
    zero_by_inlet_pa: f64,
    /// Force from the balance point to coil bind, in N.
    bind_margin_n: f64,
    /// Lift offset that puts the balance at zero lift, in m.
    offset_m: f64,
    /// Outlet pressure at the start, in Pa gauge: backward flow sees the lift that follows from it.
    start_pa: f64,
    /// Spring force at the end of the step, in N.
    spring_n: f64,
    /// Stacked force at the end of the step, in N.
    extra_n: f64,
    /// Lift at the pressures looked at last, in m.
    lift_m: f64,
}

impl Regulator {
    /// A regulator at rest, its preload settled.
    #[must_use]
    pub fn new(spec: RegulatorSpec) -> Self {
        let mut regulator = Self {
            turns: 0.0,
            extra_preload_n: 0.0,
            reference_pa: 0.0,
            leak_cd_area_m2: 0.0,
            lift_m: 0.0,
            spring_n: 0.0,
            target_spring_n: 0.0,
            extra_n: 0.0,
            bonnet: AirSpring::default(),
            fixed: Fixed::default(),
            step: StepConstants::default(),
            spec,
        };
        regulator.set_turns(spec.turns);
        regulator.settle_preload();
        regulator
    }

    /// The fixed parts that it was built from or last changed to.
    #[must_use]
    pub fn spec(&self) -> &RegulatorSpec {
        &self.spec
    }

    /// Changes the fixed parts (another spring, a worn seat, a blocked vent); the screw stays where
    /// it is within the new spring's travel.
    pub fn set_spec(&mut self, spec: RegulatorSpec) {
        self.spec = spec;
        self.fixed = Fixed::default();
        self.set_turns(self.turns);
    }

    /// Screw position, in turns from the unscrewed end.
    #[must_use]
    pub fn turns(&self) -> f64 {
        self.turns
    }

    /// Turns the screw to a position, kept within its travel.
    pub fn set_turns(&mut self, turns: f64) {
        if turns.is_finite() {
            self.turns = turns.clamp(0.0, self.spec.spring.max_turns.max(0.0));
        }
        self.target_spring_n = self.spec.spring.force_n(self.turns * self.spec.spring.pitch_m);
    }

    /// Sets the force of a second spring or weight stacked on the main one, in N.
    pub fn set_extra_preload_n(&mut self, force_n: f64) {
        if force_n.is_finite() {
            self.extra_preload_n = force_n;
        }
    }

    /// Sets the gauge pressure on the spring side of the diaphragm (ambient: 0), in Pa.
    pub fn set_reference_pa(&mut self, reference_pa: f64) {
        if reference_pa.is_finite() && reference_pa.to_bits() != self.reference_pa.to_bits() {
            self.reference_pa = reference_pa;
            self.fixed.dt_s = 0.0;
        }
    }

    /// Gauge pressure on the spring side of the diaphragm, in Pa.
    #[must_use]
    pub fn reference_pa(&self) -> f64 {
        self.reference_pa
    }

    /// Sets the effective area that stays open with the seat closed (a nick, grit), in m².
    pub fn set_leak_cd_area_m2(&mut self, area_m2: f64) {
        if area_m2.is_finite() {
            self.leak_cd_area_m2 = area_m2.max(0.0);
        }
    }

    /// Shuts the air in the bonnet in as the diaphragm stands now.
    pub fn set_bonnet(&mut self, bonnet: Bonnet) {
        let area = self.spec.diaphragm_area_m2;
        let air_n_m = bonnet.air_abs_pa * area * area / bonnet.volume_m3.max(1e-9);
        self.bonnet = AirSpring {
            share: air_n_m / (air_n_m + self.spec.spring.rate_n_m),
            breathes_s: bonnet.breathes_s.max(0.0),
            rest_m: self.lift_m,
        };
        self.fixed.dt_s = 0.0;
    }

    /// Lift of the seat, in m; negative while the seal is compressed.
    #[must_use]
    pub fn lift_m(&self) -> f64 {
        self.lift_m
    }

    /// Force on the diaphragm from springs and weights as it stands now, in N.
    #[must_use]
    pub fn preload_n(&self) -> f64 {
        self.spring_n + self.extra_n
    }

    /// Force that the preload is moving to, in N.
    fn target_preload_n(&self) -> f64 {
        self.target_spring_n + self.extra_preload_n
    }

    /// Outlet pressure at which the seat stands at zero lift with inlet pressure `inlet_pa` and the
    /// settled preload, in Pa gauge: the set point, but for droop.
    #[must_use]
    pub fn balance_pa(&self, inlet_pa: f64) -> f64 {
        self.zero_lift_pa(self.target_preload_n(), inlet_pa)
    }

    /// The same with the preload as it stands now, on its way to where the screw wants it.
    #[must_use]
    pub fn holds_pa(&self, inlet_pa: f64) -> f64 {
        self.zero_lift_pa(self.preload_n(), inlet_pa)
    }

    /// Puts the preload at its target at once.
    pub fn settle_preload(&mut self) {
        self.spring_n = self.target_spring_n;
        self.extra_n = self.extra_preload_n;
    }

    /// Every number that changes with time or setting.
    #[must_use]
    pub fn state(&self) -> [f64; 7] {
        [
            self.lift_m,
            self.spring_n,
            self.extra_n,
            self.turns,
            self.extra_preload_n,
            self.reference_pa,
            self.leak_cd_area_m2,
        ]
    }

    fn seat_push_m2(&self) -> f64 {
        match self.spec.inlet_effect {
            InletEffect::Opens => self.spec.seat_area_m2,
            InletEffect::Closes => -self.spec.seat_area_m2,
            InletEffect::None => 0.0,
        }
    }

    fn zero_lift_pa(&self, preload_n: f64, inlet_pa: f64) -> f64 {
        let push = self.seat_push_m2();
        let area = self.spec.diaphragm_area_m2;
        (preload_n + area * self.reference_pa + push * inlet_pa) / (area + push)
    }

    /// Fixes what stays the same during one implicit step of `dt_s` from the given pressures.
    pub(crate) fn begin_step(&mut self, dt_s: f64, inlet_pa: f64, outlet_pa: f64) {
        #[expect(clippy::float_cmp, reason = "the same length or another")]
        let fixed_anew = self.fixed.dt_s != dt_s;
        if fixed_anew {
            self.fix(dt_s);
        }
        let Fixed { preload_share: settled, by_inlet, .. } = self.fixed;
        let spring_n = self.spring_n + settled * (self.target_spring_n - self.spring_n);
        let extra_n = self.extra_n + settled * (self.extra_preload_n - self.extra_n);
        let step = &mut self.step;
        step.zero_by_inlet_pa = by_inlet * inlet_pa;
        step.start_pa = outlet_pa;
        step.lift_m = self.lift_m;
        let rested = spring_n.to_bits() == step.spring_n.to_bits()
            && extra_n.to_bits() == step.extra_n.to_bits();
        if fixed_anew || !rested {
            self.load(spring_n, extra_n);
        }
    }

    /// Puts the balance where springs of these forces, in N, put it.
    fn load(&mut self, spring_n: f64, extra_n: f64) {
        let fixed = &self.fixed;
        let reference_n = self.spec.diaphragm_area_m2 * self.reference_pa;
        let step = &mut self.step;
        step.spring_n = spring_n;
        step.extra_n = extra_n;
        step.zero_pa = (spring_n + extra_n + reference_n) / fixed.outlet_area_m2;
        step.bind_margin_n = fixed.bind_force_n - spring_n;
        step.offset_m = fixed.give.shortening(0.0, step.bind_margin_n).0;
    }

    fn fix(&mut self, dt_s: f64) {
        let push_m2 = self.seat_push_m2();
        let outlet_area_m2 = self.spec.diaphragm_area_m2 + push_m2;
        self.fixed = Fixed {
            dt_s,
            lift_share: share_of_lag(dt_s, self.spec.seat_lag_s),
            preload_share: share_of_lag(dt_s, self.spec.preload_lag_s),
            give: self.spec.spring.give(),
            bind_force_n: self.spec.spring.bind_force_n(),
            outlet_area_m2,
            by_inlet: push_m2 / outlet_area_m2,
            breathed: share_of_lag(dt_s, self.bonnet.breathes_s),
        };
    }

    /// Lift at the end of the step and its slope by the outlet pressure, for an outlet `error_pa`
    /// above the balance.
    #[inline(always)]
    fn lift_at(&self, error_pa: f64) -> (f64, f64) {
        let Fixed { give, outlet_area_m2: area, lift_share: share, .. } = &self.fixed;
        let (u, u_slope) = give.shortening(area * error_pa, self.step.bind_margin_n);
        let free = self.step.offset_m - u;
        let held = free + self.bonnet.share * (self.bonnet.rest_m - free);
        let (wanted, stop_slope) = self.spec.seat.within_stops(held);
        let lift = self.lift_m + share * (wanted - self.lift_m);
        let slope = share * stop_slope * u_slope * (1.0 - self.bonnet.share);
        (lift, -slope * area)
    }

    /// Flow and slopes; `None` with the seat shut and tight.
    #[inline(always)]
    pub(crate) fn flow(&mut self, law: &OpeningLaw, at: &Terminals) -> Option<FlowSlopes> {
        if at.diff_pa < 0.0 {
            return self.backward(law, at);
        }
        let (lift, lift_slope) = self.follow(at);
        let (area, area_slope) = self.spec.seat.area(lift);
        let open = area + self.leak_cd_area_m2;
        if open <= 0.0 {
            return None;
        }
        let unit = law.flow(at.diff_pa, at.inlet_abs_pa, at.outlet_abs_pa);
        let mut flow = unit.times(open);
        flow.by_to += unit.flow * area_slope * lift_slope;
        Some(flow)
    }

    /// Lets the lift follow an outlet pressure that is below the inlet's; lift and slope.
    #[inline(always)]
    pub(crate) fn follow(&mut self, at: &Terminals) -> (f64, f64) {
        let error_pa = (at.outlet_pa - self.step.zero_pa) + at.rest_pa;
        let (lift, slope) = self.lift_at(error_pa - self.step.zero_by_inlet_pa);
        self.step.lift_m = lift;
        (lift, slope)
    }

    /// Flow from outlet to inlet.
    #[inline(never)]
    fn backward(&mut self, law: &OpeningLaw, at: &Terminals) -> Option<FlowSlopes> {
        let error_pa = self.step.start_pa - self.step.zero_pa;
        self.step.lift_m = self.lift_at(error_pa - self.step.zero_by_inlet_pa).0;
        let open = self.spec.seat.area(self.step.lift_m).0 + self.leak_cd_area_m2;
        let unit = law.flow(at.diff_pa, at.inlet_abs_pa, at.outlet_abs_pa);
        (open > 0.0).then(|| unit.times(open))
    }

    /// Takes over the end of the step: the pressures looked at last.
    pub(crate) fn end_step(&mut self) {
        self.lift_m = self.step.lift_m;
        self.spring_n = self.step.spring_n;
        self.extra_n = self.step.extra_n;
        if self.bonnet.share > 0.0 {
            self.bonnet.rest_m += self.fixed.breathed * (self.lift_m - self.bonnet.rest_m);
        }
    }
}

/// Share of the way to its target that a first-order lag makes in one implicit step.
fn share_of_lag(dt_s: f64, lag_s: f64) -> f64 {
    if lag_s > 0.0 { dt_s / (lag_s + dt_s) } else { 1.0 }
}

/// Pressures at a regulator's two ends.
pub(crate) struct Terminals {
    /// Inlet less outlet, exact to more digits than the two, in Pa.
    pub diff_pa: f64,
    /// Inlet, absolute, in Pa.
    pub inlet_abs_pa: f64,
    /// Outlet, absolute, in Pa.
    pub outlet_abs_pa: f64,
    /// Outlet, gauge, in Pa.
    pub outlet_pa: f64,
    /// What `outlet_pa` leaves out below its last digit, in Pa.
    pub rest_pa: f64,
}

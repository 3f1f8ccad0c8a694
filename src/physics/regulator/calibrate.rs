//! From behaviour to parts: the spring, seat and seal that give a wanted set point, lock-up, droop.
//!
//! **Equation.** Turn gain over pitch gives Pa per metre of lift; droop over that the lift between
//! set and rated flow, hence the seat's width; `(lock-up − set)` over it the lift from the seal to
//! the set point, hence the seal's compression; the force balance at the set flow the preload;
//! rated flow at the wide-open drop the stop. Spring rate `k = (Pa/m)·(A_d + σ·A_s)`.
//! **Assumptions.** Gas at 60 °F; droop comes from the spring alone.
//! **Valid range.** `set < lock-up < inlet`; set flow below rated flow, and that below the
//! wide-open one; set point within the screw's travel and short of coil bind. Anything else is a
//! [`CalibrationError`].
//! **Regularisation.** The toe passes at most a quarter of the set flow, with at most 5 % of the
//! full slope; transition half width 5 % of the lift span, at most half of the seal. Width and seal
//! by bisection, 100 halvings each.
//! **Source.** Textbook force balance. Usual parts of [`Behaviour::new`] (diaphragm of two square
//! inches, 0.8 mm pitch, 14 turns, a sixth of the set point a turn, lag 30 ms): common practice,
//! from memory; no published pressure per turn is known.
//! **Left out.** Scatter of parts: what is asked for is met exactly.
//! **Checked.** `calibration_is_met()` (within 0.01 in. w.c.) and
//! `impossible_behaviour_is_refused()` in `tests/core/physics/regulator.rs`.

use super::super::fluid::Gas;
use super::super::orifice::{OpeningLaw, area_for_flow_m2};
use super::{InletEffect, RegulatorSpec, SeatProfile, Spring};

/// What is known of a regulator from its data or from readings. All pressures are gauge pressures
/// over the pressure on the spring side of the diaphragm.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Behaviour {
    /// Outlet pressure at `set_flow_std_m3_s`, in Pa.
    pub set_pa: f64,
    /// Flow at which it was set, in standard m³/s; above zero, below the rated flow.
    pub set_flow_std_m3_s: f64,
    /// Inlet pressure for set point, lock-up and droop, in Pa.
    pub inlet_pa: f64,
    /// Outlet pressure at which the flow stops altogether, in Pa.
    pub lockup_pa: f64,
    /// Fall of the outlet from the set point at the rated flow, in Pa.
    pub droop_pa: f64,
    /// Rated flow, in standard m³/s.
    pub rated_flow_std_m3_s: f64,
    /// Pressure lost across the regulator at rated flow with the seat wide open and the outlet at
    /// the drooped set point, in Pa.
    pub wide_open_drop_pa: f64,
    /// Change of the set point for one turn of the screw, in Pa.
    pub pa_per_turn: f64,
    /// Screw pitch, in m per turn.
    pub pitch_m: f64,
    /// Turns from the unscrewed end to coil bind.
    pub bind_turns: f64,
    /// Travel of the screw, in turns.
    pub max_turns: f64,
    /// Effective diaphragm area, in m².
    pub diaphragm_area_m2: f64,
    /// Unbalanced seat area, in m².
    pub seat_area_m2: f64,
    /// Which way the inlet pushes.
    pub inlet_effect: InletEffect,
    /// Lag of the lift, in seconds.
    pub seat_lag_s: f64,
    /// Lag of the preload, in seconds.
    pub preload_lag_s: f64,
}

/// Why no regulator behaves as asked.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum CalibrationError {
    /// A number is not finite, or not above zero where it must be.
    BadNumber,
    /// The pressures do not stand in the order droop < set < lock-up < inlet.
    PressureOrder,
    /// The rated flow must be above the set flow, and the wide-open seat must pass more than the
    /// rated flow at the normal inlet.
    FlowOrder,
    /// The lock-up is too close above the set point for this droop and set flow.
    LockupTooLow,
    /// The set point lies beyond the screw's travel or below its unscrewed end.
    OutOfScrewTravel,
}

impl std::fmt::Display for CalibrationError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(match self {
            Self::BadNumber => t!("regulator-bad-number"),
            Self::PressureOrder => t!("regulator-pressure-order"),
            Self::FlowOrder => t!("regulator-flow-order"),
            Self::LockupTooLow => t!("regulator-lockup-too-low"),
            Self::OutOfScrewTravel => t!("regulator-out-of-travel"),
        })
    }
}

impl std::error::Error for CalibrationError {}

impl Behaviour {
    /// A regulator with usual parts: a two-square-inch diaphragm, 0.8 mm pitch, 14 turns of which
    /// the last two are coil-bound, inlet opening the seat, a seat lag of 30 ms (common practice).
    /// Pressures in Pa gauge, `flow` the rated one in standard m³/s; set at a tenth of it.
    #[must_use]
    pub fn new(set_pa: f64, lockup_pa: f64, droop_pa: f64, inlet_pa: f64, flow: f64) -> Self {
        Self {
            set_pa,
            set_flow_std_m3_s: 0.1 * flow,
            inlet_pa,
            lockup_pa,
            droop_pa,
            rated_flow_std_m3_s: flow,
            wide_open_drop_pa: 0.4 * (inlet_pa - set_pa + droop_pa),
            pa_per_turn: set_pa / 6.0,
            pitch_m: 8e-4,
            bind_turns: 12.0,
            max_turns: 14.0,
            diaphragm_area_m2: 1.29e-3,
            seat_area_m2: 6.5e-6,
            inlet_effect: InletEffect::Opens,
            seat_lag_s: 0.03,
            preload_lag_s: 0.0,
        }
    }

    fn check(&self) -> Result<(), CalibrationError> {
        let positive = [
            self.set_flow_std_m3_s,
            self.droop_pa,
            self.wide_open_drop_pa,
            self.pa_per_turn,
            self.pitch_m,
            self.bind_turns,
            self.max_turns,
            self.diaphragm_area_m2 - self.seat_area_m2,
        ];
        let others = [self.set_pa, self.lockup_pa, self.inlet_pa, self.rated_flow_std_m3_s];
        let lags = [self.seat_area_m2, self.seat_lag_s, self.preload_lag_s];
        let sound = positive.iter().all(|x| x.is_finite() && *x > 0.0)
            && others.iter().all(|x| x.is_finite())
            && lags.iter().all(|x| x.is_finite() && *x >= 0.0);
        if !sound {
            return Err(CalibrationError::BadNumber);
        }
        if self.lockup_pa <= self.set_pa || self.inlet_pa <= self.lockup_pa {
            return Err(CalibrationError::PressureOrder);
        }
        if self.rated_flow_std_m3_s <= self.set_flow_std_m3_s {
            return Err(CalibrationError::FlowOrder);
        }
        Ok(())
    }
}

impl RegulatorSpec {
    /// Finds parts that behave as `wanted` in a gas at 60 °F under `p_atm_abs_pa`.
    ///
    /// The screw gives the pressure per metre of lift, droop the lift between the two flows, hence
    /// the seat's width; lock-up gives the seal's compression; the set point the preload.
    ///
    /// # Errors
    /// [`CalibrationError`] when no parts behave so.
    pub fn from_behaviour(
        wanted: &Behaviour,
        gas: &Gas,
        p_atm_abs_pa: f64,
    ) -> Result<Self, CalibrationError> {
        wanted.check()?;
        let law = OpeningLaw::new(gas, crate::units::T_STD_K);
        let area = |flow, up, down| area_for_flow_m2(&law, flow, up, down, p_atm_abs_pa);
        let rated_outlet_pa = wanted.set_pa - wanted.droop_pa;
        let set_area = area(wanted.set_flow_std_m3_s, wanted.inlet_pa, wanted.set_pa);
        let rated_area = area(wanted.rated_flow_std_m3_s, wanted.inlet_pa, rated_outlet_pa);
        let open_inlet_pa = rated_outlet_pa + wanted.wide_open_drop_pa;
        let open_area = area(wanted.rated_flow_std_m3_s, open_inlet_pa, rated_outlet_pa);
        if rated_area <= 1.05 * set_area || open_area <= 1.1 * rated_area {
            return Err(CalibrationError::FlowOrder);
        }
        let pa_per_m = wanted.pa_per_turn / wanted.pitch_m;
        let span_m = wanted.droop_pa / pa_per_m;
        let seal_to_set_m = (wanted.lockup_pa - wanted.set_pa) / pa_per_m;
        let mut seat = find_seat(set_area, rated_area, span_m, seal_to_set_m)
            .ok_or(CalibrationError::LockupTooLow)?;
        seat.max_lift_m = seat.lift_for_area(open_area);
        let push = match wanted.inlet_effect {
            InletEffect::Opens => wanted.seat_area_m2,
            InletEffect::Closes => -wanted.seat_area_m2,
            InletEffect::None => 0.0,
        };
        let outlet_area_m2 = wanted.diaphragm_area_m2 + push;
        let rate_n_m = pa_per_m * outlet_area_m2;
        let preload_n = rate_n_m * seat.lift_for_area(set_area) + outlet_area_m2 * wanted.set_pa
            - push * wanted.inlet_pa;
        let turns = preload_n / (rate_n_m * wanted.pitch_m);
        if turns < 0.0 || turns > wanted.bind_turns.min(wanted.max_turns) {
            return Err(CalibrationError::OutOfScrewTravel);
        }
        Ok(Self {
            spring: Spring {
                rate_n_m,
                pitch_m: wanted.pitch_m,
                bind_m: wanted.bind_turns * wanted.pitch_m,
                max_turns: wanted.max_turns,
            },
            diaphragm_area_m2: wanted.diaphragm_area_m2,
            seat_area_m2: wanted.seat_area_m2,
            inlet_effect: wanted.inlet_effect,
            seat,
            turns,
            seat_lag_s: wanted.seat_lag_s,
            preload_lag_s: wanted.preload_lag_s,
        })
    }
}

/// Most of the full slope that the toe of a calibrated seat may reach.
const MAX_TOE_SLOPE: f64 = 0.05;

/// A seat whose lift grows by `span_m` from one area to the other, and which stands `seal_to_set_m`
/// above its sealed end at the first; its stop is left open.
fn find_seat(
    set_area: f64,
    rated_area: f64,
    span_m: f64,
    seal_to_set_m: f64,
) -> Option<SeatProfile> {
    let with_seal = |seal_m: f64| {
        let blend_m = (0.05 * span_m).min(0.5 * seal_m);
        let toe_m = seal_m - blend_m;
        let mut seat = SeatProfile {
            width_m: 1.0,
            seal_m,
            blend_m,
            toe_slope: MAX_TOE_SLOPE,
            max_lift_m: f64::INFINITY,
        };
        // The lift between the areas falls as the seat grows wider. The toe passes at most a
        // quarter of the set flow, so that the seal can be as deep as it must.
        let (mut narrow, mut wide) = (1e-3 * rated_area / span_m, 1e3 * rated_area / span_m);
        for _ in 0..100 {
            seat.width_m = (narrow * wide).sqrt();
            seat.toe_slope = MAX_TOE_SLOPE.min(0.5 * set_area / (seat.width_m * toe_m));
            if seat.lift_for_area(rated_area) - seat.lift_for_area(set_area) > span_m {
                narrow = seat.width_m;
            } else {
                wide = seat.width_m;
            }
        }
        seat
    };
    let reach = |seat: &SeatProfile| seat.seal_m + seat.lift_for_area(set_area);
    let (mut lower, mut upper) = (1e-4 * span_m, seal_to_set_m + 10.0 * span_m);
    if reach(&with_seal(lower)) > seal_to_set_m || reach(&with_seal(upper)) < seal_to_set_m {
        return None;
    }
    for _ in 0..100 {
        let middle = 0.5 * (lower + upper);
        if reach(&with_seal(middle)) < seal_to_set_m {
            lower = middle;
        } else {
            upper = middle;
        }
    }
    Some(with_seal(0.5 * (lower + upper)))
}

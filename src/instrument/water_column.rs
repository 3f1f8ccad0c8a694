//! Water column: a tube bent to a U, half full of water, a scale between its legs.
//!
//! **Equation.** `L·x″ + 8ν/r²·L·x′ + 2g·x = Δp/ρ`, `x` how far one leg has sunk and the other
//! risen (m), `L` the water's length, Poiseuille's friction in a tube of radius `r`. The pressure is
//! the sum of both legs, `Δp = 2ρg·x`, wherever the scale's zero stands.
//! **Assumptions.** A straight water column as one mass, laminar at all times, water of the
//! conventional inch.
//! **Valid range.** 16 in. w.c. in all; beyond it the water is blown out, and the tube is open.
//! **Regularisation.** One implicit midpoint step a tick, exact in energy for the free swing.
//! **Source.** Swing of a U-tube, `T = 2π√(L/2g)`: any text on fluid mechanics. Tube 6 mm wide,
//! water 0.6 m long: from memory. Legs are read to a tenth of an inch: common practice.
//! **Left out.** Meniscus, a tube that leans, warm water, water that clings to the wall.
//! **Checked.** `src/instrument/water_column.rs`: `both_legs_add_up()`, `it_swings_in_its_own_time()`
//! (closed form), `too_much_blows_it_out()`; `tests/core/instruments/gauges.rs`:
//! `one_leg_is_half_the_truth()`.

use crate::units::{M_PER_IN, PA_PER_INWC};
use serde::Serialize;

/// Water in the tube, in metres along it.
const WATER_M: f64 = 0.6;
/// Radius of the tube, in metres.
const RADIUS_M: f64 = 3e-3;
/// Kinematic viscosity of water at 20 °C, in m²/s.
const VISCOSITY_M2_S: f64 = 1.0e-6;
/// Density times weight of the conventional inch of water, in Pa per metre.
const PA_PER_M: f64 = PA_PER_INWC / M_PER_IN;
/// Density of that water, in kg/m³.
const DENSITY_KG_M3: f64 = PA_PER_M / 9.806_65;
/// How far a leg can sink before the water is blown out, in metres (8 in.).
const LEG_M: f64 = 8.0 * M_PER_IN;
/// Area of the tube times a discharge coefficient, in m².
pub const TUBE_CD_M2: f64 = 0.6 * core::f64::consts::PI * RADIUS_M * RADIUS_M;

/// A U-tube of water with a scale, one leg at the hose and one open to the air.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct WaterColumn {
    /// How far the leg at the hose has sunk, in metres.
    sunk_m: f64,
    speed_m_s: f64,
    scale_off_m: f64,
    blown: bool,
}

/// What is seen of a water column.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Legs {
    /// How far the water stands below the scale's zero at the hose's leg, and above it at the other,
    /// in tenths of an inch.
    Water {
        /// The leg at the hose, downwards.
        lower_tenths: i32,
        /// The other leg, upwards.
        upper_tenths: i32,
    },
    /// The water is out.
    Empty,
}

impl Legs {
    /// Both legs together, in tenths of an inch.
    #[must_use]
    pub fn sum_tenths(self) -> Option<i32> {
        match self {
            Self::Water { lower_tenths, upper_tenths } => Some(lower_tenths + upper_tenths),
            Self::Empty => None,
        }
    }
}

impl WaterColumn {
    /// One at rest, its scale's zero this far above the water, in metres.
    #[must_use]
    pub fn new(scale_off_m: f64) -> Self {
        Self { sunk_m: 0.0, speed_m_s: 0.0, scale_off_m, blown: false }
    }

    /// Goes on by `dt_s` with a difference across it, in pascals; says whether the water was blown out
    /// just now.
    pub fn step(&mut self, dt_s: f64, difference_pa: f64) -> bool {
        if self.blown {
            return false;
        }
        let spring = 2.0 * PA_PER_M / (DENSITY_KG_M3 * WATER_M);
        let friction = 8.0 * VISCOSITY_M2_S / (RADIUS_M * RADIUS_M);
        let push = difference_pa / (DENSITY_KG_M3 * WATER_M);
        // Implicit midpoint: speed and place at the middle of the step.
        let half = 0.5 * dt_s;
        let middle_m_s = (self.speed_m_s + half * (push - spring * self.sunk_m))
            / (1.0 + half * friction + half * half * spring);
        self.speed_m_s = 2.0 * middle_m_s - self.speed_m_s;
        self.sunk_m += dt_s * middle_m_s;
        self.blown = self.sunk_m.abs() > LEG_M;
        self.blown
    }

    /// Fills it to its zero.
    pub fn fill(&mut self) {
        *self = Self::new(self.scale_off_m);
    }

    /// Whether the water is out.
    #[must_use]
    pub fn is_blown(&self) -> bool {
        self.blown
    }

    /// Where the water stands in both legs, to a tenth of an inch.
    #[must_use]
    pub fn legs(&self) -> Legs {
        if self.blown {
            return Legs::Empty;
        }
        #[expect(clippy::cast_possible_truncation, reason = "eight inches at most")]
        let tenths = |m: f64| (m / M_PER_IN * 10.0).round() as i32;
        Legs::Water {
            lower_tenths: tenths(self.sunk_m + self.scale_off_m),
            upper_tenths: tenths(self.sunk_m - self.scale_off_m),
        }
    }

    /// Both legs as read, in pascals; none when the water is out.
    #[must_use]
    pub fn shown_pa(&self) -> Option<f64> {
        self.legs().sum_tenths().map(|tenths| f64::from(tenths) / 10.0 * PA_PER_INWC)
    }

    /// How far the scale's zero stands above the water at rest, as a pressure on one leg, in pascals.
    #[must_use]
    pub fn scale_off_pa(&self) -> f64 {
        self.scale_off_m * PA_PER_M
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn rested(scale_off_m: f64, inches: f64) -> WaterColumn {
        let mut it = WaterColumn::new(scale_off_m);
        for _ in 0..60 * 50 {
            it.step(0.02, inches * PA_PER_INWC);
        }
        it
    }

    /// At 7.0 in. w.c. each leg stands at 3.5; with the zero off by 0.3 in. the legs differ and their
    /// sum stays.
    #[test]
    fn both_legs_add_up() {
        let legs = rested(0.0, 7.0).legs();
        assert_eq!(legs, Legs::Water { lower_tenths: 35, upper_tenths: 35 });
        let legs = rested(0.3 * M_PER_IN, 7.0).legs();
        assert_eq!(legs, Legs::Water { lower_tenths: 38, upper_tenths: 32 });
        assert_eq!(legs.sum_tenths(), Some(70));
    }

    /// Let go from 4 in., it comes back to the far side after half of `2π√(L/2g)` and swings for some
    /// seconds (closed form).
    #[test]
    fn it_swings_in_its_own_time() {
        let mut it = rested(0.0, 4.0);
        it.step(0.02, 0.0);
        let mut ticks = 1_u32;
        while it.speed_m_s <= 0.0 {
            it.step(0.02, 0.0);
            ticks += 1;
            assert!(ticks < 500);
        }
        let half_s = core::f64::consts::PI * (0.6 / (2.0 * 9.806_65_f64)).sqrt();
        approx::assert_abs_diff_eq!(f64::from(ticks) * 0.02, half_s, epsilon = 0.04);
    }

    /// Beyond 16 in. the water is out until it is filled again.
    #[test]
    fn too_much_blows_it_out() {
        let mut it = rested(0.0, 20.0);
        assert_eq!(it.legs(), Legs::Empty);
        it.fill();
        assert!(it.shown_pa().is_some());
    }
}

//! Openings: orifices, open ports, leaks, valves part open.
//!
//! **Equation.** `Q = CdA·Y·√(2·ρ₁·ΔP)/ρ_std` in standard m³/s, `ρ₁` the density on the upstream
//! side; `Y = 1 − x/(3·x_c)`, `x = ΔP/P₁` (absolute), `x_c = 0.72·γ/1.40`; choked from `x = x_c`
//! on. Openings in a row: `1/A² = Σ 1/Aᵢ²`. Effective area of a hole `K·π/4·d²`, of a part with
//! flow coefficient Cv `Cv·6.309·10⁻⁵/√(2·6,894.757/999)` m².
//! **Assumptions.** Ideal gas at the temperature that the node `from` was built with; Cd
//! independent of Reynolds number; the velocity of approach is part of Cd.
//! **Valid range.** Any pressures above −100 kPa gauge; 0 ≤ CdA.
//! **Regularisation.** `√ΔP` is taken as `ΔP/(ΔP² + ε²)^¼`, ε = 1 Pa (0.004 in. w.c.): smooth, odd,
//! linear through zero; 1 % low at 5 Pa, 25 ppm low at 100 Pa. Value continuous everywhere, slope
//! too (to 1 part in 10⁹ at the choked limit). Absolute pressures are not taken below 1 kPa.
//! **Source.** Expansion factor and choking after IEC 60534-2-1; x_T = 0.72 (from memory, a usual
//! trim). Gas orifices: NFPA 54 Annex E, `Q = 1658.5·K·A·√(H/SG)`, which differs from this law by
//! 0.2 % in its constant.
//! **Left out.** Laminar seepage through threads (use an equivalent hole), jet reaction, heat. A
//! sharp-edged hole expands less than a valve: by ISO 5167-2 (from memory) it would pass 0.2 % more
//! at 3.5 in. w.c., 0.6 % more at 10 in. w.c. of propane and about a tenth more at 10 psi into the
//! open.
//! **Checked.** `tests/core/physics/orifice.rs`: NFPA 54 Table E.1.1(a) in `utility_gas_rows()`,
//! its formula in `agrees_with_the_annex_e_formula()`, a product manual's 28 pairs in
//! `two_stage_pairs_follow_the_square_root()`, `altitude_thins_the_flow()`, `choking_and_slopes()`,
//! `regular_through_zero()`, `openings_in_series()`.

mod drill;

use serde::Serialize;
use std::f64::consts::PI;

use super::fluid::Gas;
use crate::units::{P_STD_PA, T_STD_K};

pub use drill::{DRILLS, drill_diameter_m, nearest_drill};

/// Pressure difference below which the square-root law turns linear, in Pa.
pub const OPENING_EPSILON_PA: f64 = 1.0;
/// Terminal pressure ratio of IEC 60534 for air.
const X_T: f64 = 0.72;
/// Absolute pressures are not taken below this, in Pa; only trial iterates get there.
const ABS_FLOOR_PA: f64 = 1_000.0;

/// Flow through one element and how it answers to the pressures at its two ends.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct FlowSlopes {
    /// Flow from `from` to `to`, in standard m³/s.
    pub flow: f64,
    /// Slope by the pressure at `from`, ≥ 0.
    pub by_from: f64,
    /// Slope by the pressure at `to`, ≤ 0.
    pub by_to: f64,
}

impl FlowSlopes {
    /// The same through an opening `area` times as large.
    #[inline(always)]
    pub(crate) fn times(self, area: f64) -> Self {
        Self { flow: self.flow * area, by_from: self.by_from * area, by_to: self.by_to * area }
    }
}

/// The flow law of an opening of 1 m² effective area in one gas.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct OpeningLaw {
    scale: f64,
    x_choked: f64,
    third: f64,
}

impl OpeningLaw {
    /// The law for a gas at temperature `t_k`.
    #[must_use]
    pub fn new(gas: &Gas, t_k: f64) -> Self {
        let x_choked = X_T * gas.gamma / 1.40;
        Self {
            scale: (2.0 / (gas.density_std_kg_m3() * P_STD_PA) * T_STD_K / t_k).sqrt(),
            x_choked,
            third: 1.0 / (3.0 * x_choked),
        }
    }

    /// Flow per m² of effective area; `diff_pa` is the pressure at `from` less that at `to`.
    #[inline(always)]
    #[must_use]
    pub fn flow(&self, diff_pa: f64, from_abs_pa: f64, to_abs_pa: f64) -> FlowSlopes {
        let forward = diff_pa >= 0.0;
        let up_abs_pa = if forward { from_abs_pa } else { to_abs_pa };
        let (flow, by_up, by_down) = self.one_way(diff_pa.abs(), up_abs_pa);
        if forward {
            FlowSlopes { flow, by_from: by_up, by_to: -by_down }
        } else {
            FlowSlopes { flow: -flow, by_from: by_down, by_to: -by_up }
        }
    }

    /// Flow, its slope by the upstream pressure, and minus its slope by the downstream pressure.
    #[inline(always)]
    fn one_way(&self, drop_pa: f64, up_abs_pa: f64) -> (f64, f64, f64) {
        let up = up_abs_pa.max(ABS_FLOOR_PA);
        let inv_up = 1.0 / up;
        let x = drop_pa * inv_up;
        let drop = if x < self.x_choked { drop_pa } else { self.x_choked * up };
        let s = drop * drop + OPENING_EPSILON_PA * OPENING_EPSILON_PA;
        let inv_s = 1.0 / s;
        let root = self.scale * (up * inv_s.sqrt()).sqrt();
        let full = root * drop;
        let by_drop = root * (1.0 - 0.5 * drop * drop * inv_s);
        let by_density = 0.5 * full * inv_up;
        if x < self.x_choked {
            let y = 1.0 - x * self.third;
            let y_slope = self.third * inv_up;
            let by_down = by_drop * y - full * y_slope;
            (full * y, by_down + by_density * y + full * y_slope * x, by_down.max(0.0))
        } else {
            let y = 2.0 / 3.0;
            (full * y, (by_drop * self.x_choked + by_density) * y, 0.0)
        }
    }
}

/// Effective area of openings one behind the other, `1/A² = Σ 1/Aᵢ²`, in the unit of the inputs; any
/// closed one closes all.
#[must_use]
pub fn series_area(areas: &[f64]) -> f64 {
    let mut sum = 0.0;
    for &area in areas {
        if area <= 0.0 {
            return 0.0;
        }
        sum += 1.0 / (area * area);
    }
    if sum > 0.0 { 1.0 / sum.sqrt() } else { 0.0 }
}

/// Effective area `K·π/4·d²` of a round hole with discharge coefficient `k`, in m².
#[must_use]
pub fn hole_area_m2(k: f64, diameter_m: f64) -> f64 {
    k * PI / 4.0 * diameter_m * diameter_m
}

/// Effective area of a part with flow coefficient Cv (US gal/min of water at 1 psi), in m².
#[must_use]
pub fn cv_area_m2(cv: f64) -> f64 {
    // 6.309e-5 m³/s through √(2·6894.757 Pa/999 kg/m³).
    cv * 6.309_02e-5 / (2.0 * 6_894.757 / 999.0_f64).sqrt()
}

/// Effective area that lets `flow_std_m3_s` through at the given gauge pressures, in m²; zero when
/// there is no drop.
#[must_use]
pub fn area_for_flow_m2(
    law: &OpeningLaw,
    flow_std_m3_s: f64,
    up_pa: f64,
    down_pa: f64,
    p_atm_abs_pa: f64,
) -> f64 {
    let unit = law.flow(up_pa - down_pa, up_pa + p_atm_abs_pa, down_pa + p_atm_abs_pa).flow;
    if unit > 0.0 { flow_std_m3_s / unit } else { 0.0 }
}

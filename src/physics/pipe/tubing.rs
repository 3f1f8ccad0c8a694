//! Corrugated stainless steel tubing.
//!
//! **Equation.** `Q = C·(ΔH/L)^n·√(0.60/SG)·√(T_std/T)`, Q in ft³/h, ΔH in in. w.c., L in ft; C and
//! n by equivalent hydraulic diameter (EHD). `ΔH` is the driving term `w` of `pipe`, so the law
//! also serves at 2 and 5 psi.
//! **Assumptions.** The published tables hold four 90° bends and two end fittings in the length;
//! each further one adds 1.3 ft (table footnote, from memory). Gases differ by density alone.
//! **Valid range.** EHD 13–62, 5–300 ft, drops as in the tables (0.5 in. w.c. to 3.5 psi); an EHD
//! without published figures has no curve.
//! **Regularisation.** `w^n` is taken as `w·(w² + w₀²)^((n−1)/2)` with `w₀` = 0.25 Pa (0.001 in.
//! w.c.) over the run: linear through zero, smooth, within 0.3 % of the law from 2.5 Pa.
//! **Source.** Least-squares fit to the natural-gas tables of IFGC 402.4 for 0.5, 3 and 6 in. w.c.
//! drop (2018 edition, tables (15) to (17)); scatter 0.1–0.8 %.
//! **Left out.** Viscosity, so laminar flow too: below the smallest printed drop per foot the power
//! law simply goes on. Bends tighter than the tables'.
//! **Checked.** `tests/core/physics/tubing.rs`: `natural_gas_rows()` against IFGC 2018 Table
//! 402.4(15), `propane_rows()` against IRC 2018 Table G2413.4(16), `odd_and_smooth_through_zero()`.

use super::{FlowCurve, Gas};
use crate::units::{M_PER_FT, M3_S_PER_CFH, PA_PER_INWC, T_STD_K};
use serde::Serialize;

/// Driving term below which the law turns linear, in Pa.
const LINEAR_PA: f64 = 0.25;
/// Equivalent length of one bend or fitting beyond the tables' own, in feet.
const EXTRA_FITTING_FT: f64 = 1.3;

/// One run of corrugated tubing.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct TubingSpec {
    /// Equivalent hydraulic diameter, a trade number (13–62).
    pub ehd: u16,
    /// Length with the tables' own four bends and two end fittings, in metres.
    pub length_m: f64,
    /// Bends and fittings beyond four bends and two ends.
    pub extra_fittings: u32,
}

impl TubingSpec {
    /// Tabulates flow against the driving term; `None` for an EHD without published figures.
    #[must_use]
    pub fn curve(&self, gas: &Gas, t_k: f64) -> Option<FlowCurve> {
        let (c, n) = ehd_constants(self.ehd)?;
        let length_ft =
            self.length_m.max(0.01) / M_PER_FT + EXTRA_FITTING_FT * f64::from(self.extra_fittings);
        let density = (0.60 / gas.specific_gravity * T_STD_K / t_k).sqrt();
        let scale = c * M3_S_PER_CFH * density * libm::pow(1.0 / (PA_PER_INWC * length_ft), n);
        let law = |w: f64| {
            let s = w * w + LINEAR_PA * LINEAR_PA;
            let flow = scale * w * libm::pow(s, (n - 1.0) / 2.0);
            (flow, flow / w * (1.0 + (n - 1.0) * w * w / s))
        };
        Some(FlowCurve::tabulate(LINEAR_PA / 64.0, law))
    }
}

/// C and n of the flow law for an equivalent hydraulic diameter, see the module page.
#[must_use]
pub fn ehd_constants(ehd: u16) -> Option<(f64, f64)> {
    let constants = match ehd {
        13 => (158.1, 0.5369),
        15 => (209.0, 0.5211),
        18 => (356.5, 0.4927),
        19 => (423.2, 0.5001),
        23 => (677.9, 0.4795),
        25 => (835.7, 0.4914),
        30 => (1542.6, 0.5151),
        31 => (1780.4, 0.5132),
        37 => (2745.9, 0.4869),
        39 => (3077.9, 0.4752),
        46 => (5748.9, 0.5062),
        48 => (6445.8, 0.4932),
        60 => (11315.4, 0.4904),
        62 => (13032.4, 0.4977),
        _ => return None,
    };
    Some(constants)
}

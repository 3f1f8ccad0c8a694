//! Quarter-turn hand valves: effective area against handle angle.
//!
//! **Equation.** `CdA = (A/√K)·o(s)`, `K = (L/d)·f_T`, bore area `A` in m². `o` is the overlap of
//! two equal circles whose centres move apart in proportion to the angle,
//! `o(s) = (2/π)·[acos(1 − s) − (1 − s)·√(1 − (1 − s)²)]`, `s = (α − α_seal)/(90° − α_seal)`.
//! **Assumptions.** Loss scales with the open area; no leak when closed (give a leak as an
//! opening).
//! **Valid range.** Bore 5–50 mm, handle 0° (closed) to 90° (in line with the pipe).
//! **Regularisation.** The overlap is exactly zero up to the seal's angle (ball 6°, plug cock 4°,
//! from memory) and rises smoothly from it, as `s^1.5`. Angles outside, or no number, are closed or
//! open.
//! **Source.** L/d = 3 for a ball valve, 18 for a plug cock, f_T = 0.025 near 3/4 in. (Crane
//! TP-410, from memory). That the centres move in proportion to the angle is our own
//! simplification.
//! **Left out.** Torque, wear, flow direction; f_T against size (0.027 at 1/2 in., 0.019 at 2 in.).
//! **Checked.** `tests/core/physics/valve.rs`: `area_grows_with_the_angle()`; Cv of usual valves
//! (common practice) in `flow_coefficients_are_of_the_usual_size()`.

use serde::Serialize;
use std::f64::consts::PI;

/// Fully rough friction factor near 3/4 in. pipe.
const FRICTION_TURBULENT: f64 = 0.025;

/// How a quarter-turn valve is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum HandValveKind {
    /// Full-port ball valve.
    Ball,
    /// Plug cock.
    PlugCock,
}

/// A quarter-turn hand valve.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HandValve {
    /// Effective area fully open, in m².
    pub full_cd_area_m2: f64,
    /// Handle angle up to which the seal still holds, in degrees.
    pub seal_deg: f64,
}

impl HandValve {
    /// A valve of inside bore `bore_m`.
    #[must_use]
    pub fn new(kind: HandValveKind, bore_m: f64) -> Self {
        let (length_over_diameter, seal_deg) = match kind {
            HandValveKind::Ball => (3.0, 6.0),
            HandValveKind::PlugCock => (18.0, 4.0),
        };
        let loss: f64 = length_over_diameter * FRICTION_TURBULENT;
        Self { full_cd_area_m2: PI / 4.0 * bore_m * bore_m / loss.sqrt(), seal_deg }
    }

    /// Effective area at a handle angle in degrees: 0 closed, 90 in line with the pipe.
    #[must_use]
    pub fn cd_area_m2(&self, handle_deg: f64) -> f64 {
        let turned = (handle_deg - self.seal_deg) / (90.0 - self.seal_deg);
        self.full_cd_area_m2 * overlap(turned)
    }
}

/// Overlap of two unit circles as a share of one, when the share `turned` of the way is made.
fn overlap(turned: f64) -> f64 {
    if turned.is_nan() || turned <= 0.0 {
        return 0.0;
    }
    if turned >= 1.0 {
        return 1.0;
    }
    let half_gap = 1.0 - turned;
    let lens = libm::acos(half_gap) - half_gap * (1.0 - half_gap * half_gap).sqrt();
    (2.0 / PI * lens).clamp(0.0, 1.0)
}

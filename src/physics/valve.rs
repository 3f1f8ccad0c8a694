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

/// Handle angle up to which the seal of a ball valve holds, in degrees.
const BALL_SEAL_DEG: i16 = 6;
/// Handle angle from which a valve counts as open, in degrees: as near to its stop as the eye tells.
const OPEN_DEG: i16 = 85;
/// Handle angle from which a valve stands nearer along its pipe than across it, in degrees.
const HALF_DEG: i16 = 45;

/// Where the handle of a quarter-turn valve stands, in degrees from shut: 0 across the pipe, 90 along
/// it (common practice: the handle shows the way of the bore).
///
/// Between shut and open it is throttled. Shut is up to the angle at which a ball valve's seal
/// holds; one degree further a 3/4 in. valve passes a fifth of what an 80,000 Btu/h furnace burns at
/// 7 in. w.c., so that everything behind it is under gas. Open is where the handle stands along the
/// pipe: at 85° the bore is 92 % free, and the eye does not tell the rest.
#[derive(
    Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, serde::Serialize, serde::Deserialize,
)]
#[serde(transparent)]
pub struct HandleAngle(i16);

impl HandleAngle {
    /// Across the pipe, at its stop.
    pub const SHUT: Self = Self(0);
    /// Along the pipe, at its stop.
    pub const OPEN: Self = Self(90);

    /// So many degrees from shut; none outside 0 to 90.
    #[must_use]
    pub fn from_deg(deg: i16) -> Option<Self> {
        (0..=90).contains(&deg).then_some(Self(deg))
    }

    /// Degrees from shut, 0 to 90.
    #[must_use]
    pub fn deg(self) -> i16 {
        self.0
    }

    /// Whether it holds the gas back.
    #[must_use]
    pub fn is_shut(self) -> bool {
        self.0 <= BALL_SEAL_DEG
    }

    /// Whether gas comes through, throttled or not: the two sides are joined.
    #[must_use]
    pub fn feeds(self) -> bool {
        !self.is_shut()
    }

    /// Whether it stands along the pipe, so that it takes no pressure away.
    #[must_use]
    pub fn is_open(self) -> bool {
        self.0 >= OPEN_DEG
    }

    /// Whether what burns behind it may want for gas: shut, or nearer across the pipe than along it.
    /// From half way on a 3/4 in. valve takes less than half a digit of a meter, 0.05 in. w.c., from
    /// an 80,000 Btu/h furnace.
    #[must_use]
    pub fn starves(self) -> bool {
        self.0 < HALF_DEG
    }
}

impl core::fmt::Display for HandleAngle {
    /// Degrees from shut, such as `45°`.
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}°", self.0)
    }
}

/// How a quarter-turn valve is built.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum HandValveKind {
    /// Full-port ball valve: 3 diameters of pipe when open, sealed up to 6°.
    Ball,
    /// Plug valve: 18 diameters of pipe when open, sealed up to 4°.
    PlugCock,
}

/// Law of a quarter-turn hand valve: effective area against handle angle.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct HandValveLaw {
    /// Effective area fully open, in m².
    pub full_cd_area_m2: f64,
    /// Handle angle up to which the seal still holds, in degrees.
    pub seal_deg: f64,
}

impl HandValveLaw {
    /// A valve of inside bore `bore_m`.
    #[must_use]
    pub fn new(kind: HandValveKind, bore_m: f64) -> Self {
        let (length_over_diameter, seal_deg) = match kind {
            HandValveKind::Ball => (3.0, f64::from(BALL_SEAL_DEG)),
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

//! Straight pipe and smooth tubing: flow against pressure drop, laminar to fully rough.
//!
//! **Equation.** Darcy–Weisbach for isothermal gas, `w = f·(L/D)·G²/(2·ρ_ref)` with
//! `w = (P₁² − P₂²)/(2·p_std)` in Pa (absolute pressures), `G = ρ_std·Q/A` in kg/(m²·s), `ρ_ref`
//! the density at standard pressure and the gas temperature, `L` measured length and fittings. At
//! low pressure `w` is the plain drop, so one law serves low and medium pressure. The friction
//! factor is one formula, `f¹⁶ = (64/Re)¹⁶ + (0.1388·Re^−0.152)¹⁶ + f_rough¹⁶`,
//! `f_rough = [−2·log₁₀(ε/3.7D)]⁻²`, `Re = 4·ρ_std·Q/(π·D·μ)`: Hagen–Poiseuille below Re ≈ 1,385,
//! from there on the friction inside the code's own sizing equation, and von Kármán's limit for
//! pipe rougher than that equation has in mind.
//! **Assumptions.** Isothermal ideal gas, horizontal, kinetic energy along the run neglected.
//! Between Re 1,385 and 4,000 the flow counts as turbulent: runs in a house have a fitting every
//! few feet, and the tables that a fitter sizes by count it so. Temperature is that of the first
//! end.
//! **Valid range.** Re 0 to 2·10⁶, inside diameter 5–110 mm, up to 20 psi gauge (`w` ≤ 262 kPa).
//! **Regularisation.** The exponent 16 rounds the two corners of friction; it adds at most 4.4 %,
//! where two laws cross. Zero needs none: the laminar law is linear in `w`. Diameters below 0.1 mm
//! and lengths below 1 mm are taken as these. `Q(w)` is tabulated ([`FlowCurve`]).
//! **Source.** Constant and exponents are those of IFGC 402.4 (Eq. 4-1, 4-2) with
//! `Cr = 0.00354·S·T·(Z/S)^0.152`, rewritten as a friction factor: flow within 0.3 % of Eq. 4-2
//! from 1/4 in. to 4 in. Rough limit: von Kármán. Equivalent lengths: IFGC Table A.2.2. Roughness:
//! Moody 1944; new steel 17.8 µm from memory.
//! **Left out.** The low friction of undisturbed laminar flow above Re 1,385: at Re 2,000 a long,
//! straight, smooth pipe can have 27 % less friction than here. Against Colebrook–White (1/2 in.
//! steel) the code's friction is 4 % less at Re 4,000 and 10 % more at Re 30,000. Entrance effects,
//! static head.
//! **Checked.** `tests/core/physics/pipe.rs`: IFGC 2018 Tables 402.4(2), (9), (28) and a
//! first-stage table, `schedule_40_natural_gas()`, `copper_both_gases()`, `schedule_40_propane()`,
//! `schedule_40_first_stage_propane()`; Eq. 4-2 itself,
//! `follows_the_codes_low_pressure_equation()`; Hagen–Poiseuille, `little_flow_is_laminar()`; Moody's
//! rough end, `friction_limits()`.

mod curve;
mod sizes;
mod tubing;

use serde::Serialize;
use std::f64::consts::PI;

use super::fluid::Gas;
use crate::units::T_STD_K;

pub use curve::FlowCurve;
pub(crate) use curve::drive_pa;
pub use sizes::{copper_tube_id_m, schedule_40_id_m};
pub use tubing::{TubingSpec, ehd_constants};

/// Friction constant of the code's sizing equation, see the module page.
const CODE_FRICTION: f64 = 0.138_8;
/// Reynolds exponent of the code's sizing equation.
const CODE_EXPONENT: f64 = 0.152;
/// Below this Reynolds number the curve is the laminar straight line.
const RE_LINEAR: f64 = 200.0;

/// What a pipe is made of; sets its roughness.
#[derive(Debug, Clone, Copy, PartialEq, Eq, serde::Deserialize)]
#[serde(rename_all = "kebab-case")]
pub enum PipeMaterial {
    /// New, clean Schedule 40 steel: 17.8 µm (0.0007 in., the gas industry's value for new clean
    /// steel pipe, from memory).
    Steel,
    /// Drawn copper or brass tube: 1.5 µm (Moody 1944).
    Copper,
    /// Galvanised or rusted steel: 150 µm (Moody 1944).
    RustedSteel,
}

impl PipeMaterial {
    /// Equivalent sand roughness, in metres.
    #[must_use]
    pub fn roughness_m(self) -> f64 {
        match self {
            Self::Steel => 17.8e-6,
            Self::Copper => 1.5e-6,
            Self::RustedSteel => 150e-6,
        }
    }
}

/// A fitting that adds equivalent length to a run (IFGC Table A.2.2, screwed fittings).
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Fitting {
    /// 45° elbow, screwed: 14 diameters.
    Elbow45,
    /// 90° elbow, screwed: 30 diameters.
    Elbow90,
    /// 180° close return bend.
    ReturnBend,
    /// Tee with the flow through the branch.
    TeeBranch,
    /// Tee with the flow straight through (20 diameters, Crane TP-410, from memory).
    TeeRun,
}

impl Fitting {
    /// Equivalent length over inside diameter.
    #[must_use]
    pub fn length_over_diameter(self) -> f64 {
        match self {
            Self::Elbow45 => 14.0,
            Self::Elbow90 => 30.0,
            Self::ReturnBend => 67.0,
            Self::TeeBranch => 60.0,
            Self::TeeRun => 20.0,
        }
    }

    /// Equivalent length in metres in a pipe of inside diameter `id_m`.
    #[must_use]
    pub fn equivalent_length_m(self, id_m: f64) -> f64 {
        self.length_over_diameter() * id_m
    }
}

/// One run of pipe or smooth tube.
#[derive(Debug, Clone, Copy, PartialEq, Serialize)]
pub struct PipeSpec {
    /// Inside diameter, in metres.
    pub id_m: f64,
    /// Measured length, in metres.
    pub length_m: f64,
    /// Equivalent length of its fittings, in metres.
    pub fittings_m: f64,
    /// Equivalent sand roughness, in metres.
    pub roughness_m: f64,
}

impl PipeSpec {
    /// A straight run without fittings.
    #[must_use]
    pub fn new(material: PipeMaterial, id_m: f64, length_m: f64) -> Self {
        Self { id_m, length_m, fittings_m: 0.0, roughness_m: material.roughness_m() }
    }

    /// The same run with `count` more of a fitting.
    #[must_use]
    pub fn with(mut self, fitting: Fitting, count: u32) -> Self {
        self.fittings_m += f64::from(count) * fitting.equivalent_length_m(self.id_m);
        self
    }

    /// Gas volume inside the measured length, in m³.
    #[must_use]
    pub fn volume_m3(&self) -> f64 {
        PI / 4.0 * self.id_m * self.id_m * self.length_m
    }

    /// Tabulates flow against the driving term for one gas at temperature `t_k`.
    #[must_use]
    pub fn curve(&self, gas: &Gas, t_k: f64) -> FlowCurve {
        let law = PipeLaw::new(self, gas, t_k);
        FlowCurve::tabulate(law.drive_pa(RE_LINEAR), |drive_pa| law.flow(drive_pa))
    }
}

/// Darcy friction factor at Reynolds number `re` (above zero) and relative roughness `roughness_ratio`
/// (ε/D, 0 for smooth, taken as 0.1 at most).
#[must_use]
pub fn friction_factor(re: f64, roughness_ratio: f64) -> f64 {
    friction(re, rough_friction(roughness_ratio)).0
}

/// Friction factor and its logarithmic slope `d ln f / d ln Re`.
fn friction(re: f64, rough: f64) -> (f64, f64) {
    let laminar = pow16(64.0 / re);
    let code = pow16(CODE_FRICTION * libm::pow(re, -CODE_EXPONENT));
    let sum = laminar + code + pow16(rough);
    (libm::pow(sum, 1.0 / 16.0), -(laminar + CODE_EXPONENT * code) / sum)
}

fn rough_friction(roughness_ratio: f64) -> f64 {
    if roughness_ratio <= 0.0 {
        return 0.0;
    }
    let log = libm::log10(roughness_ratio.min(0.1) / 3.7);
    1.0 / (4.0 * log * log)
}

fn pow16(x: f64) -> f64 {
    let x2 = x * x;
    let x4 = x2 * x2;
    let x8 = x4 * x4;
    x8 * x8
}

/// The law of one run in one gas, in terms of the Reynolds number.
struct PipeLaw {
    rough: f64,
    /// Driving term over `f·Re²`, in Pa.
    drive_scale_pa: f64,
    /// Standard flow over Reynolds number, in m³/s.
    flow_scale_m3_s: f64,
}

impl PipeLaw {
    fn new(spec: &PipeSpec, gas: &Gas, t_k: f64) -> Self {
        let id_m = spec.id_m.max(1e-4);
        let length_m = (spec.length_m + spec.fittings_m).max(1e-3);
        let density_std = gas.density_std_kg_m3();
        let flux_per_re = gas.viscosity_pa_s / id_m;
        let density_ref = density_std * T_STD_K / t_k;
        Self {
            rough: rough_friction(spec.roughness_m / id_m),
            drive_scale_pa: length_m / id_m * flux_per_re * flux_per_re / (2.0 * density_ref),
            flow_scale_m3_s: PI * id_m * gas.viscosity_pa_s / (4.0 * density_std),
        }
    }

    fn drive_pa(&self, re: f64) -> f64 {
        friction(re, self.rough).0 * re * re * self.drive_scale_pa
    }

    /// Flow and its slope at a driving term above zero: Newton on the logarithm of Re.
    fn flow(&self, drive_pa: f64) -> (f64, f64) {
        let mut ln_re = libm::log(drive_pa / (64.0 * self.drive_scale_pa));
        if ln_re > 7.0 {
            ln_re = 7.0 + (ln_re - 7.0) / 1.85;
        }
        let mut slope = 1.0;
        for _ in 0..60 {
            let re = libm::exp(ln_re);
            let (f, f_slope) = friction(re, self.rough);
            slope = 2.0 + f_slope;
            let gap = libm::log(drive_pa / (f * re * re * self.drive_scale_pa));
            ln_re += gap / slope;
            if gap.abs() < 1e-14 {
                break;
            }
        }
        let flow = self.flow_scale_m3_s * libm::exp(ln_re);
        (flow, flow / (drive_pa * slope))
    }
}

//! A volume that empties.

use core::f64::consts::PI;

use super::rig::Vessel;
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::physics::fluid::Gas;
use crate::physics::pipe::{PipeMaterial, PipeSpec};
use crate::units::{P_STD_PA, PA_PER_PSI, T_STD_K, TICK_S};

pub(super) fn checks() -> Vec<Check> {
    vec![square_root(), choked(), laminar(), mass(), trapped()]
}

/// `√P` falls in a straight line where the flow goes as the square root.
fn square_root() -> Check {
    let (volume_m3, area_m2, start_pa) = (0.05, 1e-6, 1_000.0);
    let gas = Gas::natural();
    let mut vessel =
        Vessel::new(gas, volume_m3, T_STD_K, start_pa, |b, from, to| b.opening(from, to, area_m2));
    // dP/dt = −(p/V)·A·√(2P/ρ).
    let rate = P_STD_PA / volume_m3 * area_m2 * (2.0 / gas.density_std_kg_m3()).sqrt();
    let empty_s = 2.0 * start_pa.sqrt() / rate;
    let mut rows = Vec::new();
    for ninths in 1..=8_u32 {
        let steps = 200;
        vessel.run(steps, empty_s / 9.0 / f64::from(steps));
        let share = f64::from(ninths) / 9.0;
        let by_hand = start_pa * (1.0 - share) * (1.0 - share);
        let at = share * empty_s;
        rows.push(Row::new(format!("{at:.2} s"), by_hand, vessel.pressure_pa()).on("", at));
    }
    check("closed.bleed.square-root", rows)
}

/// Choked flow goes with the absolute pressure: an exponential.
fn choked() -> Check {
    let (volume_m3, area_m2, start_pa) = (0.05, 2e-6, 60.0 * PA_PER_PSI);
    let gas = Gas::propane();
    let mut vessel =
        Vessel::new(gas, volume_m3, T_STD_K, start_pa, |b, from, to| b.opening(from, to, area_m2));
    // IEC 60534-2-1: Y = 2/3 and x = x_T·γ/1.40 where choked, x_T = 0.72.
    let x = 0.72 * gas.gamma / 1.40;
    let speed = 2.0 / 3.0 * (2.0 * x * P_STD_PA / gas.density_std_kg_m3()).sqrt();
    let tau_s = volume_m3 / (area_m2 * speed);
    let mut rows = Vec::new();
    let mut passed_s = 0.0;
    for _ in 0..6 {
        vessel.run(200, TICK_S);
        passed_s += 200.0 * TICK_S;
        let by_hand = (start_pa + P_STD_PA) * libm::exp(-passed_s / tau_s) - P_STD_PA;
        let row = Row::new(
            format!("{passed_s:.0} s"),
            by_hand / PA_PER_PSI,
            vessel.pressure_pa() / PA_PER_PSI,
        );
        rows.push(row.on("", passed_s));
    }
    check("closed.bleed.choked", rows)
}

/// Through a capillary the flow goes with `P₁² − P₂²`: a closed form again.
fn laminar() -> Check {
    let (volume_m3, bore_m, length_m, start_pa) = (2e-3, 5e-4, 0.2, 1_000.0);
    let gas = Gas::natural();
    let pipe = PipeSpec::new(PipeMaterial::Copper, bore_m, length_m);
    let mut vessel =
        Vessel::new(gas, volume_m3, T_STD_K, start_pa, |b, from, to| b.pipe(from, to, &pipe));
    let conductance =
        PI * bore_m * bore_m * bore_m * bore_m / (128.0 * gas.viscosity_pa_s * length_m);
    // dP/dt = −(p/V)·G·P·(1 + P/2p): ln(P/(2p + P)) falls in a straight line.
    let rate = P_STD_PA / volume_m3 * conductance;
    let start = start_pa / (2.0 * P_STD_PA + start_pa);
    let mut rows = Vec::new();
    for k in 1..=6_u32 {
        vessel.run(500, 2e-3);
        let passed_s = f64::from(k);
        let left = start * libm::exp(-rate * passed_s);
        let by_hand = 2.0 * P_STD_PA * left / (1.0 - left);
        let row = Row::new(format!("{passed_s:.0} s"), by_hand, vessel.pressure_pa());
        rows.push(row.on("", passed_s));
    }
    check("closed.bleed.laminar", rows)
}

/// What came out is what the ideal gas law says the volume lost.
fn mass() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        for t_k in [255.0, T_STD_K, 311.0] {
            let start_pa = 5.0 * PA_PER_PSI;
            let mut vessel =
                Vessel::new(gas, 0.01, t_k, start_pa, |b, from, to| b.opening(from, to, 1e-6));
            let out_m3 = vessel.run(500, TICK_S);
            let lost_m3 = 0.01 * (start_pa - vessel.pressure_pa()) / P_STD_PA * T_STD_K / t_k;
            rows.push(Row::new(format!("{name}, {t_k:.0} K"), lost_m3 * 1e3, out_m3 * 1e3));
        }
    }
    check("closed.bleed.ideal-gas-mass", rows)
}

/// A tight line keeps its pressure.
fn trapped() -> Check {
    let rows = [250.0, 2_500.0, 69_000.0]
        .into_iter()
        .map(|start_pa| {
            let mut vessel = Vessel::new(Gas::natural(), 1e-3, T_STD_K, start_pa, |b, from, to| {
                b.opening(from, to, 0.0)
            });
            vessel.run(1_000, TICK_S);
            vessel.run(100, 36.0);
            Row::new(
                t!("row-pa-shut", start_pa = start_pa.to_string()),
                start_pa,
                vessel.pressure_pa(),
            )
        })
        .collect();
    check("closed.bleed.trapped", rows)
}

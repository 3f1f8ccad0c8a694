//! Heat to the air: the 1.08 rule.

use super::CHAPTER;
use crate::appliance::airside::{AirPath, AirSide};
use crate::appliance::ignition::Speed;
use crate::fidelity::{Check, Row, Tolerance, Truth};
use crate::physics::heat::{AIR_J_M3_K, Exchanger};
use crate::units::{M3_PER_FT3, W_PER_BTU_H};

pub(super) fn checks() -> Vec<Check> {
    vec![rise(), constant(), blower()]
}

const RETURN_K: f64 = 294.0;

fn rise() -> Check {
    let rows = [
        (64_000.0, 1_185.0, 50.0),
        (64_000.0, 1_185.0 / 2.0, 100.0),
        (44_800.0, 889.0, 46.66),
        (100_000.0, 1_500.0, 61.73),
    ]
    .into_iter()
    .map(|(btu_h, cfm, rise_f)| {
        let mut exchanger = Exchanger::new(15e3, RETURN_K);
        for _ in 0..4_000 {
            exchanger.step(0.2, btu_h * W_PER_BTU_H, cfm * M3_PER_FT3 / 60.0, RETURN_K);
        }
        let found = (exchanger.supply_air_k() - RETURN_K) * 1.8;
        Row::new(format!("{btu_h} Btu/h into {cfm:.0} ft³/min"), rise_f, found)
    })
    .collect();
    Check {
        id: "closed.air.rise".into(),
        chapter: CHAPTER,
        claim: "Air warms by q/(1.08·cfm): 64,000 Btu/h into 1,185 ft³/min gives 50 °F.".into(),
        truth: Truth::ClosedForm,
        source: "Sensible heat rule q = 1.08·cfm·ΔT of air-conditioning handbooks".into(),
        condition: "standard air, steady firing".into(),
        tolerance: Tolerance::Absolute(0.02),
        reason: "References are rounded to 0.01 °F, and 1,185 ft³/min to a whole number.".into(),
        unit: "°F",
        rows,
        known_miss: None,
    }
}

fn constant() -> Check {
    let per_cfm_f = AIR_J_M3_K * (M3_PER_FT3 / 60.0) / (W_PER_BTU_H * 1.8);
    Check {
        id: "closed.air.constant".into(),
        chapter: CHAPTER,
        claim: "The heat that a cubic foot a minute carries is that of standard air.".into(),
        truth: Truth::Published,
        source: "0.075 lb/ft³ × 0.24 Btu/(lb·°F) × 60 min/h".into(),
        condition: "standard air".into(),
        tolerance: Tolerance::Absolute(1e-9),
        reason: "The same product.".into(),
        unit: "Btu/(h·cfm·°F)",
        rows: vec![Row::new("1.08 rule", 0.075 * 0.24 * 60.0, per_cfm_f)],
        known_miss: None,
    }
}

/// The blower's air gives the rise that it was chosen for, and thin air a larger one.
fn blower() -> Check {
    let useful_w = 64_000.0 * W_PER_BTU_H;
    let rise_f = |speed: Speed, heat_w: f64, density: f64| {
        let mut air = AirSide::new(useful_w, 50.0 / 1.8, RETURN_K);
        air.set_path(AirPath { air_density: density, ..AirPath::default() });
        for _ in 0..6_000 {
            air.step(0.1, Speed::High, speed, heat_w, RETURN_K);
        }
        air.rise_k() * 1.8
    };
    Check {
        id: "closed.air.blower".into(),
        chapter: CHAPTER,
        claim: "The blower gives the rise that it was chosen for, and the rise goes with heat over mass of air.".into(),
        truth: Truth::ClosedForm,
        source: "Sensible heat rule; at altitude 1.08 is multiplied by the density ratio".into(),
        condition: "64,000 Btu/h useful heat on high; low stage 70 % of heat on 75 % of speed".into(),
        tolerance: Tolerance::Absolute(0.02),
        reason: "Steady state in pencil and paper; free convection around the exchanger adds 0.01 °F.".into(),
        unit: "°F",
        rows: vec![
            Row::new("high", 50.0, rise_f(Speed::High, useful_w, 1.0)),
            Row::new("low", 50.0 * 0.70 / 0.75, rise_f(Speed::Low, 0.70 * useful_w, 1.0)),
            Row::new("high at 5,000 ft (density 0.862)", 50.0 / 0.862, rise_f(Speed::High, useful_w, 0.862)),
        ],
        known_miss: None,
    }
}

//! Heat to the air: the 1.08 rule.

use crate::appliance::airside::{AirPath, AirSide};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::parts::{Level, Levels};
use crate::physics::heat::{AIR_J_M3_K, Exchanger};
use crate::units::{M3_PER_FT3, W_PER_BTU_H};
use crate::words::decimal;

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
        Row::new(
            t!("row-heat-into-air", btu_h = btu_h.to_string(), cfm = decimal(cfm, 0)),
            rise_f,
            found,
        )
    })
    .collect();
    check("closed.air.rise", rows)
}

fn constant() -> Check {
    let per_cfm_f = AIR_J_M3_K * (M3_PER_FT3 / 60.0) / (W_PER_BTU_H * 1.8);
    check(
        "closed.air.constant",
        vec![Row::new(t!("row-rule-1-08"), 0.075 * 0.24 * 60.0, per_cfm_f)],
    )
}

/// The blower's air gives the rise that it was chosen for, and thin air a larger one.
fn blower() -> Check {
    let useful_w = 64_000.0 * W_PER_BTU_H;
    let shares = Levels::two(0.70, 1.0);
    let (first, full) = (shares.first_level(), shares.top_level());
    let rise_f = |speed: Level, share: f64, density: f64| {
        let mut air = AirSide::new(useful_w, 50.0 / 1.8, RETURN_K);
        air.set_path(AirPath { air_density: density, ..AirPath::default() });
        for _ in 0..6_000 {
            air.step(0.1, Some(full), Some(speed), share * useful_w, RETURN_K);
        }
        air.rise_k() * 1.8
    };
    check(
        "closed.air.blower",
        vec![
            Row::new("high", 50.0, rise_f(full, *shares.top(), 1.0)),
            Row::new("low", 50.0 * 0.70 / 0.75, rise_f(first, *shares.first(), 1.0)),
            Row::new(t!("row-high-5-000-ft"), 50.0 / 0.862, rise_f(full, *shares.top(), 0.862)),
        ],
    )
}

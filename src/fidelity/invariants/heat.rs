//! Heat: what the flame gives goes to the air, up the flue, or stays in the metal.

use super::shape::SEED;
use crate::appliance::airside::AirSide;
use crate::appliance::burner::{BurnerIn, Burners};
use crate::fidelity::check::{Check, Row};
use crate::fidelity::claims::check;
use crate::parts::Levels;
use crate::physics::combustion::efficiency;
use crate::physics::fluid::Gas;
use crate::physics::heat::Exchanger;
use crate::rng::stream;
use crate::site::house::House;
use crate::units::{TICK_S, W_PER_BTU_H};
use crate::words::decimal;

pub(super) fn checks() -> Vec<Check> {
    vec![furnace(), stored()]
}

const RETURN_K: f64 = 294.0;

/// A furnace at rest on a stage: gas in, heat to the air, heat up the flue, in watts.
fn steady(gas: Gas, load: f64) -> [f64; 3] {
    let rated_m3_s = 80_000.0 * W_PER_BTU_H / gas.heating_value_j_m3;
    let levels = Levels::two(0.7 * rated_m3_s, rated_m3_s);
    let mut burners = Burners::new(&[2.2e-3; 4], levels, 17.0);
    let mut air = AirSide::new(0.8 * 80_000.0 * W_PER_BTU_H, 30.0, RETURN_K);
    let (level, inducer) =
        if load > 0.85 { (levels.top_level(), 1.0) } else { (levels.first_level(), 0.7) };
    let flow_m3_s = load * rated_m3_s;
    for _ in 0..900 {
        burners.step(TICK_S, &gas, &BurnerIn { flow_m3_s: 0.0, igniter: true, inducer });
    }
    for tick in 0..3_500 {
        let dt_s = if tick < 500 { TICK_S } else { 0.5 };
        let igniter = tick < 500;
        burners.step(dt_s, &gas, &BurnerIn { flow_m3_s, igniter, inducer });
        let useful_w = burners.useful_w(&gas, air.flue_k());
        air.step(dt_s, Some(level), Some(level), useful_w, RETURN_K);
    }
    let gas_w = flow_m3_s * gas.heating_value_j_m3;
    let lost = 1.0 - efficiency(&gas, burners.excess_air(), air.flue_k());
    [gas_w, air.to_air_w(), lost * burners.input_w()]
}

fn furnace() -> Check {
    let mut rows = Vec::new();
    for (name, gas) in [(t!("row-natural-gas"), Gas::natural()), ("propane", Gas::propane())] {
        for load in [0.7, 0.8, 1.0, 1.1] {
            let [gas_w, to_air_w, flue_w] = steady(gas, load);
            let label = t!("row-rated-gas", name = name, percent = decimal(100.0 * load, 0));
            rows.push(Row::new(label, gas_w, to_air_w + flue_w).on(name, 100.0 * load));
        }
    }
    check("invariants.heat.furnace", rows)
}

fn stored() -> Check {
    let mut draws = stream(SEED, "fidelity.heat");
    let mut metal = 0.0_f64;
    let mut walls = 0.0_f64;
    for _ in 0..20 {
        let capacity = draws.between(5e3, 3e4);
        let mut exchanger = Exchanger::new(capacity, RETURN_K);
        let (loss_w_k, mass_j_k) = (draws.between(100.0, 900.0), draws.between(5e6, 5e7));
        let mut house = House::new(RETURN_K, loss_w_k, mass_j_k);
        let (mut given, mut taken, mut lost) = (0.0, 0.0, 0.0);
        for _ in 0..400 {
            let heat_w = if draws.below(2) == 0 { 0.0 } else { draws.between(5e3, 3e4) };
            let air = draws.between(0.0, 0.8);
            let dt_s = draws.between(0.02, 2.0);
            given += dt_s * heat_w;
            taken += dt_s * exchanger.step(dt_s, heat_w, air, RETURN_K);
            house.step(dt_s, heat_w, 264.0);
            lost += dt_s * loss_w_k * (house.inside_k() - 264.0);
        }
        let kept = capacity * (exchanger.metal_k() - RETURN_K);
        metal = metal.max((given - taken - kept).abs() / given);
        let warmer = mass_j_k * (house.inside_k() - RETURN_K);
        walls = walls.max((given - lost - warmer).abs() / given);
    }
    check(
        "invariants.heat.stored",
        vec![
            Row::new(t!("row-worst-exchanger"), 1e-9, metal),
            Row::new(t!("row-worst-house"), 1e-9, walls),
        ],
    )
}

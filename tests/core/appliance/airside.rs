//! Blower, exchanger and limit.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use quarterturn::appliance::airside::{AirPath, AirSide};
use quarterturn::parts::Level;
use quarterturn::physics::heat::{AIR_J_M3_K, Exchanger, flue_above_metal_k};
use quarterturn::units::{M3_PER_FT3, W_PER_BTU_H, k_from_f};

const RETURN_K: f64 = 294.0;
const USEFUL_W: f64 = 64_000.0 * W_PER_BTU_H;

/// Half an hour of firing; the rise in °F.
fn rise_f(air: &mut AirSide, blower: Option<Level>, heat_w: f64) -> f64 {
    for _ in 0..30 * 60 * 50 {
        air.step(0.02, Some(Level::High), blower, heat_w, RETURN_K);
    }
    air.rise_k() * 1.8
}

/// The trade's example: 64,000 Btu/h delivered into 1,185 cfm gives a rise of 50.0 °F by the 1.08
/// rule (0.075 lb/ft³ × 0.24 Btu/(lb·°F) × 60 min/h).
#[test]
fn temperature_rise_follows_the_sensible_heat_rule() {
    let mut exchanger = Exchanger::new(30e3, RETURN_K);
    let air = 1185.0 * M3_PER_FT3 / 60.0;
    for _ in 0..4000 {
        exchanger.step(0.2, USEFUL_W, air, RETURN_K);
    }
    let rise_f = (exchanger.supply_air_k() - RETURN_K) * 1.8;
    assert_abs_diff_eq!(rise_f, 50.0, epsilon = 0.1);
    // 1.08 Btu/(h·cfm·°F) from the rule's own parts, in SI.
    let parts = 0.075 * 0.24 * 60.0 * W_PER_BTU_H * 1.8 / (M3_PER_FT3 / 60.0);
    assert_relative_eq!(AIR_J_M3_K, parts, max_relative = 1e-12);
}

/// All heat arrives: over a whole firing and cooling the air gets what the flame gave, within what
/// the metal still holds.
#[test]
fn heat_is_conserved() {
    let mut exchanger = Exchanger::new(15e3, RETURN_K);
    let (mut given, mut taken) = (0.0, 0.0);
    for tick in 0..100_000 {
        let heat = if tick < 30_000 { USEFUL_W } else { 0.0 };
        given += 0.02 * heat;
        taken += 0.02 * exchanger.step(0.02, heat, 0.5, RETURN_K);
    }
    assert_relative_eq!(given, taken, max_relative = 1e-9);
}

/// The blower is sized for its rise on high, and half the air means twice the rise; on low input and
/// low blower the rise stays near that of high (common practice: 5 to 10 °F below).
#[test]
fn rise_follows_heat_and_air() {
    let mut air = AirSide::new(USEFUL_W, 50.0 / 1.8, RETURN_K);
    assert_abs_diff_eq!(rise_f(&mut air, Some(Level::High), USEFUL_W), 50.0, epsilon = 0.1);
    let low = rise_f(&mut air, Some(Level::Low), 0.7 * USEFUL_W);
    assert!((40.0..50.0).contains(&low), "{low}");
    // A quarter of all resistance is the filter's: R = 0.75 + 0.25/(free area)² is 4 at 27.7 %.
    air.set_path(AirPath { filter_blocked: 1.0 - (0.25_f64 / 3.25).sqrt(), ..AirPath::default() });
    assert_abs_diff_eq!(rise_f(&mut air, Some(Level::High), USEFUL_W), 100.0, epsilon = 0.2);
}

/// At 5,000 ft (ISA pressure ratio 0.832) the same fan moves 0.832 of the mass, so the rise at the
/// same heat is 1/0.832 of that at sea level (the 1.08 rule corrected by density, handbook).
#[test]
fn thin_air_warms_more() {
    let mut air = AirSide::new(USEFUL_W, 50.0 / 1.8, RETURN_K);
    air.set_path(AirPath { air_density: 0.832, ..AirPath::default() });
    assert_abs_diff_eq!(rise_f(&mut air, Some(Level::High), USEFUL_W), 50.0 / 0.832, epsilon = 0.1);
}

/// A filter nearly shut and registers mostly closed bring the supply air past a limit of 190 °F;
/// a half-clogged filter alone does not.
#[test]
fn restricted_air_reaches_the_limit() {
    let at = |filter_blocked: f64, registers_closed: f64| {
        let mut air = AirSide::new(USEFUL_W, 50.0 / 1.8, RETURN_K);
        air.set_path(AirPath { filter_blocked, registers_closed, ..AirPath::default() });
        rise_f(&mut air, Some(Level::High), USEFUL_W);
        air.supply_air_k()
    };
    let limit_k = k_from_f(190.0);
    assert!(at(0.0, 0.0) < limit_k && at(0.5, 0.0) < limit_k);
    assert!(at(0.8, 0.75) > limit_k);
}

/// Fans run up and coast down in seconds; with the blower still the outlet is as hot as the metal.
#[test]
fn fans_run_up_and_coast() {
    let mut air = AirSide::new(USEFUL_W, 50.0 / 1.8, RETURN_K);
    let mut run = |blower: Option<Level>, seconds: u32| {
        for _ in 0..seconds * 50 {
            air.step(0.02, Some(Level::Low), blower, 0.0, RETURN_K);
        }
        air.blower()
    };
    assert!((0.2..0.5).contains(&run(Some(Level::High), 1)));
    assert!(run(Some(Level::High), 20) > 0.99);
    assert!((0.7..0.8).contains(&run(Some(Level::Low), 20)));
    let coasting = run(None, 2);
    assert!((0.1..0.7).contains(&coasting));
    assert!(run(None, 30) < 0.01);
}

/// Less fire leaves less heat in the flue gas, more fire more; at rated fire the rated value.
#[test]
fn flue_gas_cools_better_on_low() {
    assert_relative_eq!(flue_above_metal_k(1.0, 110.0), 110.0, max_relative = 1e-12);
    let low = flue_above_metal_k(0.7, 110.0);
    let over = flue_above_metal_k(1.3, 110.0);
    assert!(low < 100.0 && low > 60.0, "{low}");
    assert!(over > 120.0 && over < 180.0, "{over}");
    assert_eq!(flue_above_metal_k(0.0, 110.0), 0.0);
}

//! Burning against published and computed figures.

use approx::{assert_abs_diff_eq, assert_relative_eq};
use quarterturn::physics::combustion::{
    FlueGas, co_air_free_ppm, efficiency, excess_air_from_o2, flue_gas, weak_jet_co_ppm,
};
use quarterturn::physics::fluid::Gas;

/// Excess air, O₂, CO₂ and efficiency at 177 °C, in per cent: ideal-gas thermochemistry (GRI-Mech
/// 3.0 species data), for a 94.9 % methane pipeline mix and for propane.
const NATURAL: [(f64, f64, f64, f64); 6] = [
    (0.0, 0.0, 11.84, 84.1),
    (20.0, 3.81, 9.68, 83.1),
    (40.0, 6.45, 8.19, 82.1),
    (60.0, 8.39, 7.10, 81.1),
    (80.0, 9.87, 6.26, 80.1),
    (100.0, 11.03, 5.60, 79.1),
];
const PROPANE: [(f64, f64, f64, f64); 6] = [
    (0.0, 0.0, 13.72, 86.1),
    (20.0, 3.75, 11.26, 85.1),
    (40.0, 6.37, 9.55, 84.1),
    (60.0, 8.29, 8.29, 83.1),
    (80.0, 9.77, 7.32, 82.0),
    (100.0, 10.93, 6.56, 81.0),
];

const METHANE: [(f64, f64, f64); 6] = [
    (0.0, 0.0, 11.7),
    (20.0, 3.83, 9.56),
    (40.0, 6.47, 8.09),
    (60.0, 8.41, 7.01),
    (80.0, 9.89, 6.18),
    (100.0, 11.05, 5.53),
];

/// Methane by its stoichiometry: 2 volumes of oxygen in 9.55 of air leave 1 of carbon dioxide and
/// 7.55 of nitrogen.
fn methane() -> Gas {
    let air = 2.0 / 0.2095;
    let dry = 1.0 + air - 2.0;
    Gas { air_per_gas: air, dry_flue_per_air: dry / air, co2_max: 1.0 / dry, ..Gas::natural() }
}

/// Dry flue gas of methane and propane within 0.015 points of the table; of our natural gas, whose
/// dry flue gas is rounded, within 0.03; efficiency within the rounding of the table.
#[test]
fn flue_gas_and_efficiency_match_thermochemistry() {
    for (excess, o2, co2) in METHANE {
        let flue = flue_gas(&methane(), excess / 100.0);
        assert_abs_diff_eq!(100.0 * flue.o2, o2, epsilon = 0.015);
        assert_abs_diff_eq!(100.0 * flue.co2, co2, epsilon = 0.015);
    }
    for (gas, rows, band) in [(Gas::natural(), NATURAL, 0.03), (Gas::propane(), PROPANE, 0.015)] {
        for (excess, o2, co2, eff) in rows {
            let flue = flue_gas(&gas, excess / 100.0);
            assert_abs_diff_eq!(100.0 * flue.o2, o2, epsilon = band);
            assert_abs_diff_eq!(100.0 * flue.co2, co2, epsilon = band);
            let ours = 100.0 * efficiency(&gas, excess / 100.0, 177.0 + 273.15);
            assert_abs_diff_eq!(ours, eff, epsilon = 0.06);
        }
    }
}

/// The stack-loss rule of the German ordinance on small firing plants (1. BImSchV, coefficients
/// from memory): `(T_flue − T_air)·(A₂/(21 − O₂) + B)` per cent of the net heat. Our sensible loss,
/// turned to net by methane's 909/1010, lies within a tenth of it over the usual range.
#[test]
fn sensible_loss_agrees_with_the_siegert_rule() {
    let latent = [(Gas::natural(), 0.0989, 0.66, 0.009), (Gas::propane(), 0.080, 0.63, 0.008)];
    for (gas, latent, a2, b) in latent {
        for excess in [0.2, 0.4, 0.6] {
            for flue_c in [120.0, 177.0, 230.0] {
                let gross = 1.0 - latent - efficiency(&gas, excess, flue_c + 273.15);
                let net = 100.0 * gross / (1.0 - latent);
                let o2 = 100.0 * flue_gas(&gas, excess).o2;
                let rule = (flue_c - 25.0) * (a2 / (21.0 - o2) + b);
                assert_relative_eq!(net, rule, max_relative = 0.10);
            }
        }
    }
}

/// Excess air from oxygen: 89.5 · O₂/(20.95 − O₂) for methane, 91.6 for propane (stoichiometry); and
/// back again from the flue gas of the model.
#[test]
fn excess_air_follows_from_oxygen() {
    for (gas, factor) in [(methane(), 89.5), (Gas::propane(), 91.6)] {
        for o2 in [2.0, 5.0, 7.0, 9.0] {
            let ours = 100.0 * excess_air_from_o2(&gas, o2 / 100.0);
            assert_relative_eq!(ours, factor * o2 / (20.95 - o2), max_relative = 1e-3);
        }
        for excess in [0.1, 0.42, 0.9] {
            let back = excess_air_from_o2(&gas, flue_gas(&gas, excess).o2);
            assert_relative_eq!(back, excess, max_relative = 1e-12);
        }
    }
}

/// The trade's examples of air-free carbon monoxide (a trade article): 50 ppm at 7 % oxygen is 75,
/// 1,200 at 6 % is 1,680; and measured and air-free values are each other's inverse.
#[test]
fn air_free_carbon_monoxide_matches_the_trade_examples() {
    assert_abs_diff_eq!(co_air_free_ppm(50.0, 0.07), 75.0, epsilon = 1.0);
    assert_abs_diff_eq!(co_air_free_ppm(1200.0, 0.06), 1680.0, epsilon = 5.0);
    let flue = FlueGas { o2: 0.07, co2: 0.08, co_air_free_ppm: 75.0, burned: 1.0 };
    assert_relative_eq!(co_air_free_ppm(flue.co_ppm(), 0.07), 75.0, max_relative = 1e-12);
}

/// Carbon monoxide stays under the field's 100 ppm (NFPA 54 practice) at usual excess air, passes
/// the 400 ppm limit of vented appliances (ANSI Z21.47) as air runs short, and rises without a step.
#[test]
fn carbon_monoxide_rises_steeply_as_air_runs_short() {
    let gas = Gas::natural();
    let co = |excess: f64| flue_gas(&gas, excess).co_air_free_ppm;
    assert!(co(0.3) < 100.0 && co(0.6) < 20.0);
    assert!(co(0.1) > 400.0 && co(0.0) > 2_000.0);
    for i in 0..200 {
        let excess = 0.8 - f64::from(i) * 0.005;
        assert!(co(excess - 0.005) >= co(excess));
    }
}

/// A weak jet mixes poorly: nothing to speak of at healthy low stages (1.7 in. w.c. natural, 2.1 in.
/// w.c. propane), plain at a tenth of that.
#[test]
fn a_weak_jet_makes_carbon_monoxide() {
    assert!(weak_jet_co_ppm(0.75 * 423.0) < 1.0);
    assert!(weak_jet_co_ppm(0.75 * 523.0) < 1.0);
    assert!(weak_jet_co_ppm(0.75 * 42.0) > 50.0);
}

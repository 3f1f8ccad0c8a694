//! Openings and burner orifices.

use quarterturn::physics::fluid::Gas;
use quarterturn::physics::orifice::{
    DRILLS, OPENING_EPSILON_PA, OpeningLaw, area_for_flow_m2, drill_diameter_m, hole_area_m2,
    series_area,
};
use quarterturn::units::{
    J_M3_PER_BTU_FT3, M3_S_PER_CFH, P_STD_PA, PA_PER_INWC, T_STD_K, W_PER_BTU_H,
};

fn orifice_m3_s(gas: &Gas, k: f64, drill: &str, inwc: f64) -> f64 {
    let law = OpeningLaw::new(gas, T_STD_K);
    let up = P_STD_PA + inwc * PA_PER_INWC;
    let area = hole_area_m2(k, drill_diameter_m(drill).unwrap());
    law.flow(inwc * PA_PER_INWC, up, P_STD_PA).flow * area
}

/// NFPA 54 Annex E Table E.1.1(a), utility gas SG 0.60, ft³/h at 3 to 10 in. w.c. Printed with two
/// decimals, hence half a unit; beyond that within 1.3 %, or 2.4 % in the columns of 5 and 6 in., which
/// are printed that much over the table's own formula. Rows #77 and #78 are printed 3–8 % high at 3 and 3.5 in. and are
/// left out.
#[test]
fn utility_gas_rows() {
    let inches = [3.0, 3.5, 4.0, 5.0, 6.0, 7.0, 8.0, 9.0, 10.0];
    let rows = [
        ("#80", [0.48, 0.52, 0.55, 0.63, 0.69, 0.73, 0.79, 0.83, 0.88]),
        ("#79", [0.55, 0.59, 0.64, 0.72, 0.80, 0.84, 0.90, 0.97, 1.01]),
        ("#76", [1.05, 1.13, 1.21, 1.37, 1.52, 1.61, 1.72, 1.83, 1.92]),
    ];
    for (drill, printed) in rows {
        for (inwc, want) in inches.into_iter().zip(printed) {
            let got = orifice_m3_s(&Gas::natural(), 0.90, drill, inwc) / M3_S_PER_CFH;
            let beyond = ((got - want).abs() - 0.005).max(0.0) / want;
            let band = if inwc == 5.0 || inwc == 6.0 { 0.024 } else { 0.013 };
            assert!(beyond < band, "{drill} at {inwc}: {got:.3} for {want}");
        }
    }
}

/// The NFPA 54 Annex E formula, Q = 1658.5·K·A·√(H/SG): 0.2 % over the law in its constant (air at
/// 0.0764 lb/ft³ gives 1654.8); at 10 in. w.c. of propane expansion takes 1.4 % and upstream density
/// gives 1.2 %. Together within 0.5 %. All number drills, both gases.
#[test]
fn agrees_with_the_annex_e_formula() {
    for (gas, inwc) in [(Gas::natural(), 3.5), (Gas::natural(), 1.7), (Gas::propane(), 10.0)] {
        for &(number, diameter_in) in DRILLS {
            let area_in2 = std::f64::consts::FRAC_PI_4 * diameter_in * diameter_in;
            let want = 1658.5 * 0.90 * area_in2 * (inwc / gas.specific_gravity).sqrt();
            let got = orifice_m3_s(&gas, 0.90, &format!("#{number}"), inwc) / M3_S_PER_CFH;
            approx::assert_relative_eq!(got, want, max_relative = 5e-3);
        }
    }
}

/// A two-stage furnace's orifice table (22,000 and 14,500 Btu/h a burner; a product manual, 28
/// orifice and pressure pairs): in-service K 0.873 at both stages, and √(P_low/P_high) = 0.6595 in
/// the mean against the rated ratio 0.659. #43 at 3.6 in. w.c. passes 22,000 Btu/h with K = 0.870.
#[test]
fn two_stage_pairs_follow_the_square_root() {
    let gas = Gas { heating_value_j_m3: 1_000.0 * J_M3_PER_BTU_FT3, ..Gas::natural() };
    let btu_h =
        |inwc| orifice_m3_s(&gas, 0.870, "#43", inwc) * gas.heating_value_j_m3 / W_PER_BTU_H;
    approx::assert_relative_eq!(btu_h(3.6), 22_000.0, max_relative = 5e-3);
    approx::assert_relative_eq!(btu_h(3.6 * 0.6595 * 0.6595), 14_500.0, max_relative = 5e-3);
    // 1.5 against 3.5 in. w.c.: √(1.5/3.5) = 0.655.
    approx::assert_relative_eq!(btu_h(1.5) / btu_h(3.5), 0.6547, max_relative = 1.5e-3);
    // Twice the rate asks for four times the pressure.
    approx::assert_relative_eq!(btu_h(4.0) / btu_h(1.0), 2.0, max_relative = 2e-3);
}

/// NFPA 54 Annex E Table E.1.1(b), propane at 11 in. w.c. (from memory), Btu/h: the printed table is
/// 2.3–2.6 % over the formula with its own K, SG and heating value, and so over the model.
#[test]
fn propane_rows() {
    let gas = Gas::propane();
    for (drill, want) in
        [("#80", 1480.0), ("#70", 6375.0), ("#60", 13008.0), ("#54", 24630.0), ("#43", 64369.0)]
    {
        let got = orifice_m3_s(&gas, 0.90, drill, 11.0) * gas.heating_value_j_m3 / W_PER_BTU_H;
        let under = 1.0 - got / want;
        assert!((0.018..0.032).contains(&under), "{drill}: {got:.0} for {want}");
    }
}

/// At altitude the same gauge pressure passes less gas: √ of the density, 0.928 at 5,000 ft and
/// 0.887 at 8,000 ft (density ratios 0.862 and 0.786 of the standard atmosphere, ICAO).
#[test]
fn altitude_thins_the_flow() {
    let law = OpeningLaw::new(&Gas::natural(), T_STD_K);
    let drop = 3.5 * PA_PER_INWC;
    let at = |ratio: f64| law.flow(drop, ratio * P_STD_PA + drop, ratio * P_STD_PA).flow;
    approx::assert_relative_eq!(at(0.862) / at(1.0), 0.928, max_relative = 2e-3);
    approx::assert_relative_eq!(at(0.786) / at(1.0), 0.887, max_relative = 2e-3);
}

/// Choked flow depends on the inlet alone, in proportion; value and slope join at the limit, and
/// the slopes are the differences of the values everywhere.
#[test]
fn choking_and_slopes() {
    let gas = Gas::propane();
    let law = OpeningLaw::new(&gas, T_STD_K);
    let limit = 0.72 * gas.gamma / 1.40;
    let flow = |up: f64, down: f64| law.flow(up - down, up, down);
    let up = 800_000.0;
    let choked = flow(up, 100_000.0).flow;
    assert_eq!(flow(up, 200_000.0).flow, choked);
    approx::assert_relative_eq!(flow(2.0 * up, 100_000.0).flow, 2.0 * choked, max_relative = 1e-9);
    let edge = up * (1.0 - limit);
    approx::assert_relative_eq!(flow(up, edge + 1e-3).flow, choked, max_relative = 1e-12);
    for (up, down) in [
        (up, 1e5),
        (up, 4e5),
        (up, 7.9e5),
        (103_000.0, 101_325.0),
        (101_326.0, 101_325.0),
        (101_325.2, 101_325.0),
        (101_325.0, 101_325.0),
        (101_325.0, 104_000.0),
        (1e5, 9e5),
        (101_325.0, 101_325.3),
    ] {
        let at = flow(up, down);
        let h = 1e-3;
        let by_from = (flow(up + h, down).flow - flow(up - h, down).flow) / (2.0 * h);
        let by_to = (flow(up, down + h).flow - flow(up, down - h).flow) / (2.0 * h);
        let scale = at.by_from.abs().max(at.by_to.abs());
        approx::assert_relative_eq!(at.by_from, by_from, epsilon = 2e-5 * scale);
        approx::assert_relative_eq!(at.by_to, by_to, epsilon = 2e-5 * scale);
        assert!(at.by_from >= 0.0 && at.by_to <= 0.0);
    }
}

/// Through zero the law is odd and linear; at 100 ε it is the square root to 25 ppm.
#[test]
fn regular_through_zero() {
    let law = OpeningLaw::new(&Gas::natural(), T_STD_K);
    let p = P_STD_PA;
    assert_eq!(law.flow(0.0, p, p).flow, 0.0);
    let small = law.flow(1e-4, p + 1e-4, p).flow;
    approx::assert_relative_eq!(law.flow(2e-4, p + 2e-4, p).flow / small, 2.0, max_relative = 1e-6);
    approx::assert_relative_eq!(law.flow(-1e-4, p, p + 1e-4).flow, -small, max_relative = 1e-12);
    let drop = 100.0 * OPENING_EPSILON_PA;
    let density = Gas::natural().density_std_kg_m3();
    let want = (2.0 * drop / density).sqrt();
    // Upstream density +0.1 %/2, expansion −0.05 %: 1e-3 covers both.
    approx::assert_relative_eq!(law.flow(drop, p + drop, p).flow, want, max_relative = 1e-3);
}

/// Two equal openings in series pass 1/√2; a closed one closes all.
#[test]
fn openings_in_series() {
    approx::assert_relative_eq!(series_area(&[2e-6, 2e-6]), 2e-6 / 2.0_f64.sqrt());
    approx::assert_relative_eq!(series_area(&[3e-6]), 3e-6);
    assert_eq!(series_area(&[2e-6, 0.0]), 0.0);
    assert_eq!(series_area(&[]), 0.0);
    let law = OpeningLaw::new(&Gas::natural(), T_STD_K);
    let area = area_for_flow_m2(&law, 1e-4, 1_000.0, 0.0, P_STD_PA);
    approx::assert_relative_eq!(
        law.flow(1_000.0, P_STD_PA + 1_000.0, P_STD_PA).flow * area,
        1e-4,
        max_relative = 1e-12
    );
}

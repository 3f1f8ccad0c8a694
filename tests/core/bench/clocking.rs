//! The meter's dial and the heating values, against published figures.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::parts::{Door, Fitted, Level, Place};
use quarterturn::physics::fluid::Gas;
use quarterturn::setup::SupplyKind;
use quarterturn::units::{J_M3_PER_BTU_FT3, M3_PER_FT3, P_STD_PA, T_STD_K, W_PER_BTU_H};

use super::rig;

/// Seconds for one turn of a one-cubic-foot dial with the furnace firing on high alone.
fn seconds_per_foot(input_btu_h: f64, heating_value_btu_ft3: f64) -> f64 {
    let mut setup = rig::healthy(Fuel::Natural);
    setup.gas.heating_value_j_m3 = heating_value_btu_ft3 * J_M3_PER_BTU_FT3;
    setup.supply.kind = SupplyKind::Meter { dial_m3: M3_PER_FT3 };
    let scale = input_btu_h / 80_000.0;
    let orifice = rig::orifice_for(
        &setup.gas,
        input_btu_h / 4.0 * W_PER_BTU_H,
        setup.furnace.plate.figures().manifold.top().pa,
        setup.furnace.orifice_cd,
    );
    setup.furnace.orifices_m = vec![orifice; 4];
    setup.furnace.plate.input.each_mut(|input| input.0 *= scale);
    setup.house.setpoint_half_f = 160;
    let mut bench = Bench::new(setup);
    for action in [
        Action::Go(Place::PlantRoom),
        Action::Door { door: Door::Burner, to: Fitted::Off },
        Action::StageJumper(Fitted::On),
    ] {
        bench.apply(&action).unwrap();
    }
    for _ in 0..200 * 50 {
        bench.step();
    }
    assert_eq!(bench.truth().firing, Some(Level::High));
    bench.apply(&Action::Go(Place::Yard)).unwrap();
    let turns = |bench: &Bench| bench.seen().yard.unwrap().dial_turns.unwrap();
    let start = turns(&bench);
    for _ in 0..300 * 50 {
        bench.step();
    }
    300.0 / (turns(&bench) - start)
}

/// A furnace maker's clocking chart at 1,000 Btu/ft³: 30, 45 and 110 kBtu/h give 120, 80 and 33 s
/// for a cubic foot. (Its 70 kBtu/h row is nominal: 55 s is 65.5 kBtu/h.)
#[test]
fn the_dial_turns_as_a_published_chart_says() {
    for (input, seconds) in [(30_000.0, 120.0), (45_000.0, 80.0), (110_000.0, 33.0)] {
        let found = seconds_per_foot(input, 1_000.0);
        assert!((found - seconds).abs() < 1.0, "{input}: {found:.1} s, chart {seconds} s");
    }
}

/// The trade's formula Btu/h = 3,600 × dial × heating value ÷ seconds, on the rig: 80,000 Btu/h at
/// 1,030 Btu/ft³ is 46.35 s for a cubic foot.
#[test]
fn clocking_gives_the_input_back() {
    let seconds = seconds_per_foot(80_000.0, 1_030.0);
    let input = 3_600.0 * 1_030.0 / seconds;
    approx::assert_relative_eq!(input, 80_000.0, max_relative = 0.01);
}

/// Heating values: propane's and methane's gross heats of combustion are 2,219.2 and 890.6 kJ/mol
/// (NIST Chemistry WebBook); an ideal gas at 60 °F and 14.696 psia. The United States average of
/// delivered natural gas was 1,036–1,037 Btu/ft³ in 2020–2025 (EIA), 1,020–1,065 by state.
#[test]
fn heating_values_agree_with_thermochemistry_and_statistics() {
    let molar_m3 = 8.314_462_618 * T_STD_K / P_STD_PA;
    let btu_ft3 = |kj_mol: f64| kj_mol * 1e3 / molar_m3 / J_M3_PER_BTU_FT3;
    approx::assert_relative_eq!(btu_ft3(890.6), 1010.0, max_relative = 0.002);
    let propane = Gas::propane().heating_value_j_m3 / J_M3_PER_BTU_FT3;
    approx::assert_relative_eq!(propane, btu_ft3(2219.2), max_relative = 0.002);
    let natural = Gas::natural().heating_value_j_m3 / J_M3_PER_BTU_FT3;
    assert!((1020.0..=1065.0).contains(&natural));
}

//! The table that a learner should carry in the head, as order between readings (common practice);
//! and what no single table of pressures shows.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::catalogue::fault::Fault::{self, *};
use quarterturn::hands::action::Action;
use quarterturn::measure::pattern::{Pattern, Start, measure};
use quarterturn::parts::{Door, Fitted, Height, Level, OnOff, Place, Port};
use quarterturn::scenario::builtin::healthy_for;
use quarterturn::senses::seen::Smell;
use quarterturn::setup::Setup;
use quarterturn::units::{PA_PER_INWC, k_from_f};

use super::row::{faulty, healthy, pressures};

/// How much lower than on the healthy bench: inlet at rest, low, high, others.
fn drops(fault: Fault, fuel: Fuel) -> [f64; 4] {
    let (was, is) = (pressures(&healthy(fault, fuel)), pressures(&faulty(fault, fuel)));
    [0, 1, 2, 3].map(|i| was[i] - is[i])
}

/// A trunk or a regulator that is too small shows with the others on; a branch shows alone already,
/// and the others add little.
#[test]
fn trunk_and_branch_are_told_apart_by_the_others() {
    for fuel in [Fuel::Natural, Fuel::Propane] {
        for fault in [UndersizedTrunk, UndersizedRegulator] {
            let [rest, low, high, others] = drops(fault, fuel);
            assert!(rest.abs() < 0.06 && low < high && high < others, "{fault:?}");
            assert!(others - high > 1.0 && others > 2.0 * high, "{fault:?} {high} {others}");
        }
        for fault in [KinkedConnector, PartlyOpenManualValve] {
            let [rest, low, high, others] = drops(fault, fuel);
            assert!(rest.abs() < 0.06 && low > 0.3 && high > low, "{fault:?} {low} {high}");
            assert!((others - high).abs() < 0.3, "{fault:?} {high} {others}");
        }
    }
}

/// A supply set low is low by the same amount everywhere, at rest too.
#[test]
fn a_supply_set_low_is_low_by_the_same_everywhere() {
    for fuel in [Fuel::Natural, Fuel::Propane] {
        let drops = drops(SupplySetLow, fuel);
        assert!(drops.iter().all(|drop| (drop - 3.0).abs() < 0.15), "{drops:?}");
    }
}

/// Propane shows supply faults earlier: the same fault leaves less of the manifold.
#[test]
fn propane_shows_supply_faults_earlier() {
    let left = |fuel| {
        let (was, is) = (healthy(KinkedConnector, fuel), faulty(KinkedConnector, fuel));
        pressures(&is)[5] / pressures(&was)[5]
    };
    assert!(left(Fuel::Propane) < left(Fuel::Natural));
    let screw = |fuel| pressures(&faulty(BottomedHighScrew, fuel));
    // A bottomed screw follows the inlet when the others start.
    for fuel in [Fuel::Natural, Fuel::Propane] {
        let [.., high, others] = screw(fuel);
        assert!(high - others > 0.2, "{fuel:?} {high} {others}");
    }
}

/// Unconverted on propane, the manifold stands exactly at the natural-gas figures while the fire is
/// half again too large: a right manifold proves nothing.
#[test]
fn a_right_manifold_proves_nothing() {
    let is = faulty(UnconvertedOnPropane, Fuel::Propane);
    let [.., low, high, _] = pressures(&is);
    assert!((low - 1.7).abs() < 0.06 && (high - 3.5).abs() < 0.06, "{low} {high}");
    let was = healthy(UnconvertedOnPropane, Fuel::Propane);
    let flow = |it: &Pattern| it.points[2].truth.burner_flow_m3_s;
    // The trade's figure is 153 % by Wobbe number: 2,040 against 1,330.
    let share = flow(&is) / flow(&was);
    assert!((1.45..1.7).contains(&share), "{share}");
}

/// A leaking gas valve leaves a little pressure in the manifold with no call.
#[test]
fn a_leaking_valve_leaves_pressure_at_rest() {
    for fuel in [Fuel::Natural, Fuel::Propane] {
        let rest = |it: &Pattern| it.points[0].truth.manifold_pa;
        assert!(rest(&faulty(LeakingGasValve, fuel)) > 1.0, "{fuel:?}");
        assert!(rest(&healthy(LeakingGasValve, fuel)).abs() < 0.01, "{fuel:?}");
    }
}

/// A worn guide swings by as much as its severity says: the limit cycle of van der Pol's oscillator
/// has an amplitude of 2 in its own measure (any text on nonlinear vibration).
#[test]
fn a_hunting_regulator_swings_by_its_severity() {
    let high = &faulty(HuntingValveRegulator, Fuel::Natural).points[2];
    let swing = (high.swing_pa[Port::Manifold].1 - high.swing_pa[Port::Manifold].0) / PA_PER_INWC;
    assert!((swing / 0.7 - 1.0).abs() < 0.1, "{swing} for 0.35 in. w.c. either way");
}

/// One regulator on the tank: low on a cold morning, high at a warm noon.
#[test]
fn one_regulator_follows_the_weather() {
    let rest = |outside_f: f64| {
        let mut setup = healthy_for(SingleStageRegulator, Fuel::Propane).unwrap();
        setup.outside_k = k_from_f(outside_f);
        SingleStageRegulator.apply(&mut setup, k_from_f(60.0));
        let pattern = measure(setup, Start::AsFound);
        pressures(&pattern)[0]
    };
    let (morning, noon) = (rest(10.0), rest(95.0));
    let healthy = pressures(&healthy(SupplySetLow, Fuel::Propane))[0];
    assert!(morning < healthy - 0.5 && noon > healthy + 0.5, "{morning} {healthy} {noon}");
}

/// A creeping seat climbs for minutes at no flow, and the faster the more it lets by.
#[test]
fn a_creeping_seat_climbs() {
    let climb = |cfh: &str| {
        let mut setup = healthy_for(CreepingSupplySeat, Fuel::Natural).unwrap();
        CreepingSupplySeat
            .apply(&mut setup, CreepingSupplySeat.entry().severity.parse(cfh).unwrap());
        let mut bench = resting(setup);
        run(&mut bench, 5);
        let start = bench.truth().inlet_pa;
        run(&mut bench, 60);
        (bench.truth().inlet_pa - start) / PA_PER_INWC
    };
    let (slow, fast) = (climb("0.02 ft3/h"), climb("0.1 ft3/h"));
    assert!(slow > 0.02 && fast > 3.0 * slow, "{slow} {fast}");
}

/// The flames change when the blower starts, if the exchanger has a hole.
#[test]
fn a_holed_exchanger_shows_when_the_blower_starts() {
    let change = |faulty: bool| {
        let mut setup = healthy_for(HoledExchanger, Fuel::Natural).unwrap();
        if faulty {
            HoledExchanger.apply(&mut setup, 0.3);
        }
        setup.house.setpoint_half_f = 135;
        let mut bench = Bench::new(setup);
        let mut before = None;
        for _ in 0..120 {
            run(&mut bench, 1);
            let still = bench.truth().control
                != quarterturn::appliance::ignition::ControlState::Burning(Level::Low);
            if let Some(air) = bench.truth().excess_air.filter(|_| still) {
                before = Some(air);
            }
        }
        before.unwrap() - bench.truth().excess_air.unwrap()
    };
    assert!(change(true) > 0.2, "{}", change(true));
    assert!(change(false).abs() < 0.05, "{}", change(false));
}

/// Gas without its odor is found by the detector and not by the nose.
#[test]
fn faded_odorant_fools_the_nose_only() {
    let smelt = |faded: bool| {
        let mut setup = healthy_for(LooseInletPlug, Fuel::Natural).unwrap();
        LooseInletPlug.apply(&mut setup, 0.0);
        if faded {
            FadedOdorant.apply(&mut setup, 0.05);
        }
        let mut bench = resting(setup);
        run(&mut bench, 240);
        for action in [
            Action::Go(Place::PlantRoom),
            Action::Door { door: Door::Burner, to: Fitted::Off },
            Action::Go(Place::GasValve),
            Action::Sniff(Height::Head),
        ] {
            bench.apply(&action).unwrap();
        }
        let seen = bench.seen();
        (seen.sniffed.unwrap().1, bench.truth().gas_fraction.vestibule)
    };
    let (fresh, faded) = (smelt(false), smelt(true));
    assert_eq!(fresh.1, faded.1, "the same gas");
    assert!(fresh.0 >= Smell::Faint && faded.0 == Smell::None, "{fresh:?} {faded:?}");
}

/// A bench with no call for heat.
fn resting(mut setup: Setup) -> Bench {
    setup.found.thermostat_mode = OnOff::Off;
    Bench::new(setup)
}

fn run(bench: &mut Bench, seconds: u32) {
    for _ in 0..seconds * 50 {
        bench.step();
    }
}

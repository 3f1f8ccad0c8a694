//! The two calibrated rows: what a correct meter finds on the healthy rigs.

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::model::truth::Truth;
use quarterturn::parts::{Door, Fitted, Level, OnOff, OtherAppliance, Place};
use quarterturn::units::{PA_PER_INWC, W_PER_BTU_H};

use super::rig;

fn run(bench: &mut Bench, seconds: u32) -> Truth {
    for _ in 0..seconds * 50 {
        bench.step();
    }
    bench.truth()
}

fn act(bench: &mut Bench, action: Action) {
    bench.apply(&action).unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
}

/// Static, low, high and high with the others.
fn four_states(fuel: Fuel) -> [Truth; 4] {
    let mut setup = rig::healthy(fuel);
    setup.found.thermostat_mode = OnOff::Off;
    let mut bench = Bench::new(setup);
    let rest = run(&mut bench, 60);
    act(&mut bench, Action::Go(Place::Hall));
    act(&mut bench, Action::Setpoint(135));
    act(&mut bench, Action::ThermostatMode(OnOff::On));
    let low = run(&mut bench, 150);
    assert_eq!(low.firing, Some(Level::Low), "{:?}", low.control);
    act(&mut bench, Action::Setpoint(160));
    act(&mut bench, Action::Go(Place::PlantRoom));
    act(&mut bench, Action::Door { door: Door::Burner, to: Fitted::Off });
    act(&mut bench, Action::StageJumper(Fitted::On));
    let high = run(&mut bench, 90);
    assert_eq!(high.firing, Some(Level::High), "{:?}", high.control);
    act(
        &mut bench,
        Action::OtherAppliance { appliance: OtherAppliance::WaterHeater, to: OnOff::On },
    );
    act(&mut bench, Action::Go(Place::Hall));
    act(&mut bench, Action::OtherAppliance { appliance: OtherAppliance::Range, to: OnOff::On });
    let others = run(&mut bench, 60);
    assert!(bench.worst_imbalance() <= 1e-9, "{}", bench.worst_imbalance());
    [rest, low, high, others]
}

/// Pressures within 0.1 in. w.c. and rates within 1 % of the design's rows.
fn check(fuel: Fuel, inlet: [f64; 4], manifold: [f64; 3]) {
    let states = four_states(fuel);
    for (state, wanted) in states.iter().zip(inlet) {
        let found = state.inlet_pa / PA_PER_INWC;
        assert!((found - wanted).abs() < 0.1, "{fuel:?} inlet {found:.3}, wanted {wanted}");
    }
    for (state, wanted) in states[1..].iter().zip(manifold) {
        let found = state.manifold_pa / PA_PER_INWC;
        assert!((found - wanted).abs() < 0.1, "{fuel:?} manifold {found:.3}, wanted {wanted}");
    }
    for (state, wanted) in states[1..].iter().zip([56_000.0, 80_000.0, 80_000.0]) {
        let found = state.input_w / W_PER_BTU_H;
        let ratio = found / wanted - 1.0;
        assert!(ratio.abs() < 0.01, "{fuel:?} input {found:.0}, wanted {wanted}");
    }
}

/// Natural gas: static 7.6, inlet 6.8/6.6/6.2, manifold 1.70/3.50, 70/100 %.
#[test]
fn natural_gas_row() {
    check(Fuel::Natural, [7.6, 6.8, 6.6, 6.2], [1.70, 3.50, 3.50]);
}

/// Propane: static 13.1, inlet 11.7/11.6/11.1, manifold 4.90/10.0, 70/100 %.
#[test]
fn propane_row() {
    check(Fuel::Propane, [13.1, 11.7, 11.6, 11.1], [4.90, 10.0, 10.0]);
}

//! What a true meter finds on the benches that ship.

use enum_map::EnumMap;
use quarterturn::bench::Bench;
use quarterturn::hands::action::Action;
use quarterturn::model::truth::Truth;
use quarterturn::parts::{Door, Fitted, Level, OnOff, OtherAppliance, Place};
use quarterturn::scenario::{builtin, load};
use quarterturn::units::{PA_PER_INWC, W_PER_BTU_H};

fn run(bench: &mut Bench, seconds: u32) -> Truth {
    for _ in 0..seconds * 50 {
        bench.step();
    }
    bench.truth()
}

fn act(bench: &mut Bench, action: Action) {
    bench.apply(&action).unwrap_or_else(|why| panic!("{action:?}: {why:?}"));
}

/// At rest, low, high, and high with the others.
fn four_states(id: &str, seed: u64) -> [Truth; 4] {
    let mut setup = load(builtin::find(id).unwrap().text).unwrap().draw(seed);
    setup.found.thermostat_mode = OnOff::Off;
    setup.found.other_appliances = EnumMap::from_fn(|_| OnOff::Off);
    setup.house.setpoint_half_f = 110;
    let setpoint = ((setup.house.inside_k * 1.8 - 459.67) * 2.0) as i16 + 3;
    let mut bench = Bench::new(setup);
    let rest = run(&mut bench, 60);
    act(&mut bench, Action::Go(Place::Hall));
    act(&mut bench, Action::Setpoint(setpoint));
    act(&mut bench, Action::ThermostatMode(OnOff::On));
    let low = run(&mut bench, 150);
    assert_eq!(low.firing, Some(Level::Low), "{:?}", low.control);
    act(&mut bench, Action::Setpoint(170));
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
    [rest, low, high, others]
}

fn inlet(states: &[Truth; 4]) -> [f64; 4] {
    states.each_ref().map(|state| state.inlet_pa / PA_PER_INWC)
}

fn manifold(states: &[Truth; 4]) -> [f64; 3] {
    [1, 2, 3].map(|i| states[i].manifold_pa / PA_PER_INWC)
}

/// Pressures within 0.1 in. w.c. and rates within 1 % of what is wanted.
fn check(id: &str, wanted_inlet: [f64; 4], wanted_manifold: [f64; 3]) {
    let states = four_states(id, 1);
    for (found, wanted) in inlet(&states).into_iter().zip(wanted_inlet) {
        assert!((found - wanted).abs() < 0.1, "{id} inlet {found:.3}, wanted {wanted}");
    }
    for (found, wanted) in manifold(&states).into_iter().zip(wanted_manifold) {
        assert!((found - wanted).abs() < 0.1, "{id} manifold {found:.3}, wanted {wanted}");
    }
    for (state, wanted) in states[1..].iter().zip([56_000.0, 80_000.0, 80_000.0]) {
        let ratio = state.input_w / W_PER_BTU_H / wanted;
        assert!((ratio - 1.0).abs() < 0.01, "{id} input {ratio:.4} of {wanted}");
    }
}

/// The healthy benches: a lone 80,000 Btu/h furnace and 100,000 Btu/h beside it, pressures at
/// rest, low, high, high with the others; 70 % and 100 % of the plate's input.
#[test]
fn healthy_benches_read_as_meant() {
    check("healthy-natural", [7.6, 6.8, 6.6, 6.2], [1.70, 3.50, 3.50]);
    check("healthy-propane", [13.1, 11.7, 11.6, 11.1], [4.90, 10.0, 10.0]);
}

/// The propane job: at rest all looks well; fired, the inlet is below the label on every stage, high
/// starves out of its band, and worse with the others on.
#[test]
fn cold_morning_looks_right_at_rest_only() {
    for seed in 0..12 {
        let states = four_states("propane-cold-morning", seed);
        let ([rest, low, high, others], [man_low, man_high, man_others]) =
            (inlet(&states), manifold(&states));
        assert!((11.0..=14.0).contains(&rest), "seed {seed}: rest {rest:.2}");
        assert!(
            low < 11.0 && high < low && others < high - 0.3,
            "seed {seed}: {high:.2} {others:.2}"
        );
        assert!(man_low < 4.6 && man_low > 3.5, "seed {seed}: low {man_low:.2}");
        assert!(man_high < 9.7, "seed {seed}: high {man_high:.2}");
        assert!(man_others < man_high - 0.3, "seed {seed}: {man_others:.2}");
        // The high spring itself is right: it is the supply that holds high down.
        assert!((states[2].set_pa[Level::High] / PA_PER_INWC - 10.0).abs() < 0.05);
    }
}

/// The natural-gas job: alone the inlet just holds, with the others it falls below the plate, and
/// high is a little above its band.
#[test]
fn busy_kitchen_fails_with_the_others_on_only() {
    for seed in 0..12 {
        let states = four_states("natural-gas-busy-kitchen", seed);
        let ([rest, low, high, others], [man_low, man_high, _]) =
            (inlet(&states), manifold(&states));
        assert!((5.0..=10.5).contains(&rest), "seed {seed}: rest {rest:.2}");
        assert!(low >= 5.0 && high >= 5.0, "seed {seed}: alone {high:.2}");
        assert!(others < 4.95, "seed {seed}: others {others:.2}");
        assert!((1.5..=1.9).contains(&man_low), "seed {seed}: low {man_low:.2}");
        assert!(man_high > 3.85 && man_high < 4.2, "seed {seed}: high {man_high:.2}");
    }
}

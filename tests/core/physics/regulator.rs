//! Regulators against what their data sheets promise and against closed forms.

use quarterturn::physics::fluid::Gas;
use quarterturn::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use quarterturn::physics::orifice::{OpeningLaw, area_for_flow_m2};
use quarterturn::physics::regulator::{
    Behaviour, Bonnet, CalibrationError, InletEffect, Regulator, RegulatorSpec,
};
use quarterturn::units::{P_STD_PA, PA_PER_INWC, PA_PER_PSI, T_STD_K, TICK_S};

/// Supply, regulator, a volume, an opening to the air.
struct Bench {
    network: Network,
    supply: NodeId,
    outlet: NodeId,
    regulator: ElementId,
    load: ElementId,
}

fn bench(gas: Gas, inlet_pa: f64, spec: RegulatorSpec, volume_m3: f64) -> Bench {
    let mut b = NetworkBuilder::new(gas, P_STD_PA);
    let supply = b.fixed(inlet_pa);
    let outlet = b.node(volume_m3, T_STD_K, 0.0);
    let air = b.fixed(0.0);
    let regulator = b.regulator(supply, outlet, spec);
    let load = b.opening(outlet, air, 0.0);
    Bench { network: b.build(), supply, outlet, regulator, load }
}

impl Bench {
    /// Draws a flow at an expected outlet pressure, settles, and returns the outlet in Pa.
    fn draw(&mut self, flow_std_m3_s: f64, outlet_pa: f64) -> f64 {
        let law = OpeningLaw::new(self.network.gas(), T_STD_K);
        let area = area_for_flow_m2(&law, flow_std_m3_s, outlet_pa, 0.0, P_STD_PA);
        self.network.set_opening(self.load, area);
        assert!(self.network.settle(2_000.0).converged);
        self.outlet_pa()
    }

    fn outlet_pa(&self) -> f64 {
        self.network.pressure_pa(self.outlet)
    }

    fn run(&mut self, seconds: f64) {
        for _ in 0..(seconds / TICK_S) as u32 {
            let report = self.network.step(TICK_S);
            assert!(report.converged && report.imbalance <= 1e-9);
        }
    }
}

const FLOW: f64 = 1.2e-3;

/// 11 in. w.c. second stage: locks up at 13.2 (120 % of set, common practice), droops 2 in. at
/// rated flow with 10 psi inlet (LP-gas trade practice).
fn second_stage() -> Behaviour {
    Behaviour::new(
        11.0 * PA_PER_INWC,
        13.2 * PA_PER_INWC,
        2.0 * PA_PER_INWC,
        10.0 * PA_PER_PSI,
        FLOW,
    )
}

fn spec(behaviour: &Behaviour) -> RegulatorSpec {
    RegulatorSpec::from_behaviour(behaviour, &Gas::propane(), P_STD_PA).unwrap()
}

/// A calibrated regulator in a network shows the set point, the lock-up and the droop asked for,
/// within 0.01 in. w.c. (lock-up is approached from below ever more slowly: within 0.1 in.).
#[test]
fn calibration_is_met() {
    let inwc = PA_PER_INWC;
    let line = Behaviour {
        set_flow_std_m3_s: 2e-5,
        inlet_effect: InletEffect::Closes,
        ..Behaviour::new(3.5 * inwc, 4.1 * inwc, 0.25 * inwc, 7.0 * inwc, 6e-4)
    };
    let manifold = Behaviour {
        inlet_effect: InletEffect::None,
        ..Behaviour::new(10.0 * inwc, 10.3 * inwc, 0.1 * inwc, 12.0 * inwc, 2.6e-4)
    };
    for wanted in [second_stage(), line, manifold] {
        let mut b = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 2e-3);
        let set = b.draw(wanted.set_flow_std_m3_s, wanted.set_pa);
        approx::assert_abs_diff_eq!(set, wanted.set_pa, epsilon = 0.01 * inwc);
        let drooped = wanted.set_pa - wanted.droop_pa;
        let rated = b.draw(wanted.rated_flow_std_m3_s, drooped);
        approx::assert_abs_diff_eq!(rated, drooped, epsilon = 0.01 * inwc);
        let mut fresh = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 2e-3);
        fresh.network.set_pressure_pa(fresh.outlet, wanted.set_pa);
        fresh.network.settle(3_600.0);
        let lockup = fresh.outlet_pa();
        assert!(lockup <= wanted.lockup_pa + 0.02 * inwc, "{}", lockup / inwc);
        assert!(lockup >= wanted.lockup_pa - 0.1 * inwc, "{}", lockup / inwc);
    }
}

/// Lock-up is exact: above it the seat passes nothing at all, and the outlet then stays where it is.
#[test]
fn locked_up_gas_stays() {
    let wanted = second_stage();
    let mut b = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 2e-3);
    b.network.set_pressure_pa(b.outlet, wanted.lockup_pa + 5.0);
    b.run(2.0);
    let before = b.outlet_pa();
    b.run(60.0);
    assert_eq!(b.outlet_pa(), before);
    assert_eq!(b.network.flow_std_m3_s(b.regulator), 0.0);
    // The supply fails: the locked-up seat holds the gas back.
    b.network.set_pressure_pa(b.supply, 0.0);
    b.run(60.0);
    assert_eq!(b.outlet_pa(), before);
    // Gas is drawn: the seat opens again, backwards now, and the line empties.
    b.draw(1e-5, wanted.set_pa);
    assert!(b.outlet_pa().abs() < 1.0);
}

/// Droop against flow is a straight line between set point and rated flow (a linear seat under a
/// linear spring): at mid flow the outlet is half way down within 3 % of the droop.
#[test]
fn droop_is_linear_in_flow() {
    let wanted = second_stage();
    let mut b = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 2e-3);
    let middle = 0.5 * (wanted.set_flow_std_m3_s + wanted.rated_flow_std_m3_s);
    let half = wanted.set_pa - 0.5 * wanted.droop_pa;
    let got = b.draw(middle, half);
    approx::assert_abs_diff_eq!(got, half, epsilon = 0.03 * wanted.droop_pa);
}

/// Starvation: with the inlet below what the load asks for, the seat stands on its stop and the
/// outlet follows the inlet, less the loss of the wide-open seat.
#[test]
fn starved_outlet_follows_the_inlet() {
    let wanted = Behaviour {
        wide_open_drop_pa: 150.0,
        ..Behaviour::new(2_490.0, 2_600.0, 40.0, 2_990.0, 2.6e-4)
    };
    let spec = spec(&wanted);
    let mut b = bench(Gas::propane(), wanted.inlet_pa, spec, 2e-4);
    b.draw(wanted.rated_flow_std_m3_s, wanted.set_pa - wanted.droop_pa);
    let law = OpeningLaw::new(&Gas::propane(), T_STD_K);
    let seat = spec.seat.area(spec.seat.max_lift_m).0;
    for inlet_pa in [2_300.0, 1_800.0, 1_000.0, 400.0] {
        b.network.set_pressure_pa(b.supply, inlet_pa);
        b.network.settle(600.0);
        let out = b.outlet_pa();
        assert_eq!(b.network.regulator(b.regulator).unwrap().lift_m(), spec.seat.max_lift_m);
        let through = law.flow(inlet_pa - out, inlet_pa + P_STD_PA, out + P_STD_PA).flow * seat;
        let flow = b.network.flow_std_m3_s(b.load);
        approx::assert_relative_eq!(through, flow, max_relative = 1e-6);
        // Seat and load are two openings in series: the drop splits as the areas squared.
        let load = b.network.opening_m2(b.load);
        let share = seat * seat / (seat * seat + load * load);
        approx::assert_relative_eq!(out, inlet_pa * share, max_relative = 0.01);
    }
}

/// Inlet effect: dP_out/dP_in at constant flow is about A_s/(A_d + A_s), opening or closing, on top
/// of the lift saved or spent; checked at lock-up, where the lift does not change.
#[test]
fn inlet_effect_has_its_size_and_sign() {
    for (effect, sign) in
        [(InletEffect::Opens, 1.0), (InletEffect::Closes, -1.0), (InletEffect::None, 0.0)]
    {
        let wanted = Behaviour { inlet_effect: effect, seat_area_m2: 2e-5, ..second_stage() };
        let spec = spec(&wanted);
        let regulator = Regulator::new(spec);
        let change =
            regulator.balance_pa(wanted.inlet_pa + 1e4) - regulator.balance_pa(wanted.inlet_pa);
        let want = sign * 2e-5 * 1e4 / (1.29e-3 + sign * 2e-5);
        approx::assert_relative_eq!(change, want, epsilon = 1e-9);
    }
}

/// The screw: one turn moves the set point by what was asked for; the unscrewed end leaves nearly no
/// pressure; past coil bind the seat hangs open and the outlet goes to line pressure.
#[test]
fn screw_from_end_to_end() {
    let inwc = PA_PER_INWC;
    let wanted = Behaviour {
        pa_per_turn: 0.6 * inwc,
        bind_turns: 8.0,
        max_turns: 10.0,
        ..Behaviour::new(3.5 * inwc, 3.8 * inwc, 0.15 * inwc, 7.0 * inwc, 6e-4)
    };
    let spec = RegulatorSpec::from_behaviour(&wanted, &Gas::natural(), P_STD_PA).unwrap();
    let mut b = bench(Gas::natural(), wanted.inlet_pa, spec, 2e-4);
    let start = b.draw(3e-4, 3.4 * inwc);
    let turns = b.network.regulator(b.regulator).unwrap().turns();
    b.network.regulator_mut(b.regulator).unwrap().set_turns(turns + 1.0);
    b.network.settle(100.0);
    // The flow rises with the pressure, which droops a little more.
    approx::assert_abs_diff_eq!(b.outlet_pa() - start, 0.6 * inwc, epsilon = 0.02 * inwc);
    let reading = |b: &mut Bench, turns: f64| {
        b.network.regulator_mut(b.regulator).unwrap().set_turns(turns);
        b.network.settle(100.0);
        b.outlet_pa() / inwc
    };
    assert!(reading(&mut b, 0.0) < 0.3);
    let bound = reading(&mut b, 10.0);
    b.network.set_opening(b.load, 0.0);
    b.network.settle(1_000.0);
    assert!(bound > 5.0, "{bound}");
    approx::assert_abs_diff_eq!(b.outlet_pa(), wanted.inlet_pa, epsilon = 0.5);
    // Turned back, the seat closes again; the gas already past it stays until it is drawn.
    let back = reading(&mut b, turns);
    approx::assert_abs_diff_eq!(back, 7.0, epsilon = 0.01);
    assert!((b.draw(3e-4, 3.4 * inwc) - start).abs() < 1.0);
}

/// The reference side: burner-box suction takes the outlet down with it, one to one.
#[test]
fn reference_pressure_shifts_the_outlet() {
    let wanted = Behaviour { inlet_effect: InletEffect::None, ..second_stage() };
    let mut b = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 2e-4);
    let before = b.draw(6e-4, 2_500.0);
    b.network.regulator_mut(b.regulator).unwrap().set_reference_pa(-50.0);
    b.network.settle(100.0);
    approx::assert_abs_diff_eq!(b.outlet_pa() - before, -50.0, epsilon = 4.0);
}

/// A nick in the seat: a closed line creeps up to the inlet, dP/dt = Q·p_std/V while choked.
#[test]
fn nicked_seat_creeps() {
    let wanted = second_stage();
    let mut b = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 5e-3);
    b.network.set_pressure_pa(b.outlet, wanted.lockup_pa + 2.0);
    let leak = 1e-8;
    b.network.regulator_mut(b.regulator).unwrap().set_leak_cd_area_m2(leak);
    b.run(1.0);
    let start = b.outlet_pa();
    b.run(20.0);
    let law = OpeningLaw::new(&Gas::propane(), T_STD_K);
    let inlet = wanted.inlet_pa;
    let flow = law.flow(inlet - start, inlet + P_STD_PA, start + P_STD_PA).flow * leak;
    let want = flow * 20.0 * P_STD_PA / 5e-3;
    approx::assert_relative_eq!(b.outlet_pa() - start, want, max_relative = 0.01);
    b.network.settle(200_000.0);
    approx::assert_abs_diff_eq!(b.outlet_pa(), inlet, epsilon = 1.0);
}

/// The lift follows a step of its balance as a first-order lag under backward Euler:
/// remaining share (1 + dt/τ)^−n; in the limit e^(−t/τ).
#[test]
fn lift_lags_in_first_order() {
    let wanted = Behaviour { seat_lag_s: 0.5, ..second_stage() };
    let spec = spec(&wanted);
    let mut b = NetworkBuilder::new(Gas::propane(), P_STD_PA);
    let supply = b.fixed(wanted.inlet_pa);
    let outlet = b.fixed(wanted.set_pa);
    let element = b.regulator(supply, outlet, spec);
    let mut network = b.build();
    network.settle(100.0);
    let lift = |n: &Network| n.regulator(element).unwrap().lift_m();
    let start = lift(&network);
    network.set_pressure_pa(outlet, wanted.set_pa - 0.3 * wanted.droop_pa);
    let mut end = network.clone();
    end.settle(100.0);
    let span = lift(&end) - start;
    for n in 1..=50 {
        network.step(TICK_S);
        let rest = 1.0 - (lift(&network) - start) / span;
        approx::assert_relative_eq!(rest, (1.0 + TICK_S / 0.5_f64).powi(-n), epsilon = 1e-9);
    }
    let rest = 1.0 - (lift(&network) - start) / span;
    approx::assert_relative_eq!(rest, (-2.0_f64).exp(), max_relative = 0.05);
}

/// A servo-like preload settles in its own time and the pressure with it.
#[test]
fn preload_settles_in_its_own_time() {
    let wanted = Behaviour { preload_lag_s: 2.0, ..second_stage() };
    let mut b = bench(Gas::propane(), wanted.inlet_pa, spec(&wanted), 2e-4);
    let before = b.draw(6e-4, 2_500.0);
    let force = 0.1 * 1.29e-3 * before;
    b.network.regulator_mut(b.regulator).unwrap().set_extra_preload_n(force);
    b.run(2.0);
    let part = b.outlet_pa() - before;
    b.run(30.0);
    let whole = b.outlet_pa() - before;
    assert!(whole > 0.05 * before);
    approx::assert_relative_eq!(part / whole, 1.0 - (-1.0_f64).exp(), max_relative = 0.03);
}

/// Behaviour that no regulator shows is refused with its reason.
#[test]
fn impossible_behaviour_is_refused() {
    let good = second_stage();
    let try_it = |b: Behaviour| RegulatorSpec::from_behaviour(&b, &Gas::propane(), P_STD_PA);
    let bad = |b: Behaviour| try_it(b).unwrap_err();
    assert!(try_it(good).is_ok());
    assert_eq!(bad(Behaviour { set_pa: f64::NAN, ..good }), CalibrationError::BadNumber);
    assert_eq!(bad(Behaviour { droop_pa: 0.0, ..good }), CalibrationError::BadNumber);
    let low = Behaviour { lockup_pa: good.set_pa, ..good };
    assert_eq!(bad(low), CalibrationError::PressureOrder);
    let close = Behaviour { lockup_pa: good.set_pa + 1.0, ..good };
    assert_eq!(bad(close), CalibrationError::LockupTooLow);
    let small = Behaviour { wide_open_drop_pa: good.inlet_pa, ..good };
    assert_eq!(bad(small), CalibrationError::FlowOrder);
    let stiff = Behaviour { pa_per_turn: 50.0, ..good };
    assert_eq!(bad(stiff), CalibrationError::OutOfScrewTravel);
}

/// A bonnet whose vent is shut is an air spring beside the coil spring: between two flows the outlet
/// falls by `(k + p·A²/V)·Δz/A` (isothermal closed form), and without it by `k·Δz/A`. A vent that
/// still breathes lets the outlet come back to where it was.
#[test]
fn a_shut_bonnet_is_an_air_spring() {
    let spec = spec(&second_stage());
    let bonnet = |breathes_s| Bonnet { volume_m3: 2e-4, air_abs_pa: P_STD_PA, breathes_s };
    let area = spec.diaphragm_area_m2;
    let outlet_area = area + spec.seat_area_m2;
    let air_n_m = P_STD_PA * area * area / 2e-4;
    let fall = |bonnet: Option<Bonnet>| {
        let mut it = bench(Gas::propane(), 10.0 * PA_PER_PSI, spec, 1e-3);
        let first_pa = it.draw(0.3 * FLOW, 11.0 * PA_PER_INWC);
        let regulator = it.network.regulator_mut(it.regulator).unwrap();
        let first_m = regulator.lift_m();
        if let Some(bonnet) = bonnet {
            regulator.set_bonnet(bonnet);
        }
        let second_pa = it.draw(0.8 * FLOW, 9.0 * PA_PER_INWC);
        let second_m = it.network.regulator(it.regulator).unwrap().lift_m();
        (first_pa - second_pa, second_m - first_m)
    };
    let (free_pa, free_m) = fall(None);
    approx::assert_relative_eq!(
        free_pa,
        spec.spring.rate_n_m * free_m / outlet_area,
        max_relative = 0.01
    );
    let (shut_pa, shut_m) = fall(Some(bonnet(f64::INFINITY)));
    let stiff = spec.spring.rate_n_m + air_n_m;
    approx::assert_relative_eq!(shut_pa, stiff * shut_m / outlet_area, max_relative = 0.01);
    assert!(shut_pa > 1.5 * free_pa, "{shut_pa} {free_pa}");
    let (slow_pa, _) = fall(Some(bonnet(20.0)));
    approx::assert_relative_eq!(slow_pa, free_pa, max_relative = 0.01);
}

//! The network against closed forms.

use quarterturn::physics::fluid::Gas;
use quarterturn::physics::network::{Network, NetworkBuilder, NodeId, StepReport};
use quarterturn::physics::orifice::{OpeningLaw, series_area};
use quarterturn::physics::pipe::{PipeMaterial, PipeSpec};
use quarterturn::units::{P_STD_PA, PA_PER_INWC, T_STD_K, TICK_S};

fn steel(id_m: f64, length_m: f64) -> PipeSpec {
    PipeSpec::new(PipeMaterial::Steel, id_m, length_m)
}

fn assert_balanced(report: StepReport) {
    assert!(report.converged && report.imbalance <= 1e-9, "{report:?}");
}

/// A volume bleeding through an opening, against the differential equation integrated by itself
/// (RK4, 0.1 ms) with the plain formula Q = CdA·Y·√(2·ρ₁·ΔP)/ρ_std.
#[test]
fn bleed_down_of_a_volume() {
    let gas = Gas::natural();
    let (volume_m3, area_m2, start_pa) = (2e-3, 2e-6, 7.0 * PA_PER_INWC);
    let mut b = NetworkBuilder::new(gas, P_STD_PA);
    let node = b.node(volume_m3, T_STD_K, start_pa);
    let air = b.fixed(0.0);
    b.opening(node, air, area_m2);
    let mut network = b.build();
    let density_std = gas.density_std_kg_m3();
    let rate = |p: f64| {
        let up = p + P_STD_PA;
        let y = 1.0 - p / up / (3.0 * 0.72 * gas.gamma / 1.4);
        let flow = area_m2 * y * (2.0 * density_std * up / P_STD_PA * p).sqrt() / density_std;
        -flow * P_STD_PA / volume_m3
    };
    let (mut p, h) = (start_pa, 1e-4);
    for tick in 1..=16 {
        for _ in 0..200 {
            let k1 = rate(p);
            let k2 = rate(p + 0.5 * h * k1);
            let k3 = rate(p + 0.5 * h * k2);
            let k4 = rate(p + h * k3);
            p += h / 6.0 * (k1 + 2.0 * k2 + 2.0 * k3 + k4);
        }
        // Backward Euler in parts of a 250th of a tick: first order, error below 0.1 %.
        for _ in 0..250 {
            assert_balanced(network.step(TICK_S / 250.0));
        }
        assert!(p > 150.0, "tick {tick}");
        approx::assert_relative_eq!(network.pressure_pa(node), p, max_relative = 1e-3);
    }
    for _ in 0..500 {
        assert_balanced(network.step(TICK_S));
    }
    assert!(network.pressure_pa(node).abs() < 1e-6);
}

/// Filling through a laminar tube is linear: exact backward Euler, (1 + dt/RC)^−n.
#[test]
fn laminar_filling_is_exact() {
    let gas = Gas::natural();
    let spec = PipeSpec::new(PipeMaterial::Copper, 0.002, 5.0);
    let mut b = NetworkBuilder::new(gas, P_STD_PA);
    let source = b.fixed(20.0);
    let node = b.node(1e-4, T_STD_K, 0.0);
    b.pipe(source, node, &spec);
    let mut network = b.build();
    let conductance = std::f64::consts::PI * 0.002_f64.powi(4) / (128.0 * gas.viscosity_pa_s * 5.0);
    let ratio = TICK_S * conductance * P_STD_PA / 1e-4;
    for n in 1..=200 {
        assert_balanced(network.step(TICK_S));
        let want = 20.0 * (1.0 - (1.0 + ratio).powi(-n));
        // 20 Pa over an atmosphere: the gas is denser by 0.02 % at most.
        approx::assert_relative_eq!(network.pressure_pa(node), want, max_relative = 4e-4);
    }
}

fn steady_flow(build: impl Fn(&mut NetworkBuilder, NodeId, NodeId)) -> (f64, Network) {
    let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
    let high = b.fixed(1_500.0);
    let middle = b.node(1e-4, T_STD_K, 0.0);
    let meter = b.pipe(high, middle, &steel(0.05, 0.5));
    let low = b.fixed(0.0);
    build(&mut b, middle, low);
    let mut network = b.build();
    assert_balanced(network.settle(1_000.0));
    (network.flow_std_m3_s(meter), network)
}

/// Two pipes one behind the other pass as one of their lengths together; two side by side twice as
/// much as one.
#[test]
fn pipes_in_series_and_parallel() {
    let (one, _) = steady_flow(|b, from, to| {
        b.pipe(from, to, &steel(0.0158, 24.0));
    });
    let (series, _) = steady_flow(|b, from, to| {
        let between = b.node(1e-4, T_STD_K, 0.0);
        b.pipe(from, between, &steel(0.0158, 16.0));
        b.pipe(between, to, &steel(0.0158, 8.0));
    });
    approx::assert_relative_eq!(series, one, max_relative = 1e-6);
    let (parallel, _) = steady_flow(|b, from, to| {
        b.pipe(from, to, &steel(0.0158, 24.0));
        b.pipe(from, to, &steel(0.0158, 24.0));
    });
    approx::assert_relative_eq!(parallel, 2.0 * one, max_relative = 1e-3);
}

/// A balanced bridge: by symmetry the cross pipe carries nothing; with one arm longer it carries
/// gas away from the shorter arm's end, and the two junctions balance (a loop with fill-in).
#[test]
fn bridge_loop() {
    for (arm_m, expected_sign) in [(6.0, 0.0), (12.0, -1.0)] {
        let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let high = b.fixed(1_000.0);
        let low = b.fixed(0.0);
        let left = b.node(1e-4, T_STD_K, 0.0);
        let right = b.node(1e-4, T_STD_K, 0.0);
        let a = b.pipe(high, left, &steel(0.0158, arm_m));
        b.pipe(high, right, &steel(0.0158, 6.0));
        let cross = b.pipe(left, right, &steel(0.0158, 3.0));
        let c = b.pipe(left, low, &steel(0.0158, 6.0));
        b.pipe(right, low, &steel(0.0158, 6.0));
        let mut network = b.build();
        assert_balanced(network.settle(100.0));
        let flow = |e| network.flow_std_m3_s(e);
        if expected_sign == 0.0 {
            assert!(flow(cross).abs() < 1e-12);
        } else {
            assert!(flow(cross) < -1e-5);
        }
        approx::assert_relative_eq!(flow(a), flow(cross) + flow(c), max_relative = 1e-8);
    }
}

/// Openings in series through a node pass what their series area passes, within the change of
/// density between them (two drops of 1 % of an atmosphere: 0.5 %).
#[test]
fn openings_in_series_through_a_node() {
    let gas = Gas::natural();
    let mut b = NetworkBuilder::new(gas, P_STD_PA);
    let high = b.fixed(2_000.0);
    let low = b.fixed(0.0);
    let node = b.node(5e-6, T_STD_K, 0.0);
    let first = b.opening(high, node, 1e-5);
    b.opening(node, low, 2e-5);
    let mut network = b.build();
    assert_balanced(network.settle(10.0));
    let unit = OpeningLaw::new(&gas, T_STD_K).flow(2_000.0, P_STD_PA + 2_000.0, P_STD_PA).flow;
    let want = unit * series_area(&[1e-5, 2e-5]);
    approx::assert_relative_eq!(network.flow_std_m3_s(first), want, max_relative = 5e-3);
}

/// Four times the pressure, twice the flow; turned round, the same flow backwards.
#[test]
fn square_root_and_reversal() {
    let flow_at = |from_pa: f64, to_pa: f64| {
        let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
        let from = b.fixed(from_pa);
        let to = b.fixed(to_pa);
        let node = b.node(1e-4, T_STD_K, 0.0);
        let opening = b.opening(from, node, 5e-6);
        b.pipe(node, to, &steel(0.04, 0.05));
        let mut network = b.build();
        assert_balanced(network.settle(50.0));
        network.flow_std_m3_s(opening)
    };
    approx::assert_relative_eq!(
        flow_at(800.0, 0.0) / flow_at(200.0, 0.0),
        2.0,
        max_relative = 3e-3
    );
    assert!(flow_at(0.0, 800.0) < 0.0);
    approx::assert_relative_eq!(flow_at(0.0, 800.0), -flow_at(800.0, 0.0), max_relative = 5e-3);
    assert!(flow_at(300.0, 300.0).abs() < 1e-18);
}

/// Gas trapped between closed valves stays for ever, whatever happens outside.
#[test]
fn trapped_pressure_stays() {
    let mut b = NetworkBuilder::new(Gas::propane(), P_STD_PA);
    let supply = b.fixed(69_000.0);
    let node = b.node(3e-4, T_STD_K, 0.0);
    let chamber = b.node(5e-6, T_STD_K, 0.0);
    let air = b.fixed(0.0);
    let inlet = b.opening(supply, node, 2e-5);
    b.pipe(node, chamber, &steel(0.0158, 0.5));
    let outlet = b.opening(chamber, air, 0.0);
    let mut network = b.build();
    assert_balanced(network.settle(10.0));
    network.set_opening(inlet, 0.0);
    network.step(TICK_S);
    let held = network.pressure_pa(node);
    network.set_pressure_pa(supply, 0.0);
    for _ in 0..50_000 {
        assert_balanced(network.step(TICK_S));
    }
    assert_eq!(network.pressure_pa(node), held);
    network.set_opening(outlet, 2e-5);
    for _ in 0..1_000 {
        assert_balanced(network.step(TICK_S));
    }
    assert!(network.pressure_pa(node).abs() < 1.0);
}

/// At altitude a volume at the same gauge pressure bleeds slower in standard flow by √ of the
/// density; pipes carry less too.
#[test]
fn altitude_enters() {
    let flow = |p_atm: f64| {
        let mut b = NetworkBuilder::new(Gas::natural(), p_atm);
        let from = b.fixed(1_700.0);
        let to = b.fixed(0.0);
        let pipe = b.pipe(from, to, &steel(0.02, 10.0));
        let mut network = b.build();
        network.step(TICK_S);
        network.flow_std_m3_s(pipe)
    };
    // Density ratio 0.832 (5,000 ft, standard atmosphere 84.3 kPa): flow goes with its 0.54th power.
    let ratio = flow(0.832 * P_STD_PA) / flow(P_STD_PA);
    approx::assert_relative_eq!(ratio, 0.832_f64.powf(0.541), max_relative = 5e-3);
}

/// Propane in place of natural gas through the same openings: √(0.60/1.52); stored gas and settings
/// stay.
#[test]
fn another_gas() {
    let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
    let from = b.fixed(1_700.0);
    let to = b.fixed(0.0);
    let hole = b.opening(from, to, 1e-6);
    let mut network = b.build();
    network.step(TICK_S);
    let natural = network.flow_std_m3_s(hole);
    network.set_gas(Gas::propane());
    network.step(TICK_S);
    let ratio = network.flow_std_m3_s(hole) / natural;
    approx::assert_relative_eq!(ratio, (0.60_f64 / 1.52).sqrt(), max_relative = 2e-3);
    assert_eq!(network.gas(), &Gas::propane());
}

/// Bad numbers and wrong ids change nothing and never panic.
#[test]
fn bad_numbers_change_nothing() {
    let mut b = NetworkBuilder::new(Gas::natural(), P_STD_PA);
    let a = b.node(0.0, T_STD_K, f64::NAN);
    let c = b.node(1e-3, T_STD_K, 100.0);
    let opening = b.opening(a, c, 1e-5);
    let looped = b.opening(a, a, 1e-5);
    let mut network = b.build();
    let before: Vec<f64> = network.state().collect();
    network.set_opening(opening, f64::NAN);
    network.set_pressure_pa(c, f64::INFINITY);
    network.step(f64::NAN);
    network.step(-1.0);
    assert_eq!(before, network.state().collect::<Vec<_>>());
    assert!(network.regulator_mut(opening).is_none());
    assert_balanced(network.settle(100.0));
    assert_eq!(network.flow_std_m3_s(looped), 0.0);
    approx::assert_abs_diff_eq!(network.pressure_pa(a), network.pressure_pa(c), epsilon = 1e-3);
}

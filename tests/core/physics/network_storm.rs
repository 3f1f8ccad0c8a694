//! A twelve-node network with two regulators and a loop under random blows, and how long a step
//! takes.

use quarterturn::physics::fluid::Gas;
use quarterturn::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use quarterturn::physics::pipe::{PipeMaterial, PipeSpec, TubingSpec, schedule_40_id_m};
use quarterturn::physics::regulator::{Behaviour, RegulatorSpec};
use quarterturn::units::{P_STD_PA, PA_PER_INWC, PA_PER_PSI, T_STD_K, TICK_S};

struct Rig {
    network: Network,
    supply: NodeId,
    supply_line: ElementId,
    nodes: Vec<NodeId>,
    openings: Vec<(ElementId, f64)>,
    regulators: [ElementId; 2],
}

fn second_stage(gas: &Gas) -> RegulatorSpec {
    let behaviour = Behaviour::new(
        11.0 * PA_PER_INWC,
        12.5 * PA_PER_INWC,
        1.0 * PA_PER_INWC,
        10.0 * PA_PER_PSI,
        1.2e-3,
    );
    RegulatorSpec::from_behaviour(&behaviour, gas, P_STD_PA).unwrap()
}

fn burner_side(gas: &Gas) -> RegulatorSpec {
    let inwc = PA_PER_INWC;
    let behaviour = Behaviour::new(10.0 * inwc, 10.4 * inwc, 0.15 * inwc, 11.0 * inwc, 2.6e-4);
    let behaviour = Behaviour { preload_lag_s: 1.5, ..behaviour };
    RegulatorSpec::from_behaviour(&behaviour, gas, P_STD_PA).unwrap()
}

/// Tank line at 10 psi, second stage, a trunk, a loop of tubing, a gas valve with a 5 cm³ chamber
/// and a manifold with six burners, one more appliance, two ports.
fn rig() -> Rig {
    let gas = Gas::propane();
    let mut b = NetworkBuilder::new(gas, P_STD_PA);
    let inch = |size: &str| schedule_40_id_m(size).unwrap();
    let supply = b.fixed(10.0 * PA_PER_PSI);
    let air = b.fixed(0.0);
    let n = |b: &mut NetworkBuilder, v| b.node(v, T_STD_K, 0.0);
    let yard = n(&mut b, 3e-3);
    let wall = n(&mut b, 8e-3);
    let trunk = n(&mut b, 6e-3);
    let tee = n(&mut b, 2e-3);
    let loop_a = n(&mut b, 1e-3);
    let loop_b = n(&mut b, 1e-3);
    let neighbour = n(&mut b, 5e-4);
    let drop = n(&mut b, 4e-4);
    let inlet = n(&mut b, 3e-5);
    let chamber = n(&mut b, 5e-6);
    let outlet = n(&mut b, 2e-5);
    let manifold = n(&mut b, 2e-4);
    let supply_line = b.pipe(supply, yard, &PipeSpec::new(PipeMaterial::Copper, 0.0102, 12.0));
    let stage = b.regulator(yard, wall, second_stage(&gas));
    b.pipe(wall, trunk, &PipeSpec::new(PipeMaterial::Steel, inch("1"), 8.0));
    b.pipe(trunk, tee, &PipeSpec::new(PipeMaterial::Steel, inch("3/4"), 5.0));
    b.tubing(tee, loop_a, &TubingSpec { ehd: 25, length_m: 6.0, extra_fittings: 0 });
    b.tubing(tee, loop_b, &TubingSpec { ehd: 19, length_m: 4.0, extra_fittings: 1 });
    b.pipe(loop_a, loop_b, &PipeSpec::new(PipeMaterial::Steel, inch("1/2"), 1.0));
    b.tubing(loop_a, neighbour, &TubingSpec { ehd: 18, length_m: 3.0, extra_fittings: 0 });
    b.pipe(loop_b, drop, &PipeSpec::new(PipeMaterial::Steel, inch("1/2"), 2.0));
    let hand_valve = b.opening(drop, inlet, 2.8e-4);
    let seat = b.opening(inlet, chamber, 4e-5);
    let valve = b.regulator(chamber, outlet, burner_side(&gas));
    b.pipe(outlet, manifold, &PipeSpec::new(PipeMaterial::Steel, inch("1/2"), 0.3));
    let burners = b.opening(manifold, air, 6.5e-6);
    let other = b.opening(neighbour, air, 7e-6);
    let inlet_port = b.opening(inlet, air, 0.0);
    let manifold_port = b.opening(manifold, air, 0.0);
    let leak = b.opening(trunk, air, 0.0);
    Rig {
        network: b.build(),
        supply,
        supply_line,
        nodes: vec![
            yard, wall, trunk, tee, loop_a, loop_b, neighbour, drop, inlet, chamber, outlet,
            manifold,
        ],
        openings: vec![
            (hand_valve, 2.8e-4),
            (seat, 4e-5),
            (burners, 6.5e-6),
            (other, 7e-6),
            (inlet_port, 2.5e-5),
            (manifold_port, 2.5e-5),
            (leak, 3e-8),
        ],
        regulators: [stage, valve],
    }
}

/// A small generator, so that every run is the same.
struct Dice(u64);

impl Dice {
    fn unit(&mut self) -> f64 {
        self.0 =
            self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 11) as f64 / (1_u64 << 53) as f64
    }

    fn below(&mut self, n: usize) -> usize {
        ((self.unit() * n as f64) as usize).min(n - 1)
    }
}

fn blow(rig: &mut Rig, dice: &mut Dice) {
    match dice.below(8) {
        0 | 1 => {
            let (element, full) = rig.openings[dice.below(rig.openings.len())];
            let share = [0.0, 1.0, 1.0, dice.unit(), 1e-3 * dice.unit()][dice.below(5)];
            rig.network.set_opening(element, share * full);
        }
        2 => {
            let psi = [0.0, 10.0, 10.0, 10.0 * dice.unit(), 15.0, 0.2][dice.below(6)];
            rig.network.set_pressure_pa(rig.supply, psi * PA_PER_PSI);
        }
        3 => {
            let turns = 16.0 * dice.unit() - 1.0;
            let which = rig.regulators[dice.below(2)];
            rig.network.regulator_mut(which).unwrap().set_turns(turns);
        }
        4 => {
            let leak = [0.0, 1e-7, 1e-9][dice.below(3)];
            let which = rig.regulators[dice.below(2)];
            rig.network.regulator_mut(which).unwrap().set_leak_cd_area_m2(leak);
        }
        5 => {
            let reference = -20.0 * dice.unit();
            rig.network.regulator_mut(rig.regulators[1]).unwrap().set_reference_pa(reference);
        }
        6 => {
            for &(element, full) in &rig.openings {
                let share = if dice.unit() < 0.5 { 0.0 } else { 1.0 };
                rig.network.set_opening(element, share * full);
            }
        }
        _ => {
            let node = rig.nodes[dice.below(rig.nodes.len())];
            let p_pa = [0.0, 3_000.0 * dice.unit(), 6e4 * dice.unit()][dice.below(3)];
            rig.network.set_pressure_pa(node, p_pa);
        }
    }
}

/// 20,000 random blows with one to four steps after each: every step balances within 1e-9 of its
/// throughput, nothing is ever not a number, and no pressure leaves the range of the boundaries.
#[test]
fn twenty_thousand_blows() {
    let mut rig = rig();
    let mut dice = Dice(20_240_607);
    let (mut steps, mut iterations, mut split, mut shortened, mut worst) =
        (0_u32, 0, 0, 0, 0.0_f64);
    let mut most = 0;
    for k in 0..20_000 {
        blow(&mut rig, &mut dice);
        for _ in 0..=dice.below(4) {
            let report = rig.network.step(TICK_S);
            assert!(report.converged, "blow {k}: {report:?}");
            assert!(report.imbalance <= 1e-9, "blow {k}: {report:?}");
            steps += 1;
            iterations += report.iterations;
            most = most.max(report.iterations);
            split += u32::from(report.parts > 1);
            shortened += report.shortened;
            worst = worst.max(report.imbalance);
        }
        for &node in &rig.nodes {
            let p_pa = rig.network.pressure_pa(node);
            assert!((-1_000.0..2e5).contains(&p_pa), "blow {k}: {p_pa} Pa");
        }
    }
    assert!(rig.network.state().all(f64::is_finite));
    println!(
        "{steps} steps, {:.2} iterations a step (most {most}), {shortened} shortened, {split} split, \
         worst imbalance {worst:.1e}",
        f64::from(iterations) / f64::from(steps)
    );
}

/// Gas is conserved over a long storm: what the nodes hold more at the end came in over the
/// boundaries, to 1e-9 of what passed.
#[test]
fn gas_is_conserved() {
    let mut rig = rig();
    let mut dice = Dice(5);
    let held = |rig: &Rig| rig.nodes.iter().map(|&n| rig.network.stored_std_m3(n)).sum::<f64>();
    let before = held(&rig);
    let (mut into, mut passed) = (0.0, 0.0);
    for _ in 0..3_000 {
        let (element, full) = rig.openings[dice.below(rig.openings.len())];
        rig.network.set_opening(element, dice.unit() * full);
        for _ in 0..5 {
            assert!(rig.network.step(TICK_S).converged);
            let supply = rig.network.flow_std_m3_s(rig.supply_line);
            let out: f64 = rig.openings[2..].iter().map(|o| rig.network.flow_std_m3_s(o.0)).sum();
            into += (supply - out) * TICK_S;
            passed += (supply.abs() + out.abs()) * TICK_S;
        }
    }
    assert!((held(&rig) - before - into).abs() < 1e-9 * passed);
}

/// Steps are reproducible: a copy goes the same way, bit for bit.
#[test]
fn copies_go_the_same_way() {
    let mut one = rig();
    one.network.settle(60.0);
    let mut two = one.network.clone();
    let bits = |n: &Network| n.state().map(f64::to_bits).collect::<Vec<_>>();
    one.network.set_opening(one.openings[0].0, 0.0);
    two.set_opening(one.openings[0].0, 0.0);
    for _ in 0..100 {
        one.network.step(TICK_S);
        two.step(TICK_S);
    }
    assert_eq!(bits(&one.network), bits(&two));
}

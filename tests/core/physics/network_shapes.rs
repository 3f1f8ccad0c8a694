//! Networks of any shape: random trees with extra links, random elements, sizes and step lengths.

use quarterturn::physics::fluid::Gas;
use quarterturn::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use quarterturn::physics::pipe::{PipeMaterial, PipeSpec, TubingSpec};
use quarterturn::physics::regulator::{Behaviour, InletEffect, RegulatorSpec};
use quarterturn::units::{P_STD_PA, PA_PER_PSI};

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

    /// Between two positive bounds, evenly in the logarithm.
    fn decades(&mut self, low: f64, high: f64) -> f64 {
        low * (high / low).powf(self.unit())
    }
}

fn regulator(dice: &mut Dice, gas: &Gas) -> RegulatorSpec {
    let effects = [InletEffect::Opens, InletEffect::Closes, InletEffect::None];
    let set_pa = dice.decades(400.0, 6_000.0);
    let inlet_pa = set_pa * dice.decades(1.3, 15.0);
    let flow = dice.decades(5e-5, 3e-3);
    let wanted = Behaviour {
        inlet_effect: effects[dice.below(3)],
        seat_lag_s: [0.0, 0.01, 0.3][dice.below(3)],
        preload_lag_s: [0.0, 1.0][dice.below(2)],
        ..Behaviour::new(set_pa, 1.1 * set_pa, 0.06 * set_pa, inlet_pa, flow)
    };
    RegulatorSpec::from_behaviour(&wanted, gas, P_STD_PA).unwrap()
}

fn link(
    b: &mut NetworkBuilder,
    dice: &mut Dice,
    gas: &Gas,
    from: NodeId,
    to: NodeId,
) -> Option<ElementId> {
    match dice.below(6) {
        0 | 1 => {
            let material = [PipeMaterial::Steel, PipeMaterial::Copper, PipeMaterial::RustedSteel];
            let spec = PipeSpec::new(
                material[dice.below(3)],
                dice.decades(0.004, 0.055),
                dice.decades(0.02, 60.0),
            );
            b.pipe(from, to, &spec);
            None
        }
        2 => {
            let ehd = [13, 19, 25, 62][dice.below(4)];
            b.tubing(from, to, &TubingSpec { ehd, length_m: 4.0, extra_fittings: 0 });
            None
        }
        3 => {
            b.regulator(from, to, regulator(dice, gas));
            None
        }
        _ => Some(b.opening(from, to, dice.decades(1e-9, 5e-4))),
    }
}

fn random_network(dice: &mut Dice) -> (Network, Vec<NodeId>, Vec<NodeId>, Vec<ElementId>) {
    let gas = if dice.unit() < 0.5 { Gas::natural() } else { Gas::propane() };
    let mut b = NetworkBuilder::new(gas, P_STD_PA * (0.7 + 0.3 * dice.unit()));
    let boundaries: Vec<NodeId> =
        (0..3).map(|_| b.fixed(15.0 * PA_PER_PSI * dice.unit() * dice.unit())).collect();
    let mut nodes = boundaries.clone();
    let mut openings = Vec::new();
    for _ in 0..2 + dice.below(14) {
        let node = b.node(dice.decades(5e-6, 0.05), 250.0 + 60.0 * dice.unit(), 0.0);
        let other = nodes[dice.below(nodes.len())];
        openings.extend(link(&mut b, dice, &gas, other, node));
        nodes.push(node);
    }
    for _ in 0..dice.below(5) {
        let (from, to) = (nodes[dice.below(nodes.len())], nodes[dice.below(nodes.len())]);
        if from != to {
            openings.extend(link(&mut b, dice, &gas, from, to));
        }
    }
    (b.build(), boundaries, nodes, openings)
}

/// Six hundred random networks, each under fifty blows of openings, boundaries and step lengths
/// from 1 ms to a minute: all steps balance, all numbers stay finite and inside the boundaries.
#[test]
fn any_shape_balances() {
    let mut dice = Dice(77);
    let (mut steps, mut split, mut worst) = (0_u32, 0_u32, 0.0_f64);
    for shape in 0..600 {
        let (mut network, boundaries, nodes, openings) = random_network(&mut dice);
        for blow in 0..50 {
            if !openings.is_empty() {
                let area = [0.0, dice.decades(1e-9, 5e-4)][dice.below(2)];
                network.set_opening(openings[dice.below(openings.len())], area);
            }
            let p_pa = [0.0, 1e5 * dice.unit(), 2_000.0 * dice.unit()][dice.below(3)];
            network.set_pressure_pa(boundaries[dice.below(3)], p_pa);
            let dt_s: f64 = [0.02, 0.02, 0.001, 60.0][dice.below(4)];
            for _ in 0..3 {
                let report = network.step(dt_s);
                assert!(
                    report.converged && report.imbalance <= 1e-9,
                    "shape {shape}, blow {blow}: {report:?}"
                );
                steps += 1;
                split += u32::from(report.parts > 1);
                worst = worst.max(report.imbalance);
            }
        }
        for &node in &nodes {
            assert!((-1.0..1.1e5).contains(&network.pressure_pa(node)), "shape {shape}");
        }
        assert!(network.state().all(f64::is_finite));
    }
    println!("{steps} steps, {split} split, worst imbalance {worst:.1e}");
}

//! From a case to a network of the model, and its steady state.
//!
//! The network has no element that draws a given flow. A demand is an opening to a space of so low
//! a pressure that the flow is choked and depends on the upstream pressure alone; its area is
//! adjusted until the flow is the demand. Gas fed in comes through a choked opening from a space of
//! high pressure.

use super::model::{Case, Net, Part, Setting, What};
use crate::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use crate::physics::orifice::{OpeningLaw, area_for_flow_m2};

/// Absolute pressure behind a demand, in Pa.
const SINK_ABS_PA: f64 = 2_000.0;
/// Gauge pressure before gas that is fed in, in Pa.
const SOURCE_PA: f64 = 1e7;
/// Largest miss of a demand, as a share of it.
const DEMAND_MISS: f64 = 1e-9;
/// Rounds of adjusting demands.
const MAX_ROUNDS: u32 = 200;
/// Model time in which a network comes to rest, in s.
const SETTLE_S: f64 = 3e6;

/// A network of the model and where a case's things stand in it.
pub(super) struct Rig {
    pub network: Network,
    pub nodes: Vec<NodeId>,
    pub elements: Vec<ElementId>,
    demands: Vec<Demand>,
    setting: Setting,
}

/// Two openings that stand for a demand, one of them shut.
struct Demand {
    node: usize,
    draw: ElementId,
    feed: ElementId,
    /// Temperature at the node, in K.
    t_k: f64,
    /// Standard m³/s, positive out of the network.
    flow_m3_s: f64,
}

impl Rig {
    /// Builds the network of a case; `may_draw` names nodes that may get a demand later.
    pub(super) fn new(case: &Case, net: &Net, may_draw: &[usize]) -> Self {
        let setting = case.setting;
        let mut builder = NetworkBuilder::new(setting.gas, setting.ambient_pa);
        let mut nodes = Vec::with_capacity(net.nodes.len());
        for node in &net.nodes {
            nodes.push(match node.volume_m3 {
                Some(volume_m3) => builder.node(volume_m3, node.t_k, node.p_pa),
                None => builder.fixed_at(node.p_pa, node.t_k),
            });
        }
        let draws = |node: usize| net.nodes[node].demand_m3_s != 0.0 || may_draw.contains(&node);
        let mut elements = Vec::with_capacity(net.elements.len());
        for element in &net.elements {
            let (from, to) = (nodes[element.from], nodes[element.to]);
            elements.push(match &element.part {
                Part::Pipe(spec) => builder.pipe(from, to, spec),
                Part::Tubing(spec) => builder.tubing(from, to, spec),
                Part::Opening(area_m2) => builder.opening(from, to, *area_m2),
                Part::Valve(valve, angle) => builder.opening(from, to, valve.cd_area_m2(*angle)),
                Part::Regulator(own) => builder.regulator(from, to, own.spec),
            });
        }
        let mut demands = Vec::new();
        if (0..nodes.len()).any(draws) {
            let sink = builder.fixed(SINK_ABS_PA - setting.ambient_pa);
            let source = builder.fixed_at(SOURCE_PA, setting.t_k);
            for (node, own) in net.nodes.iter().enumerate().filter(|(node, _)| draws(*node)) {
                // The areas are set by `adjust`, once the pressures are known.
                demands.push(Demand {
                    node,
                    draw: builder.opening(nodes[node], sink, 0.0),
                    feed: builder.opening(source, nodes[node], 0.0),
                    t_k: own.t_k,
                    flow_m3_s: own.demand_m3_s,
                });
            }
        }
        let mut network = builder.build();
        for (element, own) in elements.iter().zip(&net.elements) {
            if let (Part::Regulator(own), Some(regulator)) =
                (&own.part, network.regulator_mut(*element))
            {
                regulator.set_reference_pa(own.reference_pa);
                regulator.set_leak_cd_area_m2(own.leak_m2);
            }
        }
        let mut rig = Self { network, nodes, elements, demands, setting };
        rig.adjust();
        rig
    }

    /// Pressure at a node of the case, in Pa gauge.
    pub(super) fn pressure_pa(&self, node: usize) -> f64 {
        self.network.pressure_pa(self.nodes[node])
    }

    /// Flow through an element of the case in the last step, in standard m³/s.
    pub(super) fn flow_m3_s(&self, element: usize) -> f64 {
        self.network.flow_std_m3_s(self.elements[element])
    }

    /// One step of time, demands held. Whether it balanced.
    pub(super) fn step(&mut self, dt_s: f64) -> bool {
        self.adjust();
        self.network.step(dt_s).converged
    }

    /// Comes to rest. Whether it did.
    pub(super) fn settle(&mut self) -> bool {
        let mut report = self.network.settle(SETTLE_S);
        if self.demands.is_empty() {
            return report.converged;
        }
        for _ in 0..MAX_ROUNDS {
            self.adjust();
            report = self.network.step(SETTLE_S);
            let met = |demand: &Demand| {
                let flow = self.network.flow_std_m3_s(demand.draw)
                    - self.network.flow_std_m3_s(demand.feed);
                (flow - demand.flow_m3_s).abs() <= DEMAND_MISS * demand.flow_m3_s.abs()
            };
            if report.converged && self.demands.iter().all(met) {
                return true;
            }
        }
        false
    }

    /// Makes a change of a transient.
    pub(super) fn change(&mut self, what: What) {
        match what {
            What::Pressure(node, p_pa) => self.network.set_pressure_pa(self.nodes[node], p_pa),
            What::Demand(node, flow_m3_s) => {
                for demand in self.demands.iter_mut().filter(|demand| demand.node == node) {
                    demand.flow_m3_s = flow_m3_s;
                }
            }
            What::Area(element, area_m2) => {
                self.network.set_opening(self.elements[element], area_m2);
            }
            What::Turns(element, turns) => {
                if let Some(regulator) = self.network.regulator_mut(self.elements[element]) {
                    regulator.set_turns(turns);
                }
            }
            What::Reference(element, pa) => {
                if let Some(regulator) = self.network.regulator_mut(self.elements[element]) {
                    regulator.set_reference_pa(pa);
                }
            }
        }
    }

    /// Sets every demand's openings for the pressure there is now.
    fn adjust(&mut self) {
        let Setting { gas, ambient_pa, t_k } = self.setting;
        for demand in &self.demands {
            let node_pa = self.network.pressure_pa(self.nodes[demand.node]);
            let area = |flow_m3_s: f64, t_k: f64, up_pa: f64, down_pa: f64| {
                let law = OpeningLaw::new(&gas, t_k);
                area_for_flow_m2(&law, flow_m3_s.max(0.0), up_pa, down_pa, ambient_pa)
            };
            let up_pa = node_pa.max(-0.9 * ambient_pa);
            let draw = area(demand.flow_m3_s, demand.t_k, up_pa, SINK_ABS_PA - ambient_pa);
            let feed = area(-demand.flow_m3_s, t_k, SOURCE_PA, node_pa);
            self.network.set_opening(demand.draw, draw);
            self.network.set_opening(demand.feed, feed);
        }
    }
}

//! Putting a network together.
//!
//! **Source.** No physical figures. Most nodes and the least volume are bounds of the program.
//! **Checked.** `bad_numbers_change_nothing()` in `tests/core/physics/network.rs`,
//! `any_shape_balances()` in `tests/core/physics/network_shapes.rs`.

use super::super::fluid::Gas;
use super::super::orifice::OpeningLaw;
use super::super::pipe::{FlowCurve, PipeSpec, TubingSpec};
use super::super::regulator::{Regulator, RegulatorSpec};
use super::elimination::Elimination;
use super::guess::{Guess, GuessKind};
use super::slots::{Head, SLOTS, Slots};
use super::{
    CurveLink, ElementId, ElementSpec, Ends, Network, NodeId, NodeSpec, OpeningLink, Place,
    RegulatorLink, Work,
};
use crate::units::{P_STD_PA, T_STD_K};

/// Most nodes in one network (at most [`SLOTS`]); further ones are joined to the last.
pub const MAX_NODES: usize = 200;
/// Smallest gas volume of a node, in m³.
const MIN_VOLUME_M3: f64 = 1e-7;

/// Collects nodes and elements, then compiles them into a [`Network`].
///
/// An element whose two ends are one node, or lie outside the network, carries nothing.
#[derive(Debug, Clone)]
pub struct NetworkBuilder {
    gas: Gas,
    p_atm_abs_pa: f64,
    nodes: Vec<NodeSpec>,
    start_pa: Vec<f64>,
    elements: Vec<Wanted>,
}

#[derive(Debug, Clone)]
struct Wanted {
    from: NodeId,
    to: NodeId,
    spec: ElementSpec,
    cd_area_m2: f64,
    regulator: Option<RegulatorSpec>,
}

impl NetworkBuilder {
    /// An empty network of one gas at a site's absolute ambient pressure, in Pa.
    #[must_use]
    pub fn new(gas: Gas, p_atm_abs_pa: f64) -> Self {
        Self { gas, p_atm_abs_pa, nodes: Vec::new(), start_pa: Vec::new(), elements: Vec::new() }
    }

    /// A node with a gas volume (m³, at least 1e-7) at temperature `t_k` and gauge pressure `p_pa`.
    pub fn node(&mut self, volume_m3: f64, t_k: f64, p_pa: f64) -> NodeId {
        self.add_node(Some(volume_m3.max(MIN_VOLUME_M3)), t_k, p_pa)
    }

    /// How many nodes there are so far: the next one has this number.
    #[must_use]
    pub fn node_count(&self) -> u16 {
        u16::try_from(self.nodes.len()).unwrap_or(u16::MAX)
    }

    /// A boundary at a given gauge pressure, its gas at 60 °F.
    pub fn fixed(&mut self, p_pa: f64) -> NodeId {
        self.add_node(None, T_STD_K, p_pa)
    }

    /// A boundary at a given gauge pressure and gas temperature.
    pub fn fixed_at(&mut self, p_pa: f64, t_k: f64) -> NodeId {
        self.add_node(None, t_k, p_pa)
    }

    /// A run of pipe or smooth tube.
    pub fn pipe(&mut self, from: NodeId, to: NodeId, spec: &PipeSpec) -> ElementId {
        self.add(from, to, ElementSpec::Pipe(*spec), 0.0, None)
    }

    /// A run of corrugated tubing; one of unpublished EHD carries nothing.
    pub fn tubing(&mut self, from: NodeId, to: NodeId, spec: &TubingSpec) -> ElementId {
        self.add(from, to, ElementSpec::Tubing(*spec), 0.0, None)
    }

    /// An opening of effective area `cd_area_m2`.
    pub fn opening(&mut self, from: NodeId, to: NodeId, cd_area_m2: f64) -> ElementId {
        self.add(from, to, ElementSpec::Opening, cd_area_m2.max(0.0), None)
    }

    /// A regulator, sensing at `to`.
    pub fn regulator(&mut self, from: NodeId, to: NodeId, spec: RegulatorSpec) -> ElementId {
        self.add(from, to, ElementSpec::Regulator, 0.0, Some(spec))
    }

    /// Compiles the network: orders the nodes and works out the elimination once for all steps.
    #[must_use]
    pub fn build(self) -> Network {
        let (slots, free) = order_slots(&self.nodes);
        let slot =
            |node: NodeId| slots.get(usize::from(node.0)).map_or(u16::MAX, |&s| u16::from(s));
        let links: Vec<(u16, u16)> =
            self.elements.iter().map(|e| (slot(e.from), slot(e.to))).collect();
        let program = Elimination::compile(free, &links);
        let mut heads = Box::new([Head::default(); SLOTS]);
        let mut capacity = vec![0.0; free];
        for ((&at, node), &p_pa) in slots.iter().zip(&self.nodes).zip(&self.start_pa) {
            heads[usize::from(at)].pa = p_pa;
            if let Some(volume_m3) = node.volume_m3 {
                capacity[usize::from(at)] = volume_m3 * T_STD_K / (node.t_k * P_STD_PA);
            }
        }
        let work = Work {
            start: Box::new([Head::default(); SLOTS]),
            trial: Box::new([Head::default(); SLOTS]),
            lower_pa: 0.0,
            upper_pa: 0.0,
            first_share: 0.0,
            residual: zeros(),
            change: zeros(),
            diagonal: zeros(),
            matrix: vec![0.0; program.entries()],
            factors: program.factors(),
            factors_per_dt: 0.0,
            factors_age: 0,
            guess: Guess { moved_pa: [zeros(), zeros(), zeros()], kind: GuessKind::Rest },
        };
        let mut network = Network {
            gas: self.gas,
            p_atm_abs_pa: self.p_atm_abs_pa,
            slots,
            free,
            capacity,
            heads,
            elements: Vec::new(),
            places: Vec::new(),
            curves: Vec::new(),
            openings: Vec::new(),
            passing: Vec::new(),
            opened_or_shut: true,
            regulators: Vec::new(),
            whole: true,
            program,
            work,
            nodes: self.nodes,
        };
        for element in self.elements {
            network.place(element);
        }
        network
    }

    fn add_node(&mut self, volume_m3: Option<f64>, t_k: f64, p_pa: f64) -> NodeId {
        if self.nodes.len() < MAX_NODES {
            self.nodes.push(NodeSpec { volume_m3, t_k: t_k.max(1.0) });
            self.start_pa.push(if p_pa.is_finite() { p_pa } else { 0.0 });
        }
        NodeId(u16::try_from(self.nodes.len() - 1).unwrap_or(0))
    }

    fn add(
        &mut self,
        from: NodeId,
        to: NodeId,
        spec: ElementSpec,
        cd_area_m2: f64,
        regulator: Option<RegulatorSpec>,
    ) -> ElementId {
        self.elements.push(Wanted { from, to, spec, cd_area_m2, regulator });
        ElementId(u16::try_from(self.elements.len() - 1).unwrap_or(u16::MAX))
    }
}

/// Slots of all nodes, those with a volume first, and how many these are.
fn order_slots(nodes: &[NodeSpec]) -> (Vec<u8>, usize) {
    let free = nodes.iter().filter(|node| node.volume_m3.is_some()).count();
    let (mut next_free, mut next_fixed) = (0, free);
    let slots = nodes
        .iter()
        .map(|node| {
            let next = if node.volume_m3.is_some() { &mut next_free } else { &mut next_fixed };
            *next += 1;
            u8::try_from(*next - 1).unwrap_or(u8::MAX)
        })
        .collect();
    (slots, free)
}

impl Network {
    /// Rebuilds the law of every element for the present gas.
    pub(super) fn rebuild_laws(&mut self) {
        for element in 0..self.elements.len() {
            self.rebuild_law(element);
        }
    }

    /// Rebuilds the law of one element.
    fn rebuild_law(&mut self, element: usize) {
        let (Some(spec), Some(place)) = (self.elements.get(element), self.places.get(element))
        else {
            return;
        };
        let gas = &self.gas;
        match *place {
            Place::Curve(k) => {
                if let Some(link) = self.curves.get_mut(k) {
                    link.curve = curve_of(spec, gas, link.t_k);
                }
            }
            Place::Opening(k) => {
                if let Some(link) = self.openings.get_mut(k) {
                    link.law = OpeningLaw::new(gas, link.t_k);
                }
            }
            Place::Regulator(k) => {
                if let Some(link) = self.regulators.get_mut(k) {
                    link.law = OpeningLaw::new(gas, link.t_k);
                }
            }
        }
    }

    fn place(&mut self, wanted: Wanted) {
        let ends = self.ends(wanted.from, wanted.to);
        let t_k = self.nodes.get(usize::from(wanted.from.0)).map_or(T_STD_K, |node| node.t_k);
        let law = OpeningLaw::new(&self.gas, t_k);
        let opening = |cd_area_m2| OpeningLink { ends, t_k, law, cd_area_m2, flow: 0.0, mean: 0.0 };
        let known = ends.from != ends.to;
        let place = match (&wanted.spec, wanted.regulator) {
            (ElementSpec::Pipe(_) | ElementSpec::Tubing(_), _) => {
                let curve = curve_of(&wanted.spec, &self.gas, t_k);
                self.curves.push(CurveLink { ends, t_k, curve, flow: 0.0, mean: 0.0 });
                Place::Curve(self.curves.len() - 1)
            }
            (ElementSpec::Regulator, Some(spec)) => {
                let regulator = Regulator::new(spec);
                let (flow, mean) = (0.0, 0.0);
                self.regulators.push(RegulatorLink { ends, t_k, law, regulator, flow, mean });
                Place::Regulator(self.regulators.len() - 1)
            }
            (ElementSpec::Opening | ElementSpec::Regulator, _) => {
                self.openings.push(opening(if known { wanted.cd_area_m2 } else { 0.0 }));
                Place::Opening(self.openings.len() - 1)
            }
        };
        self.elements.push(wanted.spec);
        self.places.push(place);
    }

    fn ends(&self, from: NodeId, to: NodeId) -> Ends {
        let find = |node: NodeId| self.slots.get(usize::from(node.0)).copied();
        let from_slot = find(from).unwrap_or(0);
        let to_slot = find(to).unwrap_or(from_slot);
        let entry = |row: u8, column: u8| self.program.entry(u16::from(row), u16::from(column));
        Ends {
            from: from_slot,
            to: to_slot,
            from_to: entry(from_slot, to_slot),
            to_from: entry(to_slot, from_slot),
        }
    }
}

/// A zero for each slot.
fn zeros() -> Box<Slots<f64>> {
    Box::new([0.0; SLOTS])
}

/// The curve of a pipe or of tubing; a curve that carries nothing for anything else.
fn curve_of(spec: &ElementSpec, gas: &Gas, t_k: f64) -> FlowCurve {
    let curve = match spec {
        ElementSpec::Pipe(pipe) => Some(pipe.curve(gas, t_k)),
        ElementSpec::Tubing(tubing) => tubing.curve(gas, t_k),
        ElementSpec::Opening | ElementSpec::Regulator => None,
    };
    curve.unwrap_or_else(|| FlowCurve::tabulate(1.0, |_| (0.0, 0.0)))
}

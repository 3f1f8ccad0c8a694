//! Small networks that the checks measure on.

use crate::physics::fluid::Gas;
use crate::physics::network::{ElementId, Network, NetworkBuilder, NodeId};
use crate::physics::orifice::{OpeningLaw, area_for_flow_m2};
use crate::physics::regulator::{Behaviour, RegulatorSpec};
use crate::units::{P_STD_PA, T_STD_K};

/// Flow through one element between two boundaries, in standard m³/s.
pub(in crate::fidelity) fn flow_between(
    gas: Gas,
    [from_pa, to_pa]: [f64; 2],
    add: impl FnOnce(&mut NetworkBuilder, NodeId, NodeId) -> ElementId,
) -> f64 {
    let mut b = NetworkBuilder::new(gas, P_STD_PA);
    let from = b.fixed(from_pa);
    let to = b.fixed(to_pa);
    let element = add(&mut b, from, to);
    let mut network = b.build();
    network.step(1.0);
    network.flow_std_m3_s(element)
}

/// One volume that loses its gas to the air through one element.
pub(in crate::fidelity) struct Vessel {
    pub(in crate::fidelity) network: Network,
    pub(in crate::fidelity) inside: NodeId,
    pub(in crate::fidelity) way: ElementId,
}

impl Vessel {
    pub(in crate::fidelity) fn new(
        gas: Gas,
        volume_m3: f64,
        t_k: f64,
        start_pa: f64,
        add: impl FnOnce(&mut NetworkBuilder, NodeId, NodeId) -> ElementId,
    ) -> Self {
        let mut b = NetworkBuilder::new(gas, P_STD_PA);
        let inside = b.node(volume_m3, t_k, start_pa);
        let air = b.fixed(0.0);
        let way = add(&mut b, inside, air);
        Self { network: b.build(), inside, way }
    }

    pub(in crate::fidelity) fn pressure_pa(&self) -> f64 {
        self.network.pressure_pa(self.inside)
    }

    /// Goes on by `steps` steps of `dt_s`; returns what came out, in standard m³.
    pub(in crate::fidelity) fn run(&mut self, steps: u32, dt_s: f64) -> f64 {
        let mut out_m3 = 0.0;
        for _ in 0..steps {
            self.network.step(dt_s);
            out_m3 += self.network.flow_std_m3_s(self.way) * dt_s;
        }
        out_m3
    }
}

/// A regulator between a supply and a volume from which an opening draws.
pub(in crate::fidelity) struct RegulatorRig {
    pub(in crate::fidelity) network: Network,
    pub(in crate::fidelity) supply: NodeId,
    pub(in crate::fidelity) outlet: NodeId,
    pub(in crate::fidelity) regulator: ElementId,
    pub(in crate::fidelity) load: ElementId,
}

impl RegulatorRig {
    pub(in crate::fidelity) fn new(gas: Gas, inlet_pa: f64, spec: RegulatorSpec) -> Self {
        let mut b = NetworkBuilder::new(gas, P_STD_PA);
        let supply = b.fixed(inlet_pa);
        let outlet = b.node(1e-3, T_STD_K, 0.0);
        let air = b.fixed(0.0);
        let regulator = b.regulator(supply, outlet, spec);
        let load = b.opening(outlet, air, 0.0);
        Self { network: b.build(), supply, outlet, regulator, load }
    }

    /// The regulator that behaves so, at its normal inlet; `None` where no parts do.
    pub(in crate::fidelity) fn behaving(gas: Gas, wanted: &Behaviour) -> Option<Self> {
        let spec = RegulatorSpec::from_behaviour(wanted, &gas, P_STD_PA).ok()?;
        Some(Self::new(gas, wanted.inlet_pa, spec))
    }

    pub(in crate::fidelity) fn set_inlet(&mut self, inlet_pa: f64) {
        self.network.set_pressure_pa(self.supply, inlet_pa);
    }

    /// Opens the load so that it passes `flow` at `at_pa`, and lets all come to rest.
    pub(in crate::fidelity) fn draw(&mut self, flow_std_m3_s: f64, at_pa: f64) -> f64 {
        let law = OpeningLaw::new(self.network.gas(), T_STD_K);
        let area = area_for_flow_m2(&law, flow_std_m3_s, at_pa, 0.0, P_STD_PA);
        self.network.set_opening(self.load, area);
        self.network.settle(600.0);
        self.outlet_pa()
    }

    /// Shuts the load and waits; the outlet at rest.
    pub(in crate::fidelity) fn lock_up(&mut self) -> f64 {
        self.network.set_opening(self.load, 0.0);
        self.network.settle(3_600.0);
        self.outlet_pa()
    }

    pub(in crate::fidelity) fn outlet_pa(&self) -> f64 {
        self.network.pressure_pa(self.outlet)
    }

    pub(in crate::fidelity) fn lift_m(&self) -> f64 {
        self.network.regulator(self.regulator).map_or(f64::NAN, |it| it.lift_m())
    }
}

//! The gas network: nodes with a gas volume, elements with a flow law, one implicit step.
//!
//! **Equation.** `dP/dt = (p_std/V)·(T/T_std)·ΣQ_std` at every node with a volume `V`, backward
//! Euler; nodes of given pressure are boundaries. Gas is conserved by the form of the equation:
//! what one node loses the next one gains. How a step is solved: `solve`, `elimination`.
//! **Assumptions.** Isothermal ideal gas, one gas, gauge pressures over one ambient pressure. An
//! element's gas has the temperature of its first node.
//! **Valid range.** Volumes from 1e-7 m³ (smaller ones are taken as that; tested from 5e-6), at
//! most 200 nodes, steps from 1 ms (20 ms in use) to hours when settling.
//! **Regularisation.** None here; each element's law is continuous with its slope. Pressures carry
//! a second number below their last digit, so that the residual can fall under 1e-11 of the largest
//! flow even where a wide pipe joins two nodes at 10 psi.
//! **Source.** Mass balance and ideal-gas law.
//! **Left out.** Pressure waves, heat, mixing of gases, height between nodes.
//! **Checked.** `tests/core/physics/network.rs` (closed forms: `bleed_down_of_a_volume()`,
//! `laminar_filling_is_exact()`, `pipes_in_series_and_parallel()`, `bridge_loop()`,
//! `altitude_enters()`), `tests/core/physics/network_storm.rs` (`twenty_thousand_blows()`,
//! `gas_is_conserved()`) and `tests/core/physics/network_shapes.rs` (`any_shape_balances()`).

mod build;
mod elimination;
mod guess;
mod slots;
mod solve;
mod written;

use super::fluid::Gas;
use super::orifice::OpeningLaw;
use super::pipe::FlowCurve;
use super::regulator::Regulator;
use elimination::{Elimination, Factors};
use guess::Guess;
use serde::Serialize;
use slots::{Head, Slots};

pub use build::NetworkBuilder;

/// A node of a network.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct NodeId(pub(crate) u16);

/// An element of a network.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
pub struct ElementId(pub(crate) u16);

/// What one step did.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct StepReport {
    /// Linear solves, over all parts of the step.
    pub iterations: u32,
    /// Parts the step was split into: 1 normally.
    pub parts: u32,
    /// Times a Newton step was shortened.
    pub shortened: u32,
    /// Whether every part balanced within 3e-10 of its throughput (1e-11 where rounding allows).
    pub converged: bool,
    /// Largest Σ|residual| of any part over its throughput: the largest flow through any element,
    /// or 1e-8 m³/s (0.01 cm³/s) if that is more.
    pub imbalance: f64,
}

/// A gas network; see the module page. Built by [`NetworkBuilder`].
#[derive(Debug, Clone)]
pub struct Network {
    gas: Gas,
    p_atm_abs_pa: f64,
    nodes: Vec<NodeSpec>,
    /// Where each node's pressure stands; nodes with a volume come first.
    slots: Vec<u8>,
    free: usize,
    /// Standard m³ per Pa of each free node.
    capacity: Vec<f64>,
    heads: Box<Slots<Head>>,
    elements: Vec<ElementSpec>,
    /// Where each element stands in its kind's list.
    places: Vec<Place>,
    curves: Vec<CurveLink>,
    openings: Vec<OpeningLink>,
    /// The openings that are not shut, in order.
    passing: Vec<usize>,
    /// Whether one was opened or shut since they were listed.
    opened_or_shut: bool,
    regulators: Vec<RegulatorLink>,
    /// Whether the last step was taken in one part, so that its last flows are its mean flows.
    whole: bool,
    program: Elimination,
    work: Work,
}

/// How a node was asked for.
#[derive(Debug, Clone, Copy, Serialize)]
struct NodeSpec {
    /// `None` for a boundary.
    volume_m3: Option<f64>,
    t_k: f64,
}

/// How an element was asked for; kept to rebuild its law for another gas.
#[derive(Debug, Clone, Copy, Serialize)]
enum ElementSpec {
    Pipe(super::pipe::PipeSpec),
    Tubing(super::pipe::TubingSpec),
    Opening,
    Regulator,
}

#[derive(Debug, Clone, Copy)]
enum Place {
    Curve(usize),
    Opening(usize),
    Regulator(usize),
}

/// The two ends of an element as slots.
#[derive(Debug, Clone, Copy, Serialize)]
struct Ends {
    from: u8,
    to: u8,
    /// Matrix entries (from, to) and (to, from).
    from_to: u16,
    to_from: u16,
}

#[derive(Debug, Clone, Serialize)]
struct CurveLink {
    ends: Ends,
    /// Temperature at `from`, in K.
    t_k: f64,
    curve: FlowCurve,
    flow: f64,
    mean: f64,
}

#[derive(Debug, Clone, Serialize)]
struct OpeningLink {
    ends: Ends,
    /// Temperature at `from`, in K.
    t_k: f64,
    law: OpeningLaw,
    cd_area_m2: f64,
    flow: f64,
    mean: f64,
}

#[derive(Debug, Clone, Serialize)]
struct RegulatorLink {
    ends: Ends,
    /// Temperature at `from`, in K.
    t_k: f64,
    law: OpeningLaw,
    regulator: Regulator,
    flow: f64,
    mean: f64,
}

/// Room for one step, allocated once, and what is remembered from one step to the next.
#[derive(Debug, Clone)]
struct Work {
    start: Box<Slots<Head>>,
    trial: Box<Slots<Head>>,
    /// Bounds that the pressures at the end of the step cannot leave.
    lower_pa: f64,
    upper_pa: f64,
    /// Σ|residual| over throughput at the pressures that the step began with.
    first_share: f64,
    residual: Box<Slots<f64>>,
    change: Box<Slots<f64>>,
    diagonal: Box<Slots<f64>>,
    /// Entries off the diagonal, as the program numbers them.
    matrix: Vec<f64>,
    factors: Factors,
    /// One over the step that the factors are for; zero when they are of no use.
    factors_per_dt: f64,
    /// Steps since they were made.
    factors_age: u32,
    guess: Guess,
}

impl Network {
    /// Gas in the network.
    #[must_use]
    pub fn gas(&self) -> &Gas {
        &self.gas
    }

    /// Fills the network with another gas at the same pressures and rebuilds every curve.
    pub fn set_gas(&mut self, gas: Gas) {
        self.gas = gas;
        self.rebuild_laws();
    }

    /// Ambient pressure of the site, absolute, in Pa.
    #[must_use]
    pub fn p_atm_abs_pa(&self) -> f64 {
        self.p_atm_abs_pa
    }

    /// Gauge pressure at a node, in Pa.
    #[must_use]
    pub fn pressure_pa(&self, node: NodeId) -> f64 {
        self.slot(node).and_then(|slot| self.heads.get(slot)).map_or(0.0, |head| head.pa)
    }

    /// Sets the gauge pressure of a boundary, or of the gas in a node as it stands, in Pa.
    pub fn set_pressure_pa(&mut self, node: NodeId, p_pa: f64) {
        let Some(slot) = self.slot(node) else { return };
        if p_pa.is_finite()
            && let Some(head) = self.heads.get_mut(slot)
        {
            *head = Head { pa: p_pa.max(-0.99 * self.p_atm_abs_pa), rest_pa: 0.0 };
        }
    }

    /// Gas held in a node over what it holds at ambient pressure, in standard m³; zero for a
    /// boundary.
    #[must_use]
    pub fn stored_std_m3(&self, node: NodeId) -> f64 {
        let Some(slot) = self.slot(node) else { return 0.0 };
        self.capacity.get(slot).copied().unwrap_or(0.0) * self.pressure_pa(node)
    }

    /// Flow through an element in the last step, `from` to `to` positive, in standard m³/s.
    #[must_use]
    pub fn flow_std_m3_s(&self, element: ElementId) -> f64 {
        match self.places.get(usize::from(element.0)) {
            Some(&Place::Curve(k)) => {
                self.curves.get(k).map_or(0.0, |link| self.mean_of(link.flow, link.mean))
            }
            Some(&Place::Opening(k)) => {
                self.openings.get(k).map_or(0.0, |link| self.mean_of(link.flow, link.mean))
            }
            Some(&Place::Regulator(k)) => {
                self.regulators.get(k).map_or(0.0, |link| self.mean_of(link.flow, link.mean))
            }
            None => 0.0,
        }
    }

    /// Sets the effective area of an opening, in m²; other elements and bad numbers change nothing.
    pub fn set_opening(&mut self, element: ElementId, cd_area_m2: f64) {
        if let Some(&Place::Opening(k)) = self.places.get(usize::from(element.0))
            && let Some(link) = self.openings.get_mut(k)
            && cd_area_m2.is_finite()
        {
            let area_m2 = cd_area_m2.max(0.0);
            self.opened_or_shut |= (area_m2 > 0.0) != (link.cd_area_m2 > 0.0);
            link.cd_area_m2 = area_m2;
        }
    }

    /// Effective area of an opening, in m²; zero for other elements.
    #[must_use]
    pub fn opening_m2(&self, element: ElementId) -> f64 {
        match self.places.get(usize::from(element.0)) {
            Some(&Place::Opening(k)) => self.openings.get(k).map_or(0.0, |link| link.cd_area_m2),
            Some(Place::Curve(_) | Place::Regulator(_)) | None => 0.0,
        }
    }

    /// The regulator at an element, if that is one.
    #[must_use]
    pub fn regulator(&self, element: ElementId) -> Option<&Regulator> {
        match self.places.get(usize::from(element.0)) {
            Some(&Place::Regulator(k)) => self.regulators.get(k).map(|link| &link.regulator),
            Some(Place::Curve(_) | Place::Opening(_)) | None => None,
        }
    }

    /// Gauge pressure before a regulator, in Pa; 0 at another element.
    #[must_use]
    pub fn before_pa(&self, element: ElementId) -> f64 {
        match self.places.get(usize::from(element.0)) {
            Some(&Place::Regulator(k)) => {
                let from = self.regulators.get(k).map(|link| usize::from(link.ends.from));
                from.and_then(|slot| self.heads.get(slot)).map_or(0.0, |head| head.pa)
            }
            Some(Place::Curve(_) | Place::Opening(_)) | None => 0.0,
        }
    }

    /// The regulator at an element, to be set, if that is one.
    pub fn regulator_mut(&mut self, element: ElementId) -> Option<&mut Regulator> {
        match self.places.get(usize::from(element.0)) {
            Some(&Place::Regulator(k)) => {
                self.regulators.get_mut(k).map(|link| &mut link.regulator)
            }
            Some(Place::Curve(_) | Place::Opening(_)) | None => None,
        }
    }

    /// Marches with growing steps for `max_s` of model time: pressures, seats and preloads come to
    /// rest. Returns the last step's report.
    pub fn settle(&mut self, max_s: f64) -> StepReport {
        let mut dt_s = crate::units::TICK_S;
        let mut passed_s = 0.0;
        let mut report = self.step(dt_s);
        while passed_s < max_s {
            report = self.step(dt_s);
            passed_s += dt_s;
            dt_s *= 1.25;
        }
        report
    }

    /// Every number that the next step depends on, in a fixed order.
    pub fn state(&self) -> impl Iterator<Item = f64> + '_ {
        let heads = self.heads.iter().take(self.nodes.len());
        let pressures = heads.flat_map(|head| [head.pa, head.rest_pa]);
        let areas = self.openings.iter().map(|link| link.cd_area_m2);
        let regulators = self.regulators.iter().flat_map(|link| link.regulator.state());
        let Work { guess, factors, factors_per_dt, factors_age, .. } = &self.work;
        let moved = guess.moved_pa.iter().flat_map(|moved| moved.iter().take(self.free).copied());
        let kind = f64::from(guess.kind as u8);
        let remembered =
            moved.chain([kind, *factors_per_dt, f64::from(*factors_age)]).chain(factors.numbers());
        pressures.chain(areas).chain(regulators).chain(remembered)
    }

    fn mean_of(&self, flow: f64, mean: f64) -> f64 {
        if self.whole { flow } else { mean }
    }

    fn slot(&self, node: NodeId) -> Option<usize> {
        self.slots.get(usize::from(node.0)).copied().map(usize::from)
    }
}

//! A file of reference cases as it was read: SI, names resolved to places in lists.

use super::super::check::{Tolerance, Truth};
use super::figure::Measure;
use crate::physics::fluid::Gas;
use crate::physics::pipe::{PipeSpec, TubingSpec};
use crate::physics::regulator::RegulatorSpec;
use crate::physics::valve::HandValveLaw;

/// A file of reference cases with what holds for all of them.
#[derive(Debug, Clone)]
pub(super) struct CaseFile {
    pub title: String,
    pub source: String,
    pub truth: Truth,
    pub groups: Vec<Group>,
    pub cases: Vec<Case>,
}

/// Cases that are judged together.
#[derive(Debug, Clone, Default)]
pub(super) struct Group {
    pub name: String,
    pub claim: Option<String>,
    pub condition: Option<String>,
    pub source: Option<String>,
    pub reason: Option<String>,
    pub known_miss: Option<String>,
    pub band: Option<Tolerance>,
}

/// One case: a task in its setting.
#[derive(Debug, Clone)]
pub(super) struct Case {
    pub id: String,
    /// The case's group, as an index into [`CaseFile::groups`].
    pub group: usize,
    pub setting: Setting,
    pub task: Task,
}

/// What a case takes place in.
#[derive(Debug, Clone, Copy)]
pub(super) struct Setting {
    pub gas: Gas,
    pub ambient_pa: f64,
    pub t_k: f64,
}

impl Setting {
    /// Lowest gauge pressure that may be given, in Pa.
    pub(super) fn lowest_pa(&self) -> f64 {
        -0.9 * self.ambient_pa
    }

    /// The measure of this gas's standard flow.
    pub(super) fn flow(&self) -> Measure {
        Measure::Flow(self.gas.density_std_kg_m3())
    }
}

#[derive(Debug, Clone)]
pub(super) enum Task {
    /// Steady state of a network.
    Network { net: Net, expect: Expected },
    /// One element between two pressures.
    Line(Line),
    /// A network over time.
    Transient(Transient),
    /// One property of a gas or of what it burns to.
    Property(Property),
}

#[derive(Debug, Clone)]
pub(super) struct Net {
    pub nodes: Vec<NodeIn>,
    pub elements: Vec<ElementIn>,
}

#[derive(Debug, Clone)]
pub(super) struct NodeIn {
    pub id: String,
    /// `None` for a boundary.
    pub volume_m3: Option<f64>,
    /// Given pressure of a boundary, pressure at the start of any other, in Pa gauge.
    pub p_pa: f64,
    pub t_k: f64,
    /// Standard m³/s drawn off; negative: fed in.
    pub demand_m3_s: f64,
}

#[derive(Debug, Clone)]
pub(super) struct ElementIn {
    pub id: String,
    pub from: usize,
    pub to: usize,
    pub part: Part,
}

#[derive(Debug, Clone)]
pub(super) enum Part {
    Pipe(PipeSpec),
    Tubing(TubingSpec),
    /// Effective area, in m².
    Opening(f64),
    /// A valve and its handle's angle, in degrees.
    Valve(HandValveLaw, f64),
    Regulator(Box<RegulatorIn>),
}

#[derive(Debug, Clone)]
pub(super) struct RegulatorIn {
    pub spec: RegulatorSpec,
    pub reference_pa: f64,
    pub leak_m2: f64,
}

/// What a solver found at one moment.
#[derive(Debug, Clone, Default)]
pub(super) struct Expected {
    pub at_s: f64,
    /// Index of a node, its pressure in Pa gauge.
    pub pressures_pa: Vec<(usize, f64)>,
    /// Index of an element, its flow in standard m³/s.
    pub flows_m3_s: Vec<(usize, f64)>,
}

#[derive(Debug, Clone)]
pub(super) struct Line {
    pub part: Part,
    pub inlet_pa: f64,
    pub ask: Ask,
}

/// What of a line is given and what is expected.
#[derive(Debug, Clone, Copy)]
pub(super) enum Ask {
    /// Given the outlet (Pa), the flow (m³/s).
    Flow { outlet_pa: f64, flow_m3_s: f64 },
    /// Given the flow (m³/s), the drop (Pa).
    Drop { flow_m3_s: f64, drop_pa: f64 },
}

#[derive(Debug, Clone)]
pub(super) struct Transient {
    pub net: Net,
    /// None: as fine as the course asks for.
    pub step_s: Option<f64>,
    pub start: Start,
    pub changes: Vec<Change>,
    pub expect: Vec<Expected>,
}

/// How a transient begins.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Start {
    /// From the given pressures, seats at zero lift.
    AsGiven,
    /// From the steady state of the network as given.
    Settled,
}

#[derive(Debug, Clone, Copy)]
pub(super) struct Change {
    pub at_s: f64,
    pub what: What,
}

/// What changes during a transient.
#[derive(Debug, Clone, Copy)]
pub(super) enum What {
    /// Pressure of a boundary, in Pa.
    Pressure(usize, f64),
    /// Demand at a node, in standard m³/s.
    Demand(usize, f64),
    /// Effective area of an opening or valve, in m².
    Area(usize, f64),
    /// Screw of a regulator, in turns.
    Turns(usize, f64),
    /// Pressure over a regulator's diaphragm, in Pa.
    Reference(usize, f64),
}

/// A property and what it should be.
#[derive(Debug, Clone, Copy)]
pub(super) struct Property {
    pub quantity: Quantity,
    /// What it is plotted against, if anything.
    pub against: Option<f64>,
    pub expect: f64,
}

/// The properties that can be asked for.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Quantity {
    /// Density at an absolute pressure (Pa) and the case's temperature, in kg/m³.
    Density(f64),
    /// Dynamic viscosity, in µPa·s.
    Viscosity,
    /// Gross heating value, in Btu/ft³.
    HeatingValue,
    /// Ratio of specific heats.
    Gamma,
    /// Air for complete burning, m³/m³.
    AirPerGas,
    /// Carbon dioxide in dry flue gas without excess air, in percent.
    Co2Max,
    /// Oxygen in dry flue gas at an excess air, in percent.
    O2Dry(f64),
    /// Carbon dioxide in dry flue gas at an excess air, in percent.
    Co2Dry(f64),
    /// Excess air, in percent, from oxygen in dry flue gas (fraction).
    ExcessFromO2(f64),
    /// Efficiency on gross heat at an excess air and a flue temperature (K), in percent.
    Efficiency(f64, f64),
    /// Vapour pressure of propane at a temperature (K), absolute, in kPa.
    PropaneVapour(f64),
    /// Darcy friction factor at a Reynolds number and a relative roughness.
    Friction(f64, f64),
}

impl Quantity {
    /// The unit of the figures in its rows.
    pub(super) fn unit(self) -> &'static str {
        match self {
            Self::Density(_) => "kg/m³",
            Self::Viscosity => "µPa·s",
            Self::HeatingValue => "Btu/ft³",
            Self::AirPerGas => "m³/m³",
            Self::Co2Max
            | Self::O2Dry(_)
            | Self::Co2Dry(_)
            | Self::ExcessFromO2(_)
            | Self::Efficiency(..) => "%",
            Self::PropaneVapour(_) => t!("unit-kpa-absolute"),
            Self::Gamma | Self::Friction(..) => "1",
        }
    }
}

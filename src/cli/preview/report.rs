//! A preview as data.

use serde::Serialize;

use super::own_meter;
use crate::parts::Level;

/// What a preview gave; pressures in inches of water column, rates in Btu/h.
#[derive(Debug, Serialize)]
pub(super) struct Report {
    pub scenario: String,
    pub seed: u64,
    pub plate: PlateReport,
    pub faults: Vec<FaultReport>,
    /// As the job is found.
    pub states: Vec<State>,
    /// The same house without faults, and with everything set as it should be.
    pub healthy: Vec<State>,
    /// For each state, the keys of what differs between the two.
    pub differs: Vec<Vec<&'static str>>,
    /// For each state, what the job's own manometer shows as it comes out of the bag.
    pub own_meter: Vec<own_meter::StateReadings>,
}

/// A fault that the seed drew, with its severity as an author writes it.
#[derive(Debug, Serialize)]
pub(super) struct FaultReport {
    pub name: &'static str,
    pub severity: String,
}

#[derive(Debug, Serialize)]
pub(super) struct PlateReport {
    pub model: String,
    pub fuel: &'static str,
    pub converted: bool,
    pub inlet_inwc: [f64; 2],
    pub levels: Vec<LevelReport>,
    /// What is allowed at the inlet and at the manifold, state by state.
    #[serde(skip)]
    pub allowed_inwc: [Vec<(f64, f64)>; 2],
}

/// What the plate says of a firing level.
#[derive(Debug, Serialize)]
pub(super) struct LevelReport {
    pub level: Level,
    pub manifold_inwc: TargetReport,
    pub input_btu_h: f64,
}

#[derive(Debug, Clone, Copy, Serialize)]
pub(super) struct TargetReport {
    pub target: f64,
    pub tolerance: f64,
}

#[derive(Debug, Serialize)]
pub(super) struct State {
    pub state: String,
    /// What is in the way, when the furnace does not come to this state.
    pub missed: Option<String>,
    /// At the outlet of the supply regulator.
    pub supply_inwc: f64,
    pub inlet_inwc: f64,
    pub manifold_inwc: f64,
    pub input_btu_h: f64,
    /// Input against the plate's high input.
    pub percent: f64,
    pub others_btu_h: f64,
}

//! The marks tried from both sides on bare benches: a healthy one with one fault of the catalogue,
//! at its lowest, typical and highest severity, on either fuel.

use serde::Serialize;

use super::super::fairness::Policy;
use super::super::plan::Technician;
use super::catalogue::catalogue;
use super::run::Run;
use super::sides::{BlindProof, FairProof, Tried};
use crate::appliance::plate::Fuel;
use crate::marking::Brief;
use crate::measure::endings::{can_be_right, right_as_well};
use crate::parts::Ending;
use crate::rules::{RuleBookError, shared};
use crate::scenario::{builtin, load};
use crate::setup::Setup;

/// A healthy bench with one fault.
#[derive(Debug, Clone)]
pub struct FaultBench {
    /// Gas that it burns.
    pub fuel: Fuel,
    /// Its fault's name in the catalogue.
    pub fault: &'static str,
    /// How severe the fault is, as an author writes it; empty for one that is there or not.
    pub severity: String,
    setup: Setup,
}

/// What the runs of both sides came to on a bench with one fault.
#[derive(Debug, Clone, Serialize)]
pub struct FaultProof {
    /// Gas that it burns.
    pub fuel: Fuel,
    /// Its fault's name in the catalogue.
    pub fault: &'static str,
    /// How severe the fault is, as an author writes it.
    pub severity: String,
    /// Ending that the technician chose, where it can be right on this bench; else nothing is
    /// tried.
    pub ending: Option<Ending>,
    /// Good work in other manners.
    pub fair: Vec<FairProof>,
    /// The ritual done blindly.
    pub blind: Vec<BlindProof>,
}

/// Every bench with one fault, by fuel, fault and severity.
#[must_use]
pub fn fault_benches() -> Vec<FaultBench> {
    let healthy = builtin::HEALTHY.iter().filter_map(|one| load(one.text).ok());
    let mut all: Vec<FaultBench> = Vec::new();
    for sound in healthy.map(|scenario| scenario.draw(0)) {
        for (fault, severity, setup) in catalogue(&sound) {
            let one = FaultBench { fuel: sound.fuel, fault: fault.name(), severity, setup };
            // A fault that is there or not has one severity.
            if all.last().is_none_or(|last| !last.is_alike(&one)) {
                all.push(one);
            }
        }
    }
    all
}

impl FaultBench {
    fn is_alike(&self, other: &Self) -> bool {
        (self.fuel, self.fault, &self.severity) == (other.fuel, other.fault, &other.severity)
    }

    /// Plays fair runs of these numbers and blind runs by these habits. The ending that is right is
    /// the reference technician's, where the catalogue lets it be right, with the one that is right
    /// beside it.
    ///
    /// # Errors
    /// When the rule book is not sound.
    pub fn try_marks(
        &self,
        runs: impl IntoIterator<Item = u64>,
        habits: impl IntoIterator<Item = Policy>,
    ) -> Result<FaultProof, RuleBookError> {
        let ending = self.right_ending();
        let mut proof = FaultProof {
            fuel: self.fuel,
            fault: self.fault,
            severity: self.severity.clone(),
            ending,
            fair: Vec::new(),
            blind: Vec::new(),
        };
        let Some(ending) = ending else { return Ok(proof) };
        let mut right_endings = vec![ending];
        right_endings.extend(right_as_well(&self.setup).filter(|it| *it != ending));
        let brief = Brief { right_endings };
        let tried = Tried { seed: 0, setup: self.setup.clone(), brief, book: shared()? };
        proof.fair = runs.into_iter().map(|run| tried.fair(run)).collect();
        proof.blind = habits.into_iter().map(|habit| tried.blind(habit)).collect();
        Ok(proof)
    }

    fn right_ending(&self) -> Option<Ending> {
        let mut run = Run::of(self.setup.clone());
        let mut technician = Technician::new(&self.setup.card);
        let _ = run.play(&mut technician);
        run.observer.ledger.ending().filter(|ending| can_be_right(&self.setup, *ending))
    }
}

impl FaultProof {
    /// Whether the technician's ending can be right, no fair run lost anything and no blind run
    /// passed where it does not fit.
    #[must_use]
    pub fn holds(&self) -> bool {
        let fair = self.fair.iter().all(FairProof::is_right);
        self.ending.is_some() && fair && self.blind.iter().all(BlindProof::is_right)
    }
}

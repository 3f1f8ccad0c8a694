//! What the runs of both sides found on a job.

use serde::Serialize;

use crate::technician::proof::{BlindProof, FairProof};

/// A job with the runs that tried its marks.
#[derive(Debug, Clone, Serialize)]
pub(super) struct Examined {
    /// Id of the scenario, or its file.
    pub(super) scenario: String,
    /// Title of the job.
    pub(super) title: String,
    /// Good work in other manners.
    pub(super) fair: Vec<FairProof>,
    /// The ritual done blindly.
    pub(super) blind: Vec<BlindProof>,
}

impl Examined {
    pub(super) fn unfair(&self) -> impl Iterator<Item = &FairProof> {
        self.fair.iter().filter(|run| !run.is_right())
    }

    pub(super) fn passed_blindly(&self) -> impl Iterator<Item = &BlindProof> {
        self.blind.iter().filter(|run| !run.is_right())
    }

    pub(super) fn holds(&self) -> bool {
        self.unfair().next().is_none() && self.passed_blindly().next().is_none()
    }
}

//! A scenario with its proof, as the command gives it.

use serde::Serialize;

use crate::technician::proof::Proof;

/// A scenario with its proof.
#[derive(Debug, Serialize)]
pub(super) struct Proven {
    /// Its id or file.
    pub scenario: String,
    /// The title as the scenario gives it.
    pub title: String,
    /// What the technician made of each seed, and the marks of spoiled runs.
    #[serde(flatten)]
    pub proof: Proof,
}

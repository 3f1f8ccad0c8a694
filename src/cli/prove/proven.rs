//! A scenario with its proof, as the command gives it.

use serde::Serialize;

use crate::technician::proof::Proof;

/// A scenario with its proof.
#[derive(Debug, Serialize)]
pub(super) struct Proven {
    /// Its id or file.
    pub scenario: String,
    /// Its title.
    pub title: String,
    /// What was found.
    #[serde(flatten)]
    pub proof: Proof,
}

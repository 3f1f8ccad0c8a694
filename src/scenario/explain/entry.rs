//! One entry of the field reference.

use serde::Serialize;

/// A field, or a fault, as it is told.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct Told {
    /// Its path, as in `furnace.plate.made_for.high`; a fault's is `faults.` and its name.
    pub path: String,
    /// Meaning of the field, or cause of the fault.
    pub meaning: String,
    /// What its value looks like.
    pub value: String,
    /// Whether it must be written.
    pub required: bool,
    /// What it is when it is not written; none where it must be written.
    pub default: Option<String>,
    /// Lowest and highest value that the model takes.
    pub limits: Option<[&'static str; 2]>,
    /// Lowest and highest value that is published or common, and where that is from.
    pub usual: Option<[&'static str; 3]>,
}

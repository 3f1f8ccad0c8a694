//! Reference cases: gas networks, lines, transients and properties solved by somebody else, brought
//! as a JSON file, and held against the model.
//!
//! The layout is described in `docs/reference-cases.md`. [`run`] takes any such text; [`checks`] runs
//! the cases that are kept with the program, which the scripts in `tests/reference` made.
//!
//! Work is bounded: at most 4 MiB of text, 2,000 cases, 150 nodes and 400 elements in a network, an
//! hour of model time in a transient.

mod build;
mod figure;
mod judge;
mod model;
mod network;
mod part;
mod place;
mod problem;
mod property;
mod read;
mod solve;

use super::check::Check;

pub use problem::{CaseFault, CaseProblem};
pub use read::{FORMAT, VERSION};

/// Runs the cases of a file. Ids begin with `cases`.
///
/// A case that finds no steady state fails its check; it is no problem of the file.
///
/// # Errors
/// The first problem of the file: no JSON, a newer version, a field that is missing, unknown or
/// outside its range, a name that nothing bears.
pub fn run(text: &str) -> Result<Vec<Check>, CaseProblem> {
    read::read(text).map(|file| judge::checks(&file, "cases"))
}

/// The cases kept with the program.
const KEPT: [(&str, &str); 4] = [
    ("networks", include_str!("../../../tests/reference/networks.json")),
    ("transients", include_str!("../../../tests/reference/transients.json")),
    ("lines", include_str!("../../../tests/reference/lines.json")),
    ("properties", include_str!("../../../tests/reference/properties.json")),
];

/// Runs the cases kept with the program.
#[must_use]
pub fn checks() -> Vec<Check> {
    KEPT.iter()
        .flat_map(|(name, text)| match read::read(text) {
            Ok(file) => judge::checks(&file, name),
            Err(problem) => vec![judge::unread(name, &problem)],
        })
        .collect()
}

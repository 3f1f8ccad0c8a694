//! What came of a table: its checks, and rows that were not used.

use crate::fidelity::check::{Check, Row};

/// What came of one table.
#[derive(Debug, Clone, Default)]
pub struct Outcome {
    /// The checks that the rows of the table went to.
    pub checks: Vec<Check>,
    /// Rows that were not used.
    pub set_aside: Vec<SetAside>,
}

/// Rows of a table that were not used.
#[derive(Debug, Clone, PartialEq, Eq, serde::Serialize)]
pub struct SetAside {
    /// The file of the table, without its folder.
    pub file: String,
    /// The number of rows left out for one reason.
    pub rows: usize,
    /// The reason, for the guide.
    pub reason: String,
}

impl Outcome {
    /// Takes over what came of another table; rows of a check that both have are put together.
    pub fn join(&mut self, other: Outcome) {
        for check in other.checks {
            let Some(mine) = self.checks.iter_mut().find(|mine| mine.id == check.id) else {
                self.checks.push(check);
                continue;
            };
            for row in check.rows {
                let same = |mine: &Row| mine.label == row.label && mine.reference == row.reference;
                if !mine.rows.iter().any(same) {
                    mine.rows.push(row);
                }
            }
        }
        self.set_aside.extend(other.set_aside);
    }
}

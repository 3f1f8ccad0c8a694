//! What is wrong with a file of reference cases.

use serde::Serialize;

/// What kind of problem it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Serialize)]
#[serde(rename_all = "kebab-case")]
pub enum CaseFault {
    /// Larger than a file of cases may be, in bytes, cases, nodes, elements or work.
    TooLarge,
    /// Text that is no JSON.
    Syntax,
    /// Not a file of cases at all.
    NotCases,
    /// Written for a newer version of the layout.
    Newer,
    /// A field that must be there is not.
    Missing,
    /// A field that the layout does not have.
    Unknown,
    /// A value of another kind than the field's.
    WrongKind,
    /// A number outside its range, or none at all.
    OutOfRange,
    /// A name that nothing bears, or that two things bear.
    Name,
    /// Values that do not go together.
    Contradiction,
}

/// Why a file of cases cannot be run: the first problem met.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct CaseProblem {
    /// What kind of problem it is.
    pub fault: CaseFault,
    /// Where in the layout: `cases[3].elements[1].length_m`; empty for the file as a whole.
    pub path: String,
    /// Line in the text, from 1.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// What is wrong and what would do, one sentence.
    pub message: String,
}

impl CaseProblem {
    /// The code a command ends with: 4 for a file of a newer version, 3 for any other problem.
    #[must_use]
    pub fn exit_code(&self) -> u8 {
        match self.fault {
            CaseFault::Newer => 4,
            CaseFault::TooLarge
            | CaseFault::Syntax
            | CaseFault::NotCases
            | CaseFault::Missing
            | CaseFault::Unknown
            | CaseFault::WrongKind
            | CaseFault::OutOfRange
            | CaseFault::Name
            | CaseFault::Contradiction => 3,
        }
    }
}

impl core::fmt::Display for CaseProblem {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let (line, column, message) = (self.line, self.column, &self.message);
        f.write_str(&if self.path.is_empty() {
            t!("case-problem", line = line, column = column, message = message)
        } else {
            let path = &self.path;
            t!("case-problem-at", line = line, column = column, path = path, message = message)
        })
    }
}

impl core::error::Error for CaseProblem {}

//! Classes of harm: what a slip does, and by that what it costs and whether it fails the job.

use serde::{Deserialize, Serialize};

/// How serious a slip is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Severity {
    /// A matter of good practice.
    Minor,
    /// Makes the result wrong or incomplete.
    Major,
    /// Could hurt somebody or leave an unsafe appliance.
    Critical,
}

impl Severity {
    /// The one below it; the least stays.
    #[must_use]
    pub fn lower(self) -> Self {
        match self {
            Self::Critical => Self::Major,
            Self::Major | Self::Minor => Self::Minor,
        }
    }
}

/// What a slip does, from the worst. What each class means and costs stands in the rule file.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Harm {
    /// Somebody could have been hurt while the work went on.
    Danger,
    /// What is left behind can hurt whoever lives with it.
    LeftUnsafe,
    /// The house has no heat, hot water or range tonight.
    NoHeat,
    /// A reading, a setting or a report that others rely on is wrong, missing or not theirs to make.
    ResultWrong,
    /// A barrier between gas, power and people was missing, though nothing came of it.
    Exposed,
    /// The result may be right, but a step that shows it or keeps trouble away was left out.
    Unproven,
    /// Time, money or trust was spent for nothing.
    Waste,
    /// Good practice was not kept.
    Slip,
}

impl Harm {
    /// All of them, from the worst.
    pub const ALL: [Self; 8] = [
        Self::Danger,
        Self::LeftUnsafe,
        Self::NoHeat,
        Self::ResultWrong,
        Self::Exposed,
        Self::Unproven,
        Self::Waste,
        Self::Slip,
    ];

    /// As the rule file and the pages write it.
    #[must_use]
    pub fn id(self) -> &'static str {
        match self {
            Self::Danger => "Danger",
            Self::LeftUnsafe => "LeftUnsafe",
            Self::NoHeat => "NoHeat",
            Self::ResultWrong => "ResultWrong",
            Self::Exposed => "Exposed",
            Self::Unproven => "Unproven",
            Self::Waste => "Waste",
            Self::Slip => "Slip",
        }
    }
}

/// How bad a slip was among those of its rule.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize, Deserialize)]
pub enum Grade {
    /// As the rule's class says.
    Usual,
    /// As the rule says of its worst case.
    Grave,
}

/// What a slip comes to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Charge {
    /// How serious it is.
    pub severity: Severity,
    /// Points that it costs once.
    pub points: f64,
    /// Whether it fails the essential of its rule.
    pub gates: bool,
}

//! The verdict of a job, with its points where there are any.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::rules::{Essential, Family};

/// How a job is judged. Points are given with the verdict *met* alone: they cannot be shown beside
/// an essential that is missing.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(tag = "verdict", rename_all = "kebab-case")]
pub enum Verdict {
    /// Handed over with every essential that was due.
    Met {
        /// Points that the work reached.
        points: f64,
        /// Points that a job without a slip has.
        of: f64,
        /// Points lost in each family, capped.
        lost: BTreeMap<Family, f64>,
    },
    /// Handed over without every essential.
    NotYetMet {
        /// Essentials that are missing, in order.
        missing: Vec<Essential>,
    },
    /// Stopped, or over, before it was handed over.
    NotHandedOver {
        /// Essentials that are missing already, in order.
        missing: Vec<Essential>,
    },
    /// Over by what nobody here could know or stop, with nothing to charge: no verdict on the work.
    EndedByItself,
}

impl Verdict {
    /// Whether the job is met.
    #[must_use]
    pub fn is_met(&self) -> bool {
        matches!(self, Self::Met { .. })
    }

    /// Points reached and possible, where any are given.
    #[must_use]
    pub fn points(&self) -> Option<(f64, f64)> {
        match self {
            Self::Met { points, of, .. } => Some((*points, *of)),
            Self::NotYetMet { .. } | Self::NotHandedOver { .. } | Self::EndedByItself => None,
        }
    }

    /// Points lost in a family after its cap, where any are given.
    #[must_use]
    pub fn lost(&self, family: Family) -> Option<f64> {
        match self {
            Self::Met { lost, .. } => Some(lost.get(&family).copied().unwrap_or_default()),
            Self::NotYetMet { .. } | Self::NotHandedOver { .. } | Self::EndedByItself => None,
        }
    }

    /// It in words, with what is missing; without the points.
    #[must_use]
    pub fn words(&self) -> String {
        let named = |missing: &[Essential]| {
            missing.iter().map(|essential| essential.label()).collect::<Vec<_>>().join("; ")
        };
        match self {
            Self::Met { .. } => t!("verdict-met").into(),
            Self::NotYetMet { missing } => t!("verdict-not-yet-met", missing = named(missing)),
            Self::EndedByItself => t!("verdict-ended-by-itself").into(),
            Self::NotHandedOver { missing } if missing.is_empty() => {
                t!("verdict-not-handed-over").into()
            }
            Self::NotHandedOver { missing } => {
                t!("verdict-not-handed-over-missing", missing = named(missing))
            }
        }
    }
}

//! The rows behind the checks: claim, source, condition, band and its reason, unit, known miss.
//!
//! They stand in `assets/reference/claims.ron`, one for each kind of check, and not in code, so that a
//! band can be read, questioned and changed in one place. A check names its row; a test finds a row
//! that no check uses and a check without a row.

use std::collections::BTreeMap;
use std::sync::LazyLock;

use serde::Deserialize;

use super::check::{Check, Row, Tolerance, Truth};

/// The text of the rows.
pub const TEXT: &str = include_str!("../../assets/reference/claims.ron");

/// The rows of `claims.ron`, those of checks and those of whole tables.
#[derive(Debug, Clone, Default, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Claims {
    /// The rows that checks stand on, in the order of the guide.
    pub claims: Vec<Claim>,
    /// What is known beforehand of whole tables that the model misses.
    pub misses: Vec<TableMiss>,
}

/// What a check says before it has figures.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Claim {
    /// The check's id, or the kind of check where many share a row.
    pub id: String,
    /// Heading in the guide.
    pub chapter: String,
    /// One sentence; words in braces are filled in by the check.
    pub claim: String,
    /// What the reference is worth; left out where the lines of a table say it.
    #[serde(default)]
    pub truth: Option<Truth>,
    /// On whose word; left out where the lines of a table say it.
    #[serde(default)]
    pub source: String,
    /// Gas, size, state; words in braces are filled in by the check.
    pub condition: String,
    /// The band about the reference that the result must lie in.
    pub band: Tolerance,
    /// Why the band is as wide as it is.
    pub reason: String,
    /// Unit of the figures; empty where the table says it.
    pub unit: String,
    /// Why a miss is known, and what holds all the same.
    #[serde(default)]
    pub miss: Option<Miss>,
}

/// A miss that is known and left standing.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Miss {
    /// Why, and what was tried.
    pub why: String,
    /// The band that holds all the same, and its reason; left out where a check of its own holds it.
    #[serde(default)]
    pub bound: Option<(Tolerance, String)>,
}

/// What is known of a table, or of a kind of table, that the model misses.
#[derive(Debug, Clone, PartialEq, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct TableMiss {
    /// Its name in code.
    pub id: String,
    /// Why the model misses it.
    pub why: String,
    /// Where the columns' medians must lie all the same.
    pub columns: Bound,
    /// Where every cell must lie all the same.
    pub cells: Bound,
    /// Where both bands come from, seen from outside the model.
    pub reason: String,
}

/// A band beside a miss.
#[derive(Debug, Clone, Copy, PartialEq, Deserialize)]
pub enum Bound {
    /// The band of the check itself, for its own reason.
    Own,
    /// Least and greatest deviation of the model from the table, as fractions.
    Relative(f64, f64),
    /// The check's own band about the equation behind the table, which itself stands from the first
    /// to the second fraction off that equation.
    TableOff(f64, f64),
}

impl Bound {
    /// The band beside a check of this band.
    #[must_use]
    pub fn beside(self, own: Tolerance) -> Tolerance {
        match (self, own) {
            (Self::Relative(below, above), _) => Tolerance::Relative(below, above),
            (Self::TableOff(least, most), Tolerance::Relative(below, above)) => {
                Tolerance::Relative(
                    (1.0 + below) / (1.0 + most) - 1.0,
                    (1.0 + above) / (1.0 + least) - 1.0,
                )
            }
            (Self::Own | Self::TableOff(..), own) => own,
        }
    }
}

static CLAIMS: LazyLock<Claims> = LazyLock::new(|| read(TEXT).unwrap_or_default());
static BY_ID: LazyLock<BTreeMap<&'static str, &'static Claim>> =
    LazyLock::new(|| CLAIMS.claims.iter().map(|claim| (claim.id.as_str(), claim)).collect());

/// Reads rows.
///
/// # Errors
/// With line and column, for a text that is no list of claims.
pub fn read(text: &str) -> Result<Claims, ron::error::SpannedError> {
    ron::Options::default()
        .with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME)
        .from_str(text)
}

/// The row of a name.
#[must_use]
pub fn claim(id: &str) -> Option<&'static Claim> {
    BY_ID.get(id).copied()
}

/// What is known of a table by the name of its row.
pub(super) fn table_miss(id: &str) -> Option<&'static TableMiss> {
    CLAIMS.misses.iter().find(|miss| miss.id == id)
}

/// A check on the row of its name. Without such a row it says so, has no figures and fails.
pub(super) fn check(id: &str, rows: Vec<Row>) -> Check {
    let Some(claim) = claim(id) else {
        return Check {
            id: id.to_owned(),
            row: "",
            chapter: t!("claim-no-row-chapter"),
            claim: t!("claim-no-row", id = id),
            truth: Truth::Memory,
            source: "none".to_owned(),
            condition: "none".to_owned(),
            tolerance: Tolerance::Absolute(0.0),
            reason: t!("claim-no-band").to_owned(),
            unit: "1",
            rows: Vec::new(),
            known_miss: None,
        };
    };
    Check {
        id: id.to_owned(),
        row: &claim.id,
        chapter: &claim.chapter,
        claim: claim.claim.clone(),
        truth: claim.truth.unwrap_or(Truth::Memory),
        source: claim.source.clone(),
        condition: claim.condition.clone(),
        tolerance: claim.band,
        reason: claim.reason.clone(),
        unit: &claim.unit,
        rows,
        known_miss: claim.miss.as_ref().map(|miss| miss.why.clone()),
    }
}

impl Check {
    /// The same check with `{name}` replaced in claim and condition.
    pub(super) fn fill(mut self, name: &str, text: &str) -> Self {
        let name = format!("{{{name}}}");
        self.claim = self.claim.replace(&name, text);
        self.condition = self.condition.replace(&name, text);
        self
    }
}

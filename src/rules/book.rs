//! The shared rule file.

use serde::{Deserialize, Serialize};

use super::harm::{Charge, Grade, Harm, Severity};
use super::scoring::Scoring;
use super::{Cost, Rule};

/// A file of rules.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RuleBook {
    /// Raised whenever any rule or what slips cost changes.
    pub version: u32,
    /// Who stands behind it, in a sentence that results print.
    pub standing: String,
    /// What slips cost, and why.
    pub scoring: Scoring,
    /// Its rules, in the order of a job.
    pub rules: Vec<Rule>,
}

/// Why a rule file cannot be used.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RuleBookError {
    /// Line, from 1; 0 when the fault is not in one place.
    pub line: usize,
    /// Column in characters, from 1.
    pub column: usize,
    /// What is wrong, in a sentence.
    pub message: String,
}

impl core::fmt::Display for RuleBookError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        write!(f, "{}:{}: {}", self.line, self.column, self.message)
    }
}

impl core::error::Error for RuleBookError {}

/// An error at the first line that is the one, by its text without the blanks before it.
pub(super) fn located(
    text: &str,
    message: String,
    mut is: impl FnMut(&str) -> bool,
) -> RuleBookError {
    let place = text.lines().enumerate().find_map(|(i, line)| {
        let trimmed = line.trim_start();
        is(trimmed).then(|| (i + 1, line.len() - trimmed.len() + 1))
    });
    let (line, column) = place.unwrap_or_default();
    RuleBookError { line, column, message }
}

impl RuleBook {
    /// Reads a rule file.
    ///
    /// # Errors
    /// Where and why it is not one: syntax, an unknown field, a name used twice, a rule that
    /// follows from an unknown one, a scale of harm that contradicts itself, a rule whose essential
    /// or points do not agree with its class of harm.
    pub fn read(text: &str) -> Result<Self, RuleBookError> {
        let book: Self = ron::from_str(text).map_err(|error| RuleBookError {
            line: error.span.start.line,
            column: error.span.start.col,
            message: error.code.to_string(),
        })?;
        let scoring = |message| located(text, message, |line| line.starts_with("scoring:"));
        book.scoring.check().map_err(scoring)?;
        for (i, rule) in book.rules.iter().enumerate() {
            let id = format!("\"{}\"", rule.id);
            let here = |line: &str| line.starts_with("id:") && line.contains(&id);
            book.check(rule, &book.rules[..i]).map_err(|message| located(text, message, here))?;
        }
        Ok(book)
    }

    fn check(&self, rule: &Rule, before: &[Rule]) -> Result<(), String> {
        let id = &rule.id;
        if before.iter().any(|other| other.id == *id) {
            return Err(t!("rules-twice", rule = id));
        }
        if let Some(missing) =
            rule.follows_from.iter().find(|id| !self.rules.iter().any(|other| other.id == **id))
        {
            return Err(t!("rules-follows", rule = id, missing = missing));
        }
        let gates = [Grade::Usual, Grade::Grave].map(|grade| self.charge(rule, grade).gates);
        match (gates.contains(&true), rule.essential) {
            (true, None) => return Err(t!("rules-no-essential", rule = id)),
            (false, Some(essential)) => {
                return Err(t!("rules-essential", rule = id, essential = essential.label()));
            }
            (true, Some(_)) | (false, None) => {}
        }
        let usual = self.scoring.row(rule.harm).map_or(0.0, |row| row.points);
        if let Some(Cost { points, because }) = &rule.cost {
            if !(0.0..=self.scoring.full).contains(points) {
                return Err(t!("rules-weight", rule = id));
            }
            if because.trim().is_empty() || (points - usual).abs() < 1e-9 {
                return Err(t!("rules-cost", rule = id, harm = rule.harm.id()));
            }
        }
        let charge = self.charge(rule, Grade::Usual);
        let hidden = charge.points > self.scoring.cap(rule.family);
        if hidden && charge.severity < Severity::Critical {
            return Err(t!("rules-cap", rule = id, family = rule.family.label()));
        }
        Ok(())
    }

    /// What a slip against a rule comes to that was not caught in time.
    #[must_use]
    pub fn charge(&self, rule: &Rule, grade: Grade) -> Charge {
        let grave = rule.grave.as_ref().filter(|_| grade == Grade::Grave).map(|it| it.harm);
        let harm: Harm = grave.unwrap_or(rule.harm);
        let row = self.scoring.row(harm);
        let of_class = row.map_or(Severity::Critical, |row| row.severity);
        let severity = rule.own_severity.unwrap_or(of_class);
        let points = match &rule.cost {
            Some(cost) if grave.is_none() => cost.points,
            Some(_) | None => row.map_or(0.0, |row| row.points),
        };
        let gates = match severity {
            Severity::Critical => true,
            Severity::Major => row.is_none_or(|row| row.gates),
            Severity::Minor => false,
        };
        Charge { severity, points, gates }
    }

    /// What a slip against a rule comes to that was caught in time.
    #[must_use]
    pub fn in_time(&self, rule: &Rule, grade: Grade) -> Charge {
        let charge = self.charge(rule, grade);
        Charge {
            severity: charge.severity.lower(),
            points: charge.points * self.scoring.caught.share,
            gates: false,
        }
    }

    /// The rule with this id.
    #[must_use]
    pub fn rule(&self, id: &str) -> Option<&Rule> {
        self.rules.iter().find(|rule| rule.id == id)
    }
}

/// The rule file that comes with the program.
///
/// # Errors
/// Only if the built-in file is broken, which a test forbids.
pub fn shared() -> Result<RuleBook, RuleBookError> {
    RuleBook::read(include_str!("../../assets/rules/rules.ron"))
}

//! The shared rule file.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use super::{Family, Rule};

/// A file of rules.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RuleBook {
    /// Raised whenever any rule changes.
    pub version: u32,
    /// Who stands behind it, in a sentence that results print.
    pub standing: String,
    /// Most points that a family can cost.
    pub caps: BTreeMap<Family, f64>,
    /// Rules in the order of the page.
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

impl RuleBook {
    /// Reads a rule file.
    ///
    /// # Errors
    /// Where and why it is not one: syntax, an unknown field, a name used twice, a rule that
    /// follows from an unknown one, a weight that makes no sense.
    pub fn read(text: &str) -> Result<Self, RuleBookError> {
        let book: Self = ron::from_str(text).map_err(|error| RuleBookError {
            line: error.span.start.line,
            column: error.span.start.col,
            message: error.code.to_string(),
        })?;
        book.check().map_err(|message| RuleBookError { line: 0, column: 0, message })?;
        Ok(book)
    }

    fn check(&self) -> Result<(), String> {
        for (i, rule) in self.rules.iter().enumerate() {
            if self.rules[..i].iter().any(|other| other.id == rule.id) {
                return Err(t!("rules-twice", rule = &rule.id));
            }
            if !(0.0..=100.0).contains(&rule.weight) {
                return Err(t!("rules-weight", rule = &rule.id));
            }
            if let Some(missing) =
                rule.follows_from.iter().find(|id| !self.rules.iter().any(|other| other.id == **id))
            {
                return Err(t!("rules-follows", rule = &rule.id, missing = missing));
            }
        }
        Ok(())
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

#[cfg(test)]
mod tests {
    use super::*;

    /// The built-in rules can be read; a typing error is found with its place.
    #[test]
    fn rules_are_read_and_errors_located() {
        let book = shared().unwrap_or_else(|error| panic!("{error}"));
        assert!(book.rules.len() >= 50);
        let broken = "(\n  version: 1,\n  standin: \"x\",\n)";
        let error = RuleBook::read(broken).unwrap_err();
        assert_eq!(error.line, 3);
        assert!(error.message.contains("standin"), "{error}");
    }
}

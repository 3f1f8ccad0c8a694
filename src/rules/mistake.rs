//! Mistakes of the trade, each with the rules that speak for it: what the shared rules cover, and what
//! no rule can ask.

use serde::{Deserialize, Serialize};

use super::book::{RuleBook, RuleBookError, located};

/// Something that is often done wrongly at a gas furnace.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Mistake {
    /// Its number, `M01` and on, for good.
    pub number: String,
    /// What somebody does, in a few words.
    pub name: String,
    /// Shared rules that speak for it.
    pub rules: Vec<String>,
    /// What of it no rule can ask, and why. Where there are no rules, it is not modelled.
    #[serde(default)]
    pub beyond: Option<String>,
}

/// Reads a list of mistakes.
///
/// # Errors
/// Where and why it is none: syntax, an unknown field, a number out of its order, a rule that the book
/// does not have, a mistake with neither rules nor a reason.
pub fn read(text: &str, book: &RuleBook) -> Result<Vec<Mistake>, RuleBookError> {
    let all: Vec<Mistake> = ron::from_str(text).map_err(|error| RuleBookError {
        line: error.span.start.line,
        column: error.span.start.col,
        message: error.code.to_string(),
    })?;
    for (i, mistake) in all.iter().enumerate() {
        let mut numbers = 0;
        let here = |line: &str| {
            numbers += usize::from(line.starts_with("number:"));
            numbers == i + 1
        };
        check(mistake, i + 1, book).map_err(|message| located(text, message, here))?;
    }
    Ok(all)
}

fn check(mistake: &Mistake, place: usize, book: &RuleBook) -> Result<(), String> {
    let (number, due) = (&mistake.number, format!("M{place:02}"));
    if *number != due {
        return Err(t!("mistakes-order", number = number, due = due));
    }
    if let Some(missing) = mistake.rules.iter().find(|id| book.rule(id).is_none()) {
        return Err(t!("mistakes-rule", number = number, rule = missing));
    }
    if mistake.rules.is_empty() && mistake.beyond.is_none() {
        return Err(t!("mistakes-empty", number = number));
    }
    Ok(())
}

/// The mistakes that come with the program.
///
/// # Errors
/// Only if a built-in file is broken, which a test forbids.
pub fn all() -> Result<Vec<Mistake>, RuleBookError> {
    read(include_str!("../../assets/rules/mistakes.ron"), &super::shared()?)
}

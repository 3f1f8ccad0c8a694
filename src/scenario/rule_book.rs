//! The rules of one job: the shared set with the scenario's changes.

use super::format::Marking;
use crate::rules::{Cost, RuleBook, RuleBookError, shared};

impl Marking {
    /// The shared rules with what this job changes in them.
    ///
    /// # Errors
    /// Only if the shared rule file is broken, which a test forbids.
    pub fn rule_book(&self) -> Result<RuleBook, RuleBookError> {
        let mut book = shared()?;
        for change in &self.rules {
            if !change.applies {
                book.rules.retain(|rule| rule.id != change.id);
                for rule in &mut book.rules {
                    rule.follows_from.retain(|id| *id != change.id);
                }
                continue;
            }
            let Some(rule) = book.rules.iter_mut().find(|rule| rule.id == change.id) else {
                continue;
            };
            rule.own_severity = change.severity;
            if let Some(weight) = &change.weight {
                // A check refuses weights that vary.
                let points = weight.least();
                rule.cost = Some(Cost { points, because: t!("rules-own-weight").into() });
                // What a job asks for is not hidden by the cap of its family.
                let family = rule.family;
                book.scoring.raise_cap(family, points);
            }
        }
        Ok(book)
    }
}

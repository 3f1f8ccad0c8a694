//! From slips to points, by what the rule file says of them.

use std::collections::BTreeMap;

use super::judged::Judged;
use crate::rules::{Family, Grade, RuleBook, Severity};

/// What a slip costs that happened so many times.
pub(super) fn cost(book: &RuleBook, once: f64, times: usize) -> f64 {
    let repeat = &book.scoring.repeat;
    #[expect(clippy::cast_precision_loss, reason = "a handful of repeats")]
    let again = times.saturating_sub(1) as f64 * repeat.points;
    once + again.min(once * repeat.most)
}

/// Points of a job that is met, and what each family lost of them. A family loses at most its cap,
/// but for rules that are critical: those count in full, even where they were caught in time.
pub(super) fn points(book: &RuleBook, charged: &[Judged<'_>]) -> (f64, BTreeMap<Family, f64>) {
    let mut capped: BTreeMap<Family, f64> = BTreeMap::new();
    let mut critical: BTreeMap<Family, f64> = BTreeMap::new();
    for judged in charged {
        let Some(charge) = judged.charge(book) else { continue };
        let severity = book.charge(judged.rule, Grade::Usual).severity;
        let sums = if severity == Severity::Critical { &mut critical } else { &mut capped };
        let lost = cost(book, charge.points, judged.hits.len());
        *sums.entry(judged.rule.family).or_default() += lost;
    }
    let mut lost = critical;
    for (family, sum) in capped {
        *lost.entry(family).or_default() += sum.min(book.scoring.cap(family));
    }
    let all: f64 = lost.values().sum();
    ((book.scoring.full - all).max(book.scoring.least), lost)
}

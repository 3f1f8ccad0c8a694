//! What slips cost and why: the scale of harm, repeats, what was caught in time, the most that a
//! family can cost. Data of the rule file, so that instructors can agree on it.

use serde::{Deserialize, Serialize};

use super::Family;
use super::harm::{Harm, Severity};

/// How slips become points.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Scoring {
    /// Day of its last change, as in `2026-11-30`.
    pub date: String,
    /// Who stands behind these figures, in a sentence.
    pub standing: String,
    /// Points of a job without a slip.
    pub full: f64,
    /// Least points of a job that is met.
    pub least: f64,
    /// When points are given at all, in a sentence.
    pub given: String,
    /// Each class of harm, from the worst.
    pub harms: Vec<HarmRow>,
    /// What doing it again costs.
    pub repeat: Repeat,
    /// What a slip costs that was caught in time.
    pub caught: CaughtInTime,
    /// Most points that a family can cost.
    pub caps: Vec<Cap>,
}

/// A class of harm and what it costs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HarmRow {
    /// Class of harm that is described.
    pub harm: Harm,
    /// How serious a slip of this class is.
    pub severity: Severity,
    /// Whether it fails the essential that its rule names.
    pub gates: bool,
    /// Points that it costs once.
    pub points: f64,
    /// What belongs to it, in a sentence.
    pub means: String,
    /// Why it costs so much, and where that is from.
    pub why: String,
}

/// What doing it again costs.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Repeat {
    /// Points for each time after the first.
    pub points: f64,
    /// Most that all repeats together cost, as a share of the first.
    pub most: f64,
    /// Why repeats cost so much, in a sentence.
    pub why: String,
}

/// What a slip costs that was caught in time.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct CaughtInTime {
    /// Share of its points that it still costs.
    pub share: f64,
    /// What counts as caught in time, in a sentence.
    pub means: String,
    /// Why it still costs so much, in a sentence.
    pub why: String,
}

/// Most points that a family can cost.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Cap {
    /// Family of rules that is capped.
    pub family: Family,
    /// Most points that its rules cost together, beside those that are critical.
    pub points: f64,
}

impl Scoring {
    /// The row of a class; a check sees to it that each has one.
    #[must_use]
    pub fn row(&self, harm: Harm) -> Option<&HarmRow> {
        self.harms.iter().find(|row| row.harm == harm)
    }

    /// Most points that a family can cost, beside what is critical.
    #[must_use]
    pub fn cap(&self, family: Family) -> f64 {
        self.caps.iter().find(|cap| cap.family == family).map_or(self.full, |cap| cap.points)
    }

    /// Raises a family's cap to at least so many points.
    pub(crate) fn raise_cap(&mut self, family: Family, points: f64) {
        for cap in self.caps.iter_mut().filter(|cap| cap.family == family) {
            cap.points = cap.points.max(points);
        }
    }

    /// What is wrong with it by itself, if anything.
    ///
    /// # Errors
    /// A class without a row or with two, a class whose severity and gate do not agree, points that
    /// do not follow the order of harm, a family without a cap, a date or a share that is none.
    pub(super) fn check(&self) -> Result<(), String> {
        for harm in Harm::ALL {
            let rows = self.harms.iter().filter(|row| row.harm == harm).count();
            if rows != 1 {
                return Err(t!("rules-harm-rows", harm = harm.id(), rows = rows));
            }
        }
        for row in &self.harms {
            row.check(self.full)?;
        }
        for (worse, less) in self.harms.iter().zip(self.harms.iter().skip(1)) {
            let falls = worse.severity >= less.severity && worse.points >= less.points;
            if worse.harm > less.harm || !falls {
                return Err(t!("rules-harm-order", worse = worse.harm.id(), less = less.harm.id()));
            }
        }
        for family in Family::ALL {
            let caps = self.caps.iter().filter(|cap| cap.family == family).count();
            if caps != 1 {
                return Err(t!("rules-cap-rows", family = family.label(), rows = caps));
            }
        }
        if !is_day(&self.date) {
            return Err(t!("rules-date", date = &self.date));
        }
        let shares = (0.0..=1.0).contains(&self.caught.share) && self.repeat.most >= 0.0;
        let points = self.repeat.points >= 0.0 && (0.0..self.full).contains(&self.least);
        if shares && points { Ok(()) } else { Err(t!("rules-scoring-range").into()) }
    }
}

impl HarmRow {
    /// A critical class gates, a minor one does not, and a class costs what a job can lose.
    fn check(&self, full: f64) -> Result<(), String> {
        let agrees = match self.severity {
            Severity::Critical => self.gates,
            Severity::Major => true,
            Severity::Minor => !self.gates,
        };
        if !agrees {
            return Err(t!("rules-harm-gate", harm = self.harm.id()));
        }
        if !(0.0..=full).contains(&self.points) {
            return Err(t!("rules-harm-points", harm = self.harm.id()));
        }
        Ok(())
    }
}

/// Whether a text is a day as in `2026-11-30`.
fn is_day(text: &str) -> bool {
    let parts: Vec<&str> = text.split('-').collect();
    let [year, month, day] = parts.as_slice() else { return false };
    let number = |part: &str, digits: usize| {
        let all = part.len() == digits && part.bytes().all(|b| b.is_ascii_digit());
        part.parse::<u32>().ok().filter(|_| all)
    };
    let within = |value: Option<u32>, most: u32| value.is_some_and(|it| (1..=most).contains(&it));
    number(year, 4).is_some() && within(number(month, 2), 12) && within(number(day, 2), 31)
}

//! What the fields of a scenario refer to by id: the shared rules and the competencies, as text, as
//! tables and for programs.

use core::fmt::Write as _;

use serde::Serialize;

use super::causes::{self, ToldCause};
use super::entry::Told;
use crate::rules::competency::{self, Competency};
use crate::rules::{Essential, Family, Rule, RuleBook, Severity, shared};

/// Something that `explain` tells of.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Topic {
    /// A field, or a fault.
    Field(Told),
    /// A rule of the shared set.
    Rule(Box<Rule>),
    /// A competency that rules speak for.
    Competency(Competency),
    /// A cause that a finding can name.
    Cause(ToldCause),
}

impl Topic {
    /// Its id, or a field's path.
    #[must_use]
    pub fn id(&self) -> &str {
        match self {
            Self::Field(told) => &told.path,
            Self::Rule(rule) => &rule.id,
            Self::Competency(one) => one.id,
            Self::Cause(cause) => cause.id,
        }
    }
}

/// The shared rules; a test forbids that they cannot be read.
pub(super) fn book() -> Option<RuleBook> {
    shared().ok()
}

/// The rule, the competency or the cause with this id; all of them for `rules`, `competencies` and
/// `causes`.
pub(super) fn topics(wanted: &str) -> Vec<Topic> {
    let rules = book().map(|book| book.rules).unwrap_or_default();
    let rule = |rule: Rule| Topic::Rule(Box::new(rule));
    match wanted {
        "rules" => rules.into_iter().map(rule).collect(),
        "competencies" => competency::ALL.into_iter().map(Topic::Competency).collect(),
        "causes" => causes::told(wanted).into_iter().map(Topic::Cause).collect(),
        id => {
            let id = id.strip_prefix("rules.").unwrap_or(id);
            let upper = id.to_uppercase();
            let found = rules.into_iter().filter(|one| one.id == id).map(rule);
            let found = found.chain(competency::find(&upper).copied().map(Topic::Competency));
            found.chain(causes::told(wanted).into_iter().map(Topic::Cause)).collect()
        }
    }
}

/// Ids of all rules, competencies and causes.
pub(super) fn ids() -> Vec<String> {
    let rules = book().map(|book| book.rules).unwrap_or_default();
    let competencies = competency::ALL.iter().map(|one| one.id.to_owned());
    let causes = crate::parts::Cause::ALL.iter().map(|cause| cause.id().to_owned());
    rules.into_iter().map(|rule| rule.id).chain(competencies).chain(causes).collect()
}

/// Every rule in a line.
pub(super) fn rule_list(text: &mut String) {
    let Some(book) = book() else { return };
    let _ = writeln!(text, "{}\n", t!("explain-rules"));
    for rule in &book.rules {
        let gate = if rule.essential.is_some() { t!("explain-rule-essential") } else { "" };
        let bad = severity(rule.severity);
        let _ = writeln!(
            text,
            "    {:<26} {:>3}  {bad:<8} {gate:<9}  {}",
            rule.id, rule.weight, rule.title
        );
    }
}

/// Every competency in a line.
pub(super) fn competency_list(text: &mut String) {
    for one in &competency::ALL {
        let _ = writeln!(text, "    {} {}: {}", one.id, one.name(), one.criterion());
    }
}

/// Appends the entry of one rule.
pub(super) fn rule_entry(text: &mut String, rule: &Rule) {
    let _ = writeln!(text, "    {}.", rule.title);
    let weight = t!(
        "explain-rule-weight",
        weight = rule.weight.to_string(),
        family = family(rule.family),
        severity = severity(rule.severity)
    );
    let essential = rule.essential.map(|it| t!("explain-rule-gates", essential = it.label()));
    let competencies = t!("explain-rule-competencies", ids = rule.claims.join(", "));
    let beside = (!rule.follows_from.is_empty())
        .then(|| t!("explain-rule-follows", rules = rule.follows_from.join(", ")));
    let rest = [
        t!("explain-rule-why", why = &rule.why),
        t!("explain-rule-practise", practise = &rule.practise),
        t!("explain-rule-version", version = rule.version),
    ];
    let first = [Some(weight), essential, Some(competencies), beside];
    for line in first.into_iter().flatten().chain(rest) {
        let _ = writeln!(text, "    - {line}");
    }
}

/// One competency, with the rules that speak for it.
pub(super) fn competency_entry(text: &mut String, one: &Competency) {
    let _ = writeln!(text, "    {}: {}", one.name(), one.criterion());
    let rules = book().map(|book| book.rules).unwrap_or_default();
    let claims = |rule: &&Rule| rule.claims.iter().any(|id| id == one.id);
    let ids: Vec<&str> = rules.iter().filter(claims).map(|rule| rule.id.as_str()).collect();
    let line = match ids.is_empty() {
        true => t!("explain-competency-no-rules").to_owned(),
        false => t!("explain-competency-rules", rules = ids.join(", ")),
    };
    let _ = writeln!(text, "    - {line}");
}

/// The rules as a table in Markdown, with the most that each family can cost.
pub(in crate::scenario) fn rule_table() -> String {
    let mut text = String::new();
    let Some(book) = book() else { return text };
    let _ = writeln!(text, "{}\n|---|---|---|---|---|", t!("explain-rule-columns"));
    for rule in &book.rules {
        let essential = rule.essential.map_or("", Essential::label);
        let _ = writeln!(
            text,
            "| `{}` | {} | {} | {essential} | {} |",
            rule.id,
            rule.weight,
            severity(rule.severity),
            rule.title
        );
    }
    let caps: Vec<_> =
        book.caps.iter().map(|(one, most)| format!("{} {most}", family(*one))).collect();
    let _ = writeln!(text, "\n{}", t!("explain-rule-caps", caps = caps.join(", ")));
    text
}

/// The competencies as a table in Markdown.
pub(in crate::scenario) fn competency_table() -> String {
    let mut text = format!("{}\n|---|---|---|\n", t!("explain-competency-columns"));
    for one in &competency::ALL {
        let _ = writeln!(text, "| {} | {} | {} |", one.id, one.name(), one.criterion());
    }
    text
}

/// A severity as a scenario writes it.
fn severity(severity: Severity) -> &'static str {
    match severity {
        Severity::Minor => "Minor",
        Severity::Major => "Major",
        Severity::Critical => "Critical",
    }
}

fn family(family: Family) -> &'static str {
    match family {
        Family::Safety => t!("family-safety"),
        Family::Isolation => t!("family-isolation"),
        Family::Measuring => t!("family-measuring"),
        Family::Adjusting => t!("family-adjusting"),
        Family::Restoring => t!("family-restoring"),
        Family::Records => t!("family-records"),
        Family::Diagnosis => t!("family-diagnosis"),
    }
}

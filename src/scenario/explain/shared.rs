//! What the fields of a scenario refer to by id: the shared rules and the competencies, as text, as
//! tables and for programs.

use core::fmt::Write as _;

use serde::Serialize;

use super::causes::{self, ToldCause};
use super::entry::Told;
use super::mistakes;
use crate::rules::competency::{self, Competency};
use crate::rules::mistake::Mistake;
use crate::rules::{Charge, Essential, Grade, Rule, RuleBook, Scoring, Severity, shared};

/// Something that `explain` tells of.
#[derive(Debug, Clone, PartialEq, Serialize)]
#[serde(untagged)]
pub enum Topic {
    /// A field, or a fault.
    Field(Told),
    /// A rule of the shared set.
    Rule(Box<ToldRule>),
    /// Classes of harm, and how slips become points.
    Scoring(Box<Scoring>),
    /// A competency that rules speak for.
    Competency(Competency),
    /// A cause that a finding can name.
    Cause(ToldCause),
    /// A mistake of the trade.
    Mistake(Mistake),
}

impl Topic {
    /// Its id, or a field's path.
    #[must_use]
    pub fn id(&self) -> &str {
        match self {
            Self::Field(told) => &told.path,
            Self::Rule(it) => &it.rule.id,
            Self::Scoring(_) => SCORING,
            Self::Competency(one) => one.id,
            Self::Cause(cause) => cause.id,
            Self::Mistake(mistake) => &mistake.number,
        }
    }
}

/// A rule, with what a slip against it comes to by the scale.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct ToldRule {
    /// The rule as it stands in the file.
    #[serde(flatten)]
    pub rule: Rule,
    /// How serious it is.
    pub severity: Severity,
    /// Points that it costs once.
    pub points: f64,
    /// How serious its worst case is, where it has one.
    pub grave_severity: Option<Severity>,
}

impl ToldRule {
    fn new(book: &RuleBook, rule: Rule) -> Self {
        let Charge { severity, points, .. } = book.charge(&rule, Grade::Usual);
        let grave = rule.grave.as_ref().map(|_| book.charge(&rule, Grade::Grave).severity);
        Self { rule, severity, points, grave_severity: grave }
    }
}

/// Name by which `explain` tells what slips cost.
const SCORING: &str = "scoring";

/// The shared rules; a test forbids that they cannot be read.
pub(super) fn book() -> Option<RuleBook> {
    shared().ok()
}

/// Every rule of the shared set.
fn rules() -> Vec<ToldRule> {
    let Some(book) = book() else { return Vec::new() };
    book.rules.iter().cloned().map(|rule| ToldRule::new(&book, rule)).collect()
}

/// The rule, the competency, the cause or the mistake with this id; all of them for `rules`,
/// `competencies`, `causes` and `mistakes`; what slips cost for `scoring`.
pub(super) fn topics(wanted: &str) -> Vec<Topic> {
    let told = |it: ToldRule| Topic::Rule(Box::new(it));
    match wanted {
        "rules" => rules().into_iter().map(told).collect(),
        "competencies" => competency::ALL.into_iter().map(Topic::Competency).collect(),
        "causes" => causes::told(wanted).into_iter().map(Topic::Cause).collect(),
        "mistakes" => mistakes::told(wanted).into_iter().map(Topic::Mistake).collect(),
        SCORING => book().map(|book| Topic::Scoring(Box::new(book.scoring))).into_iter().collect(),
        id => {
            let id = id.strip_prefix("rules.").unwrap_or(id);
            let upper = id.to_uppercase();
            let found = rules().into_iter().filter(|it| it.rule.id == id).map(told);
            let found = found.chain(competency::find(&upper).copied().map(Topic::Competency));
            let found = found.chain(causes::told(wanted).into_iter().map(Topic::Cause));
            found.chain(mistakes::told(wanted).into_iter().map(Topic::Mistake)).collect()
        }
    }
}

/// Ids of all rules, competencies, causes and mistakes.
pub(super) fn ids() -> Vec<String> {
    let rules = book().map(|book| book.rules).unwrap_or_default();
    let competencies = competency::ALL.iter().map(|one| one.id.to_owned());
    let causes = crate::parts::Cause::ALL.iter().map(|cause| cause.id().to_owned());
    let ids = rules.into_iter().map(|rule| rule.id).chain(competencies).chain(causes);
    let mistakes = mistakes::told("mistakes").into_iter().map(|it| it.number);
    ids.chain(mistakes).chain([SCORING.to_owned()]).collect()
}

/// Every rule in a line.
pub(super) fn rule_list(text: &mut String) {
    let _ = writeln!(text, "{}\n", t!("explain-rules"));
    for it in rules() {
        let gate = if it.rule.essential.is_some() { t!("explain-rule-essential") } else { "" };
        let bad = severity(it.severity);
        let _ = writeln!(
            text,
            "    {:<26} {:>3}  {bad:<8} {gate:<9}  {}",
            it.rule.id, it.points, it.rule.title
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
pub(super) fn rule_entry(text: &mut String, it: &ToldRule) {
    let rule = &it.rule;
    let _ = writeln!(text, "    {}.", rule.title);
    let harm = t!(
        "explain-rule-harm",
        harm = rule.harm.id(),
        severity = severity(it.severity),
        weight = it.points.to_string(),
        family = rule.family.label()
    );
    let lines = [
        Some(harm),
        rule.cost.as_ref().map(|cost| t!("explain-rule-cost", because = &cost.because)),
        rule.grave
            .as_ref()
            .map(|grave| t!("explain-rule-grave", harm = grave.harm.id(), when = &grave.when)),
        rule.essential.map(|it| t!("explain-rule-gates", essential = it.label())),
        rule.caught.as_ref().map(|caught| t!("explain-rule-caught", caught = caught)),
        Some(t!("explain-rule-competencies", ids = rule.claims.join(", "))),
        (!rule.follows_from.is_empty())
            .then(|| t!("explain-rule-follows", rules = rule.follows_from.join(", "))),
        Some(t!("explain-rule-why", why = &rule.why)),
        Some(t!("explain-rule-practise", practise = &rule.practise)),
        Some(t!("explain-rule-job", job = &rule.job)),
        rule.if_unsafe
            .as_ref()
            .map(|it| t!("explain-rule-unsafe", practise = &it.practise, job = &it.job)),
        Some(t!("explain-rule-version", version = rule.version)),
    ];
    for line in lines.into_iter().flatten() {
        let _ = writeln!(text, "    - {line}");
    }
}

/// What slips cost, in plain text.
pub(super) fn scoring_entry(text: &mut String, scoring: &Scoring) {
    for line in scoring_lines(scoring) {
        let _ = writeln!(text, "    - {line}");
    }
    for row in &scoring.harms {
        let _ = writeln!(
            text,
            "    {:<12} {:>3}  {:<8} {:<9}  {} {}",
            row.harm.id(),
            row.points,
            severity(row.severity),
            if row.gates { t!("explain-rule-essential") } else { "" },
            row.means,
            row.why
        );
    }
}

/// What is said of the points beside the scale.
fn scoring_lines(scoring: &Scoring) -> [String; 5] {
    let caps = scoring.caps.iter().map(|cap| format!("{} {}", cap.family.label(), cap.points));
    let caps: Vec<_> = caps.collect();
    [
        t!("explain-scoring-date", date = &scoring.date, standing = &scoring.standing),
        t!(
            "explain-scoring-given",
            full = scoring.full.to_string(),
            least = scoring.least.to_string(),
            given = &scoring.given
        ),
        t!(
            "explain-scoring-repeat",
            points = scoring.repeat.points.to_string(),
            most = scoring.repeat.most.to_string(),
            why = &scoring.repeat.why
        ),
        t!(
            "explain-scoring-caught",
            share = scoring.caught.share.to_string(),
            means = &scoring.caught.means,
            why = &scoring.caught.why
        ),
        t!("explain-scoring-caps", caps = caps.join(", ")),
    ]
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

/// What slips cost, in Markdown: the scale of harm, then what is said beside it.
pub(in crate::scenario) fn scoring_table() -> String {
    let Some(scoring) = book().map(|book| book.scoring) else { return String::new() };
    let mut text = format!("{}\n|---|---|---|---|---|\n", t!("explain-harm-columns"));
    for row in &scoring.harms {
        let gates = if row.gates { t!("explain-gates") } else { t!("explain-gates-not") };
        let _ = writeln!(
            text,
            "| {} | {} | {} | {gates} | {} {} |",
            row.harm.id(),
            severity(row.severity),
            row.points,
            row.means,
            row.why
        );
    }
    text.push('\n');
    for line in scoring_lines(&scoring) {
        let _ = writeln!(text, "- {line}");
    }
    text
}

/// The rules as a table in Markdown, and those that need more than a row.
pub(in crate::scenario) fn rule_table() -> String {
    let mut text = format!("{}\n|---|---|---|---|---|\n", t!("explain-rule-columns"));
    let rules = rules();
    for it in &rules {
        let essential = it.rule.essential.map_or("", Essential::label);
        let _ = writeln!(
            text,
            "| `{}` | {} | {} | {essential} | {} |",
            it.rule.id,
            it.rule.harm.id(),
            it.points,
            it.rule.title
        );
    }
    text.push('\n');
    for it in &rules {
        let rule = &it.rule;
        let more = [
            rule.grave
                .as_ref()
                .map(|grave| t!("explain-rule-grave", harm = grave.harm.id(), when = &grave.when)),
            rule.cost.as_ref().map(|cost| t!("explain-rule-cost", because = &cost.because)),
            rule.caught.as_ref().map(|caught| t!("explain-rule-caught", caught = caught)),
        ];
        for line in more.into_iter().flatten() {
            let _ = writeln!(text, "- `{}`: {line}", rule.id);
        }
    }
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

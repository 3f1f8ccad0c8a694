//! The field reference, made from the declarations themselves.

mod causes;
mod entry;
mod mistakes;
mod shared;

pub(super) use causes::cause_table;
pub use entry::Told;
pub(super) use mistakes::mistake_table;
pub use shared::Topic;
pub(super) use shared::{competency_table, rule_table, scoring_table};

use core::fmt::Write as _;

use super::format::{Scenario, Variant};
use super::problem::nearest;
use super::schema::{Field, FieldDefault, Kind, Section};
use crate::catalogue::fault::{Fault, Severity};
use crate::words::Id;

/// Finds fields by their path (`furnace.plate.made_for.high`, `trunk[0].length`) or by the name alone,
/// and faults of the catalogue (`faults.plugged_orifice`, or the name alone).
///
/// # Errors
/// The nearest path or name, if any, when there is no such field and no such fault.
pub fn find(wanted: &str) -> Result<Vec<Told>, Option<String>> {
    let wanted = &without_indices(wanted.trim());
    let fields = catalogue();
    let wanted = match wanted.strip_prefix("variants.") {
        Some(inner) if inner.contains('.') && in_variant(inner) => inner,
        Some(_) | None => wanted,
    };
    let last = |path: &str| path.rsplit('.').next() == Some(wanted);
    let at_path: Vec<_> = fields.iter().filter(|(path, _)| path == wanted).collect();
    let found: Vec<_> = if at_path.is_empty() {
        fields.iter().filter(|(path, _)| last(path)).collect()
    } else {
        at_path
    };
    if !found.is_empty() {
        return Ok(found.into_iter().map(|(path, field)| told(path, field)).collect());
    }
    let name = wanted.strip_prefix("faults.").unwrap_or(wanted);
    if let Some(fault) = Fault::from_name(name) {
        return Ok(vec![told_fault(fault)]);
    }
    let faults = || Fault::ALL.iter().map(|fault| fault.name());
    if wanted.starts_with("faults.") {
        return Err(nearest(name, faults()).map(|name| format!("faults.{name}")));
    }
    let names = fields
        .iter()
        .map(|(path, field)| if wanted.contains('.') { path.as_str() } else { field.name });
    Err(nearest(wanted, names).or_else(|| nearest(wanted, faults())))
}

/// What [`find`] finds, and rules, competencies and mistakes by their id; `rules` and `competencies`
/// give the field of that name and then all of them, `mistakes` all of those, `scoring` what slips
/// cost.
///
/// # Errors
/// The nearest name, if any, when there is nothing of that name.
pub fn topics(wanted: &str) -> Result<Vec<Topic>, Option<String>> {
    let wanted = wanted.trim();
    let more = shared::topics(wanted);
    match find(wanted) {
        Ok(fields) => Ok(fields.into_iter().map(Topic::Field).chain(more).collect()),
        Err(_) if !more.is_empty() => Ok(more),
        Err(near) => {
            let ids = shared::ids();
            Err(near.or_else(|| nearest(wanted, ids.iter().map(String::as_str))))
        }
    }
}

/// What [`topics`] finds, in plain text.
///
/// # Errors
/// As [`topics`].
pub fn explain(wanted: &str) -> Result<String, Option<String>> {
    let mut text = String::new();
    let found = topics(wanted)?;
    for it in found.iter().filter(|it| found.len() == 1 || matches!(it, Topic::Field(_))) {
        let _ = writeln!(text, "{}", it.id());
        match it {
            Topic::Field(told) => entry(&mut text, told, "    "),
            Topic::Rule(rule) => shared::rule_entry(&mut text, rule),
            Topic::Scoring(scoring) => shared::scoring_entry(&mut text, scoring),
            Topic::Competency(one) => shared::competency_entry(&mut text, one),
            Topic::Cause(cause) => causes::entry(&mut text, cause),
            Topic::Mistake(mistake) => mistakes::entry(&mut text, mistake),
        }
        text.push('\n');
    }
    match wanted.trim() {
        "rules" => shared::rule_list(&mut text),
        "competencies" => shared::competency_list(&mut text),
        "causes" => causes::list(&mut text),
        "mistakes" => mistakes::list(&mut text),
        _ => {}
    }
    Ok(text)
}

/// Every field, in the order of the format.
#[must_use]
pub fn all_fields() -> Vec<Told> {
    catalogue().iter().map(|(path, field)| told(path, field)).collect()
}

/// Whether a path begins with a field that a variant has as the job has it.
fn in_variant(path: &str) -> bool {
    let first = path.split('.').next();
    Variant::SECTION.fields.iter().any(|field| Some(field.name) == first)
}

/// The path of a field without indices: `trunk[0].length` as `trunk.length`.
fn without_indices(path: &str) -> String {
    let mut out = String::new();
    let mut inside = false;
    for c in path.chars() {
        match c {
            '[' => inside = true,
            ']' => inside = false,
            _ if !inside => out.push(c),
            _ => {}
        }
    }
    out
}

fn told(path: &str, field: &Field) -> Told {
    Told {
        path: path.to_owned(),
        meaning: field.doc.text().to_owned(),
        value: looks(field),
        required: field.default == FieldDefault::Required,
        default: match field.default {
            FieldDefault::Required => None,
            FieldDefault::Value(value) => Some(written_default(field.kind, value)),
            FieldDefault::Derived(words) => Some(words.text().to_owned()),
        },
        limits: field.limits.map(|(least, most)| [least, most]),
        usual: field.usual.map(|(least, most, source)| [least, most, source.text()]),
    }
}

/// A default as it would be written, and what an empty section or list means.
fn written_default(kind: Kind, default: &str) -> String {
    if matches!(kind, Kind::Section(_)) && default == "()" {
        t!("explain-default-section", value = default)
    } else if matches!(kind, Kind::List(..)) && default == "[]" {
        t!("explain-default-list", value = default)
    } else {
        format!("`{default}`")
    }
}

fn told_fault(fault: Fault) -> Told {
    let entry = fault.entry();
    let severity = &entry.severity;
    let plain = *severity == Severity::PLAIN;
    let [natural, propane] = severity.typical;
    let quoted =
        |text: &str| if severity.is_bare() { text.to_owned() } else { format!("\"{text}\"") };
    let typical = if natural == propane {
        t!("explain-typical", value = natural)
    } else {
        t!("explain-typical-both", natural = natural, propane = propane)
    };
    let value = if plain {
        t!("explain-plain-fault", fault = entry.name)
    } else {
        format!("`{}({})`: {}", entry.name, quoted(natural), severity.what)
    };
    Told {
        path: format!("faults.{}", entry.name),
        meaning: t!("explain-fault", cause = entry.cause, family = entry.family.label()),
        value,
        required: false,
        default: (!plain).then_some(typical),
        limits: (!plain).then_some([severity.least, severity.most]),
        usual: None,
    }
}

/// Each kind of number with a unit, with its units.
pub(super) fn quantities() -> Vec<(Id, &'static [&'static str])> {
    fn of(kind: Kind) -> Option<(Id, &'static [&'static str])> {
        match kind {
            Kind::Quantity(what, units) => Some((what, units)),
            Kind::List(kind, _) => of(*kind),
            Kind::Section(_)
            | Kind::Variants(_)
            | Kind::Choice(_)
            | Kind::Drawn(_)
            | Kind::Truth
            | Kind::Text(_)
            | Kind::Number(_)
            | Kind::Whole(_)
            | Kind::Fault => None,
        }
    }
    let mut all = Vec::new();
    for (_, field) in catalogue() {
        if let Some(it) = of(field.kind).filter(|it| !all.contains(it)) {
            all.push(it);
        }
    }
    all
}

/// The whole field reference, in Markdown.
#[must_use]
pub fn reference() -> String {
    let mut text = format!("# {}\n", t!("explain-fields"));
    let mut done = Vec::new();
    sections(&mut text, &Scenario::SECTION, &mut done);
    text
}

fn sections(text: &mut String, section: &'static Section, done: &mut Vec<&'static str>) {
    if done.contains(&section.name) {
        return;
    }
    done.push(section.name);
    let _ = write!(text, "\n## {}\n\n{}\n", section.name, section.doc.text());
    let places: Vec<_> = catalogue()
        .into_iter()
        .filter(|(_, field)| inner(field.kind).iter().any(|it| it.name == section.name))
        .map(|(path, _)| format!("`{path}`"))
        .collect();
    if !places.is_empty() {
        let _ = write!(text, "\n{}\n", t!("explain-places", places = places.join(", ")));
    }
    for field in section.fields {
        let _ = write!(text, "\n### {}\n\n", field.name);
        entry(text, &told(field.name, field), "");
    }
    for field in section.fields {
        for inner in inner(field.kind) {
            sections(text, inner, done);
        }
    }
}

fn inner(kind: Kind) -> &'static [Section] {
    match kind {
        Kind::Section(section) => core::slice::from_ref(section),
        Kind::Variants(sections) => sections,
        Kind::List(kind, _) => inner(*kind),
        Kind::Choice(_)
        | Kind::Drawn(_)
        | Kind::Truth
        | Kind::Text(_)
        | Kind::Quantity(..)
        | Kind::Number(_)
        | Kind::Whole(_)
        | Kind::Fault => &[],
    }
}

/// Every field with its path; a list's values share the path of the list.
fn catalogue() -> Vec<(String, &'static Field)> {
    fn walk(section: &'static Section, path: &str, all: &mut Vec<(String, &'static Field)>) {
        for field in section.fields {
            let here = if path.is_empty() {
                field.name.to_owned()
            } else {
                format!("{path}.{}", field.name)
            };
            all.push((here.clone(), field));
            // What a setting writes has the fields of the job.
            if section.name == Variant::SECTION.name {
                continue;
            }
            for inner in inner(field.kind) {
                walk(inner, &here, all);
            }
        }
    }
    let mut all = Vec::new();
    walk(&Scenario::SECTION, "", &mut all);
    all
}

fn entry(text: &mut String, it: &Told, indent: &str) {
    let _ = writeln!(text, "{indent}{}", it.meaning);
    let required = it.required.then(|| t!("explain-required").to_owned());
    let default = it.default.as_ref().map(|default| t!("explain-default", value = default));
    let limits = it.limits.map(|[least, most]| t!("explain-limits", least = least, most = most));
    let usual = it.usual.map(|[least, most, source]| {
        t!("explain-usual", least = least, most = most, source = source)
    });
    let value = t!("explain-value", value = &it.value);
    for line in [Some(value), required, default, limits, usual].into_iter().flatten() {
        let _ = writeln!(text, "{indent}- {line}");
    }
}

fn looks(field: &Field) -> String {
    match field.kind {
        Kind::List(kind, most) => {
            t!("value-list", most = field.entries.unwrap_or(most), value = one(*kind, field))
        }
        kind @ (Kind::Section(_)
        | Kind::Variants(_)
        | Kind::Choice(_)
        | Kind::Drawn(_)
        | Kind::Truth
        | Kind::Text(_)
        | Kind::Quantity(..)
        | Kind::Number(_)
        | Kind::Whole(_)
        | Kind::Fault) => one(kind, field),
    }
}

/// A value of a field, or one of the values of its list.
fn one(kind: Kind, field: &Field) -> String {
    match kind {
        Kind::Section(section) => t!("value-section", section = section.name),
        Kind::Variants(sections) => {
            let names: Vec<_> = sections.iter().map(|it| format!("{}(…)", it.name)).collect();
            names.join(t!("list-or"))
        }
        Kind::Choice(words) => word_list(words),
        Kind::Drawn(words) => {
            let all: Vec<_> = words.iter().map(|(word, _)| *word).collect();
            t!("value-drawn", words = word_list(words), all = all.join(", "))
        }
        Kind::List(kind, most) => t!("value-list", most = most, value = one(*kind, field)),
        Kind::Truth => t!("value-truth").to_owned(),
        Kind::Text(most) => {
            t!("value-text", most = field.most.unwrap_or(most))
        }
        Kind::Quantity(what, units) => {
            let (what, units) = (what.text(), units.join(", "));
            match field.fixed {
                Some(whom) => {
                    t!("value-quantity-fixed", what = what, units = units, whom = whom.text())
                }
                None => t!("value-quantity", what = what, units = units),
            }
        }
        Kind::Fault => t!("value-fault").to_owned(),
        Kind::Number(what) | Kind::Whole(what) => match field.fixed {
            Some(whom) => t!("value-number-fixed", what = what.text(), whom = whom.text()),
            None => t!("value-number", what = what.text()),
        },
    }
}

fn word_list(words: &[(&str, Id)]) -> String {
    let words: Vec<_> =
        words.iter().map(|(word, meaning)| format!("`{word}` ({})", meaning.text())).collect();
    words.join(", ")
}

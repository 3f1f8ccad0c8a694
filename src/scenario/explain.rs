//! The field reference, made from the declarations themselves.

use core::fmt::Write as _;

use super::format::Scenario;
use super::problem::nearest;
use super::shape::{Default, Field, Kind, Section};

/// Explains a field by its path (`furnace.plate.made_for.high`) or by its name alone, in plain text.
///
/// # Errors
/// The nearest path, if any, when there is no such field.
pub fn explain(wanted: &str) -> Result<String, Option<String>> {
    let fields = catalogue();
    let wanted = wanted.trim();
    let named = |path: &str| path.rsplit('.').next() == Some(wanted);
    let matching: Vec<_> = fields.iter().filter(|(path, _)| path == wanted).collect();
    let matching = if matching.is_empty() {
        fields.iter().filter(|(path, _)| named(path)).collect()
    } else {
        matching
    };
    if matching.is_empty() {
        let names = fields
            .iter()
            .map(|(path, field)| if wanted.contains('.') { path.as_str() } else { field.name });
        return Err(nearest(wanted, names));
    }
    let mut text = String::new();
    for (path, field) in matching {
        let _ = writeln!(text, "{path}");
        entry(&mut text, field, "    ");
        text.push('\n');
    }
    Ok(text)
}

/// The whole field reference, in Markdown.
#[must_use]
pub fn reference() -> String {
    let mut text = String::from("# Fields of a scenario\n");
    let mut done = Vec::new();
    sections(&mut text, &Scenario::SECTION, &mut done);
    text
}

fn sections(text: &mut String, section: &'static Section, done: &mut Vec<&'static str>) {
    if done.contains(&section.name) {
        return;
    }
    done.push(section.name);
    let _ = write!(text, "\n## {}\n\n{}\n", section.name, joined(section.doc));
    for field in section.fields {
        let _ = write!(text, "\n### {}\n\n", field.name);
        entry(text, field, "");
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
            for inner in inner(field.kind) {
                walk(inner, &here, all);
            }
        }
    }
    let mut all = Vec::new();
    walk(&Scenario::SECTION, "", &mut all);
    all
}

fn entry(text: &mut String, field: &Field, indent: &str) {
    let _ = writeln!(text, "{indent}{}", joined(field.doc));
    let _ = writeln!(text, "{indent}- value: {}", looks(field.kind));
    match field.default {
        Default::Required => {
            let _ = writeln!(text, "{indent}- must be written");
        }
        Default::Value(value) => {
            let _ = writeln!(text, "{indent}- default: `{value}`");
        }
        Default::Derived(words) => {
            let _ = writeln!(text, "{indent}- default: {words}");
        }
    }
    if let Some((low, high)) = field.limits {
        let _ = writeln!(text, "{indent}- limits: {low} to {high}");
    }
    if let Some((low, high, source)) = field.usual {
        let _ = writeln!(text, "{indent}- usual: {low} to {high} ({source})");
    }
}

fn looks(kind: Kind) -> String {
    match kind {
        Kind::Section(section) => format!("a section {}(…)", section.name),
        Kind::Variants(sections) => {
            let names: Vec<_> = sections.iter().map(|it| format!("{}(…)", it.name)).collect();
            names.join(" or ")
        }
        Kind::Choice(words) => {
            let words: Vec<_> =
                words.iter().map(|(word, meaning)| format!("`{word}` ({meaning})")).collect();
            words.join(", ")
        }
        Kind::List(kind, most) => format!("a list of at most {most}: {}", looks(*kind)),
        Kind::Truth => "`true` or `false`".to_owned(),
        Kind::Text(most) => format!("a text of at most {most} characters"),
        Kind::Quantity(what, units) => {
            format!("a {what} with its unit ({units}), or a range `Between(\"low\", \"high\")`")
        }
        Kind::Fault => {
            "a fault by its name with its severity, as `kinked_connector(0.8)`, its name \
                        alone for the typical severity, a range `name(Between(low, high))`, or \
                        `OneOf([first, second])`; `quarterturn faults` lists them"
                .to_owned()
        }
        Kind::Number(what) | Kind::Whole(what) => {
            format!("a {what}, or a range `Between(low, high)`")
        }
    }
}

fn joined(lines: &[&str]) -> String {
    lines.iter().map(|line| line.trim()).collect::<Vec<_>>().join(" ")
}

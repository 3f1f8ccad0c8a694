//! Faults in a scenario: by name, with a severity that may be drawn, or one of several.

use ron2::ast::{Expr, FieldsBody, StructBody};

use crate::appliance::plate::Fuel;
use crate::catalogue::fault::{Fault, Scale, Severity};
use crate::rng::stream;
use crate::scenario::problem::{Code, nearest};
use crate::scenario::reader::{Reader, Shape};
use crate::scenario::schema::Kind;
use crate::scenario::value::{Measure, Plain, no_unit};
use crate::units::{Flow, HeatingValue, Length, Pressure, Temperature, TimeSpan, Volume};
use crate::words::Id;

/// Most faults to choose from.
const MOST_CHOICES: usize = 12;

/// One thing that is wrong: a fault, or for each seed one of several.
#[derive(Debug, Clone, PartialEq)]
pub struct Affliction {
    /// The faults to choose from; at least one.
    pub choices: Vec<Choice>,
}

/// A fault with its severity.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Choice {
    /// Fault of the catalogue.
    pub fault: Fault,
    /// Lowest and highest severity, in SI; none for the typical one.
    pub severity: Option<(f64, f64)>,
}

impl Affliction {
    /// The fault and its severity for a seed. `path` names the list's entry; which fault and how
    /// severe are drawn from streams of their own.
    #[must_use]
    pub fn draw(&self, seed: u64, path: &str, fuel: Fuel) -> (Fault, f64) {
        let count = u32::try_from(self.choices.len()).unwrap_or(1).max(1);
        let i = if count > 1 { stream(seed, path).below(count) } else { 0 };
        let choice = usize::try_from(i).ok().and_then(|i| self.choices.get(i));
        // A list without a choice is refused when it is read.
        let Some(choice) = choice else { return (Fault::FadedOdorant, 1.0) };
        let name = choice.fault.name();
        let severity = match choice.severity {
            None => choice.fault.entry().severity.typical(fuel),
            Some((least, most)) if least >= most => least,
            Some((least, most)) => stream(seed, &format!("{path}.{name}")).between(least, most),
        };
        (choice.fault, severity)
    }
}

impl Shape for Affliction {
    const KIND: Kind = Kind::Fault;

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        let Expr::Struct(it) = expr else { return no_fault(expr, reader) };
        if it.name.name != "OneOf" {
            return choice(expr, reader).map(|choice| Self { choices: vec![choice] });
        }
        let Some(StructBody::Tuple(body)) = &it.body else { return no_list(expr, reader) };
        let [only] = body.elements.as_slice() else { return no_list(expr, reader) };
        let Expr::Seq(list) = &only.expr else { return no_list(expr, reader) };
        if list.items.is_empty() || list.items.len() > MOST_CHOICES {
            let message = t!("problem-fault-count", count = list.items.len());
            let expected = t!("expected-choice-count", most = MOST_CHOICES);
            reader.wrong(Code::BadLength, expr, message, &expected);
            return None;
        }
        let choices: Vec<_> = list.items.iter().map(|item| choice(&item.expr, reader)).collect();
        choices.into_iter().collect::<Option<Vec<_>>>().map(|choices| Self { choices })
    }

    fn from_default(_: &'static str) -> Option<Self> {
        None
    }
}

fn no_fault<T>(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<T> {
    if !matches!(expr, Expr::Error(_)) {
        let message = t!("problem-fault-belongs").to_owned();
        reader.wrong(Code::WrongKind, expr, message, t!("expected-fault"));
    }
    None
}

fn no_list<T>(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<T> {
    let message = t!("problem-fault-choice").to_owned();
    reader.wrong(Code::WrongKind, expr, message, t!("expected-fault-choice"));
    None
}

/// `name`, `name(severity)` or `name(Between(low, high))`.
fn choice(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Choice> {
    let Expr::Struct(it) = expr else { return no_fault(expr, reader) };
    let name: &str = &it.name.name;
    let Some(fault) = Fault::from_name(name) else {
        let message = t!("problem-no-fault", name = name);
        reader.wrong(Code::UnknownName, expr, message, t!("expected-fault-name"));
        let faults = Fault::ALL.iter().map(|fault| fault.name());
        reader.suggest(nearest(name, faults.chain(core::iter::once("OneOf"))));
        return None;
    };
    let severity = &fault.entry().severity;
    let written = match &it.body {
        None => return Some(Choice { fault, severity: None }),
        Some(StructBody::Tuple(body)) => body.elements.as_slice(),
        Some(StructBody::Fields(FieldsBody { .. })) => &[],
    };
    match written {
        [] if matches!(&it.body, Some(StructBody::Tuple(_))) => {
            Some(Choice { fault, severity: None })
        }
        [one] if *severity != Severity::PLAIN => {
            let severity = range(severity, &one.expr, reader)?;
            Some(Choice { fault, severity: Some(severity) })
        }
        _ => {
            let message = t!("problem-fault-written", name = name);
            let expected = if *severity == Severity::PLAIN {
                name.to_owned()
            } else {
                format!("{name}({})", example(severity))
            };
            reader.wrong(Code::WrongKind, expr, message, &expected);
            None
        }
    }
}

/// A severity as it would be written.
fn example(severity: &Severity) -> String {
    let [text, _] = severity.typical;
    if severity.is_bare() { text.to_owned() } else { format!("\"{text}\"") }
}

/// What is expected where a severity stands.
fn expected(severity: &Severity) -> String {
    if severity.is_bare() {
        t!("expected-severity-number", example = example(severity))
    } else {
        t!("expected-severity-text", example = example(severity))
    }
}

fn range(severity: &Severity, expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<(f64, f64)> {
    let Expr::Struct(it) = expr else {
        return value(severity, expr, reader).map(|value| (value, value));
    };
    let name: &str = &it.name.name;
    let ends = match (&it.body, name) {
        (Some(StructBody::Tuple(body)), "Between") => body.elements.as_slice(),
        _ => &[],
    };
    let [least, most] = ends else {
        let message = t!("problem-severity-range").to_owned();
        reader.wrong(Code::WrongKind, expr, message, t!("expected-range"));
        reader.suggest(nearest(name, core::iter::once("Between")));
        return None;
    };
    let least = value(severity, &least.expr, reader);
    let most = value(severity, &most.expr, reader);
    let (least, most) = (least?, most?);
    if least > most {
        let message = t!("problem-range-backwards").to_owned();
        reader.wrong(Code::Contradiction, expr, message, t!("expected-range"));
        return None;
    }
    Some((least, most))
}

/// One severity, within the range of the catalogue.
fn value(severity: &Severity, expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<f64> {
    let parsed = match (expr, severity.is_bare()) {
        (Expr::Error(_), _) => return None,
        (Expr::Number(number), true) => severity.parse(&number.raw.replace('_', "")),
        (Expr::String(text), false) => severity.parse(&text.value),
        (Expr::Number(number), false) if *severity != Severity::PLAIN => {
            let (what, units) = quantity(severity.scale);
            let message = no_unit(what, units, &number.raw);
            reader.wrong(Code::WrongKind, expr, message, &expected(severity));
            return None;
        }
        _ => {
            let message = match severity.is_bare() {
                true => t!("problem-severity-number", what = severity.what),
                false => t!("problem-severity-text", what = severity.what),
            };
            reader.wrong(Code::WrongKind, expr, message, &expected(severity));
            return None;
        }
    };
    let value = match parsed {
        Ok(value) => value,
        Err(message) => {
            let message = format!("{}.", message.trim_end_matches('.'));
            reader.wrong(Code::BadQuantity, expr, message, &expected(severity));
            return None;
        }
    };
    let (least, most) = severity.range();
    let slack = 1e-9 * least.abs().max(most.abs());
    if (least - slack..=most + slack).contains(&value) {
        return Some(value);
    }
    let message = t!("problem-severity-outside").to_owned();
    let expected = t!("expected-between", least = severity.least, most = severity.most);
    reader.wrong(Code::OutOfRange, expr, message, &expected);
    None
}

/// What a severity with a unit is, and its units.
fn quantity(scale: Scale) -> (Id, &'static [&'static str]) {
    let kind = match scale {
        Scale::Pressure => Pressure::KIND,
        Scale::Flow => Flow::KIND,
        Scale::Diameter | Scale::Height => Length::KIND,
        Scale::Temperature => Temperature::KIND,
        Scale::Time => TimeSpan::KIND,
        Scale::Volume => Volume::KIND,
        Scale::HeatingValue => HeatingValue::KIND,
        Scale::Plain | Scale::Share | Scale::Angle | Scale::Turns => Plain::KIND,
    };
    let Kind::Quantity(what, units) = kind else { return (id!("kind-number"), &[]) };
    (what, units)
}

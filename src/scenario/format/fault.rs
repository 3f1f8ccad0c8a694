//! Faults in a scenario: by name, with a severity that may be drawn, or one of several.

use ron2::ast::{Expr, FieldsBody, StructBody};

use crate::appliance::plate::Fuel;
use crate::catalogue::fault::{Fault, Scale, Severity};
use crate::rng::stream;
use crate::scenario::problem::{Code, nearest};
use crate::scenario::reader::Reader;
use crate::scenario::shape::{Kind, Shape};
use crate::scenario::value::{Measure, Plain, no_unit};
use crate::units::{Flow, HeatingValue, Length, Pressure, Temperature, TimeSpan, Volume};

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
    /// The fault.
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
            Some((low, high)) if low >= high => low,
            Some((low, high)) => stream(seed, &format!("{path}.{name}")).between(low, high),
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
            let message = format!("There are {} faults to choose from.", list.items.len());
            let expected = format!("1 to {MOST_CHOICES}");
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
        let message = "The name of a fault belongs here.".to_owned();
        reader.wrong(Code::WrongKind, expr, message, "name, name(severity) or OneOf([…])");
    }
    None
}

fn no_list<T>(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<T> {
    let message = "A choice holds one list of faults.".to_owned();
    reader.wrong(Code::WrongKind, expr, message, "OneOf([first, second])");
    None
}

/// `name`, `name(severity)` or `name(Between(low, high))`.
fn choice(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Choice> {
    let Expr::Struct(it) = expr else { return no_fault(expr, reader) };
    let name: &str = &it.name.name;
    let Some(fault) = Fault::from_name(name) else {
        let message = format!("There is no fault `{name}` in the catalogue.");
        reader.wrong(Code::UnknownName, expr, message, "a name that `quarterturn faults` lists");
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
            let message = format!("`{name}` is not written like this.");
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
        format!("a number, as {}", example(severity))
    } else {
        format!("a text with its unit, as {}", example(severity))
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
    let [low, high] = ends else {
        let message = "A severity is a value or a range with two ends.".to_owned();
        reader.wrong(Code::WrongKind, expr, message, "Between(low, high)");
        reader.suggest(nearest(name, core::iter::once("Between")));
        return None;
    };
    let low = value(severity, &low.expr, reader);
    let high = value(severity, &high.expr, reader);
    let (low, high) = (low?, high?);
    if low > high {
        let message = "This range runs backwards.".to_owned();
        reader.wrong(Code::Contradiction, expr, message, "Between(low, high)");
        return None;
    }
    Some((low, high))
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
            let message = format!("The severity is {} {}.", kind(severity), severity.what);
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
    let (low, high) = severity.range();
    let slack = 1e-9 * low.abs().max(high.abs());
    if (low - slack..=high + slack).contains(&value) {
        return Some(value);
    }
    let message = "This severity is outside what the catalogue takes.".to_owned();
    let expected = format!("{} to {}", severity.low, severity.high);
    reader.wrong(Code::OutOfRange, expr, message, &expected);
    None
}

/// What a severity with a unit is, and its units.
fn quantity(scale: Scale) -> (&'static str, &'static str) {
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
    match kind {
        Kind::Quantity(what, units) => (what, units),
        _ => ("number", ""),
    }
}

fn kind(severity: &Severity) -> &'static str {
    if severity.is_bare() { "a bare number," } else { "a text with number and unit," }
}

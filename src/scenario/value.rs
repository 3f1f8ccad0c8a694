//! Values of the format: numbers that may be ranges, texts, lists, optional values.

use core::marker::PhantomData;

use ron2::ast::{Expr, NumberExpr, NumberKind, StructBody};

use super::problem::{Code, ProblemLevel, nearest};
use super::reader::{Reader, Shape};
use super::schema::Kind;
use crate::rng::stream;
use crate::units::{
    Flow, HeatRate, HeatingValue, Length, Pressure, Temperature, TemperatureStep, TimeSpan, Volume,
};
use crate::words::Id;

/// Something that is measured or counted, as a number in SI.
pub trait Measure {
    /// What its value looks like.
    const KIND: Kind;
    /// Whether it is counted.
    const WHOLE: bool = false;

    /// Reads the value from the text between the quotes, or the bare number.
    ///
    /// # Errors
    /// What is wrong with it, in words for the author.
    fn parse(text: &str) -> Result<f64, String>;
}

macro_rules! measure {
    ($( $kind:ident, $what:expr, $units:expr; )+) => { $(
        impl Measure for $kind {
            const KIND: Kind = Kind::Quantity($what, $units);

            fn parse(text: &str) -> Result<f64, String> {
                text.parse::<Self>().map(Self::si).map_err(|error| error.message)
            }
        }
    )+ };
}

measure! {
    Pressure, id!("kind-pressure"), &["inH2O", "kPa", "mbar", "psi", "Pa"];
    Flow, id!("kind-flow"), &["ft3/h", "m3/h"];
    HeatRate, id!("kind-heat-rate"), &["Btu/h", "kW", "W"];
    HeatingValue, id!("kind-heating-value"), &["Btu/ft3", "MJ/m3"];
    Length, id!("kind-length"), &["ft", "in", "m", "mm"];
    Volume, id!("kind-volume"), &["ft3", "L", "m3", "gal"];
    Temperature, id!("kind-temperature"), &["degF", "degC", "K"];
    TemperatureStep, id!("kind-temperature-step"), &["degF", "degC", "K"];
    TimeSpan, id!("kind-time-span"), &["s", "min", "h"];
}

/// A number without a unit.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Plain;

impl Measure for Plain {
    const KIND: Kind = Kind::Number(id!("kind-number"));

    fn parse(text: &str) -> Result<f64, String> {
        text.parse::<f64>()
            .ok()
            .filter(|value| value.is_finite())
            .ok_or_else(|| t!("problem-no-number", text = text))
    }
}

/// A whole number from 0.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Count;

impl Measure for Count {
    const KIND: Kind = Kind::Whole(id!("kind-whole"));
    const WHOLE: bool = true;

    fn parse(text: &str) -> Result<f64, String> {
        text.parse::<u32>().map(f64::from).map_err(|_| t!("problem-no-whole-number", text = text))
    }
}

/// A number that is given, or drawn for each seed from a range written `Between(low, high)`.
/// In SI; both ends are within the field's limits, the low one is not above the high one.
#[derive(Debug, PartialEq)]
pub struct Vary<M> {
    least: f64,
    most: f64,
    measure: PhantomData<M>,
}

impl<M> Clone for Vary<M> {
    fn clone(&self) -> Self {
        *self
    }
}

impl<M> Copy for Vary<M> {}

impl<M: Measure> Vary<M> {
    fn of(least: f64, most: f64) -> Self {
        Self { least, most, measure: PhantomData }
    }

    /// Lowest value in SI.
    #[must_use]
    pub fn least(&self) -> f64 {
        self.least
    }

    /// Highest value in SI.
    #[must_use]
    pub fn most(&self) -> f64 {
        self.most
    }

    /// The value for a seed, in SI. `path` names the field; each field has a stream of its own.
    #[must_use]
    pub fn draw(&self, seed: u64, path: &str) -> f64 {
        if self.least >= self.most {
            return self.least;
        }
        let mut stream = stream(seed, path);
        if M::WHOLE {
            self.least + f64::from(stream.below(whole(self.most - self.least) + 1))
        } else {
            stream.between(self.least, self.most)
        }
    }
}

/// A whole number that is held as a double, from 0 to the largest `u32`.
#[must_use]
pub(super) fn whole(value: f64) -> u32 {
    #[expect(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a float cast saturates, and the value is rounded"
    )]
    let whole = value.round() as u32;
    whole
}

impl<M: Measure> Shape for Vary<M> {
    const KIND: Kind = M::KIND;

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        let (least, most) = match expr {
            Expr::Struct(it) => {
                let name: &str = &it.name.name;
                if name != "Between" {
                    let message = t!("problem-not-here", found = name);
                    reader.wrong(Code::UnknownName, expr, message, expected(M::KIND));
                    reader.suggest(nearest(name, core::iter::once("Between")));
                    return None;
                }
                match &it.body {
                    Some(StructBody::Tuple(body)) if body.elements.len() == 2 => {
                        let mut ends =
                            body.elements.iter().map(|one| number::<M>(&one.expr, reader));
                        (ends.next()??, ends.next()??)
                    }
                    _ => {
                        let message = t!("problem-range-ends").to_owned();
                        reader.wrong(Code::WrongKind, expr, message, t!("expected-range"));
                        return None;
                    }
                }
            }
            _ => {
                let value = number::<M>(expr, reader)?;
                (value, value)
            }
        };
        if least > most {
            let message = t!("problem-range-backwards").to_owned();
            reader.wrong(Code::Contradiction, expr, message, t!("expected-range"));
            return None;
        }
        Some(Self::of(least, most))
    }

    fn from_default(text: &'static str) -> Option<Self> {
        M::parse(text).ok().map(|value| Self::of(value, value))
    }
}

/// One number, checked against the limits of the field that is being read.
fn number<M: Measure>(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<f64> {
    let parsed = match (M::KIND, expr) {
        (_, Expr::Error(_)) => return None,
        (Kind::Quantity(what, units), Expr::String(text)) => {
            M::parse(&text.value).map_err(|message| match text.value.trim().parse::<f64>() {
                Ok(_) => no_unit(what, units, text.value.trim()),
                Err(_) => message,
            })
        }
        (Kind::Number(_) | Kind::Whole(_), Expr::Number(number)) => bare::<M>(number),
        (Kind::Quantity(what, units), Expr::Number(number)) => {
            reader.wrong(
                Code::WrongKind,
                expr,
                no_unit(what, units, &number.raw),
                expected(M::KIND),
            );
            return None;
        }
        (
            Kind::Section(_)
            | Kind::Variants(_)
            | Kind::Choice(_)
            | Kind::Drawn(_)
            | Kind::List(..)
            | Kind::Truth
            | Kind::Text(_)
            | Kind::Quantity(..)
            | Kind::Number(_)
            | Kind::Whole(_)
            | Kind::Fault,
            _,
        ) => {
            let message = t!("problem-number-belongs").to_owned();
            reader.wrong(Code::WrongKind, expr, message, expected(M::KIND));
            return None;
        }
    };
    match parsed {
        Ok(value) => within::<M>(value, expr, reader).then_some(value),
        Err(message) => {
            reader.wrong(Code::BadQuantity, expr, sentence(&message), expected(M::KIND));
            None
        }
    }
}

/// What is said of a number without its unit.
pub(super) fn no_unit(what: Id, units: &[&str], number: &str) -> String {
    let short: String = number.chars().take(20).collect();
    let unit = units.first().copied().unwrap_or_default();
    t!("problem-no-unit", what = what.text(), units = units.join(", "), short = short, unit = unit)
}

fn bare<M: Measure>(number: &NumberExpr<'_>) -> Result<f64, String> {
    match number.kind {
        NumberKind::Integer | NumberKind::NegativeInteger | NumberKind::Float => {
            M::parse(&number.raw.replace('_', ""))
        }
        NumberKind::SpecialFloat => Err(t!("problem-not-finite", text = &*number.raw)),
    }
}

fn within<M: Measure>(value: f64, expr: &Expr<'_>, reader: &mut Reader<'_>) -> bool {
    let Some(field) = reader.current() else { return true };
    let outside = |least, most| {
        // A limit that cannot be read would be a slip in the declaration; tests look for those.
        M::parse(least).is_ok_and(|least| value < least - least.abs() * 1e-9)
            || M::parse(most).is_ok_and(|most| value > most + most.abs() * 1e-9)
    };
    if let Some((least, most)) = field.limits.filter(|&(least, most)| outside(least, most)) {
        let message = t!("problem-outside", field = field.name);
        reader.wrong(
            Code::OutOfRange,
            expr,
            message,
            &t!("expected-between", least = least, most = most),
        );
        return false;
    }
    if let Some((least, most, source)) =
        field.usual.filter(|&(least, most, _)| outside(least, most))
    {
        let message = t!(
            "problem-unusual",
            field = field.name,
            least = least,
            most = most,
            source = source.text()
        );
        reader.wrong(
            Code::Unusual,
            expr,
            message,
            &t!("expected-between", least = least, most = most),
        );
        if let Some(last) = reader.problems.last_mut() {
            last.severity = ProblemLevel::Warning;
        }
    }
    true
}

fn expected(kind: Kind) -> &'static str {
    match kind {
        Kind::Number(_) => t!("expected-number"),
        Kind::Whole(_) => t!("expected-whole-number"),
        Kind::Quantity(..)
        | Kind::Section(_)
        | Kind::Variants(_)
        | Kind::Choice(_)
        | Kind::Drawn(_)
        | Kind::List(..)
        | Kind::Truth
        | Kind::Text(_)
        | Kind::Fault => t!("expected-quantity"),
    }
}

fn sentence(message: &str) -> String {
    let mut text = message.trim_end_matches('.').to_owned();
    text.push('.');
    text
}

/// Longest text, in characters.
const TEXT: usize = 2_000;

impl Shape for String {
    const KIND: Kind = Kind::Text(TEXT);

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        let Expr::String(text) = expr else {
            if !matches!(expr, Expr::Error(_)) {
                let message = t!("problem-text-belongs").to_owned();
                reader.wrong(Code::WrongKind, expr, message, "\"text\"");
            }
            return None;
        };
        if text.value.chars().any(|c| c.is_control() && c != '\n') {
            let message = t!("problem-control-characters").to_owned();
            reader.wrong(Code::BadLength, expr, message, t!("expected-printable"));
            return None;
        }
        let length = text.value.chars().count();
        if length == 0 || length > TEXT {
            let message = t!("problem-text-length", length = length);
            reader.wrong(Code::BadLength, expr, message, &t!("expected-text-length", most = TEXT));
            return None;
        }
        Some(text.value.clone())
    }

    fn from_default(text: &'static str) -> Option<Self> {
        Some(text.to_owned())
    }
}

impl Shape for bool {
    const KIND: Kind = Kind::Truth;

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        match expr {
            Expr::Bool(it) => Some(it.value),
            Expr::Error(_) => None,
            _ => {
                let message = t!("problem-truth-belongs").to_owned();
                reader.wrong(Code::WrongKind, expr, message, t!("expected-truth"));
                None
            }
        }
    }

    fn from_default(text: &'static str) -> Option<Self> {
        text.parse().ok()
    }
}

impl<T: Shape> Shape for Option<T> {
    const KIND: Kind = T::KIND;

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        match expr {
            Expr::Option(it) => match &it.value {
                Some(value) => T::read(&value.expr, reader).map(Some),
                None => Some(None),
            },
            _ => T::read(expr, reader).map(Some),
        }
    }

    fn from_default(_: &'static str) -> Option<Self> {
        Some(None)
    }
}

impl<T: Shape> Shape for Vec<T> {
    const KIND: Kind = Kind::List(&T::KIND, T::MOST_IN_LIST);

    fn read(expr: &Expr<'_>, reader: &mut Reader<'_>) -> Option<Self> {
        reader.list(expr)
    }

    fn from_default(text: &'static str) -> Option<Self> {
        (text == "[]").then(Self::new)
    }
}

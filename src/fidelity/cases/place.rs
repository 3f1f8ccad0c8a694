//! A value of a file of cases: its text, its path, and how it is read.
//!
//! `serde` reads each object into a struct that knows all its fields, with the path tracked; what is
//! wrong is told with the line and column at which the value starts.

use std::collections::BTreeMap;
use std::fmt;
use std::marker::PhantomData;
use std::ops::RangeInclusive;

use serde::de::value::MapDeserializer;
use serde::de::{Deserialize, Deserializer, Error, MapAccess, Unexpected, Visitor};
use serde_json::value::RawValue;
use serde_path_to_error::Segment;

use super::figure::{Figure, Measure, split};
use super::problem::{CaseFault, CaseProblem};

/// A value and where it stands.
#[derive(Debug, Clone)]
pub(super) struct Place<'t> {
    file: &'t str,
    text: &'t str,
    path: String,
    /// The only fields that are read, where another reads the rest.
    only: Option<Vec<String>>,
}

impl<'t> Place<'t> {
    /// The whole of a file.
    pub(super) fn whole(file: &'t str) -> Self {
        Self { file, text: file.trim(), path: String::new(), only: None }
    }

    fn part(&self, step: &str, value: Option<&&'t RawValue>) -> Self {
        let dot = if self.path.is_empty() || step.starts_with('[') { "" } else { "." };
        let path = format!("{}{dot}{step}", self.path);
        Self {
            file: self.file,
            text: value.map_or(self.text, |value| value.get()),
            path,
            only: None,
        }
    }

    /// The value of a field, whose name may end in its unit; of one left out, the object itself.
    pub(super) fn field(&self, name: &str) -> Self {
        let fields: BTreeMap<String, &'t RawValue> =
            serde_json::from_str(self.text).unwrap_or_default();
        let stem = || fields.iter().find(|(written, _)| split(written).0 == name);
        match fields.get_key_value(name).or_else(stem) {
            Some((written, value)) => self.part(written, Some(value)),
            None => self.part(name, None),
        }
    }

    fn item(&self, k: usize) -> Self {
        let items: Vec<&'t RawValue> = serde_json::from_str(self.text).unwrap_or_default();
        self.part(&format!("[{k}]"), items.get(k))
    }

    /// The items of a list in a field, of which there may be so many.
    pub(super) fn items(
        &self,
        name: &str,
        items: &[&'t RawValue],
        most: usize,
    ) -> Result<Vec<Self>, CaseProblem> {
        if items.len() > most {
            let message =
                t!("case-list-items-are-most", count = items.len(), most = most.to_string());
            return Err(self.field(name).problem(CaseFault::TooLarge, message));
        }
        let item = |(k, value)| self.part(&format!("{name}[{k}]"), Some(value));
        Ok(items.iter().enumerate().map(item).collect())
    }

    /// Whether it is an object.
    pub(super) fn is_object(&self) -> bool {
        self.text.starts_with('{')
    }

    /// A problem with the place's path, line and column.
    pub(super) fn problem(&self, fault: CaseFault, message: impl Into<String>) -> CaseProblem {
        // The text is a part of the file's.
        let byte = (self.text.as_ptr() as usize).saturating_sub(self.file.as_ptr() as usize);
        let before = self.file.get(..byte).unwrap_or(self.file);
        let line = before.matches('\n').count() + 1;
        let column = before.rsplit('\n').next().unwrap_or_default().chars().count() + 1;
        CaseProblem { fault, path: self.path.clone(), line, column, message: message.into() }
    }

    /// Reads the value; fields that were read before are `passed` over.
    pub(super) fn read<T: Deserialize<'t>>(&self, passed: &[&str]) -> Result<T, CaseProblem> {
        let result = if self.is_object() {
            let fields: ByName<&'t RawValue> = serde_json::from_str(self.text)
                .map_err(|error| self.problem(CaseFault::Name, words(&error)))?;
            let mut stems = fields.0;
            if let Some((name, _)) = stems.iter().find(|(_, value)| value.get() == "null") {
                let message = t!("case-null-value-field-that");
                return Err(self.field(name).problem(CaseFault::WrongKind, message));
            }
            for k in 0..stems.len() {
                let (before, rest) = stems.split_at_mut(k);
                let Some((name, _)) = rest.first_mut() else { break };
                let stem = split(name).0.to_owned();
                if before.iter().any(|(other, _)| *other == stem) {
                    let message = t!("case-given-twice-different-units", stem = stem);
                    return Err(self.field(name).problem(CaseFault::Contradiction, message));
                }
                *name = stem;
            }
            stems.retain(|(name, _)| !passed.contains(&name.as_str()));
            if let Some(only) = &self.only {
                stems.retain(|(name, _)| only.contains(name));
            }
            serde_path_to_error::deserialize(MapDeserializer::new(stems.into_iter()))
        } else if self.text.starts_with('[') {
            let message = t!("case-no-list");
            return Err(self.problem(CaseFault::WrongKind, message));
        } else {
            serde_path_to_error::deserialize(&mut serde_json::Deserializer::from_str(self.text))
        };
        result.map_err(|error| {
            let place = error.path().iter().fold(self.clone(), |place, step| match step {
                Segment::Map { key } => place.field(key),
                Segment::Seq { index } => place.item(*index),
                Segment::Enum { .. } | Segment::Unknown => place,
            });
            let words = words(error.inner());
            place.problem(fault(&words), words.replace("expected f64", t!("case-expected-number")))
        })
    }

    /// How the names of the object's fields end in a unit.
    pub(super) fn endings(&self) -> BTreeMap<String, &'static str> {
        let fields: BTreeMap<String, &RawValue> =
            serde_json::from_str(self.text).unwrap_or_default();
        let owned = |name: &String| (split(name).0.to_owned(), split(name).1);
        fields.keys().map(owned).collect()
    }

    /// The same object with these fields alone, whatever their endings.
    pub(super) fn only(&self, names: &[&str]) -> Self {
        Self { only: Some(names.iter().map(|name| (*name).to_owned()).collect()), ..self.clone() }
    }

    /// A figure of the field `name`, in SI and in range.
    pub(super) fn si(
        &self,
        (name, ending): (&str, &str),
        figure: &Figure,
        measure: Measure,
        range: RangeInclusive<f64>,
    ) -> Result<f64, CaseProblem> {
        let number = measure
            .si(figure, ending)
            .map_err(|(fault, message)| self.field(name).problem(fault, message))?;
        if range.contains(&number) {
            return Ok(number);
        }
        let (lower, upper) = range.into_inner();
        let message = t!(
            "case-outside-range-from-si",
            number = number.to_string(),
            least = lower.to_string(),
            most = upper.to_string()
        );
        Err(self.field(name).problem(CaseFault::OutOfRange, message))
    }
}

/// What `serde_json` says, without the place in the part that it read.
fn words(error: &serde_json::Error) -> String {
    let words = error.to_string();
    words.split(" at line ").next().unwrap_or_default().to_owned()
}

/// The kind of a problem by the first words that `serde` and `serde_json` give it.
fn fault(words: &str) -> CaseFault {
    let mut words = words.split([' ', ':']);
    match (words.next(), words.next()) {
        (Some("missing"), Some("field")) => CaseFault::Missing,
        (Some("unknown"), Some("field")) => CaseFault::Unknown,
        (Some("invalid"), Some("type")) => CaseFault::WrongKind,
        (Some("number"), Some("out")) => CaseFault::OutOfRange,
        // What is left is about names: not known, given twice, no name at all.
        _ => CaseFault::Name,
    }
}

/// An object's fields: `must` and `may` are figures in SI within their range, `plain` is the rest.
macro_rules! object {
    ($name:ident($setting:ident)
     $(must { $($m:ident: $mm:expr, $mr:expr;)* })?
     $(may { $($o:ident: $om:expr, $or:expr;)* })?
     $(plain { $($(#[$attribute:meta])* $p:ident: $t:ty;)* })?) => {
        struct $name<'t> { $($($m: f64,)*)? $($($o: Option<f64>,)*)? $($($p: $t,)*)? _text: std::marker::PhantomData<&'t ()> }

        impl<'t> $name<'t> {
            fn read(
                place: &Place<'t>,
                $setting: &Setting,
                passed: &[&str],
            ) -> Result<Self, CaseProblem> {
                #[derive(Deserialize)]
                #[serde(deny_unknown_fields)]
                struct Fields<'t> {
                    $($($m: Figure,)*)?
                    $($($o: Option<Figure>,)*)?
                    $($($(#[$attribute])* $p: $t,)*)?
                    #[serde(skip)]
                    _text: std::marker::PhantomData<&'t ()>,
                }
                let _own: Fields<'t> = place.read(passed)?;
                let endings = place.endings();
                let _si = |name: &str, figure: &Figure, measure, range| {
                    let ending = endings.get(name).copied().unwrap_or_default();
                    place.si((name, ending), figure, measure, range)
                };
                Ok(Self {
                    $($($m: _si(stringify!($m), &_own.$m, $mm, $mr)?,)*)?
                    $($($o: match &_own.$o {
                        Some(figure) => Some(_si(stringify!($o), figure, $om, $or)?),
                        None => None,
                    },)*)?
                    $($($p: _own.$p,)*)?
                    _text: std::marker::PhantomData,
                })
            }
        }
    };
}
pub(super) use object;

/// A name: 1 to 60 bytes, no space at its ends, no control character.
pub(super) struct Name(pub String);

impl<'de> Deserialize<'de> for Name {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let name = String::deserialize(deserializer)?;
        let good = (1..=60).contains(&name.len()) && name.trim() == name;
        if good && !name.chars().any(char::is_control) {
            return Ok(Self(name));
        }
        let wanted = t!("case-name-1-60-bytes");
        Err(D::Error::invalid_value(Unexpected::Str(&name), &wanted))
    }
}

/// An object by name, in the order of the file; no name stands twice.
pub(super) struct ByName<V>(pub Vec<(String, V)>);

impl<V> Default for ByName<V> {
    fn default() -> Self {
        Self(Vec::new())
    }
}

impl<'de, V: Deserialize<'de>> Deserialize<'de> for ByName<V> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(Names(PhantomData))
    }
}

struct Names<V>(PhantomData<V>);

impl<'de, V: Deserialize<'de>> Visitor<'de> for Names<V> {
    type Value = ByName<V>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(t!("case-expected-object"))
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut entries: Vec<(String, V)> = Vec::new();
        while let Some((name, value)) = map.next_entry::<String, V>()? {
            if entries.iter().any(|(other, _)| *other == name) {
                return Err(A::Error::custom(t!("case-given-twice", name = name)));
            }
            entries.push((name, value));
        }
        Ok(ByName(entries))
    }
}

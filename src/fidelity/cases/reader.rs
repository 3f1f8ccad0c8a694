//! Walking over the fields of a file of cases: kinds, ranges, units, names not known.

use super::json::{Data, Value};
use super::problem::{CaseFault, CaseProblem};
use crate::units::{Flow, Length, Pressure, Temperature, TimeSpan, Volume};

/// What a number measures; decides by which names and units it may be given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Measure {
    /// Gauge pressure: `…_pa`, or text.
    Pressure,
    /// Length: `…_m`, `…_mm`, or text.
    Length,
    /// Effective area: `…_m2`, `…_mm2`.
    Area,
    /// Volume: `…_m3`, or text.
    Volume,
    /// Standard flow: `…_m3_s`, `…_kg_s` with this density (kg/m³), or text.
    Flow(f64),
    /// Temperature: `…_k`, or text.
    Temperature,
    /// Time: `…_s`, or text.
    Time,
}

impl Measure {
    fn endings(self) -> Vec<(&'static str, f64)> {
        match self {
            Self::Pressure => vec![("_pa", 1.0)],
            Self::Length => vec![("_m", 1.0), ("_mm", 1e-3)],
            Self::Area => vec![("_m2", 1.0), ("_mm2", 1e-6)],
            Self::Volume => vec![("_m3", 1.0)],
            Self::Flow(density) => vec![("_m3_s", 1.0), ("_kg_s", 1.0 / density)],
            Self::Temperature => vec![("_k", 1.0)],
            Self::Time => vec![("_s", 1.0)],
        }
    }

    fn parse(self, text: &str) -> Result<f64, String> {
        let message = |error: crate::units::QuantityError| error.message;
        match self {
            Self::Pressure => text.parse::<Pressure>().map(|x| x.0).map_err(message),
            Self::Length => text.parse::<Length>().map(|x| x.0).map_err(message),
            Self::Area => Err("an area is given as a number, in `…_m2` or `…_mm2`".to_owned()),
            Self::Volume => text.parse::<Volume>().map(|x| x.0).map_err(message),
            Self::Flow(_) => text.parse::<Flow>().map(|x| x.0).map_err(message),
            Self::Temperature => text.parse::<Temperature>().map(|x| x.0).map_err(message),
            Self::Time => text.parse::<TimeSpan>().map(|x| x.0).map_err(message),
        }
    }
}

/// A value with its path.
#[derive(Debug, Clone)]
pub(super) struct Spot<'t> {
    pub text: &'t str,
    pub path: String,
    pub value: &'t Value<'t>,
}

impl<'t> Spot<'t> {
    /// A problem here.
    pub(super) fn problem(&self, fault: CaseFault, message: impl Into<String>) -> CaseProblem {
        CaseProblem::at(fault, self.text, self.value.at, &self.path, message)
    }

    fn wrong(&self, wanted: &str) -> CaseProblem {
        let found = match self.value.data {
            Data::Null => "null",
            Data::Bool => "true or false",
            Data::Number(_) => "a number",
            Data::Text(_) => "a text",
            Data::List(_) => "a list",
            Data::Map(_) => "an object",
        };
        self.problem(CaseFault::WrongKind, format!("{wanted} is wanted here, {found} was found"))
    }

    /// A finite number within `low..=high`.
    pub(super) fn number(&self, low: f64, high: f64) -> Result<f64, CaseProblem> {
        let Data::Number(number) = self.value.data else { return Err(self.wrong("a number")) };
        self.within(number, low, high)
    }

    pub(super) fn within(&self, number: f64, low: f64, high: f64) -> Result<f64, CaseProblem> {
        if number.is_finite() && low <= number && number <= high {
            return Ok(number);
        }
        let message = format!("{number} is outside the range from {low} to {high} (SI)");
        Err(self.problem(CaseFault::OutOfRange, message))
    }

    /// A whole number within `0..=high`.
    pub(super) fn whole(&self, high: u32) -> Result<u32, CaseProblem> {
        let number = self.number(0.0, f64::from(high))?;
        if number.fract() == 0.0 {
            // Checked to lie within the range above.
            return Ok(number as u32);
        }
        Err(self.problem(CaseFault::OutOfRange, format!("{number} is not a whole number")))
    }

    /// A text of at most `most` bytes.
    pub(super) fn text_up_to(&self, most: usize) -> Result<&'t str, CaseProblem> {
        let Data::Text(text) = &self.value.data else { return Err(self.wrong("a text")) };
        if text.len() > most {
            let message = format!("the text has more than {most} bytes");
            return Err(self.problem(CaseFault::TooLarge, message));
        }
        Ok(text)
    }

    /// A name: 1 to 60 bytes, no space at its ends, no control character.
    pub(super) fn name(&self) -> Result<&'t str, CaseProblem> {
        let name = self.text_up_to(60)?;
        if name.is_empty() || name.trim() != name || name.chars().any(char::is_control) {
            let message = "a name has 1 to 60 bytes, no space at its ends, no control character";
            return Err(self.problem(CaseFault::Name, message));
        }
        Ok(name)
    }

    /// One of some words, by its place among them.
    pub(super) fn word(&self, words: &[&str]) -> Result<usize, CaseProblem> {
        let text = self.text_up_to(200)?;
        words.iter().position(|word| *word == text).ok_or_else(|| {
            let message = format!("`{text}` is none of {}", words.join(", "));
            self.problem(CaseFault::Name, message)
        })
    }

    /// The items of a list of at most `most`.
    pub(super) fn list(&self, most: usize) -> Result<Vec<Spot<'t>>, CaseProblem> {
        let Data::List(items) = &self.value.data else { return Err(self.wrong("a list")) };
        if items.len() > most {
            let message = format!("the list has {} items; {most} are the most", items.len());
            return Err(self.problem(CaseFault::TooLarge, message));
        }
        let spot =
            |(k, value)| Spot { text: self.text, path: format!("{}[{k}]", self.path), value };
        Ok(items.iter().enumerate().map(spot).collect())
    }

    /// The fields of an object.
    pub(super) fn map(&self) -> Result<Fields<'t>, CaseProblem> {
        let Data::Map(entries) = &self.value.data else { return Err(self.wrong("an object")) };
        let mut names: Vec<(&str, usize)> =
            entries.iter().map(|(name, at, _)| (&**name, *at)).collect();
        names.sort_unstable();
        if let Some(pair) = names.windows(2).find(|pair| pair[0].0 == pair[1].0) {
            let message = format!("`{}` stands here twice", pair[1].0);
            return Err(CaseProblem::at(
                CaseFault::Name,
                self.text,
                pair[1].1,
                &self.path,
                message,
            ));
        }
        Ok(Fields { spot: self.clone(), asked: Vec::new() })
    }
}

/// The fields of one object; remembers which were asked for.
#[derive(Debug)]
pub(super) struct Fields<'t> {
    pub spot: Spot<'t>,
    asked: Vec<String>,
}

impl<'t> Fields<'t> {
    fn entries(&self) -> &'t [(std::borrow::Cow<'t, str>, usize, Value<'t>)] {
        match &self.spot.value.data {
            Data::Map(entries) => entries,
            Data::Null | Data::Bool | Data::Number(_) | Data::Text(_) | Data::List(_) => &[],
        }
    }

    fn child(&self, name: &str, value: &'t Value<'t>) -> Spot<'t> {
        let dot = if self.spot.path.is_empty() { "" } else { "." };
        Spot { text: self.spot.text, path: format!("{}{dot}{name}", self.spot.path), value }
    }

    /// A field that may be left out.
    pub(super) fn opt(&mut self, name: &str) -> Option<Spot<'t>> {
        self.asked.push(name.to_owned());
        let (_, _, value) = self.entries().iter().find(|(own, _, _)| own == name)?;
        Some(self.child(name, value))
    }

    /// A field that must be there.
    pub(super) fn need(&mut self, name: &str) -> Result<Spot<'t>, CaseProblem> {
        self.opt(name).ok_or_else(|| self.missing(name))
    }

    pub(super) fn missing(&self, name: &str) -> CaseProblem {
        self.spot.problem(CaseFault::Missing, format!("`{name}` is missing"))
    }

    /// A measured number in SI: `name` as a text with a unit, or `name` with a unit's ending as a
    /// bare number; within `low..=high`.
    pub(super) fn opt_measured(
        &mut self,
        name: &str,
        measure: Measure,
        low: f64,
        high: f64,
    ) -> Result<Option<f64>, CaseProblem> {
        let mut found: Option<f64> = None;
        let mut take = |spot: &Spot<'t>, number: f64| {
            let number = spot.within(number, low, high)?;
            if found.replace(number).is_some() {
                let message = format!("`{name}` is given twice in different units");
                return Err(spot.problem(CaseFault::Contradiction, message));
            }
            Ok(())
        };
        if let Some(spot) = self.opt(name) {
            let Data::Text(text) = &spot.value.data else {
                let ending = measure.endings()[0].0;
                return Err(spot.wrong(&format!(
                    "a text with a unit (a bare number goes under `{name}{ending}`)"
                )));
            };
            let number = measure
                .parse(text)
                .map_err(|message| spot.problem(CaseFault::OutOfRange, message))?;
            take(&spot, number)?;
        }
        for (ending, factor) in measure.endings() {
            if let Some(spot) = self.opt(&format!("{name}{ending}")) {
                let number = spot.number(f64::MIN, f64::MAX)?;
                take(&spot, number * factor)?;
            }
        }
        Ok(found)
    }

    /// The same, and it must be there.
    pub(super) fn measured(
        &mut self,
        name: &str,
        measure: Measure,
        low: f64,
        high: f64,
    ) -> Result<f64, CaseProblem> {
        self.opt_measured(name, measure, low, high)?
            .ok_or_else(|| self.missing(&format!("{name}{}", measure.endings()[0].0)))
    }

    /// Every entry as name and value, for an object whose names are somebody else's.
    pub(super) fn all(&self) -> Vec<(&'t str, Spot<'t>)> {
        self.entries().iter().map(|(name, _, value)| (&**name, self.child(name, value))).collect()
    }

    /// Measured numbers by somebody else's names: `{name}_pa: {"a": 870}` or
    /// `{name}: {"a": "3.5 inH2O"}`.
    pub(super) fn measured_map(
        &mut self,
        name: &str,
        measure: Measure,
        high: f64,
    ) -> Result<Vec<(&'t str, Spot<'t>, f64)>, CaseProblem> {
        let mut found = Vec::new();
        if let Some(spot) = self.opt(name) {
            for (key, spot) in spot.map()?.all() {
                let number = measure
                    .parse(spot.text_up_to(60)?)
                    .map_err(|message| spot.problem(CaseFault::OutOfRange, message))?;
                found.push((key, spot.clone(), spot.within(number, -high, high)?));
            }
        }
        for (ending, factor) in measure.endings() {
            if let Some(spot) = self.opt(&format!("{name}{ending}")) {
                for (key, spot) in spot.map()?.all() {
                    let number = spot.number(f64::MIN, f64::MAX)? * factor;
                    found.push((key, spot.clone(), spot.within(number, -high, high)?));
                }
            }
        }
        Ok(found)
    }

    /// A text that may be left out.
    pub(super) fn opt_text(&mut self, name: &str) -> Result<Option<String>, CaseProblem> {
        self.opt(name).map(|spot| spot.text_up_to(2_000).map(str::to_owned)).transpose()
    }

    /// No field may be left that nobody asked for.
    pub(super) fn finish(&self) -> Result<(), CaseProblem> {
        let strange =
            self.entries().iter().find(|(name, _, _)| !self.asked.iter().any(|own| own == name));
        let Some((name, at, _)) = strange else { return Ok(()) };
        let near = self
            .asked
            .iter()
            .map(|own| (strsim::damerau_levenshtein(own, name), own))
            .min()
            .filter(|(distance, _)| *distance <= 3);
        let hint = near.map_or_else(
            || format!("known are {}", self.asked.join(", ")),
            |(_, own)| format!("did you mean `{own}`?"),
        );
        let message = format!("`{name}` is no field here; {hint}");
        let path = self.child(name, self.spot.value).path;
        Err(CaseProblem::at(CaseFault::Unknown, self.spot.text, *at, &path, message))
    }
}

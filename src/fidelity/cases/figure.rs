//! Figures with their units: `"length": "50 ft"` and `"length_m": 15.24` are one field.

use serde::Deserialize;

use super::problem::CaseFault;
use crate::units::{Flow, Length, Pressure, Temperature, TimeSpan, Volume};

/// A figure as it is given.
#[derive(Debug, Deserialize)]
#[serde(untagged, expecting = "invalid type: a number is needed, or a text with a unit")]
pub(super) enum Figure {
    Number(f64),
    Text(String),
}

/// What a figure measures; decides the units in which it may be given.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) enum Measure {
    /// A number without a unit, or with its only one in the field's own name.
    Plain,
    /// A whole number without a unit.
    Count,
    /// Gauge pressure, or that of the ambient air.
    Pressure,
    Length,
    /// Area times discharge coefficient.
    Area,
    Volume,
    /// Standard flow of a gas of this density, in kg/m³.
    Flow(f64),
    Temperature,
    Time,
}

/// Endings of names with a bare number, longer ones before their own ends.
const ENDINGS: [&str; 10] =
    ["_m3_s", "_kg_s", "_m3", "_mm2", "_m2", "_mm", "_m", "_pa", "_k", "_s"];
/// Names of fields that end so by themselves.
const WHOLE: [&str; 5] =
    ["viscosity_pa_s", "spring_n_m", "pressures_pa", "flows_m3_s", "flows_kg_s"];

/// A field's name and its ending.
pub(super) fn split(name: &str) -> (&str, &'static str) {
    let ending = ENDINGS.into_iter().filter(|_| !WHOLE.contains(&name));
    let mut stems = ending.filter_map(|ending| Some((name.strip_suffix(ending)?, ending)));
    stems.next().unwrap_or((name, ""))
}

impl Measure {
    /// SI units in one of an ending's.
    fn factor(self, ending: &str) -> Option<f64> {
        let units: &[(&str, f64)] = match self {
            Self::Plain | Self::Count => &[("", 1.0)],
            Self::Pressure => &[("_pa", 1.0)],
            Self::Length => &[("_m", 1.0), ("_mm", 1e-3)],
            Self::Area => &[("_m2", 1.0), ("_mm2", 1e-6)],
            Self::Volume => &[("_m3", 1.0)],
            Self::Flow(density) => &[("_m3_s", 1.0), ("_kg_s", 1.0 / density)],
            Self::Temperature => &[("_k", 1.0)],
            Self::Time => &[("_s", 1.0)],
        };
        units.iter().find(|(own, _)| *own == ending).map(|(_, factor)| *factor)
    }

    /// A figure under a name with this ending, in SI.
    pub(super) fn si(self, figure: &Figure, ending: &str) -> Result<f64, (CaseFault, String)> {
        let wrong = |message: &str| Err((CaseFault::WrongKind, message.to_owned()));
        match (figure, self.factor(ending)) {
            (Figure::Number(number), Some(_)) if self == Self::Count && number.fract() != 0.0 => {
                Err((
                    CaseFault::OutOfRange,
                    t!("case-not-whole-number", number = number.to_string()),
                ))
            }
            (Figure::Number(number), Some(factor)) => Ok(number * factor),
            (Figure::Text(_), Some(_)) => wrong(t!("case-number-needed-here-text")),
            (Figure::Text(text), None) if ending.is_empty() => {
                self.parse(text).map_err(|message| (CaseFault::OutOfRange, message))
            }
            (Figure::Number(_), None) if ending.is_empty() => {
                wrong(t!("case-text-unit-needed-here"))
            }
            (Figure::Number(_) | Figure::Text(_), None) => {
                Err((CaseFault::Unknown, t!("case-unknown-field-unit-this", ending = ending)))
            }
        }
    }

    /// A text with a unit, in SI.
    pub(super) fn parse(self, text: &str) -> Result<f64, String> {
        let read = match self {
            Self::Pressure => text.parse::<Pressure>().map(|x| x.0),
            Self::Length => text.parse::<Length>().map(|x| x.0),
            Self::Volume => text.parse::<Volume>().map(|x| x.0),
            Self::Flow(_) => text.parse::<Flow>().map(|x| x.0),
            Self::Temperature => text.parse::<Temperature>().map(|x| x.0),
            Self::Time => text.parse::<TimeSpan>().map(|x| x.0),
            Self::Area => return Err(t!("case-area-given-m2-mm2").to_owned()),
            Self::Plain | Self::Count => return Err(t!("case-number-needed-here").to_owned()),
        };
        read.map_err(|error| error.message)
    }
}

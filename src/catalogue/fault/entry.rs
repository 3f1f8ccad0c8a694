//! What the catalogue says of a fault.

use serde::Deserialize;

use super::fits::Fits;
use super::remedy::{Remedy, Wrong};
use crate::appliance::plate::Fuel;
use crate::setup::Setup;
use crate::units::{
    Flow, HeatingValue, Length, PA_PER_INWC, Pressure, Temperature, TimeSpan, Volume,
};

/// An entry of the catalogue.
#[derive(Debug)]
pub struct Entry {
    /// Running number in the catalogue of trade faults, 1 to 70; several entries may share one.
    /// 0 stands for a fault beside that catalogue.
    pub number: u8,
    /// Its name, in plain words joined by underscores.
    pub name: &'static str,
    /// The part of the job that it belongs to.
    pub family: Family,
    /// What its severity is.
    pub severity: Severity,
    /// What changed, and why, in a sentence.
    pub cause: &'static str,
    /// What helps: each by itself, or, where it is not enough, in this order.
    pub right: &'static [Remedy],
    /// What tempts and harms.
    pub wrong: &'static [Wrong],
    /// What a bench must have so that it can be put in.
    pub fits: Fits,
}

impl Entry {
    /// What stands for every entry where the table cannot be read; the command line tells why
    /// before it runs anything.
    pub(crate) const UNREAD: Self = Self {
        number: 0,
        name: "",
        family: Family::Supply,
        severity: Severity::PLAIN,
        cause: "",
        right: &[],
        wrong: &[],
        fits: Fits::Anywhere,
    };
}

/// What a fault changes in a setup, as severe as a number in SI says.
pub(crate) type Edit = fn(&mut Setup, f64);

/// A family of faults.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Deserialize)]
pub enum Family {
    /// From tank or main to the inlet port.
    Supply,
    /// Gas valve, staging and conversion.
    Valve,
    /// Burners, air and altitude.
    Burner,
    /// Control, safety devices and house air.
    Control,
    /// Manometer, ports and leaks.
    Measuring,
}

impl Family {
    /// All of them, in the order of the page of faults.
    pub const ALL: [Self; 5] =
        [Self::Supply, Self::Valve, Self::Burner, Self::Control, Self::Measuring];

    /// Its name for people.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Supply => t!("fault-family-supply"),
            Self::Valve => t!("fault-family-valve"),
            Self::Burner => t!("fault-family-burner"),
            Self::Control => t!("fault-family-control"),
            Self::Measuring => t!("fault-family-measuring"),
        }
    }
}

/// What a severity is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Deserialize)]
pub enum Scale {
    /// The fault is there or not.
    Plain,
    /// A share of the whole, 0–1.
    Share,
    /// A pressure; in pascals where it is a number.
    Pressure,
    /// A gas flow; in standard m³/s.
    Flow,
    /// A diameter; in metres.
    Diameter,
    /// A height above the sea; in metres.
    Height,
    /// A temperature; in kelvins.
    Temperature,
    /// A time; in seconds.
    Time,
    /// A volume; in m³.
    Volume,
    /// A heating value; in J per standard m³.
    HeatingValue,
    /// Degrees of an angle.
    Angle,
    /// Turns of a thread.
    Turns,
}

/// Range of a severity, as an author would write it.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Severity {
    /// What it is measured in.
    pub scale: Scale,
    /// What is measured, after the word of the scale: `of the hole`.
    pub what: &'static str,
    /// The lowest value that an author may write.
    pub least: &'static str,
    /// The highest value that an author may write.
    pub most: &'static str,
    /// What it is unless written: on natural gas, and on propane.
    pub typical: [&'static str; 2],
    /// The lowest and the highest value, in SI.
    range: (f64, f64),
    /// What it is unless written, in SI: on natural gas, and on propane.
    usual: [f64; 2],
}

impl Severity {
    /// A fault that is there or not.
    pub const PLAIN: Self = Self {
        scale: Scale::Plain,
        what: "",
        least: "",
        most: "",
        typical: ["", ""],
        range: (1.0, 1.0),
        usual: [1.0, 1.0],
    };

    /// A severity by its texts.
    ///
    /// # Errors
    /// A text that is no value on this scale, a range that runs backwards, a typical value outside
    /// the range.
    pub(crate) fn read(
        scale: Scale,
        what: &'static str,
        (least, most): (&'static str, &'static str),
        typical: [&'static str; 2],
    ) -> Result<Self, String> {
        let texts = Self { scale, what, least, most, typical, ..Self::PLAIN };
        let range = (texts.parse(least)?, texts.parse(most)?);
        if range.0 >= range.1 {
            return Err(t!("severity-no-range", least = least, most = most));
        }
        let [natural, propane] = typical;
        let usual = [texts.parse(natural)?, texts.parse(propane)?];
        for (text, value) in typical.iter().zip(usual) {
            if !(range.0..=range.1).contains(&value) {
                return Err(t!("severity-outside", text = *text, least = least, most = most));
            }
        }
        Ok(Self { range, usual, ..texts })
    }

    /// Reads a value of this severity, in SI; a plain fault has the value 1.
    ///
    /// # Errors
    /// What is wrong with the text, for its author.
    pub fn parse(&self, text: &str) -> Result<f64, String> {
        fn quantity<Q>(text: &str, si: fn(Q) -> f64) -> Result<f64, String>
        where
            Q: core::str::FromStr<Err = crate::units::QuantityError>,
        {
            text.parse::<Q>().map(si).map_err(|error| error.message)
        }
        match self.scale {
            Scale::Plain => Ok(1.0),
            Scale::Share | Scale::Angle | Scale::Turns => text
                .trim()
                .parse::<f64>()
                .ok()
                .filter(|value| value.is_finite())
                .ok_or_else(|| t!("severity-no-number", text = text)),
            Scale::Pressure => quantity(text, Pressure::si),
            Scale::Flow => quantity(text, Flow::si),
            Scale::Diameter | Scale::Height => quantity(text, Length::si),
            Scale::Temperature => quantity(text, Temperature::si),
            Scale::Time => quantity(text, TimeSpan::si),
            Scale::Volume => quantity(text, Volume::si),
            Scale::HeatingValue => quantity(text, HeatingValue::si),
        }
    }

    /// What is measured, in words: `share of the filter blocked`.
    #[must_use]
    pub fn words(&self) -> String {
        let what = self.what;
        match self.scale {
            Scale::Plain | Scale::Angle | Scale::Turns => what.to_owned(),
            Scale::Share => t!("severity-share", what = what),
            Scale::Temperature => t!("severity-temperature", what = what),
            Scale::Time => t!("severity-time", what = what),
            Scale::HeatingValue => t!("severity-heating-value", what = what),
            Scale::Diameter => t!("severity-diameter", what = what),
            Scale::Height => t!("severity-height", what = what),
            Scale::Volume => t!("severity-volume", what = what),
            Scale::Flow => t!("severity-flow", what = what),
            Scale::Pressure => t!("severity-pressure", what = what),
        }
    }

    /// Whether an author writes it as a bare number.
    #[must_use]
    pub fn is_bare(&self) -> bool {
        matches!(self.scale, Scale::Share | Scale::Angle | Scale::Turns)
    }

    /// Lowest and highest value, in SI.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        self.range
    }

    /// The value that is taken unless another is written, in SI.
    #[must_use]
    pub fn typical(&self, fuel: Fuel) -> f64 {
        let [natural, propane] = self.usual;
        match fuel {
            Fuel::Natural => natural,
            Fuel::Propane => propane,
        }
    }

    /// A value kept within the range.
    #[must_use]
    pub fn within(&self, value: f64) -> f64 {
        let (least, most) = self.range;
        if value.is_finite() { value.clamp(least, most) } else { least }
    }

    /// A value as an author would write it.
    #[must_use]
    pub fn show(&self, value: f64) -> String {
        let trade = match self.scale {
            Scale::Plain => return String::new(),
            Scale::Share | Scale::Angle | Scale::Turns => return rounded(value).to_string(),
            Scale::Pressure => (value / PA_PER_INWC, "inH2O"),
            Scale::Flow => (value / crate::units::M3_S_PER_CFH, "ft3/h"),
            Scale::Diameter => (value * 1e3, "mm"),
            Scale::Height => (value / crate::units::M_PER_FT, "ft"),
            Scale::Temperature => (crate::units::f_from_k(value), "degF"),
            Scale::Time => (value, "s"),
            Scale::Volume => (value * 1e3, "L"),
            Scale::HeatingValue => (value / crate::units::J_M3_PER_BTU_FT3, "Btu/ft3"),
        };
        format!("{} {}", rounded(trade.0), trade.1)
    }
}

/// Four digits behind the point at most, without binary dust.
fn rounded(value: f64) -> f64 {
    (value * 1e4).round() / 1e4 + 0.0
}

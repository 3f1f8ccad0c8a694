//! What the catalogue says of a fault.

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
    /// Its family.
    pub family: Family,
    /// What its severity is.
    pub severity: Severity,
    /// What changed, and why, in a sentence.
    pub cause: &'static str,
    /// What helps: each by itself, or, where it is not enough, in this order.
    pub right: &'static [Remedy],
    /// What tempts and harms.
    pub wrong: &'static [Wrong],
    /// Why it cannot be put into a setup, if it cannot.
    pub misfit: fn(&Setup) -> Option<&'static str>,
    /// Changes the setup.
    pub apply: fn(&mut Setup, f64),
}

/// A family of faults.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord)]
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
    /// All of them.
    pub const ALL: [Self; 5] =
        [Self::Supply, Self::Valve, Self::Burner, Self::Control, Self::Measuring];

    /// Its name for people.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Supply => "supply",
            Self::Valve => "valve and conversion",
            Self::Burner => "burner, air and altitude",
            Self::Control => "control",
            Self::Measuring => "measuring chain and leaks",
        }
    }
}

/// What a severity is measured in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash)]
pub enum Scale {
    /// The fault is there or not.
    Plain,
    /// A share, 0–1.
    Share,
    /// A pressure.
    Pressure,
    /// A gas flow.
    Flow,
    /// A diameter.
    Diameter,
    /// A height above the sea.
    Height,
    /// A temperature.
    Temperature,
    /// A time.
    Time,
    /// A volume.
    Volume,
    /// A heating value.
    HeatingValue,
    /// Degrees of an angle.
    Angle,
    /// Turns of a thread.
    Turns,
}

/// Range of a severity, as an author would write it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Severity {
    /// What it is measured in.
    pub scale: Scale,
    /// What is measured.
    pub what: &'static str,
    /// Lowest value.
    pub low: &'static str,
    /// Highest value.
    pub high: &'static str,
    /// What it is unless written: on natural gas, and on propane.
    pub typical: [&'static str; 2],
}

impl Severity {
    /// A fault that is there or not.
    pub const PLAIN: Self =
        Self { scale: Scale::Plain, what: "", low: "", high: "", typical: ["", ""] };

    /// A severity with the same typical value on both fuels.
    #[must_use]
    pub const fn new(
        scale: Scale,
        what: &'static str,
        (low, high): (&'static str, &'static str),
        typical: &'static str,
    ) -> Self {
        Self { scale, what, low, high, typical: [typical, typical] }
    }

    /// The same with another typical value on propane.
    #[must_use]
    pub const fn on_propane(self, typical: &'static str) -> Self {
        Self { typical: [self.typical[0], typical], ..self }
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
                .ok_or_else(|| format!("`{text}` is not a plain number")),
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
        let quantity = match self.scale {
            Scale::Plain | Scale::Angle | Scale::Turns => return self.what.to_owned(),
            Scale::Share => "share",
            Scale::Temperature => "temperature",
            Scale::Time => "time",
            Scale::HeatingValue => "heating value",
            Scale::Diameter => "diameter",
            Scale::Height => "height",
            Scale::Volume => "volume",
            Scale::Flow => "flow",
            Scale::Pressure => "pressure",
        };
        format!("{quantity} {}", self.what)
    }

    /// Whether an author writes it as a bare number.
    #[must_use]
    pub fn is_bare(&self) -> bool {
        matches!(self.scale, Scale::Share | Scale::Angle | Scale::Turns)
    }

    /// Lowest and highest value, in SI.
    #[must_use]
    pub fn range(&self) -> (f64, f64) {
        // The catalogue's own texts; a test reads every one.
        (self.parse(self.low).unwrap_or(0.0), self.parse(self.high).unwrap_or(0.0))
    }

    /// The value that is taken unless another is written, in SI.
    #[must_use]
    pub fn typical(&self, fuel: Fuel) -> f64 {
        let text = match fuel {
            Fuel::Natural => self.typical[0],
            Fuel::Propane => self.typical[1],
        };
        self.parse(text).unwrap_or(0.0)
    }

    /// A value kept within the range.
    #[must_use]
    pub fn within(&self, value: f64) -> f64 {
        let (low, high) = self.range();
        if value.is_finite() { value.clamp(low.min(high), high.max(low)) } else { low }
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

/// Fits everywhere.
pub(crate) fn anywhere(_: &Setup) -> Option<&'static str> {
    None
}

/// Fits a propane supply from a tank.
pub(crate) fn tank(setup: &Setup) -> Option<&'static str> {
    match setup.supply.kind {
        crate::setup::SupplyKind::Tank { .. } => None,
        crate::setup::SupplyKind::Meter { .. } => Some("there is no tank on this job"),
    }
}

/// Fits a natural-gas supply through a meter.
pub(crate) fn meter(setup: &Setup) -> Option<&'static str> {
    match setup.supply.kind {
        crate::setup::SupplyKind::Meter { .. } => None,
        crate::setup::SupplyKind::Tank { .. } => Some("there is no gas main on this job"),
    }
}

//! Quantities as authors write them: a number and a unit in one string.

use serde::{Deserialize, Deserializer, Serialize, Serializer};

use crate::words::Id;

use super::{
    J_M3_PER_BTU_FT3, M_PER_FT, M_PER_IN, M3_PER_FT3, M3_S_PER_CFH, PA_PER_INWC, PA_PER_PSI,
    W_PER_BTU_H, f_from_k, k_from_f,
};

/// Why a quantity could not be read.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct QuantityError {
    /// What is wrong, in words for the author, with the units that would do.
    pub message: String,
}

impl core::fmt::Display for QuantityError {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        f.write_str(&self.message)
    }
}

impl core::error::Error for QuantityError {}

/// What an error says of a kind of quantity.
struct Kind {
    /// The id of its name.
    name: Id,
    /// Texts with its usual units.
    examples: &'static [&'static str],
}

impl Kind {
    fn name(&self) -> &'static str {
        self.name.text()
    }

    /// The examples in quotes, in a row.
    fn examples(&self) -> String {
        let quoted: Vec<String> =
            self.examples.iter().map(|example| format!("\"{example}\"")).collect();
        quoted.join(", ")
    }
}

/// Splits `"3.5 inH2O"` into its number and its unit.
fn split<'t>(text: &'t str, kind: &Kind) -> Result<(f64, &'t str), QuantityError> {
    let text = text.trim();
    let cut = text
        .char_indices()
        .find(|&(i, c)| {
            let exponent = (c == 'e' || c == 'E')
                && text[i + 1..].starts_with(|n: char| n.is_ascii_digit() || n == '-' || n == '+');
            !(c.is_ascii_digit() || matches!(c, '.' | '-' | '+') || exponent)
        })
        .map_or(text.len(), |(i, _)| i);
    let (number, unit) = text.split_at(cut);
    let unit = unit.trim();
    let wrong = |message| QuantityError { message };
    let (what, examples) = (kind.name(), || kind.examples());
    let value: f64 = number.parse().map_err(|_| {
        wrong(t!("quantity-not-read", text = text, what = what, examples = examples()))
    })?;
    if !value.is_finite() {
        return Err(wrong(t!("quantity-not-finite", text = text, what = what)));
    }
    if unit.is_empty() {
        return Err(wrong(t!("quantity-no-unit", text = text, what = what, examples = examples())));
    }
    Ok((value, unit))
}

macro_rules! quantity {
    ($(#[$doc:meta])* $name:ident, $what:expr, $examples:expr,
     $( $unit:literal => ($to:expr) ),+ ; $show:literal => $from:expr) => {
        $(#[$doc])*
        #[derive(Debug, Clone, Copy, PartialEq, PartialOrd, Default)]
        pub struct $name(pub f64);

        impl $name {
            const KIND: Kind = Kind { name: $what, examples: &$examples };

            /// The value in SI.
            #[must_use]
            pub fn si(self) -> f64 {
                self.0
            }
        }

        impl core::str::FromStr for $name {
            type Err = QuantityError;

            fn from_str(text: &str) -> Result<Self, QuantityError> {
                let (value, unit) = split(text, &Self::KIND)?;
                let convert: fn(f64) -> f64 = match unit {
                    $( $unit => $to, )+
                    other => {
                        let message = t!(
                            "quantity-other-unit",
                            unit = other,
                            what = Self::KIND.name(),
                            examples = Self::KIND.examples()
                        );
                        return Err(QuantityError { message });
                    }
                };
                Ok(Self(convert(value)))
            }
        }

        impl core::fmt::Display for $name {
            fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
                let from: fn(f64) -> f64 = $from;
                // Ten significant digits lose nothing an author wrote and hide binary dust.
                let shown = from(self.0);
                let shown: f64 = format!("{shown:.9e}").parse().unwrap_or(shown);
                write!(f, "{shown} {}", $show)
            }
        }

        impl Serialize for $name {
            fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
                serializer.collect_str(self)
            }
        }

        impl<'de> Deserialize<'de> for $name {
            fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
                struct Text;
                impl serde::de::Visitor<'_> for Text {
                    type Value = $name;
                    fn expecting(
                        &self,
                        f: &mut core::fmt::Formatter<'_>,
                    ) -> core::fmt::Result {
                        let kind = &$name::KIND;
                        f.write_str(&t!(
                            "quantity-expected",
                            what = kind.name(),
                            examples = kind.examples()
                        ))
                    }
                    fn visit_str<E: serde::de::Error>(self, text: &str) -> Result<$name, E> {
                        text.parse().map_err(E::custom)
                    }
                }
                deserializer.deserialize_str(Text)
            }
        }
    };
}

quantity!(
    /// A gauge pressure or a pressure difference, in pascals.
    Pressure, id!("kind-pressure"),
    ["3.5 inH2O", "0.87 kPa", "8.7 mbar", "10 psi", "870 Pa"],
    "inH2O" => (|v| v * PA_PER_INWC), "kPa" => (|v| v * 1e3), "mbar" => (|v| v * 1e2),
    "psi" => (|v| v * PA_PER_PSI), "Pa" => (|v| v);
    "inH2O" => |pa| pa / PA_PER_INWC
);
quantity!(
    /// A gas flow, in standard cubic metres per second.
    Flow, id!("kind-flow"),
    ["80 ft3/h", "2.2 m3/h"],
    "ft3/h" => (|v| v * M3_S_PER_CFH), "m3/h" => (|v| v / 3600.0);
    "ft3/h" => |v| v / M3_S_PER_CFH
);
quantity!(
    /// A rate of heat, in watts (gross heating value where it is an input).
    HeatRate, id!("kind-heat-rate"),
    ["80000 Btu/h", "23.4 kW"],
    "Btu/h" => (|v| v * W_PER_BTU_H), "kW" => (|v| v * 1e3), "W" => (|v| v);
    "Btu/h" => |w| w / W_PER_BTU_H
);
quantity!(
    /// A gross heating value, in joules per standard cubic metre.
    HeatingValue, id!("kind-heating-value"),
    ["1030 Btu/ft3", "38.4 MJ/m3"],
    "Btu/ft3" => (|v| v * J_M3_PER_BTU_FT3), "MJ/m3" => (|v| v * 1e6);
    "Btu/ft3" => |v| v / J_M3_PER_BTU_FT3
);
quantity!(
    /// A length, in metres.
    Length, id!("kind-length"),
    ["40 ft", "0.75 in", "1.2 m", "12 mm"],
    "ft" => (|v| v * M_PER_FT), "in" => (|v| v * M_PER_IN), "m" => (|v| v), "mm" => (|v| v * 1e-3);
    "ft" => |v| v / M_PER_FT
);
quantity!(
    /// A volume, in cubic metres.
    Volume, id!("kind-volume"),
    ["2 ft3", "0.5 L", "1.1 m3", "250 gal"],
    "ft3" => (|v| v * M3_PER_FT3), "L" => (|v| v * 1e-3), "m3" => (|v| v),
    "gal" => (|v| v * 3.785_411_784e-3);
    "ft3" => |v| v / M3_PER_FT3
);
quantity!(
    /// A temperature, in kelvins.
    Temperature, id!("kind-temperature"),
    ["70 degF", "21 degC", "294 K"],
    "degF" => (k_from_f), "degC" => (|v| v + 273.15), "K" => (|v| v);
    "degF" => |v| f_from_k(v)
);
quantity!(
    /// A difference of temperatures, in kelvins.
    TemperatureStep, id!("kind-temperature-step"),
    ["40 degF", "22 K"],
    "degF" => (|v| v / 1.8), "K" => (|v| v), "degC" => (|v| v);
    "degF" => |v| v * 1.8
);
quantity!(
    /// A span of time, in seconds.
    TimeSpan, id!("kind-time-span"),
    ["30 s", "5 min", "1 h"],
    "s" => (|v| v), "min" => (|v| v * 60.0), "h" => (|v| v * 3600.0);
    "s" => |v| v
);

#[cfg(test)]
mod tests {
    use super::*;

    /// A quantity reads, prints and reads again to the same value.
    #[test]
    fn quantities_round_trip() {
        let p: Pressure = "3.5 inH2O".parse().unwrap();
        approx::assert_relative_eq!(p.si(), 871.811_185, max_relative = 1e-9);
        assert_eq!(p.to_string(), "3.5 inH2O");
        assert_eq!(p.to_string().parse::<Pressure>().unwrap(), p);
        let t: Temperature = "-10 degC".parse().unwrap();
        assert_eq!(t.to_string(), "14 degF");
        assert_eq!("1e3 Pa".parse::<Pressure>().unwrap().si(), 1000.0);
    }

    /// A bare number, a wrong unit and nonsense are refused, and the message names units that do.
    #[test]
    fn bad_quantities_say_what_would_do() {
        for bad in ["3.5", "3.5 bananas", "inH2O", "", "nan inH2O", "1e999 Pa", "3..5 Pa"] {
            let error = bad.parse::<Pressure>().unwrap_err().message;
            assert!(error.contains("inH2O") || error.contains("finite"), "{bad}: {error}");
        }
    }
}

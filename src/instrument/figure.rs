//! Figures on instruments' faces: whole steps of a resolution, so that two faces can be compared
//! exactly.
//!
//! **Source.** Resolutions: common practice for field instruments.
//! **Checked.** `src/instrument/figure.rs`: `a_figure_is_whole_steps_of_its_resolution()`.

use serde::Serialize;

/// What a figure tells, with its unit and its resolution.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, PartialOrd, Ord, Serialize)]
pub enum Quantity {
    /// Temperature, in tenths of a degree Fahrenheit.
    Temperature,
    /// Oxygen in dry flue gas, in tenths of a per cent.
    Oxygen,
    /// Carbon dioxide in dry flue gas, in tenths of a per cent.
    CarbonDioxide,
    /// Carbon monoxide as measured, in parts per million.
    CarbonMonoxide,
    /// Carbon monoxide, air-free, in parts per million.
    CarbonMonoxideAirFree,
    /// Temperature of the flue gas, in degrees Fahrenheit.
    FlueTemperature,
    /// Excess air, in per cent.
    ExcessAir,
    /// Flame current, in tenths of a microampere.
    FlameCurrent,
    /// Alternating voltage, in tenths of a volt.
    Voltage,
    /// Resistance, in tenths of an ohm.
    Resistance,
    /// Time on a stopwatch, in tenths of a second.
    Time,
    /// Whole turns counted, in turns.
    Turns,
    /// Time of one turn, in tenths of a second.
    SecondsPerTurn,
}

impl Quantity {
    /// The name that stands beside the figure on a face.
    #[must_use]
    pub fn label(self) -> &'static str {
        match self {
            Self::Temperature => t!("figure-temperature"),
            Self::Oxygen => t!("figure-oxygen"),
            Self::CarbonDioxide => t!("figure-carbon-dioxide"),
            Self::CarbonMonoxide => t!("figure-carbon-monoxide"),
            Self::CarbonMonoxideAirFree => t!("figure-carbon-monoxide-air-free"),
            Self::FlueTemperature => t!("figure-flue-temperature"),
            Self::ExcessAir => t!("figure-excess-air"),
            Self::FlameCurrent => t!("figure-flame-current"),
            Self::Voltage => t!("figure-voltage"),
            Self::Resistance => t!("figure-resistance"),
            Self::Time => t!("figure-time"),
            Self::Turns => t!("figure-turns"),
            Self::SecondsPerTurn => t!("figure-seconds-per-turn"),
        }
    }

    /// Its unit, as written behind the number.
    #[must_use]
    pub fn unit(self) -> &'static str {
        match self {
            Self::Temperature | Self::FlueTemperature => "°F",
            Self::Oxygen | Self::CarbonDioxide | Self::ExcessAir => "%",
            Self::CarbonMonoxide | Self::CarbonMonoxideAirFree => "ppm",
            Self::FlameCurrent => "µA",
            Self::Voltage => "V",
            Self::Resistance => "Ω",
            Self::Time | Self::SecondsPerTurn => "s",
            Self::Turns => "",
        }
    }

    /// Decimals shown: the resolution is the last of them.
    #[must_use]
    pub fn decimals(self) -> usize {
        match self {
            Self::Temperature
            | Self::Oxygen
            | Self::CarbonDioxide
            | Self::FlameCurrent
            | Self::Voltage
            | Self::Resistance
            | Self::Time
            | Self::SecondsPerTurn => 1,
            Self::CarbonMonoxide
            | Self::CarbonMonoxideAirFree
            | Self::FlueTemperature
            | Self::ExcessAir
            | Self::Turns => 0,
        }
    }

    fn steps_per_unit(self) -> f64 {
        if self.decimals() == 1 { 10.0 } else { 1.0 }
    }
}

/// A figure on a face.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Hash, Serialize)]
pub struct Figure {
    /// What is measured; gives unit and resolution.
    pub quantity: Quantity,
    /// The number in whole steps of its resolution; none where the face shows dashes (an open
    /// circuit for ohms, no flue gas for what is reckoned from it).
    pub steps: Option<i32>,
}

impl Figure {
    /// A value in the quantity's unit, rounded to its resolution; dashes for what is no number or
    /// beyond any face.
    #[must_use]
    pub fn new(quantity: Quantity, value: f64) -> Self {
        let steps = (value * quantity.steps_per_unit()).round();
        let shows = steps.is_finite() && steps.abs() < 2e9;
        #[expect(clippy::cast_possible_truncation, reason = "within the range just checked")]
        let steps = shows.then_some(steps as i32);
        Self { quantity, steps }
    }

    /// A figure without a number: the face shows dashes.
    #[must_use]
    pub fn none(quantity: Quantity) -> Self {
        Self { quantity, steps: None }
    }

    /// The number shown, in the quantity's unit.
    #[must_use]
    pub fn value(self) -> Option<f64> {
        self.steps.map(|steps| f64::from(steps) / self.quantity.steps_per_unit())
    }
}

impl core::fmt::Display for Figure {
    fn fmt(&self, out: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let unit = self.quantity.unit();
        match (self.value(), self.quantity) {
            (None, Quantity::Resistance) => out.write_str(&t!("figure-overload", unit = unit)),
            (None, _) => write!(out, "-- {unit}"),
            (Some(value), Quantity::Resistance) if value >= 1e6 => {
                write!(out, "{:.2} MΩ", value / 1e6)
            }
            (Some(value), Quantity::Resistance) if value >= 1e3 => {
                write!(out, "{:.2} kΩ", value / 1e3)
            }
            (Some(value), quantity) => {
                let text = format!("{value:.*} {unit}", quantity.decimals());
                out.write_str(text.trim_end())
            }
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A value is shown to its resolution, and what is no number as dashes.
    #[test]
    fn a_figure_is_whole_steps_of_its_resolution() {
        let shown = |quantity, value| Figure::new(quantity, value).to_string();
        assert_eq!(shown(Quantity::FlameCurrent, 2.349), "2.3 µA");
        assert_eq!(shown(Quantity::CarbonMonoxide, 14.6), "15 ppm");
        assert_eq!(shown(Quantity::Resistance, f64::INFINITY), "OL Ω");
        assert_eq!(shown(Quantity::Resistance, 20e6), "20.00 MΩ");
        assert_eq!(shown(Quantity::Turns, 3.0), "3");
        assert_eq!(Figure::new(Quantity::Oxygen, 6.449).steps, Some(64));
    }
}

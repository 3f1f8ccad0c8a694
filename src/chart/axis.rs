//! One axis of a figure.

use super::{Scale, figure};

/// From values to places on paper.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Axis {
    scale: Scale,
    lower: f64,
    upper: f64,
    from: f64,
    to: f64,
}

impl Axis {
    /// An axis that holds all values, from one place on paper to another. `None` without values, or
    /// by decades with none above zero.
    pub(crate) fn new(values: &[f64], scale: Scale, from: f64, to: f64) -> Option<Self> {
        let sound = |value: &&f64| value.is_finite() && (scale == Scale::Even || **value > 0.0);
        let lower = values.iter().filter(sound).copied().reduce(f64::min)?;
        let upper = values.iter().filter(sound).copied().reduce(f64::max)?;
        let (lower, upper) = match scale {
            Scale::Decades => (lower / 1.15, upper * 1.15),
            Scale::Even => {
                let margin = 0.04 * (upper - lower).max(1e-9);
                (lower - margin, upper + margin)
            }
        };
        Some(Self { scale, lower, upper, from, to })
    }

    /// An even axis with zero inside that holds all values.
    pub(crate) fn about_zero(values: &[f64], from: f64, to: f64) -> Self {
        let lower = values.iter().copied().fold(-1.0, f64::min);
        let upper = values.iter().copied().fold(1.0, f64::max);
        let margin = 0.08 * (upper - lower);
        Self { scale: Scale::Even, lower: lower - margin, upper: upper + margin, from, to }
    }

    /// An axis from one value to another that is larger, with nothing beyond.
    pub(crate) fn between(lower: f64, upper: f64, scale: Scale, from: f64, to: f64) -> Self {
        Self { scale, lower, upper, from, to }
    }

    /// The place of a value.
    pub(crate) fn at(&self, value: f64) -> f64 {
        let share = match self.scale {
            Scale::Even => (value - self.lower) / (self.upper - self.lower),
            Scale::Decades => {
                libm::log(value.max(1e-300) / self.lower) / libm::log(self.upper / self.lower)
            }
        };
        self.from + share * (self.to - self.from)
    }

    /// Ticks with their labels.
    pub(crate) fn ticks(&self) -> Vec<(f64, String)> {
        let values = match self.scale {
            Scale::Even => self.even(),
            Scale::Decades => self.decades(),
        };
        values.into_iter().map(|value| (value, figure(value))).collect()
    }

    fn even(&self) -> Vec<f64> {
        let rough = (self.upper - self.lower) / 6.0;
        let size = libm::pow(10.0, libm::floor(libm::log10(rough)));
        let step = match rough / size {
            part if part <= 1.0 => size,
            part if part <= 2.0 => 2.0 * size,
            part if part <= 5.0 => 5.0 * size,
            _ => 10.0 * size,
        };
        let first = libm::ceil(self.lower / step) as i64;
        let last = libm::floor(self.upper / step) as i64;
        // Through the decimal, so that 0.3 is not 0.30000000000000004.
        let clean = |k: i64| format!("{:.9}", k as f64 * step).parse().unwrap_or(0.0);
        (first..=last.min(first + 20)).map(clean).collect()
    }

    fn decades(&self) -> Vec<f64> {
        let first = libm::floor(libm::log10(self.lower)) as i32;
        let last = libm::ceil(libm::log10(self.upper)) as i32;
        let fine = last - first <= 4;
        let parts: &[f64] = if fine { &[1.0, 2.0, 5.0] } else { &[1.0] };
        let mut ticks = Vec::new();
        for decade in first..=last.min(first + 30) {
            for part in parts {
                let value = part * libm::pow(10.0, f64::from(decade));
                if value >= self.lower && value <= self.upper {
                    ticks.push(value);
                }
            }
        }
        ticks
    }
}

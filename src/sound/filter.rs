//! Filters that shape noise.

/// Highest frequency of a filter against the sample rate; above it the bilinear form breaks down.
const HIGHEST: f64 = 0.45;

/// A low pass of first order: 6 dB less an octave above its corner.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct OnePole {
    state: f64,
}

impl OnePole {
    /// The share of the way that a low pass with this corner goes in a sample.
    pub(super) fn share(corner_hz: f64, rate_hz: f64) -> f64 {
        1.0 - libm::exp(-core::f64::consts::TAU * corner_hz / rate_hz)
    }

    /// One sample through the low pass.
    pub(super) fn sample(&mut self, input: f64, share: f64) -> f64 {
        self.state += share * (input - self.state);
        self.state
    }
}

/// Coefficients of a state-variable filter of second order (trapezoidal integration).
#[derive(Debug, Clone, Copy)]
pub(super) struct Band {
    a1: f64,
    a2: f64,
    a3: f64,
    k: f64,
}

impl Band {
    /// A band about `center_hz`, the narrower the higher `q`.
    pub(super) fn new(center_hz: f64, q: f64, rate_hz: f64) -> Self {
        let center = center_hz.clamp(1.0, HIGHEST * rate_hz);
        let g = libm::tan(core::f64::consts::PI * center / rate_hz);
        let k = 1.0 / q;
        let a1 = 1.0 / (1.0 + g * (g + k));
        Self { a1, a2: g * a1, a3: g * g * a1, k }
    }
}

/// What a state-variable filter lets through.
#[derive(Debug, Clone, Copy)]
pub(super) struct Passed {
    /// What lies below the center.
    pub below: f64,
    /// What lies about the center, at its height there.
    pub about: f64,
    /// What lies above the center.
    pub above: f64,
}

/// The state of such a filter.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Filter {
    first: f64,
    second: f64,
}

impl Filter {
    /// One sample through the filter.
    pub(super) fn sample(&mut self, input: f64, band: &Band) -> Passed {
        let v3 = input - self.second;
        let v1 = band.a1 * self.first + band.a2 * v3;
        let v2 = self.second + band.a2 * self.first + band.a3 * v3;
        self.first = 2.0 * v1 - self.first;
        self.second = 2.0 * v2 - self.second;
        Passed { below: v2, about: band.k * v1, above: input - band.k * v1 - v2 }
    }
}

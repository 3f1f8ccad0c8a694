//! White noise with a seed.

use crate::rng::{Stream, stream};

/// Half the width of an even spread of unit variance: √3.
const HALF_WIDTH: f64 = 1.732_050_807_568_877_2;
/// Band over which the noise has unit variance, in hertz. A hertz holds the same power at every
/// sample rate.
const FULL_HZ: f64 = 24_000.0;

/// White noise from a stream of chance.
pub(super) struct Noise {
    stream: Stream,
    half_width: f64,
}

impl Noise {
    /// The noise `name` of `seed`.
    pub(super) fn new(seed: u64, name: &str, rate_hz: f64) -> Self {
        let half_width = HALF_WIDTH * libm::sqrt(0.5 * rate_hz / FULL_HZ);
        Self { stream: stream(seed, name), half_width }
    }

    /// The next sample of it.
    pub(super) fn sample(&mut self) -> f64 {
        self.stream.between(-self.half_width, self.half_width)
    }
}

/// What brings a band of this width out of the noise to unit variance.
pub(super) fn unity(width_hz: f64) -> f64 {
    libm::sqrt(FULL_HZ / width_hz)
}

/// Width of the noise that a low pass of first order lets through, against its corner: π/2.
pub(super) const FIRST_ORDER: f64 = core::f64::consts::FRAC_PI_2;

//! Values that change without a step.

/// A value that follows its target with one time constant, so that no change is heard as a click.
#[derive(Debug, Clone, Copy)]
pub(super) struct Glide {
    value: f64,
    target: f64,
    share: f64,
}

/// What is left of a way that counts as gone: some 100 dB below full.
const GONE: f64 = 1e-5;

impl Glide {
    /// A value that stands at nought.
    pub(super) fn new(time_s: f64, rate_hz: f64) -> Self {
        Self { value: 0.0, target: 0.0, share: 1.0 - libm::exp(-1.0 / (time_s * rate_hz)) }
    }

    /// Where the value shall go; what is no number leaves it where it goes already.
    pub(super) fn aim(&mut self, target: f64) {
        if target.is_finite() {
            self.target = target;
        }
    }

    /// Where the value stands one sample later. It arrives exactly, so that silence is nought.
    pub(super) fn sample(&mut self) -> f64 {
        let way = self.target - self.value;
        if libm::fabs(way) < GONE {
            self.value = self.target;
        } else {
            self.value += self.share * way;
        }
        self.value
    }

    /// Whether the value is nought and stays there.
    pub(super) fn is_still(&self) -> bool {
        self.value == 0.0 && self.target == 0.0
    }
}

//! The last stage: nothing leaves above full scale.

/// Level below which nothing is changed.
const FREE: f64 = 0.6;

/// Bends what is above the free level so that it never reaches full scale.
pub(super) fn limited(sample: f64) -> f64 {
    let size = libm::fabs(sample);
    if size <= FREE {
        return sample;
    }
    let room = 1.0 - FREE;
    // Just below one: the nearest single must not round up past full scale.
    let bent = 0.999 * (FREE + room * libm::tanh((size - FREE) / room));
    libm::copysign(bent.max(FREE), sample)
}

//! Levels of samples by time and by third of an octave.

use core::f64::consts::TAU;

/// Samples of a window: a bin is some 6 Hz wide at 48 kHz.
const WINDOW: usize = 8192;
/// Centers of the bands are 1 kHz times a power of ten to a tenth: thirds of an octave (IEC 61260,
/// base ten), from 63 Hz to 12.5 kHz.
const FIRST: i32 = -12;
const LAST: i32 = 11;
/// Least power that is told, of full scale: 120 dB below.
const LEAST: f64 = 1e-12;

/// How many bands there are.
pub(super) const BANDS: usize = (LAST - FIRST + 1) as usize;

/// Middle of a band, in hertz.
fn center_hz(band: usize) -> f64 {
    1000.0 * libm::pow(10.0, f64::from(FIRST + band as i32) / 10.0)
}

/// The nominal middle of a band, in hertz, where it is that of an octave (IEC 61260).
pub(super) fn nominal(band: usize) -> Option<&'static str> {
    const OCTAVES: [&str; 8] = ["63", "125", "250", "500", "1000", "2000", "4000", "8000"];
    band.is_multiple_of(3).then(|| OCTAVES.get(band / 3).copied()).flatten()
}

/// A power of full scale in decibels.
pub(super) fn db(power: f64) -> f64 {
    10.0 * libm::log10(power.max(LEAST))
}

/// Mean power of samples.
pub(super) fn power(samples: &[f32]) -> f64 {
    let sum: f64 = samples.iter().map(|it| f64::from(*it) * f64::from(*it)).sum();
    sum / samples.len().max(1) as f64
}

/// Mean power of samples in each band; of the window that fits, where they are fewer.
pub(super) fn bands(samples: &[f32], rate_hz: u32) -> [f64; BANDS] {
    let mut sums = [0.0; BANDS];
    let mut count = 0;
    let mut from = 0;
    while from == 0 || from + WINDOW <= samples.len() {
        let window = &samples[from..samples.len().min(from + WINDOW)];
        for (sum, power) in sums.iter_mut().zip(of_window(window, rate_hz)) {
            *sum += power;
        }
        count += 1;
        from += WINDOW / 2;
    }
    sums.map(|sum| sum / f64::from(count))
}

fn of_window(samples: &[f32], rate_hz: u32) -> [f64; BANDS] {
    let mut real = [0.0; WINDOW];
    let mut imaginary = [0.0; WINDOW];
    for (k, (slot, sample)) in real.iter_mut().zip(samples).enumerate() {
        // A Hann window, which leaves three eighths of the power.
        let share = 0.5 - 0.5 * libm::cos(TAU * k as f64 / WINDOW as f64);
        *slot = f64::from(*sample) * share / libm::sqrt(0.375);
    }
    transform(&mut real, &mut imaginary);
    let edge = libm::pow(10.0, 0.05);
    core::array::from_fn(|band| {
        let bin = |hz: f64| libm::round(hz * WINDOW as f64 / f64::from(rate_hz)) as usize;
        let (from, to) = (bin(center_hz(band) / edge), bin(center_hz(band) * edge));
        let power =
            (from..to.min(WINDOW / 2)).map(|k| real[k] * real[k] + imaginary[k] * imaginary[k]);
        // Both halves of the spectrum, against the square of the window's length.
        2.0 * power.sum::<f64>() / (WINDOW * WINDOW) as f64
    })
}

/// The discrete Fourier transform in place, by halves.
fn transform(real: &mut [f64; WINDOW], imaginary: &mut [f64; WINDOW]) {
    let bits = WINDOW.trailing_zeros();
    for k in 0..WINDOW {
        let other = k.reverse_bits() >> (usize::BITS - bits);
        if other > k {
            real.swap(k, other);
            imaginary.swap(k, other);
        }
    }
    let mut half = 1;
    while half < WINDOW {
        for k in 0..half {
            let angle = -TAU * k as f64 / (2 * half) as f64;
            let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
            for at in (k..WINDOW).step_by(2 * half) {
                let other = at + half;
                let (a, b) = (real[other], imaginary[other]);
                let (a, b) = (a * cosine - b * sine, a * sine + b * cosine);
                (real[other], imaginary[other]) = (real[at] - a, imaginary[at] - b);
                (real[at], imaginary[at]) = (real[at] + a, imaginary[at] + b);
            }
        }
        half *= 2;
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// A sine of amplitude 0.5 at 1 kHz has an eighth of full power, all of it in one band.
    #[test]
    fn a_sine_falls_into_its_band() {
        let wave = |k: u32| 0.5 * libm::sin(TAU * 1000.0 * f64::from(k) / 48_000.0) as f32;
        let samples: Vec<f32> = (0..48_000).map(wave).collect();
        let found = bands(&samples, 48_000);
        let band = (0..BANDS).find(|band| (center_hz(*band) - 1000.0).abs() < 1.0).unwrap();
        assert!((found[band] - 0.125).abs() < 1e-3, "{found:?}");
        assert!(found.iter().sum::<f64>() - found[band] < 1e-3);
        assert!((power(&samples) - 0.125).abs() < 1e-6);
    }
}

//! Levels and spectra of samples, by the plain sum of the discrete Fourier transform.

use std::f64::consts::TAU;

use super::RATE_HZ;

/// Length of a window: a bin is 10 Hz wide.
const WINDOW: usize = 4800;
const BIN_HZ: f64 = RATE_HZ as f64 / WINDOW as f64;

/// Root of the mean square.
pub fn rms(samples: &[f32]) -> f64 {
    let sum: f64 = samples.iter().map(|x| f64::from(*x) * f64::from(*x)).sum();
    (sum / samples.len() as f64).sqrt()
}

/// Decibels from one amplitude to another.
pub fn db(from: f64, to: f64) -> f64 {
    20.0 * (to / from).log10()
}

/// Mean power of each bin over all whole windows, with a Hann window.
pub struct Spectrum(Vec<f64>);

impl Spectrum {
    pub fn of(samples: &[f32]) -> Self {
        let turn: Vec<(f64, f64)> =
            (0..WINDOW).map(|k| (TAU * k as f64 / WINDOW as f64).sin_cos()).collect();
        let mut bins = vec![0.0; WINDOW / 2];
        let windows = samples.chunks_exact(WINDOW);
        let count = windows.len() as f64;
        for window in windows {
            let shaped: Vec<f64> = window
                .iter()
                .enumerate()
                .map(|(n, x)| f64::from(*x) * (0.5 - 0.5 * turn[n].1))
                .collect();
            for (k, bin) in bins.iter_mut().enumerate() {
                let (mut re, mut im, mut at) = (0.0, 0.0, 0);
                for x in &shaped {
                    re += x * turn[at].1;
                    im += x * turn[at].0;
                    at = (at + k) % WINDOW;
                }
                *bin += (re * re + im * im) / count;
            }
        }
        Self(bins)
    }

    /// Power between two frequencies.
    pub fn power(&self, from_hz: f64, to_hz: f64) -> f64 {
        let bin = |hz: f64| ((hz / BIN_HZ).round() as usize).min(self.0.len());
        self.0[bin(from_hz)..bin(to_hz)].iter().sum()
    }

    /// Share of all power that lies between two frequencies.
    pub fn share(&self, from_hz: f64, to_hz: f64) -> f64 {
        self.power(from_hz, to_hz) / self.power(0.0, f64::from(RATE_HZ) / 2.0)
    }

    /// The strongest frequency between two.
    pub fn peak_hz(&self, from_hz: f64, to_hz: f64) -> f64 {
        let all = (from_hz / BIN_HZ) as usize..(to_hz / BIN_HZ) as usize;
        let peak = all.max_by(|a, b| self.0[*a].total_cmp(&self.0[*b])).unwrap();
        peak as f64 * BIN_HZ
    }
}

/// The helper is a transform: a sine of amplitude 0.5 has its peak and its level where they belong.
#[test]
fn a_sine_is_found_where_it_is() {
    let sine: Vec<f32> = (0..RATE_HZ)
        .map(|n| (0.5 * (TAU * 1230.0 * f64::from(n) / f64::from(RATE_HZ)).sin()) as f32)
        .collect();
    let spectrum = Spectrum::of(&sine);
    assert_eq!(spectrum.peak_hz(20.0, 20_000.0), 1230.0);
    assert!(spectrum.share(1200.0, 1260.0) > 0.999);
    assert!((rms(&sine) - 0.5 / 2.0_f64.sqrt()).abs() < 1e-4);
}

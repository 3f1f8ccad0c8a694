//! The call of an alarm, of gas or of carbon monoxide: four short pulses and a long rest.
//!
//! The pattern is that of NFPA 72 for carbon monoxide alarms (four pulses of 0.1 s with 0.1 s
//! between them, then 5 s of rest), the tone near 3 kHz as of a piezo sounder; both from memory.
//! No standard gives a gas detector's call; ours has the same (our own appliance).

use core::f64::consts::TAU;

/// Pulses of a call.
const PULSES: u32 = 4;
/// Length of a pulse, and of the rest after it, in seconds.
const PULSE_S: f64 = 0.1;
/// Rest after the last pulse, in seconds.
const REST_S: f64 = 5.0;
/// Frequency of the sounder, in hertz.
const TONE_HZ: f64 = 3100.0;
/// Time in which a pulse comes and goes, in seconds.
const RAMP_S: f64 = 0.004;

/// The sounder with where it stands in its call.
#[derive(Debug, Clone, Copy, Default)]
pub(super) struct Sounder {
    at_s: f64,
    phase: f64,
}

impl Sounder {
    /// The next sample at full loudness.
    pub(super) fn sample(&mut self, rate_hz: f64) -> f64 {
        let pulses_s = 2.0 * f64::from(PULSES) * PULSE_S;
        self.at_s += 1.0 / rate_hz;
        // The rest after the last pulse is the long one.
        if self.at_s >= pulses_s - PULSE_S + REST_S {
            self.at_s = 0.0;
        }
        self.phase = libm::fmod(self.phase + TONE_HZ / rate_hz, 1.0);
        let within = libm::fmod(self.at_s, 2.0 * PULSE_S);
        if self.at_s >= pulses_s || within >= PULSE_S {
            return 0.0;
        }
        let ramp = (within.min(PULSE_S - within) / RAMP_S).clamp(0.0, 1.0);
        ramp * libm::sin(TAU * self.phase)
    }

    /// Back to the start of the call.
    pub(super) fn rest(&mut self) {
        *self = Self::default();
    }
}

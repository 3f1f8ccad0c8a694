//! A fan in its housing: blades that pass the cutoff, a motor that hums, air that rushes.
//!
//! **Equation.** Blade-pass frequency = blades × revolutions a second. Sound pressure goes with the
//! speed to the power 2.5: sound power with the fifth, 50·lg of the ratio of speeds in decibels
//! (fan sound law). The motor hums at twice the line's 60 Hz, whatever its speed.

use core::f64::consts::TAU;

use super::filter::{Band, Filter, OnePole};
use super::noise::{FIRST_ORDER, Noise, unity};

/// Twice the frequency of the line, in hertz.
const HUM_HZ: f64 = 120.0;
/// Samples between two settings of the air's band: less than a millisecond.
const SET_EVERY: u32 = 32;
/// Corner of what makes the blades' tone waver, in hertz, and how far it wavers.
const WAVER_HZ: f64 = 3.0;
const WAVER: f64 = 0.15;

/// What is said of a fan once.
#[derive(Debug, Clone, Copy)]
pub(super) struct Build {
    /// Blades of the wheel.
    pub blades: f64,
    /// Revolutions a second at full speed.
    pub full_rev_s: f64,
    /// Loudness of the blades' tone at full speed, its second partial and the shaft's.
    pub tones: [f64; 3],
    /// Loudness of the hum.
    pub hum: f64,
    /// Loudness of the air at full speed.
    pub air: f64,
    /// Middle of the air's band at full speed, in hertz.
    pub air_hz: f64,
    /// Width of the air's band.
    pub air_q: f64,
}

/// The inducer: a two-pole shaded-pole motor (3,600 r/min without slip at 60 Hz, about 3,200 under
/// load: from memory) and a small wheel of twenty blades (our own appliance).
pub(super) const INDUCER: Build = Build {
    blades: 20.0,
    full_rev_s: 3200.0 / 60.0,
    tones: [0.020, 0.006, 0.006],
    hum: 0.012,
    air: 0.05,
    air_hz: 1500.0,
    air_q: 0.7,
};

/// The blower: a six-pole motor (1,200 r/min without slip at 60 Hz, about 1,075 under load: from
/// memory) and a forward-curved wheel of forty-two blades (our own appliance).
pub(super) const BLOWER: Build = Build {
    blades: 42.0,
    full_rev_s: 1075.0 / 60.0,
    tones: [0.030, 0.008, 0.010],
    hum: 0.010,
    air: 0.09,
    air_hz: 280.0,
    air_q: 0.5,
};

/// A fan that runs, with its noise.
pub(super) struct Fan {
    build: Build,
    noise: Noise,
    air: Filter,
    waver: OnePole,
    waver_share: f64,
    band: Band,
    rush: f64,
    until_set: u32,
    turn: f64,
    hum: f64,
}

impl Fan {
    pub(super) fn new(build: Build, seed: u64, name: &str, rate_hz: f64) -> Self {
        Self {
            build,
            noise: Noise::new(seed, name, rate_hz),
            air: Filter::default(),
            waver: OnePole::default(),
            waver_share: OnePole::share(WAVER_HZ, rate_hz),
            band: Band::new(build.air_hz, build.air_q, rate_hz),
            rush: 0.0,
            until_set: 0,
            turn: 0.0,
            hum: 0.0,
        }
    }

    /// The next sample at a speed, 0 still, 1 full.
    pub(super) fn sample(&mut self, speed: f64, rate_hz: f64) -> f64 {
        let build = &self.build;
        if self.until_set == 0 {
            self.until_set = SET_EVERY;
            let center_hz = build.air_hz * speed.max(0.1);
            self.band = Band::new(center_hz, build.air_q, rate_hz);
            self.rush = build.air * unity(FIRST_ORDER * center_hz / build.air_q);
        }
        self.until_set -= 1;
        // Whole turns of the wheel carry every partial, so that the phase never jumps.
        self.turn = libm::fmod(self.turn + build.full_rev_s * speed / rate_hz, 1.0);
        self.hum = libm::fmod(self.hum + HUM_HZ / rate_hz, 1.0);
        let white = self.noise.sample();
        let rush = self.air.sample(white, &self.band).about;
        let slow = self.waver.sample(white, self.waver_share) * unity(FIRST_ORDER * WAVER_HZ);
        let waver = 1.0 + WAVER * slow.clamp(-2.0, 2.0);
        let [blade, second, shaft] = build.tones;
        let pass = build.blades * self.turn;
        let tones = waver * blade * libm::sin(TAU * pass)
            + second * libm::sin(2.0 * TAU * pass)
            + shaft * libm::sin(TAU * self.turn);
        let law = speed * speed * libm::sqrt(speed.max(0.0));
        let humming = build.hum * speed.min(1.0) * libm::sin(TAU * self.hum);
        law * (tones + self.rush * rush) + humming
    }
}

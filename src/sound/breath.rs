//! Voices that are noise in a band: the flames' roar, gas that hisses, a relief that blows.

use super::filter::{Band, Filter, OnePole, Passed};
use super::noise::{FIRST_ORDER, Noise, unity};

/// Samples between two settings of the band.
const SET_EVERY: u32 = 32;
/// Corner of what makes the flames flicker, in hertz, and how far they flicker.
const FLICKER_HZ: f64 = 9.0;
const FLICKER: f64 = 0.25;

/// A roar of flames: noise below a corner that rises with the rate.
pub(super) struct Roar {
    noise: Noise,
    body: Filter,
    edge: OnePole,
    flicker: OnePole,
    band: Band,
    edge_share: f64,
    flicker_share: f64,
    until_set: u32,
    center_hz: f64,
    edge_hz: f64,
}

impl Roar {
    /// Flames whose roar lies about `center_hz` at the full rate, with nothing far above `edge_hz`.
    pub(super) fn new(center_hz: f64, edge_hz: f64, seed: u64, name: &str, rate_hz: f64) -> Self {
        Self {
            noise: Noise::new(seed, name, rate_hz),
            body: Filter::default(),
            edge: OnePole::default(),
            flicker: OnePole::default(),
            band: Band::new(center_hz, 0.7, rate_hz),
            edge_share: OnePole::share(edge_hz, rate_hz),
            flicker_share: OnePole::share(FLICKER_HZ, rate_hz),
            until_set: 0,
            center_hz,
            edge_hz,
        }
    }

    /// The next sample of unit variance, about, at a rate against the full one.
    pub(super) fn sample(&mut self, rate: f64, rate_hz: f64) -> f64 {
        if self.until_set == 0 {
            self.until_set = SET_EVERY;
            // The jets are faster and the eddies smaller the more gas they carry.
            let bright = 0.6 + 0.4 * rate;
            self.band = Band::new(self.center_hz * bright, 0.7, rate_hz);
            self.edge_share = OnePole::share(self.edge_hz * bright, rate_hz);
        }
        self.until_set -= 1;
        let white = self.noise.sample();
        let slow = self.flicker.sample(white, self.flicker_share) * unity(FIRST_ORDER * FLICKER_HZ);
        let flicker = 1.0 + FLICKER * slow.clamp(-2.0, 2.0);
        let body = self.body.sample(white, &self.band).below;
        let roar = self.edge.sample(body, self.edge_share);
        roar * flicker * unity(self.center_hz)
    }
}

/// Which side of the band is heard.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    /// What lies about the center.
    About,
    /// What lies above it.
    Above,
}

/// A jet of gas into the air.
pub(super) struct Jet {
    noise: Noise,
    filter: Filter,
    band: Band,
    side: Side,
    unity: f64,
}

impl Jet {
    pub(super) fn new(
        center_hz: f64,
        side: Side,
        q: f64,
        seed: u64,
        name: &str,
        rate_hz: f64,
    ) -> Self {
        Self {
            noise: Noise::new(seed, name, rate_hz),
            filter: Filter::default(),
            band: Band::new(center_hz, q, rate_hz),
            side,
            unity: unity(match side {
                Side::About => FIRST_ORDER * center_hz / q,
                Side::Above => 0.5 * rate_hz - center_hz,
            }),
        }
    }

    /// The next sample, of unit variance, about.
    pub(super) fn sample(&mut self) -> f64 {
        let Passed { about, above, .. } = self.filter.sample(self.noise.sample(), &self.band);
        self.unity
            * match self.side {
                Side::About => about,
                Side::Above => above,
            }
    }
}

//! The mixer: voices and moments in, buffers out.

use enum_map::EnumMap;

use super::alarm::Sounder;
use super::breath::{Jet, Roar, Side};
use super::fan::{BLOWER, Fan, INDUCER};
use super::filter::OnePole;
use super::glide::Glide;
use super::limit::limited;
use super::moment::Moment;
use super::noise::Noise;
use super::soundscape::Soundscape;
use super::strike::Strike;
use super::voice::Voice;

/// Times in which a voice gets louder, a fan faster, and the whole louder, in seconds.
const LEVEL_S: f64 = 0.04;
const SPEED_S: f64 = 0.08;
const VOLUME_S: f64 = 0.02;
/// No voice is made louder than this against its full loudness, and no fan or flame faster than
/// that, whatever the figure says.
const LOUDEST: f64 = 1.6;
const FASTEST: f64 = 2.0;
/// Moments that can sound at once; one more is left out.
const STRIKES: usize = 12;

/// Makes samples of what is to be heard.
pub struct Synth {
    rate_hz: f64,
    level: EnumMap<Voice, Glide>,
    inducer_speed: Glide,
    blower_speed: Glide,
    firing: Glide,
    furnace_gain: Glide,
    furnace_share: Glide,
    volume: Glide,
    inducer: Fan,
    blower: Fan,
    burners: Roar,
    other_burner: Roar,
    hiss: Jet,
    relief: Jet,
    alarm: Sounder,
    dulled: [OnePole; 2],
    struck: Noise,
    strikes: [Option<Strike>; STRIKES],
}

impl Synth {
    /// A silent synthesiser for a sample rate of 8,000 to 192,000 Hz. The seed is that of its
    /// noise.
    #[must_use]
    pub fn new(rate_hz: u32, seed: u64) -> Self {
        let rate_hz = f64::from(rate_hz.clamp(8_000, 192_000));
        let glide = |time_s| Glide::new(time_s, rate_hz);
        Self {
            rate_hz,
            level: EnumMap::from_fn(|_| glide(LEVEL_S)),
            inducer_speed: glide(SPEED_S),
            blower_speed: glide(SPEED_S),
            firing: glide(SPEED_S),
            furnace_gain: glide(LEVEL_S),
            furnace_share: glide(LEVEL_S),
            volume: glide(VOLUME_S),
            inducer: Fan::new(INDUCER, seed, "inducer", rate_hz),
            blower: Fan::new(BLOWER, seed, "blower", rate_hz),
            burners: Roar::new(130.0, 420.0, seed, "burners", rate_hz),
            other_burner: Roar::new(190.0, 500.0, seed, "other-burner", rate_hz),
            hiss: Jet::new(4500.0, Side::Above, 0.7, seed, "hiss", rate_hz),
            relief: Jet::new(1400.0, Side::About, 0.5, seed, "relief", rate_hz),
            alarm: Sounder::default(),
            dulled: [OnePole::default(); 2],
            struck: Noise::new(seed, "moments", rate_hz),
            strikes: [None; STRIKES],
        }
    }

    /// What is to be heard from the next sample on.
    pub fn hear(&mut self, scape: &Soundscape) {
        for (voice, glide) in &mut self.level {
            glide.aim(scape.level[voice].clamp(0.0, LOUDEST));
        }
        self.inducer_speed.aim(scape.inducer.clamp(0.0, FASTEST));
        self.blower_speed.aim(scape.blower.clamp(0.0, FASTEST));
        self.firing.aim(scape.firing.clamp(0.0, FASTEST));
        self.furnace_gain.aim(scape.furnace.gain());
        self.furnace_share.aim(OnePole::share(scape.furnace.corner_hz(), self.rate_hz));
    }

    /// A moment that sounds from the next sample on.
    pub fn strike(&mut self, moment: Moment) {
        if let Some(free) = self.strikes.iter_mut().find(|it| it.is_none()) {
            *free = Some(Strike::new(moment, self.rate_hz));
        }
    }

    /// How loud all of it is, in per cent: 0 is silence, 100 as loud as it is made.
    pub fn set_volume(&mut self, percent: u32) {
        let share = f64::from(percent.min(100)) / 100.0;
        // Half way is heard as half as loud, about: a quarter of the amplitude.
        self.volume.aim(share * share);
    }

    /// Fills a buffer with the next samples, each within −1 to 1.
    pub fn fill(&mut self, buffer: &mut [f32]) {
        for sample in buffer {
            *sample = self.sample() as f32;
        }
    }

    fn sample(&mut self) -> f64 {
        let [furnace_moments, other_moments] = self.moments();
        let furnace = self.furnace() + furnace_moments;
        let share = self.furnace_share.sample();
        let [first, second] = &mut self.dulled;
        let furnace =
            self.furnace_gain.sample() * second.sample(first.sample(furnace, share), share);
        let volume = self.volume.sample();
        limited(volume * (furnace + self.around() + other_moments))
    }

    /// Voices as far away as the furnace.
    fn furnace(&mut self) -> f64 {
        let rate_hz = self.rate_hz;
        let (inducer, blower) = (self.inducer_speed.sample(), self.blower_speed.sample());
        let firing = self.firing.sample();
        let level = &mut self.level;
        sounding(&mut level[Voice::Inducer], || self.inducer.sample(inducer, rate_hz))
            + sounding(&mut level[Voice::Blower], || self.blower.sample(blower, rate_hz))
            + sounding(&mut level[Voice::Burners], || 0.09 * self.burners.sample(firing, rate_hz))
            + sounding(&mut level[Voice::Hiss], || 0.07 * self.hiss.sample())
    }

    /// Voices where the ear is.
    fn around(&mut self) -> f64 {
        let rate_hz = self.rate_hz;
        let level = &mut self.level;
        if level[Voice::Alarm].is_still() {
            self.alarm.rest();
        }
        sounding(&mut level[Voice::OtherBurner], || 0.025 * self.other_burner.sample(1.0, rate_hz))
            + sounding(&mut level[Voice::Relief], || 0.12 * self.relief.sample())
            + sounding(&mut level[Voice::Alarm], || 0.25 * self.alarm.sample(rate_hz))
    }

    /// Moments as far away as the furnace, and those at hand.
    fn moments(&mut self) -> [f64; 2] {
        let mut sums = [0.0; 2];
        for slot in &mut self.strikes {
            let Some(strike) = slot else { continue };
            let sample = strike.sample(self.struck.sample(), self.rate_hz);
            sums[usize::from(!strike.is_of_furnace())] += sample;
            if strike.is_over() {
                *slot = None;
            }
        }
        sums
    }
}

/// A voice at its level; one that is silent makes nothing.
fn sounding(level: &mut Glide, voice: impl FnOnce() -> f64) -> f64 {
    if level.is_still() { 0.0 } else { level.sample() * voice() }
}

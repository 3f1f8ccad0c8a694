//! Sounds of a moment as they run: a burst of noise in a band and two tones that die away.

use core::f64::consts::TAU;

use super::filter::{Band, Filter};
use super::moment::Moment;
use super::noise::{FIRST_ORDER, unity};

/// A tone that dies away.
#[derive(Debug, Clone, Copy)]
struct Tone {
    hz: f64,
    level: f64,
    decay_s: f64,
}

/// How a moment sounds. The figures are by ear, from memory of the trade; nothing else follows
/// from them.
#[derive(Debug, Clone, Copy)]
struct Recipe {
    /// The burst: middle and width of its band, its loudness.
    hz: f64,
    q: f64,
    level: f64,
    /// Times in which it comes and goes.
    attack_s: f64,
    decay_s: f64,
    /// How often it catches in a second, as a thread does; none where it runs smooth.
    rasp_hz: f64,
    tones: [Tone; 2],
    /// After this it is over.
    length_s: f64,
}

const fn tone(hz: f64, level: f64, decay_s: f64) -> Tone {
    Tone { hz, level, decay_s }
}

/// A click: hardly any length, two bright tones.
const fn click(low_hz: f64, level: f64, decay_s: f64) -> Recipe {
    Recipe {
        hz: 2.0 * low_hz,
        q: 1.0,
        level: 0.5 * level,
        attack_s: 0.001,
        decay_s: 0.5 * decay_s,
        rasp_hz: 0.0,
        tones: [
            tone(low_hz, 0.6 * level, decay_s),
            tone(2.37 * low_hz, 0.4 * level, 0.6 * decay_s),
        ],
        length_s: 8.0 * decay_s,
    }
}

/// A puff of flame or gas: noise alone, low or high.
const fn puff(hz: f64, level: f64, attack_s: f64, decay_s: f64) -> Recipe {
    Recipe {
        hz,
        q: 0.6,
        level,
        attack_s,
        decay_s,
        rasp_hz: 0.0,
        tones: [tone(0.6 * hz, 0.3 * level, decay_s), tone(hz, 0.0, decay_s)],
        length_s: attack_s + 6.0 * decay_s,
    }
}

/// A rub that catches: a thread, a lever, a window.
const fn rub(hz: f64, level: f64, rasp_hz: f64, length_s: f64) -> Recipe {
    Recipe {
        hz,
        q: 1.5,
        level,
        attack_s: 0.03,
        decay_s: length_s,
        rasp_hz,
        tones: [tone(hz, 0.0, 0.01), tone(hz, 0.0, 0.01)],
        length_s,
    }
}

fn recipe(moment: Moment) -> Recipe {
    match moment {
        Moment::Relay => click(2100.0, 0.16, 0.006),
        Moment::GasValve => click(420.0, 0.30, 0.018),
        Moment::Lights => puff(140.0, 0.30, 0.060, 0.16),
        Moment::LateLight => puff(90.0, 1.00, 0.006, 0.30),
        Moment::GoesOut => puff(180.0, 0.16, 0.010, 0.08),
        Moment::FlamesGrow => puff(160.0, 0.16, 0.120, 0.18),
        Moment::FlamesShrink => puff(120.0, 0.10, 0.060, 0.12),
        Moment::Puff => puff(2600.0, 0.25, 0.004, 0.10),
        Moment::PortHiss => puff(5200.0, 0.20, 0.020, 0.20),
        Moment::Ignition => puff(70.0, 1.60, 0.004, 0.55),
        Moment::CrossThread => rub(1900.0, 0.18, 23.0, 0.45),
        Moment::Crack => click(1500.0, 0.60, 0.025),
        Moment::ScrewStop => click(700.0, 0.18, 0.012),
        Moment::ColumnBlown => rub(900.0, 0.30, 31.0, 0.70),
        Moment::WorkDone => click(260.0, 0.25, 0.040),
        Moment::Lever => rub(620.0, 0.14, 0.0, 0.22),
        Moment::Thread => rub(1300.0, 0.10, 13.0, 0.40),
        Moment::HoseOn => click(310.0, 0.20, 0.016),
        Moment::HoseOff => puff(480.0, 0.22, 0.002, 0.03),
        Moment::Key => Recipe {
            attack_s: 0.003,
            tones: [tone(2700.0, 0.08, 0.045), tone(5400.0, 0.01, 0.020)],
            length_s: 0.2,
            ..click(2700.0, 0.04, 0.004)
        },
        Moment::Switch => click(1100.0, 0.20, 0.010),
        Moment::Door => click(180.0, 0.30, 0.060),
        Moment::Window => rub(800.0, 0.12, 7.0, 0.60),
    }
}

/// A moment that is sounding.
#[derive(Debug, Clone, Copy)]
pub(super) struct Strike {
    recipe: Recipe,
    of_furnace: bool,
    age_s: f64,
    band: Band,
    burst: f64,
    filter: Filter,
    /// What each decay has left, of the burst and of both tones, and what a sample leaves of that.
    left: [f64; 3],
    keeps: [f64; 3],
}

impl Strike {
    pub(super) fn new(moment: Moment, rate_hz: f64) -> Self {
        let recipe = recipe(moment);
        let keep = |decay_s: f64| libm::exp(-1.0 / (decay_s * rate_hz));
        let [first, second] = recipe.tones;
        Self {
            recipe,
            of_furnace: moment.is_of_furnace(),
            age_s: 0.0,
            band: Band::new(recipe.hz, recipe.q, rate_hz),
            burst: recipe.level * unity(FIRST_ORDER * recipe.hz / recipe.q),
            filter: Filter::default(),
            left: [1.0; 3],
            keeps: [keep(recipe.decay_s), keep(first.decay_s), keep(second.decay_s)],
        }
    }

    /// Whether it is as far away as the furnace.
    pub(super) fn is_of_furnace(&self) -> bool {
        self.of_furnace
    }

    /// Whether it has died away.
    pub(super) fn is_over(&self) -> bool {
        self.age_s >= self.recipe.length_s
    }

    /// The next sample, from white noise.
    pub(super) fn sample(&mut self, white: f64, rate_hz: f64) -> f64 {
        let Recipe { attack_s, rasp_hz, tones, length_s, .. } = self.recipe;
        self.age_s += 1.0 / rate_hz;
        let passed = self.filter.sample(white, &self.band).about;
        let rasp =
            if rasp_hz > 0.0 { 0.5 - 0.5 * libm::cos(TAU * rasp_hz * self.age_s) } else { 1.0 };
        let mut sample = self.left[0] * rasp * self.burst * passed;
        for (tone, left) in tones.iter().zip(&self.left[1..]) {
            sample += left * tone.level * libm::sin(TAU * tone.hz * self.age_s);
        }
        for (left, keep) in self.left.iter_mut().zip(&self.keeps) {
            *left *= keep;
        }
        // It comes in a ramp and leaves in one, so that neither end is a step.
        let comes = (self.age_s / attack_s).min(1.0);
        let leaves = (1.0 - self.age_s / length_s).max(0.0);
        comes * leaves * sample
    }
}

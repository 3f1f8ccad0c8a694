//! What is heard: each voice against what it must be, the mixer, captions, and a bench that is
//! listened to.

mod bench;
mod captions;
mod mixing;
mod spectrum;
mod voices;

use quarterturn::sound::soundscape::{Distance, Soundscape};
use quarterturn::sound::synth::Synth;
use quarterturn::sound::voice::Voice;

/// The sample rate of all these tests, in hertz.
const RATE_HZ: u32 = 48_000;

/// One voice at a level, the ear at the burner compartment, fans and flames at full.
fn only(voice: Voice, level: f64) -> Soundscape {
    let mut scape = Soundscape {
        inducer: 1.0,
        blower: 1.0,
        firing: 1.0,
        furnace: Distance::AtHand,
        ..Soundscape::default()
    };
    scape.level[voice] = level;
    scape
}

/// Seconds of a soundscape once every change in it has died away.
fn steady(scape: &Soundscape, seconds: f64) -> Vec<f32> {
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    synth.hear(scape);
    next(&mut synth, 1.5);
    next(&mut synth, seconds)
}

/// The next seconds of a synthesiser.
fn next(synth: &mut Synth, seconds: f64) -> Vec<f32> {
    let mut samples = vec![0.0; (seconds * f64::from(RATE_HZ)) as usize];
    synth.fill(&mut samples);
    samples
}

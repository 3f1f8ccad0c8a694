//! The mixer: exact silence, nothing beyond full scale, no clicks, the same from the same.

use quarterturn::sound::moment::Moment;
use quarterturn::sound::soundscape::{Distance, Soundscape};
use quarterturn::sound::synth::Synth;
use quarterturn::sound::voice::Voice;

use super::spectrum::{Spectrum, rms};
use super::{RATE_HZ, next, only, steady};

/// Everything at once, beyond all that a bench gives.
fn tumult() -> Soundscape {
    let mut scape = only(Voice::Alarm, 9.0);
    for voice in Voice::ALL {
        scape.level[voice] = 9.0;
    }
    Soundscape { inducer: 9.0, blower: 9.0, firing: 9.0, ..scape }
}

/// Silence is nought, not a little: before the volume is set, after it went to nought, and where
/// nothing is heard.
#[test]
fn silence_is_nought() {
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.hear(&tumult());
    synth.strike(Moment::Ignition);
    assert!(next(&mut synth, 1.0).iter().all(|sample| *sample == 0.0));
    synth.set_volume(100);
    assert!(rms(&next(&mut synth, 1.0)) > 0.1);
    synth.set_volume(0);
    next(&mut synth, 0.4);
    assert!(next(&mut synth, 1.0).iter().all(|sample| *sample == 0.0));
    synth.set_volume(100);
    synth.hear(&Soundscape::default());
    next(&mut synth, 1.0);
    assert!(next(&mut synth, 1.0).iter().all(|sample| *sample == 0.0));
}

/// Whatever is asked for, every sample is a number within full scale.
#[test]
fn nothing_leaves_above_full_scale() {
    for rate_hz in [8_000, 44_100, RATE_HZ, 192_000] {
        let mut synth = Synth::new(rate_hz, 3);
        synth.set_volume(1000);
        synth.hear(&tumult());
        for moment in Moment::ALL {
            synth.strike(moment);
        }
        let mut samples = vec![0.0; rate_hz as usize / 2];
        synth.fill(&mut samples);
        assert!(samples.iter().all(|sample| sample.abs() < 1.0), "{rate_hz}");
        assert!(rms(&samples) > 0.1, "{rate_hz}");
    }
}

/// A figure that is no number leaves the voices as they were.
#[test]
fn what_is_no_number_is_not_heard() {
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    let mut scape = Soundscape { inducer: f64::NAN, firing: f64::INFINITY, ..tumult() };
    scape.level[Voice::Hiss] = f64::NAN;
    synth.hear(&scape);
    assert!(next(&mut synth, 0.5).iter().all(|sample| sample.is_finite() && sample.abs() < 1.0));
    synth.hear(&only(Voice::Hiss, 1.0));
    assert!(rms(&next(&mut synth, 0.5)) > 0.01);
}

/// The same seed and the same words give the same samples, bit by bit, however the buffers are
/// cut; another seed gives others.
#[test]
fn the_same_gives_the_same() {
    let mut scape = only(Voice::Inducer, 1.0);
    scape.level[Voice::Burners] = 0.8;
    scape.level[Voice::Hiss] = 0.3;
    let play = |seed: u64, cut: usize| {
        let mut synth = Synth::new(RATE_HZ, seed);
        synth.set_volume(70);
        synth.hear(&scape);
        synth.strike(Moment::Lever);
        let mut samples = vec![0.0; 24_000];
        for part in samples.chunks_mut(cut) {
            synth.fill(part);
        }
        samples.into_iter().map(f32::to_bits).collect::<Vec<_>>()
    };
    let whole = play(5, 24_000);
    for cut in [1, 7, 480, 1024] {
        assert!(whole == play(5, cut), "{cut}");
    }
    assert!(whole != play(6, 24_000));
}

/// No change clicks: with the voices of tone switched on and off, moved away and back, silenced
/// and brought back, no step from one sample to the next is larger than the largest of the same
/// voices going on steadily, and a twentieth of that.
#[test]
fn no_change_clicks() {
    let mut scape = only(Voice::Blower, 1.0);
    scape.level[Voice::Burners] = 1.0;
    let largest =
        |samples: &[f32]| samples.windows(2).map(|two| (two[1] - two[0]).abs()).fold(0.0, f32::max);
    let going_on = largest(&steady(&scape, 6.0));
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    let mut samples = Vec::new();
    for k in 0..60 {
        let away = Soundscape { furnace: Distance::OtherRoom, ..scape };
        let slower = Soundscape { blower: 0.5, firing: 0.4, ..scape };
        let now = [scape, Soundscape::default(), away, slower][k % 4];
        synth.hear(&now);
        synth.set_volume(if k % 7 == 6 { 0 } else { 100 });
        samples.extend(next(&mut synth, 0.1));
    }
    assert!(rms(&samples) > 0.01);
    assert!(largest(&samples) <= 1.05 * going_on, "{} {going_on}", largest(&samples));
}

/// Every moment is heard, begins and ends without a step, and leaves silence behind.
#[test]
fn moments_come_and_go() {
    for moment in Moment::ALL {
        let mut synth = Synth::new(RATE_HZ, 1);
        synth.set_volume(100);
        synth.hear(&Soundscape { furnace: Distance::AtHand, ..Soundscape::default() });
        next(&mut synth, 1.0);
        synth.strike(moment);
        let samples = next(&mut synth, 4.0);
        let peak = samples.iter().fold(0.0_f32, |peak, sample| peak.max(sample.abs()));
        assert!(peak > 0.02, "{moment:?}: {peak}");
        assert!(samples[0].abs() < 0.1 * peak, "{moment:?}: begins with a step");
        let end = samples.iter().rposition(|sample| sample.abs() > 1e-4).unwrap();
        assert!(end < samples.len() - 4800, "{moment:?}: goes on");
        assert!(samples[samples.len() - 100..].iter().all(|sample| sample.abs() < 1e-6));
    }
}

/// More moments than can sound at once are left out, and the next one is heard again.
#[test]
fn a_crowd_of_moments_is_borne() {
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    for _ in 0..1000 {
        synth.strike(Moment::Door);
    }
    assert!(next(&mut synth, 2.0).iter().all(|sample| sample.abs() < 1.0));
    synth.strike(Moment::Key);
    assert!(rms(&next(&mut synth, 0.1)) > 1e-3);
}

/// The same noise is as loud at every sample rate, hertz by hertz.
#[test]
fn a_sample_rate_changes_no_loudness() {
    let roar = |rate_hz: u32| {
        let mut synth = Synth::new(rate_hz, 1);
        synth.set_volume(100);
        synth.hear(&only(Voice::Burners, 1.0));
        let mut samples = vec![0.0; 8 * rate_hz as usize];
        synth.fill(&mut samples);
        rms(&samples[rate_hz as usize..])
    };
    let ratio = roar(44_100) / roar(48_000);
    assert!((ratio - 1.0).abs() < 0.1, "{ratio}");
}

/// The limiter leaves alone what is quiet: an ordinary voice holds no overtones of it.
#[test]
fn an_alarm_alone_is_a_clean_tone() {
    let mut synth = Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    next(&mut synth, 0.5);
    synth.hear(&only(Voice::Alarm, 1.0));
    next(&mut synth, 0.2);
    let pulse = Spectrum::of(&next(&mut synth, 0.1));
    assert!(pulse.share(2900.0, 3300.0) > 0.98);
}

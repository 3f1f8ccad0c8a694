//! Each voice against the law that it states.

use quarterturn::sound::soundscape::{Distance, Soundscape};
use quarterturn::sound::voice::Voice;

use super::spectrum::{Spectrum, db, rms};
use super::{RATE_HZ, only, steady};

/// Blades of the wheels, as `docs/sound.md` states them (our own appliance).
const INDUCER_BLADES: f64 = 20.0;
const BLOWER_BLADES: f64 = 42.0;

fn inducer(speed: f64) -> Vec<f32> {
    steady(&Soundscape { inducer: speed, ..only(Voice::Inducer, 1.0) }, 1.0)
}

/// Blade-pass frequency = blades × revolutions a second (fan engineering, any handbook); an
/// induction motor runs below 120 × line frequency / poles: 3,600 r/min with two poles at 60 Hz,
/// 1,200 with six, and slips some 5–15 % under load (from memory).
#[test]
fn blades_pass_at_the_motor_s_speed() {
    let found = Spectrum::of(&inducer(1.0)).peak_hz(300.0, 3000.0);
    let rpm = 60.0 * found / INDUCER_BLADES;
    assert!((0.85 * 3600.0..0.95 * 3600.0).contains(&rpm), "{rpm}");

    let found = Spectrum::of(&steady(&only(Voice::Blower, 1.0), 8.0)).peak_hz(400.0, 3000.0);
    let rpm = 60.0 * found / BLOWER_BLADES;
    assert!((0.85 * 1200.0..0.95 * 1200.0).contains(&rpm), "{rpm}");
}

/// At 0.7 of its speed the inducer's tone is at 0.7 of its frequency, and in between it glides.
#[test]
fn the_inducer_s_tone_rises_with_its_speed() {
    let peak = |speed: f64| {
        let full = INDUCER_BLADES * 3200.0 / 60.0;
        Spectrum::of(&inducer(speed)).peak_hz(0.8 * full * speed, 1.2 * full * speed)
    };
    let full = peak(1.0);
    for speed in [0.4, 0.7, 0.85] {
        let found = peak(speed);
        assert!((found - speed * full).abs() <= 10.0, "{speed}: {found} against {full}");
    }
}

/// Fan sound law: sound power goes with the fifth power of the speed, 50·lg of the ratio in
/// decibels (fan engineering handbooks), so 7.7 dB from full speed to 0.7 of it. The hum of the
/// motor lies beside it.
#[test]
fn a_fan_is_louder_the_faster_it_runs() {
    let rush = |speed: f64| Spectrum::of(&inducer(speed)).power(400.0, 12_000.0).sqrt();
    let fallen = db(rush(0.7), rush(1.0));
    assert!((fallen - 50.0 * (1.0_f64 / 0.7).log10()).abs() < 0.5, "{fallen} dB");
}

/// A motor hums at twice the line's frequency whatever its speed.
#[test]
fn motors_hum_at_twice_the_line() {
    for speed in [0.5, 0.8, 1.0] {
        let found = Spectrum::of(&inducer(speed)).peak_hz(80.0, 200.0);
        assert!((found - 120.0).abs() < 1.0, "inducer at {speed}: {found}");
    }
}

/// The flames' roar lies below 500 Hz (furnace burners, from memory).
#[test]
fn flames_roar_low() {
    for firing in [0.5, 1.0, 1.4] {
        let scape = Soundscape { firing, ..only(Voice::Burners, 1.0) };
        let low = Spectrum::of(&steady(&scape, 2.0)).share(0.0, 500.0);
        assert!(low > 0.85, "{firing}: {low}");
    }
}

/// Brighter the more they burn: the share above 300 Hz rises with the rate.
#[test]
fn an_overfired_flame_roars_brighter() {
    let bright = |firing: f64| {
        let scape = Soundscape { firing, ..only(Voice::Burners, 1.0) };
        Spectrum::of(&steady(&scape, 3.0)).share(300.0, 2000.0)
    };
    let (low, full, over) = (bright(0.6), bright(1.0), bright(1.4));
    assert!(low < full && full < over, "{low} {full} {over}");
}

/// A jet of gas hisses above 2 kHz.
#[test]
fn gas_hisses_high() {
    let hiss = Spectrum::of(&steady(&only(Voice::Hiss, 1.0), 1.0));
    assert!(hiss.share(2000.0, 24_000.0) > 0.95);
    let relief = Spectrum::of(&steady(&only(Voice::Relief, 1.0), 1.0));
    assert!(relief.share(400.0, 6000.0) > 0.75, "{}", relief.share(400.0, 6000.0));
}

/// Four pulses of 0.1 s with 0.1 s between them and 5 s of rest (the temporal four of carbon
/// monoxide alarms, NFPA 72; from memory) near 3 kHz.
#[test]
fn the_alarm_calls_in_fours() {
    let mut synth = quarterturn::sound::synth::Synth::new(RATE_HZ, 1);
    synth.set_volume(100);
    super::next(&mut synth, 1.0);
    synth.hear(&only(Voice::Alarm, 1.0));
    let samples = super::next(&mut synth, 12.0);
    let step = RATE_HZ as usize / 100;
    let on: Vec<bool> = samples.chunks(step).map(|part| rms(part) > 0.02).collect();
    let mut edges = Vec::new();
    for (k, pair) in on.windows(2).enumerate() {
        if pair[0] != pair[1] {
            edges.push((k + 1) as f64 * 0.01);
        }
    }
    let lengths: Vec<f64> = edges.windows(2).map(|pair| pair[1] - pair[0]).collect();
    // From the end of the first pulse on: three rests and pulses, the long rest, and again.
    let call = [0.1, 0.1, 0.1, 0.1, 0.1, 0.1, 5.0, 0.1, 0.1, 0.1];
    assert!(lengths.len() >= call.len(), "{lengths:?}");
    for (length, wanted) in lengths.iter().zip(call) {
        assert!((length - wanted).abs() < 0.021, "{lengths:?}");
    }
    let tone = Spectrum::of(&samples[..4800]).peak_hz(100.0, 10_000.0);
    assert!((2900.0..3400.0).contains(&tone), "{tone}");
}

/// Half as loud at some twice the distance (6 dB), and through a wall quieter by 20 dB and dull.
#[test]
fn distance_attenuates() {
    let at = |furnace: Distance| {
        let mut scape = Soundscape { furnace, ..only(Voice::Burners, 1.0) };
        scape.level[Voice::Hiss] = 1.0;
        Spectrum::of(&steady(&scape, 1.0))
    };
    let low = |it: &Spectrum| it.power(50.0, 300.0).sqrt();
    let high = |it: &Spectrum| it.power(3000.0, 10_000.0).sqrt();
    let (near, room) = (at(Distance::AtHand), at(Distance::SameRoom));
    let hall = at(Distance::OtherRoom);
    assert!((db(low(&near), low(&room)) + 6.0).abs() < 0.5);
    assert!(db(low(&near), low(&hall)) < -19.0);
    let duller = db(high(&near), high(&hall)) - db(low(&near), low(&hall));
    assert!(duller < -30.0, "{duller} dB");
    let out = Soundscape { furnace: Distance::Outside, ..only(Voice::Burners, 1.0) };
    assert!(steady(&out, 0.5).iter().all(|sample| *sample == 0.0));
}

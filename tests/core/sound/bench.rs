//! A bench that is listened to: what is captioned sounds, what sounds is captioned.

use std::collections::BTreeMap;

use quarterturn::appliance::plate::Fuel;
use quarterturn::bench::Bench;
use quarterturn::bench::run;
use quarterturn::hands::action::Action;
use quarterturn::hands::event::Event;
use quarterturn::hands::refusal::Refusal;
use quarterturn::measure::driver::Driver;
use quarterturn::parts::{Level, Place};
use quarterturn::procedure::{Goal, Means};
use quarterturn::senses::seen::{Heard, Sound};
use quarterturn::setup::{Fault, Setup};
use quarterturn::sound::moment::Moment;
use quarterturn::sound::soundscape::{Distance, Soundscape};
use quarterturn::sound::voice::{Made, Voice, made_for};
use quarterturn::technician::{Technician, play};
use quarterturn::units::PA_PER_INWC;

use crate::bench::rig;

/// Listens at every tick.
#[derive(Default)]
struct Ear {
    before: Option<Soundscape>,
    moments: BTreeMap<Moment, u32>,
    firing: Vec<f64>,
    ticks: u32,
}

impl run::Witness for Ear {
    fn acted(&mut self, _: &Bench, _: &Action, _: Result<(), Refusal>) {}

    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        let seen = bench.seen();
        let scape = Soundscape::of(&seen);
        self.ticks += 1;
        for voice in Voice::ALL {
            let captioned = seen.sounds.iter().any(|it| made_for(*it) == Made::Voice(voice));
            assert_eq!(captioned, scape.level[voice] > 0.0, "{voice:?} at {}", seen.tick);
        }
        if scape.furnace == Distance::Outside {
            let Heard { inducer, blower, firing, hiss_m3_s, .. } = seen.heard;
            assert_eq!([inducer, blower, firing, hiss_m3_s], [0.0; 4]);
        }
        if let Some(before) = &self.before {
            for moment in scape.moments_since(before).into_iter().flatten() {
                *self.moments.entry(moment).or_default() += 1;
            }
        }
        for moment in events.iter().filter_map(|event| Moment::of(&event.what)) {
            *self.moments.entry(moment).or_default() += 1;
        }
        if scape.level[Voice::Burners] > 0.0 {
            self.firing.push(scape.firing);
        }
        self.before = Some(scape);
    }
}

/// A whole job of the reference technician: every voice that is captioned sounds and no other, at
/// every tick, and the moments of a job come.
#[test]
fn a_job_is_heard_as_it_is_captioned() {
    let mut bench = Bench::new(rig::healthy(Fuel::Natural));
    let mut technician = Technician::new(&bench.setup().card.clone());
    let mut ear = Ear::default();
    play(&mut bench, &mut technician, 4 * 3600, &mut ear);
    assert!(ear.ticks > 10_000);
    for moment in [
        Moment::Relay,
        Moment::GasValve,
        Moment::Lights,
        Moment::GoesOut,
        Moment::FlamesGrow,
        Moment::Lever,
        Moment::Thread,
        Moment::HoseOn,
        Moment::HoseOff,
        Moment::Key,
        Moment::Switch,
        Moment::Door,
    ] {
        assert!(ear.moments.contains_key(&moment), "{moment:?} of {:?}", ear.moments);
    }
    for moment in [Moment::LateLight, Moment::Ignition, Moment::Crack] {
        assert!(!ear.moments.contains_key(&moment), "{moment:?}");
    }
}

/// A burning furnace with the ear at it, and what was fired for some seconds at the full rate.
fn at_full_rate(setup: Setup) -> (Driver, Vec<f64>) {
    let mut driver = Driver::new(Bench::new(setup));
    let mut ear = Ear::default();
    let top = Level::ALL[Level::ALL.len() - 1];
    let goals =
        [Goal::GasOn, Goal::Burning(Some(top), Means::Thermostat), Goal::At(Place::GasValve)];
    assert!(driver.reach(&goals, &mut ear));
    driver.wait(30, &mut Ear::default());
    let mut ear = Ear::default();
    driver.wait(20, &mut ear);
    (driver, ear.firing)
}

/// A healthy furnace at its full rate roars at full loudness; one whose regulator hunts is heard
/// to swell and fall.
#[test]
fn a_hunting_regulator_is_heard_in_the_flames() {
    let spread = |firing: &[f64]| {
        let most = firing.iter().copied().fold(f64::MIN, f64::max);
        most - firing.iter().copied().fold(f64::MAX, f64::min)
    };
    let (_, healthy) = at_full_rate(rig::healthy(Fuel::Natural));
    assert!(healthy.iter().all(|it| (0.93..1.07).contains(it)), "{:?}", healthy.first());
    assert!(spread(&healthy) < 0.02, "{}", spread(&healthy));
    let mut setup = rig::healthy(Fuel::Natural);
    Fault::HuntingValveRegulator.apply(&mut setup, PA_PER_INWC);
    let (_, hunting) = at_full_rate(setup);
    assert!(spread(&hunting) > 0.1, "{}", spread(&hunting));
}

/// Walking away and coming back clicks nothing, though the relays are heard only here.
#[test]
fn walking_up_to_it_clicks_nothing() {
    let (driver, _) = at_full_rate(rig::healthy(Fuel::Natural));
    let mut bench = driver.leave();
    let here = Soundscape::of(&bench.seen());
    assert_eq!(here.furnace, Distance::AtHand);
    bench.apply(&Action::Go(Place::Yard)).unwrap();
    let yard = Soundscape::of(&bench.seen());
    assert!(yard.level[Voice::Burners] == 0.0 && here.level[Voice::Burners] > 0.5);
    bench.apply(&Action::Go(Place::PlantRoom)).unwrap();
    let back = Soundscape::of(&bench.seen());
    assert_eq!(here.moments_since(&yard), [None; 3]);
    assert_eq!(back.moments_since(&yard), [None; 3]);
}

/// How loud a voice is by its figure: a jet's sound power goes with its area, so twice the flow is
/// 3 dB more; a turbulent flame's with about the power 2.7 of its velocity, so 1.3 times the rate
/// is 3.1 dB more (combustion noise, from memory). Without a caption there is nothing.
#[test]
fn loudness_follows_the_figure() {
    let mut seen = Bench::new(rig::healthy(Fuel::Natural)).seen();
    let mut level = |sounds: &[Sound], heard: Heard, voice: Voice| {
        seen.sounds = sounds.to_vec();
        seen.heard = heard;
        Soundscape::of(&seen).level[voice]
    };
    let mut hiss = |hiss_m3_s: f64| {
        level(&[Sound::Hiss], Heard { hiss_m3_s, ..Heard::default() }, Voice::Hiss)
    };
    assert!((20.0 * (hiss(8e-5) / hiss(4e-5)).log10() - 3.01).abs() < 0.01);
    let heard = |firing: f64| Heard { firing, hiss_m3_s: 1.0, ..Heard::default() };
    let mut roar =
        |firing: f64| level(&[Sound::Burners(Level::ALL[0])], heard(firing), Voice::Burners);
    assert!((20.0 * (roar(1.3) / roar(1.0)).log10() - 3.1).abs() < 0.1);
    assert_eq!(level(&[Sound::Blower], heard(1.0), Voice::Hiss), 0.0);
}

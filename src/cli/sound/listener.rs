//! Listening to a bench tick by tick: samples, and what was captioned meanwhile.

use std::collections::BTreeMap;

use crate::bench::Bench;
use crate::hands::action::Action;
use crate::hands::event::Event;
use crate::hands::refusal::Refusal;
use crate::senses::seen::Seen;
use crate::sound::moment::Moment;
use crate::sound::soundscape::Soundscape;
use crate::sound::synth::Synth;
use crate::sound::voice::{Made, Voice, made_for};
use crate::technician::drive::Witness;
use crate::units::TICKS_PER_S;

/// Samples a second of what is heard.
pub(super) const RATE_HZ: u32 = 48_000;
/// Longest time that is listened to, in seconds; samples of it are held in memory.
pub(super) const LONGEST_S: u32 = 30 * 60;
/// Samples in a tick.
const IN_A_TICK: usize = RATE_HZ as usize / TICKS_PER_S as usize;

/// What was heard, and when it was captioned.
pub(super) struct Listener {
    synth: Synth,
    before: Soundscape,
    since: BTreeMap<Voice, f64>,
    /// All samples so far.
    pub samples: Vec<f32>,
    /// Each voice with the seconds from and to which its caption stood.
    pub captioned: Vec<(Voice, f64, f64)>,
    /// Each moment with its second.
    pub moments: Vec<(Moment, f64)>,
}

impl Listener {
    pub(super) fn new(bench: &Bench, seed: u64) -> Self {
        let mut synth = Synth::new(RATE_HZ, seed);
        synth.set_volume(100);
        Self {
            synth,
            before: Soundscape::of(&bench.seen()),
            since: BTreeMap::new(),
            samples: Vec::new(),
            captioned: Vec::new(),
            moments: Vec::new(),
        }
    }

    /// How long was listened, in seconds.
    pub(super) fn seconds(&self) -> f64 {
        self.samples.len() as f64 / f64::from(RATE_HZ)
    }

    /// Ends every caption that still stands.
    pub(super) fn end(&mut self) {
        let now = self.seconds();
        for (voice, since) in std::mem::take(&mut self.since) {
            self.captioned.push((voice, since, now));
        }
    }

    fn caption(&mut self, seen: &Seen) {
        let now = self.seconds();
        for voice in Voice::ALL {
            let stands = seen.sounds.iter().any(|it| made_for(*it) == Made::Voice(voice));
            match (stands, self.since.get(&voice)) {
                (true, None) => {
                    self.since.insert(voice, now);
                }
                (false, Some(since)) => {
                    self.captioned.push((voice, *since, now));
                    self.since.remove(&voice);
                }
                (true, Some(_)) | (false, None) => {}
            }
        }
    }
}

impl Witness for Listener {
    fn acted(&mut self, _: &Bench, _: &Action, _: Result<(), Refusal>) {}

    fn ticked(&mut self, bench: &Bench, events: Vec<Event>) {
        if self.seconds() >= f64::from(LONGEST_S) {
            return;
        }
        let seen = bench.seen();
        let now = Soundscape::of(&seen);
        let of_events = events.iter().filter_map(|event| Moment::of(&event.what));
        let between = now.moments_since(&self.before).into_iter().flatten();
        let at = self.seconds();
        for moment in of_events.chain(between).filter(|moment| now.hears(*moment)) {
            self.synth.strike(moment);
            self.moments.push((moment, at));
        }
        self.caption(&seen);
        self.synth.hear(&now);
        self.before = now;
        let from = self.samples.len();
        self.samples.resize(from + IN_A_TICK, 0.0);
        self.synth.fill(&mut self.samples[from..]);
    }
}

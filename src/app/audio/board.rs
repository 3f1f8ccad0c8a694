//! What the window tells and the thread of sound takes up.

use std::sync::{Arc, Mutex, MutexGuard, PoisonError};

use crate::sound::moment::Moment;
use crate::sound::soundscape::Soundscape;
use crate::sound::synth::Synth;

/// Most moments that wait to be taken up: more than come in the longest pause between two buffers.
const MOMENTS: usize = 32;
/// The seed of the noise. It is the same in every attempt: a record knows nothing of sound.
const SEED: u64 = 1;

/// What lies between the window and the thread of sound.
#[derive(Clone, Default)]
pub(super) struct Board(Arc<Mutex<Told>>);

/// What was told last.
#[derive(Default)]
struct Told {
    scape: Soundscape,
    percent: u32,
    moments: [Option<Moment>; MOMENTS],
}

impl Board {
    /// Tells what is to be heard from now on, how loud, and what has just come.
    pub(super) fn tell(&self, scape: Soundscape, percent: u32, moments: &[Moment]) {
        let mut told = self.told();
        told.scape = scape;
        told.percent = percent;
        let mut news = moments.iter();
        for slot in told.moments.iter_mut().filter(|slot| slot.is_none()) {
            let Some(moment) = news.next() else { return };
            *slot = Some(*moment);
        }
    }

    /// Nobody stops half way through telling: what stands there is whole.
    fn told(&self) -> MutexGuard<'_, Told> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// The synthesiser at work on what is told.
pub(super) struct Player {
    board: Board,
    synth: Synth,
}

impl Player {
    pub(super) fn new(board: Board, rate_hz: u32) -> Self {
        Self { board, synth: Synth::new(rate_hz, SEED) }
    }

    /// Forgets moments that came while nobody could hear them.
    pub(super) fn forget(&mut self) {
        self.board.told().moments = [None; MOMENTS];
    }

    /// Fills a buffer with what is to be heard by now.
    pub(super) fn fill(&mut self, samples: &mut [f32]) {
        let (scape, percent, moments) = {
            let mut told = self.board.told();
            (told.scape, told.percent, std::mem::replace(&mut told.moments, [None; MOMENTS]))
        };
        self.synth.hear(&scape);
        self.synth.set_volume(percent);
        for moment in moments.into_iter().flatten() {
            self.synth.strike(moment);
        }
        self.synth.fill(samples);
    }
}

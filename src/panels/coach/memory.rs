//! What the coach keeps in mind of what was seen and done.

use super::cycle::Cycle;
use super::hint::order;
use crate::hands::action::Action;
use crate::parts::{Phase, Port, Stage};
use crate::procedure::Memory;
use crate::senses::seen::{Seen, Sound};
use crate::units::TICKS_PER_S;
use enum_map::EnumMap;

/// Less than this is no move of the manifold, in pascals (two hundredths of an inch of water).
const MOVED_PA: i32 = 5;

/// How long a regulator may take to follow its screw, in seconds (common practice).
const MOVE_S: u64 = 10;

fn whole(pa: f64) -> i32 {
    #[expect(clippy::cast_possible_truncation, reason = "clamped")]
    let whole = pa.clamp(-1.0e6, 1.0e6).round() as i32;
    whole
}

/// What was seen and done, as far as the next step needs it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Remembered {
    /// What the procedure's goals need.
    pub(super) job: Memory,
    /// Turns of the stage screws after which the manifold's number stood as before, in a row.
    pub idle_turns: u8,
    /// The number before the last turn, in whole pascals.
    before_turn_pa: Option<i32>,
    /// The number that the manifold shows, in whole pascals.
    shown_pa: Option<i32>,
    /// Now, and when a stage screw was turned last, in ticks.
    tick: u64,
    turned_tick: u64,
    /// Cells of the found column that are written, and those to be read again since a repair.
    written: EnumMap<Port, EnumMap<Stage, bool>>,
    again: EnumMap<Port, EnumMap<Stage, bool>>,
    /// Whether the burners were heard since the hose was put on the inlet port.
    pub(super) flowed: bool,
    /// How far a cycle without a hand on the gas has come.
    pub cycle: Cycle,
}

impl Remembered {
    /// Takes in what is seen now.
    pub fn notice(&mut self, seen: &Seen) {
        self.tick = seen.tick;
        for (port, stage) in order(seen.levels) {
            self.written[port][stage] = seen.sheet.reading(port, stage, Phase::Found).is_some();
        }
        self.job.notice(seen);
        self.shown_pa = match seen.hose() {
            Some((Port::Manifold, _)) => seen.pressure_shown().map(|shown| whole(shown.pa())),
            Some((Port::Inlet, _)) | None => None,
        };
        let on_inlet = matches!(self.job.hose(), Some((Port::Inlet, _)));
        let burns = seen.sounds.iter().any(|sound| matches!(sound, Sound::Burners(_)));
        self.flowed = on_inlet && (self.flowed || burns);
        self.cycle = self.cycle.heard(seen);
    }

    /// Takes in what is being done.
    pub fn did(&mut self, action: &Action) {
        if action.spoils_cycle() {
            self.cycle = Cycle::default();
        }
        self.job.did(action);
        if let Action::Turn { screw, .. } = action
            && screw.level().is_some()
        {
            self.idle_turns = if self.stood() { self.idle_turns.saturating_add(1) } else { 0 };
            self.before_turn_pa = self.shown_pa;
            self.turned_tick = self.tick;
        }
        if let Action::Mend(_) = action {
            (self.idle_turns, self.before_turn_pa) = (0, None);
            self.again = self.written;
        }
        if let Action::Write(reading) = action
            && reading.phase == Phase::Left
        {
            self.again[reading.port][reading.stage] = false;
        }
    }

    /// The next cell to read again after a repair.
    pub(super) fn next_again(&self, seen: &Seen) -> Option<(Port, Stage)> {
        order(seen.levels).into_iter().find(|&(port, stage)| self.again[port][stage])
    }

    /// Whether the manifold stands where it stood before the last turn.
    fn stood(&self) -> bool {
        let (Some(before), Some(now)) = (self.before_turn_pa, self.shown_pa) else { return false };
        let waited_s = self.tick.saturating_sub(self.turned_tick) / TICKS_PER_S;
        waited_s >= MOVE_S && (now - before).abs() < MOVED_PA
    }

    /// Whether the last turn did not move the manifold.
    pub(super) fn turned_in_vain(&self) -> bool {
        self.idle_turns > 0 || self.stood()
    }
}

//! What the coach keeps in mind of what was seen and done.

use super::ORDER;
use super::cycle::Cycle;
use crate::appliance::plate::Fuel;
use crate::hands::action::{Action, Topic};
use crate::parts::{Fitted, Joint, JointVerdict, Phase, Port, Screw, Stage};
use crate::senses::seen::{Burning, Call, Seen};
use crate::units::TICKS_PER_S;

/// Less than this is no move of the manifold, in pascals (two hundredths of an inch of water).
const MOVED_PA: i32 = 5;

/// How long a regulator may take to follow its screw, in seconds (common practice).
const MOVE_S: u64 = 10;

/// How long a furnace may take from one stage to the other, in seconds: longer than the fan needs to
/// prove its draft on high (common practice).
const FOLLOWS_S: u64 = 120;

/// How long what was seen of the thermostat is taken to hold, in seconds.
const KNOWN_S: u64 = 300;

/// What is known of a call.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Called {
    /// Nothing, or something else was called for.
    NotKnown,
    /// The furnace may still be on its way.
    JustNow,
    /// It should have followed.
    LongSince,
}

fn whole(pa: f64) -> i32 {
    #[expect(clippy::cast_possible_truncation, reason = "clamped")]
    let whole = pa.clamp(-1.0e6, 1.0e6).round() as i32;
    whole
}

/// What was seen and done where one no longer stands, as far as the next step needs it. Empty after
/// an attempt was resumed: the coach then sends one to look again.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Remembered {
    /// How the kitchen range was seen last.
    pub range: Option<Burning>,
    /// What the thermostat called for when it was seen last, since when, and when that was, in ticks.
    call: Option<(Call, u64, u64)>,
    /// What the supply in the yard gives: a tank was seen there, or a meter.
    pub supply: Option<Fuel>,
    /// The setpoint as it was seen first, in half degrees Fahrenheit.
    pub setpoint_found_half_f: Option<i16>,
    /// How water heater and range were seen first.
    pub neighbors_found: [Option<Burning>; 2],
    /// Whether inlet and manifold joint were written tight since they were last disturbed.
    pub proven: [bool; 2],
    /// Whether the warning tag was seen on the furnace.
    pub tagged: bool,
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
    written: [bool; ORDER.len()],
    again: [bool; ORDER.len()],
    /// Whether the householder was told that the furnace stays off.
    pub told_unsafe: bool,
    /// How far a cycle without a hand on the gas has come.
    pub cycle: Cycle,
}

impl Remembered {
    /// Takes in what is seen now.
    pub fn notice(&mut self, seen: &Seen) {
        self.tick = seen.tick;
        for (written, &(port, stage)) in self.written.iter_mut().zip(&ORDER) {
            *written = seen.sheet.reading(port, stage, Phase::Found).is_some();
        }
        let [heater, range] = &mut self.neighbors_found;
        if let Some(hall) = &seen.hall {
            self.range = Some(hall.range.burning);
            range.get_or_insert(hall.range.burning);
            self.setpoint_found_half_f.get_or_insert(hall.setpoint_half_f);
            let since = match self.call {
                Some((call, since, _)) if call == hall.call => since,
                Some(_) | None => seen.tick,
            };
            self.call = Some((hall.call, since, seen.tick));
        }
        if let Some(furnace) = &seen.furnace {
            heater.get_or_insert(furnace.water_heater.burning);
            self.tagged = furnace.tag == Fitted::On;
        }
        self.shown_pa = match seen.meter.hose {
            Some((Port::Manifold, _)) => seen.pressure_shown().map(|shown| whole(shown.pa())),
            Some((Port::Inlet, _)) | None => None,
        };
        self.cycle = self.cycle.heard(seen);
        if let Some(yard) = &seen.yard {
            let tank = yard.tank_percent.map(|_| Fuel::Propane);
            self.supply = tank.or(yard.dial_turns.map(|_| Fuel::Natural)).or(self.supply);
        }
    }

    /// Takes in what is being done.
    pub fn did(&mut self, action: &Action) {
        if action.spoils_cycle() {
            self.cycle = Cycle::default();
        }
        let [inlet, manifold] = &mut self.proven;
        match action {
            Action::Plug { port, .. } | Action::Adapter { port, .. } => match port {
                Port::Inlet => *inlet = false,
                Port::Manifold => *manifold = false,
            },
            Action::WriteJoint { joint, verdict } => {
                let tight = *verdict == JointVerdict::Tight;
                match joint {
                    Joint::InletPort => *inlet = tight,
                    Joint::ManifoldPort => *manifold = tight,
                    Joint::Union | Joint::Connector => {}
                }
            }
            Action::Turn { screw: Screw::Low | Screw::High, .. } => {
                self.idle_turns = if self.stood() { self.idle_turns.saturating_add(1) } else { 0 };
                self.before_turn_pa = self.shown_pa;
                self.turned_tick = self.tick;
            }
            Action::Mend(_) => {
                (self.idle_turns, self.before_turn_pa) = (0, None);
                self.again = self.written;
            }
            Action::Write(reading) if reading.phase == Phase::Left => {
                let cells = self.again.iter_mut().zip(&ORDER);
                for (again, _) in cells.filter(|(_, at)| **at == (reading.port, reading.stage)) {
                    *again = false;
                }
            }
            Action::Tell(Topic::Unsafe) => self.told_unsafe = true,
            _ => {}
        }
    }

    /// Whether this was called for when the thermostat was seen last, and how long the furnace has had to
    /// follow.
    pub(super) fn called(&self, wanted: Call) -> Called {
        let Some((_, since, seen)) = self.call.filter(|(call, _, _)| *call == wanted) else {
            return Called::NotKnown;
        };
        let seconds = |from: u64| self.tick.saturating_sub(from) / TICKS_PER_S;
        match (seconds(since), seconds(seen)) {
            (since_s, _) if since_s < FOLLOWS_S => Called::JustNow,
            (_, seen_s) if seen_s < KNOWN_S => Called::LongSince,
            _ => Called::NotKnown,
        }
    }

    /// The next cell to read again after a repair.
    pub(super) fn next_again(&self) -> Option<(Port, Stage)> {
        ORDER.iter().zip(self.again).find(|(_, again)| *again).map(|(cell, _)| *cell)
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

    pub(super) fn is_proven(&self, port: Port) -> bool {
        let [inlet, manifold] = self.proven;
        match port {
            Port::Inlet => inlet,
            Port::Manifold => manifold,
        }
    }
}
